import type { Settings } from '../model/plan.ts';
import type { HoldPointState } from '../site/arming-order.ts';
import type { JudgedReading } from '../site/judge-reading.ts';
import { LOG_WORDS, readingText } from '../site/log-words.ts';
import { PIPE_TEST_LOSS_Pa, PIPE_TEST_Pa } from '../site/reading-needs.ts';
import { formatQuantity } from '../units/quantity-text.ts';
import { FIELD_ROW_mm } from './cautions.ts';
import type { Cell, Column, Table } from './tables.ts';
import { byField, readingExample, recordedOr, testText, testTick, unitExample, whenField, witnessField } from './test-fields.ts';

const SIGNED: readonly Column[] = [{ head: 'By', least_mm: 24 }, { head: 'Date and time', least_mm: 28 }];

const readingsOf = (order: readonly HoldPointState[], point: string, isWanted: (reading: JudgedReading) => boolean): JudgedReading[] => order.filter((each) => each.point.id === point).flatMap(({ readings }) => readings).filter(isWanted);

/** What was read, and its answer in words where it was not as asked: a reader must not have to find that out. */
function readCell({ entry, verdict }: JudgedReading, lengths: Settings['lengths'], blank: Cell): Cell {
  if (!entry) return blank;
  const read = readingText(entry, lengths);
  return verdict === 'stop' ? { kind: 'bold', words: `${read}: NOT AS ASKED` } : verdict === 'not-checked' ? `${read}: not checked` : read;
}

/** Where the fields of a reading belong, and how they call it. */
const keyOf = ({ need: { point, kind, about } }: JudgedReading): readonly [test: string, about: string] => [`${point}/${kind}`, about || 'all'];
const whatOf = ({ need: { name, kind } }: JudgedReading): string => `${name}, ${LOG_WORDS[kind].toLowerCase()}`;

const signed = (reading: JudgedReading): Cell[] => [recordedOr(reading.entry?.by, byField(...keyOf(reading), whatOf(reading))), recordedOr(reading.entry?.at, whenField(...keyOf(reading), whatOf(reading)))];
const meter = (reading: JudgedReading, word: string): Cell => recordedOr(reading.entry?.instrument, testText(...keyOf(reading), 'meter', `${whatOf(reading)}: ${word}, with its number`));

/** A name where another one than in the row before stands. */
const onlyOnce = (readings: readonly JudgedReading[], i: number): string => (readings[i - 1]?.need.name === readings[i]?.need.name ? '' : (readings[i]?.need.name ?? ''));

function readingTable(title: string, note: string, readings: readonly JudgedReading[], lengths: Settings['lengths']): Table {
  return {
    title,
    note,
    columns: [{ head: 'Of', font: 'bold' }, { head: 'Reading', most_mm: 44 }, { head: 'Must be', isWide: true }, { head: 'Read', least_mm: 34, most_mm: 48 }, { head: 'Instrument', least_mm: 24 }, ...SIGNED],
    rows: readings.map((reading, i) => [onlyOnce(readings, i), LOG_WORDS[reading.need.kind], reading.need.asks, readCell(reading, lengths, testText(...keyOf(reading), 'read', `${whatOf(reading)}, must be ${reading.need.asks}: ${readingExample(reading.need.kind, lengths)}`)), meter(reading, 'instrument'), ...signed(reading)]),
    repeated: 1,
    rowHeight_mm: FIELD_ROW_mm,
    foot: [...new Set(readings.map(({ need: { kind, source } }) => `${LOG_WORDS[kind]}: ${source}.`))].map((words) => ({ kind: 'words' as const, words, isSmall: true })),
  };
}

function pipeTestTable(readings: readonly JudgedReading[], lengths: Settings['lengths']): Table {
  const [from, loss] = [PIPE_TEST_Pa, PIPE_TEST_LOSS_Pa].map((value) => formatQuantity(value, 'pressureLoss', lengths));
  return {
    title: 'Pneumatic test of the pipe (H5)',
    note: `Cylinders not connected, nozzle outlets closed, ${from} with a gauge that was checked, source shut off, 10 min. It passes with no more than ${loss} lost. Nobody stands in line with an end of the pipe.`,
    columns: [{ head: 'Network', font: 'bold', isWide: true }, { head: 'At the start', least_mm: 26 }, { head: 'Time', least_mm: 18 }, { head: 'At the end', least_mm: 26 }, { head: 'Time', least_mm: 18 }, { head: 'Lost', least_mm: 26, most_mm: 44 }, { head: 'Gauge', least_mm: 24 }, ...SIGNED, { head: 'Witness', least_mm: 24 }],
    rows: readings.map((reading): Cell[] => {
      const [key, what] = [keyOf(reading), whatOf(reading)];
      const pressure = (cell: 'start' | 'end', words: string): Cell => testText(...key, cell, `${what}: gauge ${words}, ${unitExample('pressureLoss', lengths)}`);
      const time = (cell: 'start-time' | 'end-time', words: string): Cell => testText(...key, cell, `${what}: time ${words}, such as 15:20`);
      const lost = testText(...key, 'read', `${what}: pressure lost, at most ${loss}, ${unitExample('pressureLoss', lengths)}`);
      return [reading.need.name, pressure('start', 'at the start'), time('start-time', 'at the start'), pressure('end', 'at the end'), time('end-time', 'at the end'), readCell(reading, lengths, lost), meter(reading, 'gauge'), ...signed(reading), witnessField(...key, what)];
    }),
    rowHeight_mm: FIELD_ROW_mm,
    foot: readings.slice(0, 1).map(({ need }) => ({ kind: 'words' as const, words: `Source: ${need.source}.`, isSmall: true })),
  };
}

function puffTable(readings: readonly JudgedReading[], lengths: Settings['lengths']): Table {
  return {
    title: 'Puff test (H5)',
    note: 'Nitrogen through each nozzle, from the far end of the pipe. Nobody in the room; oxygen is read before anybody goes in again.',
    columns: [{ head: 'Nozzle', font: 'bold', isWide: true }, { head: 'Room is empty', least_mm: 24 }, { head: 'Gas from every hole', least_mm: 32 }, { head: 'Oxygen after it', least_mm: 26 }, ...SIGNED, { head: 'Witness', least_mm: 24 }],
    rows: readings.map((reading): Cell[] => {
      const [key, what] = [keyOf(reading), whatOf(reading)];
      return [
        reading.need.name,
        testTick(...key, 'empty', `${what}: tick it when nobody is in the room`),
        readCell(reading, lengths, testTick(...key, 'gas', `${what}: tick it when gas comes out of every hole`)),
        testText(...key, 'oxygen', `${what}: oxygen after it, ${unitExample('ratio', lengths)}`),
        ...signed(reading),
        witnessField(...key, what),
      ];
    }),
    rowHeight_mm: FIELD_ROW_mm,
    foot: [{ kind: 'words', words: 'Source: NFPA 2001, memory. Air with less than 19.5 % oxygen is not entered: 29 CFR 1910.134.', isSmall: true }],
  };
}

/** Forms for everything that is read before the unit is armed, with what was read already. Tables without rows are left out. */
export function readingTables(order: readonly HoldPointState[], lengths: Settings['lengths']): Table[] {
  const tables = [
    pipeTestTable(readingsOf(order, 'H5', ({ need }) => need.kind === 'pipe-test'), lengths),
    puffTable(readingsOf(order, 'H5', ({ need }) => need.kind === 'puff'), lengths),
    readingTable('Releasing circuits on a dummy load (H9)', 'The actuator stays off its valve. Insulation and continuity with panel and devices taken off and the circuit dead; then supervision; then current and voltage with the dummy load.', readingsOf(order, 'H9', () => true), lengths),
    readingTable('Before the last connection (H12)', 'In this order: panel clear, meter proved on live terminals, terminals proved dead, pressures read, actuator last. Lock the release out while anybody works in the room.', readingsOf(order, 'H12', () => true), lengths),
  ];
  return tables.filter(({ rows }) => rows.length > 0);
}
