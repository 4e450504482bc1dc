import { useEffect, useMemo, useRef, useState } from 'react';
import { takeOffCautions } from '#shared/sheets/take-off-words';
import { KERF_m, STOCK_m, billOf, saveTakeOff } from '../../actions/save-take-off.ts';
import { showProblem } from '../../actions/plan-file.ts';
import { presentEvaluation } from '../../store/selectors.ts';
import type { State } from '../../store/state.ts';
import { useStore } from '../../store/use-store.ts';
import { countOf } from '../../plan-words.ts';
import { Slip } from '../bench/slip.tsx';
import { Choice } from '../fields/choice.tsx';
import { LengthField } from '../fields/quantity-field.tsx';
import { VerdictMark } from '../verdict-mark.tsx';
import { useActionContext, useRun } from '../window-context.ts';
import { AsMeasured } from './as-measured.tsx';
import { CutList } from './cut-list.tsx';
import { FittingsSlip, PartsSlip, WeightsSlip } from './counts-slips.tsx';
import { MissingLengths } from './missing-lengths.tsx';
import { OrderSlip } from './order-slip.tsx';

const takeOffOf = (state: State) => state.session.takeOff;
const selectionOf = (state: State) => state.session.selection;
const WHOLE = 'whole';

/** Everything that the plan, or one network, is built of, and how its pipe is cut. Worked out anew when a gesture is done, not within it. */
export function TakeOffPanel({ network }: { readonly network: string | null }) {
  const context = useActionContext();
  const { desk, store, host } = context;
  const run = useRun();
  const { derived } = useStore(presentEvaluation);
  const options = useStore(takeOffOf);
  const selection = useStore(selectionOf);
  const [place, setPlace] = useState<string | null>(null);
  const panel = useRef<HTMLDivElement>(null);
  const { plan, networks } = derived;
  const piped = networks.filter(({ pipes }) => pipes.length > 0);
  const shown = network !== null && piped.some(({ ref }) => ref.id === network) ? network : null;
  const bill = useMemo(() => billOf(derived, shown, options), [derived, shown, options]);

  const isSeveral = new Set(bill.pieces.map((piece) => piece.network)).size > 1;
  const networkName = isSeveral ? (id: string): string => plan.networks[id]?.name || id : undefined;

  // A pipe that was picked on the board shows its piece.
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked for again when the selection changes
  useEffect(() => {
    panel.current?.querySelector('.piece[data-selected]')?.scrollIntoView({ block: 'nearest' });
  }, [selection]);

  if (piped.length === 0) {
    return (
      <div className="take-off" ref={panel}>
        <p className="quiet">No pipe is drawn yet. Run pipe from a cylinder to the nozzles: what to buy and how to cut it then stands here.</p>
        <button type="button" className="button" onClick={() => run('tool-pipe')}>
          Draw pipe
        </button>
      </div>
    );
  }
  const save = async (): Promise<void> => setPlace(await saveTakeOff(context, shown));
  const open = async (): Promise<void> => {
    const answer = place === null ? null : await host.openExternally({ place });
    if (answer && !answer.ok) showProblem(context, answer.problem);
  };
  const cautions = takeOffCautions(bill);
  return (
    <div className="take-off" ref={panel}>
      <Slip title="Take-off" part="take-off">
        <div className="fields">
          {piped.length > 1 ? (
            <Choice
              label="Of"
              value={shown ?? WHOLE}
              options={[{ value: WHOLE, label: `The whole plan: ${countOf(piped.length, 'network')}` }, ...piped.map(({ ref, network: each }) => ({ value: ref.id, label: each.name || ref.id }))]}
              onCommit={(chosen) => desk.set({ bench: { kind: 'take-off', network: chosen === WHOLE ? null : chosen } })}
              wide
            />
          ) : null}
          <LengthField label="Stock length of pipe" value={options.stock_m} least={STOCK_m.least} most={STOCK_m.most} onCommit={(stock_m) => store.session({ takeOff: { ...options, stock_m } })} />
          <LengthField label="Width of a saw cut" value={options.kerf_m} least={KERF_m.least} most={KERF_m.most} onCommit={(kerf_m) => store.session({ takeOff: { ...options, kerf_m } })} />
        </div>
        <div className="row">
          <button type="button" className="button" onClick={() => void save()}>
            Save as spreadsheet…
          </button>
          {place ? (
            <button type="button" className="button" onClick={() => void open()}>
              Open it
            </button>
          ) : null}
        </div>
      </Slip>
      <AsMeasured bill={bill} plan={plan} />
      <MissingLengths bill={bill} />
      {bill.pipe.map((order) => (
        <OrderSlip key={`${order.size} ${order.schedule} ${order.material}`} order={order} kerf_m={bill.kerf_m} networkName={networkName} />
      ))}
      <CutList bill={bill} networkName={networkName} />
      <FittingsSlip bill={bill} />
      <PartsSlip bill={bill} />
      <WeightsSlip bill={bill} />
      <details className="sum-cautions">
        <summary>
          <VerdictMark verdict="warn" silent /> {countOf(cautions.length, 'caution')}: read before you cut
        </summary>
        {cautions.map((caution) => (
          <p key={caution} className="caution">
            {caution}
          </p>
        ))}
      </details>
    </div>
  );
}
