import type { LogEntry, Settings } from '../model/plan.ts';
import { gaugeOf_Pa } from '../units/convert.ts';
import { formatQuantity } from '../units/quantity-text.ts';

/** Kinds of reading in the user's words. */
export const LOG_WORDS: Readonly<Record<LogEntry['kind'], string>> = {
  'pipe-test': 'Pressure lost in the pipe test',
  puff: 'Puff',
  oxygen: 'Oxygen in the room',
  insulation: 'Insulation',
  continuity: 'Continuity, far end joined',
  supervision: 'Supervision current',
  alarm: 'Current on the dummy load',
  live: 'Voltage on the dummy load',
  'panel-clear': 'Panel clear',
  dead: 'Voltage at the terminals, dead',
  pressure: 'Cylinder pressure',
  note: 'Note',
};

/** How the figure of a reading is typed and printed; a kind that is missing here is only looked at. */
export const LOG_QUANTITY: Readonly<Partial<Record<LogEntry['kind'], 'pressureLoss' | 'ratio' | 'insulation' | 'resistance' | 'current' | 'voltage' | 'gaugePressure'>>> = {
  'pipe-test': 'pressureLoss',
  oxygen: 'ratio',
  insulation: 'insulation',
  continuity: 'resistance',
  supervision: 'current',
  alarm: 'current',
  live: 'voltage',
  dead: 'voltage',
  pressure: 'gaugePressure',
};

/** A figure of the log as its field has it: gauges read over the air around, oxygen is a share. */
export const shownOf = (kind: LogEntry['kind'], value: number): number => (kind === 'pressure' ? gaugeOf_Pa(value) : kind === 'oxygen' ? value / 100 : value);

/** The figure of a reading with its unit: "1.52 A", "4,160 psi gauge at 59.0 °F"; what was only looked at says how it turned out. */
export function readingText({ kind, value, isGood, temperature_K }: Pick<LogEntry, 'kind' | 'value' | 'isGood' | 'temperature_K'>, lengths: Settings['lengths']): string {
  const quantity = LOG_QUANTITY[kind];
  const figure = value === null || !quantity ? '' : formatQuantity(shownOf(kind, value), quantity, lengths);
  const warmth = temperature_K === null ? '' : ` at ${formatQuantity(temperature_K, 'temperature', lengths)}`;
  const said = isGood === null ? '' : isGood ? 'good' : 'NOT GOOD';
  return [figure === '' ? '' : `${figure}${warmth}`, said].filter(Boolean).join(', ');
}
