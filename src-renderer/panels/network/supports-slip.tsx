import { suggestedSupports } from '#shared/calculations/design/suggested-supports';
import { supportSpan_m } from '#shared/calculations/formulas/support-spans';
import { LAST_SUPPORT_WORDS, SUPPORT_TABLE_WORDS } from '#shared/calculations/lines/basis-words';
import { sequence } from '#shared/commands/command';
import { editSupport } from '#shared/commands/edit-support';
import { replaceSupports } from '#shared/commands/replace-supports';
import type { DerivedNetwork } from '#shared/derived/derived';
import type { BasisOfDesign } from '#shared/model/basis-of-design';
import type { Support } from '#shared/model/plan';
import { PIPE_SIZES, type PipeSize } from '#shared/profile/pipe-table';
import { stockJointsOf } from '#shared/take-off/stock-joints';
import { countOf } from '../../plan-words.ts';
import { useStoreItself } from '../../store/use-store.ts';
import { standingSupport } from '../../tools/support-place.ts';
import { Slip } from '../bench/slip.tsx';
import { useCommit, useFigures, useShownPlan } from '../bench/use-plan.ts';
import { QuantityField } from '../fields/quantity-field.tsx';
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
  const borne = new Set(supports.map(({ capacity_N }) => capacity_N));
  const [only = null] = borne;
  const everySupport = (capacity_N: number | null): void => {
    const changes = supports.map(({ id }) => editSupport({ kind: 'support', network: network.id, id }, { capacity_N }));
    commit(sequence('Set what each support bears', changes));
  };
  return (
    <Slip title="Pipe supports" part="supports">
      <p className="field-help">
        By the {SUPPORT_TABLE_WORDS[basis.supportTable]}; {LAST_SUPPORT_WORDS[basis.lastSupport]}. The table counts the weight of pipe and agent only: what earthquake or vibration adds, an engineer decides.
      </p>
      {left.length > 0 ? <p className="doubt">The table gives no distance for NPS {left.join(', ')}: there the closest distance of the other tables is taken, and the check says “not checked”.</p> : null}
      <div className="row">
        <button type="button" className="button" disabled={shape.pipes.length === 0} onClick={() => commit(replaceSupports(ref, suggestedSupports(shape, basis, stockJointsOf(shape))))}>
          Place supports by the table
        </button>
        <button type="button" className="button" onClick={() => run('tool-support')}>
          Put one by hand
        </button>
      </div>
      {supports.length === 0 ? (
        <p className="quiet">No support is drawn yet.</p>
      ) : (
        <div className="fields">
          <QuantityField
            kind="force"
            label="Each support bears"
            value={borne.size === 1 ? only : null}
            least={0}
            most={1e6}
            blank={{ text: borne.size > 1 ? 'not all alike' : 'not known', commit: () => everySupport(null) }}
            onCommit={everySupport}
            wide
            help="Thrust along the pipe, as the maker or an engineer states it, with its anchor. It is set for all of them."
          />
        </div>
      )}
      {supports.length === 0 ? null : (
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
