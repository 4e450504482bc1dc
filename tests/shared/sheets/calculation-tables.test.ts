import { describe, expect, test } from 'vitest';
import { workedDischarge } from '#shared/calculations/discharge/worked-discharge';
import { PRELIMINARY } from '#shared/calculations/lines/calculation';
import { calculationsOf } from '#shared/calculations/lines/calculations-of';
import { evaluate } from '#shared/evaluate';
import { calculationBlocks } from '#shared/sheets/calculation-tables';
import { composeSheets } from '#shared/sheets/compose-sheets';
import { sheetLayout } from '#shared/sheets/frame';
import { PAPERS } from '#shared/paper/papers';
import type { PaperId } from '#shared/model/paper-ids';
import type { Sheet } from '#shared/sheets/sheet';
import { boxHolds, markBox } from '#shared/sheets/text-box';
import { type DemoName, buildDemo } from '../../../src-main/demos/build-demo.ts';
import { at3, layout } from '../../support/layout.ts';
import { textOverlaps } from '../../support/text-overlaps.ts';

const evaluated = async (name: DemoName, lengths: 'feet' | 'metric' = 'feet') => {
  const plan = structuredClone((await buildDemo(name)).plan);
  plan.settings.lengths = lengths;
  return evaluate(plan, workedDischarge());
};
const titles = ['Agent quantity', 'People and oxygen', 'Discharge', 'Filling of the room', 'Relief vent', 'Hold time', 'Strength of pipe', 'Supports, thrust', 'Pressure supervision', 'Releasing circuit'];
const wordsOf = ({ marks }: Sheet): string[] => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));

describe('calculation sheets', () => {
  test.each<[DemoName, PaperId, 'feet' | 'metric']>([
    ['F1', 'A3', 'metric'],
    ['F1', 'A4', 'feet'],
    ['F2', 'ANSI-B', 'feet'],
    ['F2', 'ANSI-D', 'feet'],
    ['F3', 'A2', 'metric'],
  ])('%s on %s in %s: texts keep clear of each other and inside the frame', async (name, paper, lengths) => {
    const sheets = composeSheets(await evaluated(name, lengths), new Map(), { paper, scale: 'auto', set: 'submittal', printedAt: '2026-03-04 15:20' });
    const calculations = sheets.filter(({ number }) => /-(?:07|09)\./.test(number));
    const { area } = sheetLayout(PAPERS[paper]);
    const room = { left: area.left - 1, top: area.top - 1, right: area.right + 1, bottom: area.bottom + 1 };
    for (const sheet of calculations) {
      const inArea = sheet.marks.filter((mark) => mark.kind === 'text' && mark.x < area.right && !mark.rotation_rad);
      expect(textOverlaps(inArea), sheet.number).toEqual([]);
      for (const mark of inArea) expect(boxHolds(room, markBox(mark)), JSON.stringify(mark)).toBe(true);
    }
    const all = calculations.flatMap(wordsOf).join('\n');
    for (const title of titles) expect(all).toContain(title);
    expect(all).not.toContain('□');
  });

  test('every calculation ends with what stands above it, its cautions and its sources, each printed once', async () => {
    const evaluation = await evaluated('F3');
    const blocks = calculationBlocks(evaluation, sheetLayout(PAPERS['ANSI-B']));
    const printed = blocks.map(({ table }) => (table.foot ?? []).flatMap((foot) => (foot.kind === 'words' ? [foot.words] : [])));
    for (const words of printed) expect(words).toContain(PRELIMINARY);
    const all = printed.flat();
    for (const { cautions } of calculationsOf(evaluation)) for (const caution of cautions) expect(all).toContain(`Caution: ${caution}`);
    const agent = blocks.flatMap(({ table }, i) => (table.title.startsWith('Agent quantity') ? (printed[i] ?? []) : []));
    const notes = agent.filter((words) => words.startsWith('Note'));
    expect(new Set(notes).size).toBe(notes.length);
    expect(notes.map((words) => /^Note (\d+):/.exec(words)?.[1])).toEqual(notes.map((_, i) => String(i + 1)));
  });

  test('a source that is named by its number is under the table or an earlier one of its title', async () => {
    const known = new Map<string, Set<string>>();
    for (const { table } of calculationBlocks(await evaluated('F3'), sheetLayout(PAPERS.A3))) {
      const own = known.get(table.shortTitle ?? '') ?? new Set<string>();
      known.set(table.shortTitle ?? '', own);
      for (const foot of table.foot ?? []) if (foot.kind === 'words') own.add(/^Note \d+/.exec(foot.words)?.[0].toLowerCase() ?? '');
      for (const row of table.rows) {
        const source = row.at(-1);
        if (typeof source === 'string' && source.startsWith('note ')) expect([...own], table.title).toContain(source);
      }
    }
  });

  test('units that are all alike are printed once with all their names', async () => {
    const blocks = calculationBlocks(await evaluated('F3'), sheetLayout(PAPERS.A3));
    const supervision = blocks.filter(({ table }) => table.title.startsWith('Pressure supervision'));
    expect(supervision.map(({ table }) => table.title)).toEqual(['Pressure supervision: Network 201, Network 202, Network 203, Network 204, Network 205, Network 206']);
  });

  test('a plan of which little is known prints why, and no chart', () => {
    const bare = evaluate(layout({ height_m: null, nozzles: [{ at: at3(3, 2, 2.5) }], runs: [{ places: [at3(0.2, 2, 2.5), at3(3, 2, 2.5)] }] }), workedDischarge());
    const blocks = calculationBlocks(bare, sheetLayout(PAPERS.A3));
    const agent = blocks.find(({ table }) => table.title.startsWith('Agent quantity'));
    expect(agent?.table.foot?.some((foot) => foot.kind === 'drawings')).toBe(false);
    expect(agent?.table.foot).toContainEqual({ kind: 'words', words: 'Not worked out (net volume, mass of agent, volumes that full cylinders fit): the height of “Room” is not known.', isStrong: true });
    const sheets = composeSheets(bare, new Map(), { paper: 'A3', scale: 'auto', set: 'submittal', printedAt: '' });
    expect(sheets.flatMap(wordsOf).join(' ')).toContain('the height of “Room” is not known.');
  });

  test('where the air is thinner the least oxygen on the chart is that of the place', async () => {
    const plan = structuredClone((await buildDemo('F1')).plan);
    for (const level of Object.values(plan.levels)) for (const room of Object.values(level.enclosures)) room.altitude_m = 1500;
    const sheets = composeSheets(evaluate(plan, workedDischarge()), new Map(), { paper: 'A3', scale: 'auto', set: 'submittal', printedAt: '' });
    // 12 % as at sea level over 0.83 of its pressure, ISO 14520-1 table (memory).
    expect(sheets.flatMap(wordsOf)).toContain('least for people: 14.46 %');
  });

  test('the field set has none: a fitter measures, he does not reckon', async () => {
    const sheets = composeSheets(await evaluated('F1'), new Map(), { paper: 'A3', scale: 'auto', set: 'field', printedAt: '' });
    expect(sheets.flatMap(wordsOf).join('\n')).not.toContain('Agent quantity');
  });
});
