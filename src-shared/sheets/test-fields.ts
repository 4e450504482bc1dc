import type { LogEntry, Settings } from '../model/plan.ts';
import { LOG_QUANTITY } from '../site/log-words.ts';
import { formatQuantity } from '../units/quantity-text.ts';
import type { Cell } from './tables.ts';

/** Cells of a test form that are filled in on a screen. They are a record on paper: reading a form back takes dimensions and hold points only. */
export type TestCell = 'read' | 'start' | 'start-time' | 'end' | 'end-time' | 'meter' | 'by' | 'when' | 'witness' | 'empty' | 'gas' | 'oxygen' | 'mains' | 'battery' | 'rest' | 'done-on' | 'gauge' | 'temperature' | 'corrected' | 'answer';

/** Name of a field of a test form. Forms take a dot as a step down, so that keys with dots are written otherwise; no dimension or hold point has such a name. */
export const testFieldName = (test: string, about: string, cell: TestCell): string => `${`${test}/${about}`.replaceAll('.', '~').replaceAll('#', '~')}@${cell}`;

/** A field for words or a figure. @param tooltip  what is written, with its unit */
export const testText = (test: string, about: string, cell: TestCell, tooltip: string): Cell => ({ kind: 'field', form: { name: testFieldName(test, about, cell), kind: 'text', tooltip, value: '' } });

/** A box to be ticked. @param tooltip  what a tick says */
export const testTick = (test: string, about: string, cell: TestCell, tooltip: string): Cell => ({ kind: 'field', form: { name: testFieldName(test, about, cell), kind: 'tick', tooltip, value: '' } });

/** Words that stand recorded, else the field for them. */
export const recordedOr = (words: string | undefined, field: Cell): Cell => (words ? words : field);

/** The field for the initials of who did a test. */
export const byField = (test: string, about: string, what: string): Cell => testText(test, about, 'by', `${what}: initials of who did it`);
/** The field for the day and time of a test. */
export const whenField = (test: string, about: string, what: string): Cell => testText(test, about, 'when', `${what}: date and time, such as 2026-03-04 15:20`);
/** The field for the initials of who saw a test. */
export const witnessField = (test: string, about: string, what: string): Cell => testText(test, about, 'witness', `${what}: initials of who saw it`);

type Quantity = NonNullable<(typeof LOG_QUANTITY)[LogEntry['kind']]>;

/** Figures that show the unit of a reading [SI]; they are examples, never limits. */
const EXAMPLES: Readonly<Record<Quantity, number>> = { pressureLoss: 20_000, ratio: 0.209, insulation: 20e6, resistance: 1.2, current: 0.15, voltage: 20, gaugePressure: 20e6 };

/** How a figure of a kind is written, with its unit: "such as 20.0 V". */
export const unitExample = (quantity: Quantity, lengths: Settings['lengths']): string => `with its unit, such as ${formatQuantity(EXAMPLES[quantity], quantity, lengths)}`;

/** How a reading is written; one that is only looked at is good or not. */
export function readingExample(kind: LogEntry['kind'], lengths: Settings['lengths']): string {
  const quantity = LOG_QUANTITY[kind];
  return quantity ? unitExample(quantity, lengths) : 'good or not good';
}
