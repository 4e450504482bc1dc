import { editNetwork } from '#shared/commands/edit-network';
import type { Network, RefOf } from '#shared/model/plan';
import { Slip } from '../bench/slip.tsx';
import { useCommit } from '../bench/use-plan.ts';
import { Choice, optionsOf } from '../fields/choice.tsx';
import { TextField } from '../fields/text-field.tsx';

/** Whether the pipe is joined to the earth of the building, in the user's words. */
export const BONDING_WORDS = { unknown: 'Not yet known', bonded: 'Bonded', 'not-bonded': 'Not bonded' } as const satisfies Record<Network['installation']['bonding'], string>;

/** What the drawing cannot show of how the pipe is put up. */
export function InstallationSlip({ at, network }: { readonly at: RefOf<'network'>; readonly network: Network }) {
  const commit = useCommit();
  const { installation } = network;
  const change = (part: Partial<Network['installation']>): void => {
    commit(editNetwork(at, { installation: { ...installation, ...part } }));
  };
  return (
    <Slip title="How the pipe is put up" part="installation">
      <div className="fields">
        <Choice label="Bonding to earth" value={installation.bonding} options={optionsOf(BONDING_WORDS)} onCommit={(bonding) => change({ bonding })} wide help="To the earth of the building, as the electrical code asks; an electrician does it." />
        <TextField label="Marking along the pipe" value={installation.marking} placeholder="Nitrogen, with an arrow along the flow" onCommit={(marking) => change({ marking })} wide />
        <TextField label="Finish against corrosion" value={installation.finish} placeholder="Primed and painted" onCommit={(finish) => change({ finish })} wide />
      </div>
    </Slip>
  );
}
