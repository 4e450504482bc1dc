import { editSupport } from '#shared/commands/edit-support';
import type { RefOf, Support } from '#shared/model/plan';
import { selectEvaluation } from '../../store/selectors.ts';
import { useStore } from '../../store/use-store.ts';
import { alongFrom, standingSupport } from '../../tools/support-place.ts';
import { Choice, optionsOf } from '../fields/choice.tsx';
import { LengthField, QuantityField } from '../fields/quantity-field.tsx';
import { BRACE_WORDS, SUPPORT_WORDS } from '../network/support-words.ts';
import { Readings, Slip } from './slip.tsx';
import { useCommit, useFigures, useShownPlan } from './use-plan.ts';

/** Thrusts that come onto a support, as far as they are worked out. */
function ThrustReadings({ at }: { readonly at: RefOf<'support'> }) {
  const { design } = useStore(selectEvaluation);
  const { quantity } = useFigures();
  const thrusts = design.networks.find(({ ref }) => ref.id === at.network)?.thrusts;
  if (!thrusts) return null;
  if (!thrusts.isKnown) return <p className="quiet">What pushes on it is not worked out: {thrusts.because}</p>;
  const own = thrusts.sums.filter(({ support }) => support?.ref.id === at.id);
  if (own.length === 0) return null;
  return <Readings rows={own.map(({ name, blocked_N }) => ({ label: `Nozzle ${name}, one hole blocked`, value: quantity(blocked_N, 'force') }))} />;
}

/** Form of one pipe support. */
export function SupportForm({ at }: { readonly at: RefOf<'support'> }) {
  const commit = useCommit();
  const { length } = useFigures();
  const network = useShownPlan().networks[at.network];
  const support = network?.supports[at.id];
  if (!network || !support) return null;
  const standing = standingSupport(network, support);
  const change = (part: Partial<Support>): void => {
    commit(editSupport(at, part));
  };
  const onlyCarries = support.kind === 'hanger' || support.kind === 'sling';
  return (
    <Slip title="Pipe support" part="support">
      <div className="fields">
        <Choice
          label="Kind"
          value={support.kind}
          options={optionsOf(SUPPORT_WORDS)}
          onCommit={(kind) => change({ kind })}
          wide
          help={onlyCarries ? 'It does not hold against the thrust of a nozzle: the last support before a nozzle must.' : undefined}
        />
        {standing ? (
          <LengthField
            label="From the end of its pipe"
            value={standing.fromEnd_m}
            least={0}
            most={standing.length_m}
            onCommit={(along_m) => change({ at: alongFrom(standing, along_m) })}
            help={`The nearer end; it is ${length(standing.length_m)} long.`}
          />
        ) : null}
        <QuantityField
          kind="force"
          label="Thrust it bears"
          value={support.capacity_N}
          least={0}
          most={1e6}
          blank={{ text: 'not known', commit: () => change({ capacity_N: null }) }}
          onCommit={(capacity_N) => change({ capacity_N })}
          help="As its maker or an engineer states it, with its anchor."
        />
        <Choice label="Earthquake brace" value={support.brace} options={optionsOf(BRACE_WORDS)} onCommit={(brace) => change({ brace })} wide help="Where bracing is required, the structural engineer says which supports brace, and how." />
      </div>
      {standing ? (
        <Readings
          rows={[
            { label: 'Holds', value: `NPS ${standing.pipe.size} pipe` },
            { label: 'Above the floor', value: length(support.at.z) },
          ]}
        />
      ) : (
        <p className="field-fault">No pipe runs here any more. Delete it, or place the supports anew.</p>
      )}
      <ThrustReadings at={at} />
    </Slip>
  );
}
