import { type ReactNode, useMemo } from 'react';
import type { CalculationTopic } from '#shared/calculations/lines/calculation';
import type { Evaluation } from '#shared/evaluate';
import type { LedgerFigure } from '../actions/desk.ts';
import type { Verdict } from '#shared/rules/finding';
import { isWorkingOut, selectEvaluation, selectLedger } from '../store/selectors.ts';
import { useStore } from '../store/use-store.ts';
import { countOf } from '../plan-words.ts';
import { useFigures } from './bench/use-plan.ts';
import { VerdictMark } from './verdict-mark.tsx';
import { useActionContext, useDesk } from './window-context.ts';

const areaOf = ({ derived }: Evaluation): number => derived.spaces.filter(({ kind }) => kind === 'room').reduce((sum, space) => sum + space.area_m2, 0);

interface CellProps {
  readonly label: string;
  readonly value: ReactNode;
  readonly note?: string | undefined;
  readonly isOpen?: boolean;
  readonly id: string;
  onOpen(): void;
}

function Cell({ label, value, note, isOpen, id, onOpen }: CellProps) {
  return (
    <button type="button" className="ledger-cell" aria-pressed={isOpen} data-cell={id} onClick={onOpen} title={`${label}: show where it comes from`}>
      <span className="ledger-label">{label}</span>
      <span className="ledger-value">
        {value}
        {note ? <span className="quiet"> {note}</span> : null}
      </span>
    </button>
  );
}

const VERDICT_CELLS: readonly { readonly verdict: Verdict; readonly label: string; readonly count: 'stops' | 'warnings' | 'notChecked' }[] = [
  { verdict: 'stop', label: 'Stops', count: 'stops' },
  { verdict: 'warn', label: 'Warnings', count: 'warnings' },
  { verdict: 'not-checked', label: 'Not checked', count: 'notChecked' },
];

/** The live numbers; each opens the sum behind it. */
export function Ledger() {
  const ledger = useStore(selectLedger);
  const isBusy = useStore(isWorkingOut);
  const evaluation = useStore(selectEvaluation);
  const { design } = evaluation;
  const area_m2 = useMemo(() => areaOf(evaluation), [evaluation]);
  const { length, quantity } = useFigures();
  const { desk, store } = useActionContext();
  const bench = useDesk((state) => state.bench);
  const open = (figure: LedgerFigure) => (): void => desk.set({ bench: { kind: 'sum', figure } });
  const isOpen = (figure: LedgerFigure): boolean => bench.kind === 'sum' && bench.figure === figure;
  const { netVolume_m3, longestPath_m, pathLeft_m, elbowsLeft } = ledger;
  const cells: { readonly figure: LedgerFigure; readonly label: string; readonly value: string; readonly note?: string | undefined }[] = [
    { figure: 'volume', label: 'Net volume', value: netVolume_m3 === undefined ? 'not known' : quantity(netVolume_m3, 'volume') },
    { figure: 'area', label: 'Floor area', value: area_m2 === 0 ? 'none yet' : quantity(area_m2, 'area') },
    {
      figure: 'path',
      label: 'Longest path',
      value: longestPath_m === undefined ? 'none yet' : length(longestPath_m),
      note: longestPath_m === undefined ? undefined : pathLeft_m === undefined ? 'no limit' : pathLeft_m < 0 ? `${length(-pathLeft_m)} too long` : `${length(pathLeft_m)} left`,
    },
    { figure: 'elbows', label: 'Elbows left', value: elbowsLeft === undefined ? (longestPath_m === undefined ? 'none yet' : 'no limit') : elbowsLeft < 0 ? `${-elbowsLeft} too many` : String(elbowsLeft) },
    { figure: 'nozzles', label: 'Nozzles', value: String(ledger.nozzles) },
    { figure: 'cylinders', label: 'Cylinders', value: String(ledger.cylinders), note: ledger.cylinders === 0 ? undefined : ledger.fill },
  ];
  const { agent, oxygenHot_pct } = ledger;
  const sums: { readonly topic: CalculationTopic; readonly label: string; readonly value: string; readonly note?: string | undefined }[] = [
    {
      topic: 'agent',
      label: 'Agent needed / installed',
      value: agent ? `${quantity(agent.needed_kg, 'mass').replace(/ .*/, '')} / ${quantity(agent.installed_kg, 'mass')}` : 'not known',
      note: agent && agent.short > 0 ? (design.enclosures.length > 1 ? `${countOf(agent.short, 'room')} short` : 'too little') : undefined,
    },
    { topic: 'people', label: 'Oxygen, hottest', value: oxygenHot_pct === undefined ? 'not known' : `${oxygenHot_pct.toFixed(2)} %` },
  ];
  return (
    <section className="ledger" aria-label="Live figures" aria-busy={isBusy || evaluation.isStale}>
      {cells.map(({ figure, ...cell }) => (
        <Cell key={figure} id={figure} {...cell} isOpen={isOpen(figure)} onOpen={open(figure)} />
      ))}
      {sums.map(({ topic, ...cell }) => (
        <Cell key={topic} id={topic} {...cell} isOpen={bench.kind === 'sums' && bench.topic === topic} onOpen={() => desk.set({ bench: { kind: 'sums', topic } })} />
      ))}
      <span className="ledger-gap" />
      {VERDICT_CELLS.map(({ verdict, label, count }) => (
        <Cell
          key={verdict}
          id={verdict}
          label={label}
          value={
            <span className={ledger[count] > 0 ? `ledger-count is-${verdict}` : 'ledger-count'}>
              {ledger[count] > 0 ? <VerdictMark verdict={verdict} silent /> : null}
              {ledger[count]}
            </span>
          }
          onOpen={() => {
            desk.set({ bench: { kind: 'stage' } });
            store.session({ stage: 'proof' });
          }}
        />
      ))}
    </section>
  );
}
