import { suggestedSupports } from '#shared/calculations/design/suggested-supports';
import { supportSpan_m } from '#shared/calculations/formulas/support-spans';
import { LAST_SUPPORT_WORDS, SUPPORT_TABLE_WORDS } from '#shared/calculations/lines/basis-words';
import { replaceSupports } from '#shared/commands/replace-supports';
import type { DerivedNetwork } from '#shared/derived/derived';
import type { BasisOfDesign } from '#shared/model/basis-of-design';
import type { Support } from '#shared/model/plan';
import { PIPE_SIZES, type PipeSize } from '#shared/profile/pipe-table';
import { countOf } from '../../plan-words.ts';
import { useStoreItself } from '../../store/use-store.ts';
import { standingSupport } from '../../tools/support-place.ts';
import { Slip } from '../bench/slip.tsx';
import { useCommit, useFigures, useShownPlan } from '../bench/use-plan.ts';
import { useRun } from '../window-context.ts';
import { SUPPORT_NAMES } from './support-words.ts';

/** Pipe sizes of a network for which the chosen table gives no span, smallest first. */
export function sizesWithoutSpan({ pipes }: DerivedNetwork, table: BasisOfDesign['supportTable']): PipeSize[] {
  const drawn = new Set(pipes.map(({ pipe }) => pipe.size));
  return PIPE_SIZES.filter((size) => drawn.has(size) && supportSpan_m(table, size) === undefined);
}

/** The supports of a network, and placing them by the table of the basis of design. */
export function SupportsSlip({ shape }: { readonly shape: DerivedNetwork }) {
  const commit = useCommit();
  const store = useStoreItself();
  const run = useRun();
  const { length } = useFigures();
  const { basis } = useShownPlan();
  const { network, ref } = shape;
  const supports = Object.values(network.supports);
  const left = sizesWithoutSpan(shape, basis.supportTable);
  const whereOf = (support: Support): string => {
    const standing = standingSupport(network, support);
    return standing ? `NPS ${standing.pipe.size}, ${length(standing.fromEnd_m)} from its end, at ${length(support.at.z)}` : 'holds no pipe';
  };
  return (
    <Slip title="Pipe supports" part="supports">
      <p className="field-help">
        By the {SUPPORT_TABLE_WORDS[basis.supportTable]}; {LAST_SUPPORT_WORDS[basis.lastSupport]}. The table counts the weight of pipe and agent only: what earthquake or vibration adds, an engineer decides.
      </p>
      {left.length > 0 ? <p className="doubt">The table gives no distance for NPS {left.join(', ')}: there the closest distance of the other tables is taken, and the check says “not checked”.</p> : null}
      <div className="row">
        <button type="button" className="button" disabled={shape.pipes.length === 0} onClick={() => commit(replaceSupports(ref, suggestedSupports(shape, basis)))}>
          Place supports by the table
        </button>
        <button type="button" className="button" onClick={() => run('tool-support')}>
          Put one by hand
        </button>
      </div>
      {supports.length === 0 ? (
        <p className="quiet">No support is drawn yet.</p>
      ) : (
        <details>
          <summary>{countOf(supports.length, 'support')}. Placing by the table puts new ones in place of these.</summary>
          <ul className="pick-list">
            {supports.map((support) => (
              <li key={support.id}>
                <button type="button" onClick={() => store.session({ selection: [{ kind: 'support', network: network.id, id: support.id }] })}>
                  <span>{SUPPORT_NAMES[support.kind]}</span>
                  <span className="quiet">{whereOf(support)}</span>
                </button>
              </li>
            ))}
          </ul>
        </details>
      )}
    </Slip>
  );
}
