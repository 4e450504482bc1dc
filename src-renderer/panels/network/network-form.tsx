import { editNetwork } from '#shared/commands/edit-network';
import { distance_m } from '#shared/geometry/point';
import type { Network, RefOf } from '#shared/model/plan';
import { selectEvaluation } from '../../store/selectors.ts';
import { useStore } from '../../store/use-store.ts';
import { Slip } from '../bench/slip.tsx';
import { type Figures, useCommit, useFigures, useShownPlan } from '../bench/use-plan.ts';
import { Choice } from '../fields/choice.tsx';
import { TextField } from '../fields/text-field.tsx';
import { useActionContext } from '../window-context.ts';
import { hasNozzle, pipesAt } from '../../tools/network-hits.ts';
import { AssemblySlip } from './assembly-slip.tsx';
import { InstallationSlip } from './installation-slip.tsx';
import { OrificesSlip } from './orifices-slip.tsx';
import { ReleaseSlip } from './release-slip.tsx';
import { SupportsSlip } from './supports-slip.tsx';

/** Ends of pipe where the agent can come in, with how far each is from a cylinder, nearest first. */
export function beginningsOf(network: Network): { readonly node: string; readonly away_m: number; readonly z_m: number }[] {
  const cylinders = Object.values(network.cylinders);
  return Object.values(network.nodes)
    .filter(({ id }) => id === network.source || (pipesAt(network, id).length === 1 && !hasNozzle(network, id)))
    .map(({ id, at }) => ({ node: id, away_m: Math.min(...cylinders.map((cylinder) => distance_m(cylinder.at, at))), z_m: at.z }))
    .sort((a, b) => a.away_m - b.away_m);
}

const beginningText = ({ away_m, z_m }: ReturnType<typeof beginningsOf>[number], { length }: Figures): string =>
  Number.isFinite(away_m) ? `${length(z_m)} above the floor, ${length(away_m)} from the cylinder` : `${length(z_m)} above the floor`;

/** Form of a whole pipe network. */
export function NetworkForm({ at }: { readonly at: RefOf<'network'> }) {
  const { desk } = useActionContext();
  const commit = useCommit();
  const figures = useFigures();
  const plan = useShownPlan();
  const { derived } = useStore(selectEvaluation);
  const network = plan.networks[at.id];
  const shape = derived.networks.find(({ ref }) => ref.id === at.id);
  if (!network) return null;
  const beginnings = beginningsOf(network);
  return (
    <>
      <Slip title="Pipe network" part="network">
        <div className="fields">
          <TextField label="Name" value={network.name} required="A network needs a name: sheets and findings call it by that." onCommit={(name) => commit(editNetwork(at, { name }))} wide />
          {beginnings.length > 0 ? (
            <Choice
              label="Where the pipe begins"
              value={network.source ?? ''}
              options={[...(network.source === null ? [{ value: '', label: 'Not chosen' }] : []), ...beginnings.map((each) => ({ value: each.node, label: beginningText(each, figures) }))]}
              onCommit={(node) => commit(editNetwork(at, { source: node === '' ? null : node }))}
              wide
              help="At the outlet of the discharge assembly: the agent comes in here."
            />
          ) : (
            <p className="quiet">No pipe is drawn yet.</p>
          )}
        </div>
      </Slip>
      {Object.keys(network.pipes).length > 0 ? (
        <button type="button" className="button" onClick={() => desk.set({ bench: { kind: 'take-off', network: at.id } })}>
          Take-off of this network: pipe, fittings, cut list
        </button>
      ) : null}
      <AssemblySlip at={at} network={network} shape={shape} />
      {shape ? <SupportsSlip shape={shape} /> : null}
      <InstallationSlip at={at} network={network} />
      <OrificesSlip networkId={at.id} orifices={plan.profiles[network.profile]?.orifices ?? []} />
      <ReleaseSlip at={at} network={network} />
    </>
  );
}
