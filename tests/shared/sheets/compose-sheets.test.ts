import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { newPlan } from '#shared/model/plan';
import { blankProfile } from '#shared/profile/unit-profile';
import { SAMPLE_STAMP, sheetLayout } from '#shared/sheets/frame';
import { nozzlePlaces } from '#shared/sheets/schedules';
import type { PaperId } from '#shared/model/paper-ids';
import type { Mark, Sheet } from '#shared/sheets/sheet';
import { boxHolds, markBox } from '#shared/sheets/text-box';
import { heightText } from '#shared/sheets/sheet-text';
import { typeSizesOf } from '#shared/paper/type-sizes';
import { formatLength } from '#shared/units/length-text';
import { DEMO_NAMES, buildDemo } from '../../../src-main/demos/build-demo.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { allMarks, composedDemo, demoSheets, isStamp, sheetsOf, textsOf, wordsOf } from '../../support/sheet-set.ts';
import { textOverlaps } from '../../support/text-overlaps.ts';

const PAPER_CHOICES: readonly PaperId[] = ['A4', 'A3', 'ANSI-B', 'ANSI-D', 'ARCH-D'];

/** Marks that leave the paper, and texts that leave the frame. */
function fallen(sheet: Sheet): string[] {
  const { width_mm: right, height_mm: bottom } = sheet.paper;
  const { frame } = sheetLayout(sheet.paper);
  return sheet.marks.flatMap((mark) => {
    const box = markBox(mark);
    const isIn = mark.kind === 'text' ? boxHolds(frame, box) : boxHolds({ left: 0, top: 0, right, bottom }, box);
    return isIn ? [] : [`${sheet.number}: ${mark.kind} ${mark.kind === 'text' ? mark.text : ''} ${JSON.stringify(box)}`];
  });
}

const numbersOf = (mark: Mark): number[] =>
  Object.values(mark).flatMap((value): number[] => {
    if (typeof value === 'number') return [value];
    if (value instanceof Float64Array) return [...value];
    return Array.isArray(value) ? value.flat().filter((item): item is number => typeof item === 'number') : [];
  });

/** Everything that must hold of any sheet. */
function expectSound(sheets: readonly Sheet[]): void {
  for (const sheet of sheets) {
    expect(textOverlaps(textsOf(sheet)), sheet.number).toEqual([]);
    expect(fallen(sheet)).toEqual([]);
    const { note_mm } = typeSizesOf(sheet.paper);
    const isWrong = ({ text, height_mm }: { text: string; height_mm: number }): boolean =>
      height_mm < note_mm || text.trim() === '' || /undefined|NaN|null|Infinity|\[object/.test(text);
    expect(textsOf(sheet).filter(isWrong)).toEqual([]);
    expect(allMarks(sheet.marks).filter((mark) => numbersOf(mark).some((value) => !Number.isFinite(value)))).toEqual([]);
  }
}

describe.each(DEMO_NAMES)('sheets of %s', (name) => {
  test.each(PAPER_CHOICES)('on %s nothing overlaps, falls off, is too small or is not a number', async (paper) => {
    expectSound(await composedDemo(name, { paper }));
  });

  test('so it is for the field set and for a scale of the user', async () => {
    expectSound(await demoSheets(name, { paper: 'ANSI-B', set: 'field' }));
    expectSound(await demoSheets(name, { paper: 'A3', scale: 50 }));
    expectSound(await demoSheets(name, { paper: 'A4', scale: 20 }));
  });

  test('the same plan gives the same sheets', async () => {
    expect(JSON.stringify(await demoSheets(name))).toBe(JSON.stringify(await composedDemo(name)));
  });

  test('every label of the plan found room on the papers it is meant for', async () => {
    for (const paper of ['A3', 'ANSI-B', 'ANSI-D', 'ARCH-D'] as const) {
      for (const sheet of await composedDemo(name, { paper })) expect(wordsOf(sheet).join('\n')).not.toContain('had no room');
    }
  });

  test('plan and schedule give one and the same figure for each nozzle', async () => {
    const { plan } = await buildDemo(name);
    const sheets = await composedDemo(name, { paper: 'ANSI-B' });
    const words = sheets.map(wordsOf);
    for (const { nozzle, fromFaces_m } of nozzlePlaces(derivePlan(plan))) {
      const { at } = nozzle;
      if (!at || !fromFaces_m) throw new Error('A demo nozzle always has its datum.');
      const [shortName = ''] = nozzle.nozzle.name.split('-').slice(-1);
      for (const distance of fromFaces_m) {
        const length = formatLength(distance, 'feet');
        const isNamed = (text: string): boolean => text.endsWith(`: ${length}`) && text.slice(0, text.indexOf(':')).includes(shortName);
        expect(words.some((sheet) => sheet.some(isNamed)), `${nozzle.nozzle.name} ${length} on a plan`).toBe(true);
        expect(words.some((sheet) => sheet.includes(nozzle.nozzle.name) && sheet.some((text) => text.includes(`face ${length}`))), `${nozzle.nozzle.name} ${length} in the schedule`).toBe(true);
      }
      expect(words.some((sheet) => sheet.includes(`orifice ${heightText(at.z, 'feet')}`))).toBe(true);
    }
  });

  test('every sheet is stamped, numbered, and says what stands above it', async () => {
    const sheets = await composedDemo(name);
    sheets.forEach((sheet, i) => {
      const words = wordsOf(sheet);
      expect(allMarks(sheet.marks).some(isStamp)).toBe(true);
      expect(words.join(' ')).toContain(SAMPLE_STAMP);
      expect(words.join(' ')).toContain('stand above this sheet');
      expect(words).toContain(sheet.number);
      expect(words).toContain(`${i + 1} of ${sheets.length}`);
    });
  });
});

describe('what is on the sheets', () => {
  const hut = () =>
    planBuilder('metric')
      .room(5, 4, 2.6, { x: 0, y: 0 })
      .network()
      .cylinder(0.2, 2, Math.PI)
      .run([place3(0.2, 2, 2), place3(0.2, 2, 2.5), place3(3, 2, 2.5), place3(3, 2, 2.3)])
      .nozzle(3, 2, 2.3);

  test('a metric plan goes on metric paper at a metric scale', () => {
    const sheet = sheetsOf(hut().plan).find(({ title }) => title.startsWith('Nozzle and pipe plan'));
    expect(sheet?.paper.id).toBe('A3');
    expect(wordsOf(sheet ?? { marks: [] })).toEqual(expect.arrayContaining(['1:20', 'N1: 3.000 m', 'N1: 2.000 m', '5.000 m', '4.000 m']));
  });

  test('a plan of one’s own profile carries no stamp, one that lost its profile says so', () => {
    const own = hut().plan;
    own.profiles = { mine: blankProfile('mine', 'Own unit') };
    for (const network of Object.values(own.networks)) network.profile = 'mine';
    for (const sheet of sheetsOf(own)) expect(allMarks(sheet.marks).some(isStamp)).toBe(false);
    expect(sheetsOf(own).flatMap(wordsOf)).toContain('BLANK');
    const lost = hut().plan;
    lost.profiles = {};
    for (const sheet of sheetsOf(lost)) expect(wordsOf(sheet).join(' ')).toContain('UNIT PROFILE MISSING');
  });

  test('without a network the sample profile still stamps the sheet', () => {
    const sheets = sheetsOf(planBuilder().room(5, 4, 2.6).plan);
    expect(sheets.every((sheet) => allMarks(sheet.marks).some(isStamp))).toBe(true);
  });

  test('an imported floor plan that could not be read is not passed over in silence', () => {
    expect(sheetsOf(hut().underlay().plan).flatMap(wordsOf).join(' ')).toContain('IMPORTED FLOOR PLAN NOT PRINTED');
  });

  test('a set begins with its cover, whose index names every sheet; each series counts its own', () => {
    const sheets = sheetsOf(hut().plan);
    const cover = sheets.filter(({ number }) => number.startsWith('NW-00.')).flatMap(wordsOf);
    expect(sheets[0]?.number).toBe('NW-00.1');
    expect(cover).toEqual(expect.arrayContaining(['Scope of the work', 'Index of sheets', 'Codes and basis of design', 'Design at a glance', 'Who is responsible for what', 'Cautions', 'Abbreviations']));
    for (const { number } of sheets) expect(cover, number).toContain(number);
    expect(new Set(sheets.map(({ number }) => number)).size).toBe(sheets.length);
    const series = sheets.map(({ number }) => Number(number.slice(3, 5)));
    expect(series).toEqual([...series].sort((a, b) => a - b));
    expect([...new Set(series)]).toEqual([0, 2, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
  });

  test('a sheet more in one series leaves the numbers of the others as they are; a field sheet bears none of them', () => {
    const built = hut();
    const before = sheetsOf(built.plan);
    built.plan.info = { ...built.plan.info, notes: 'word '.repeat(3000) };
    const after = sheetsOf(built.plan);
    expect(after.length).toBeGreaterThan(before.length);
    const others = (sheets: readonly Sheet[]): string[] => sheets.filter(({ number }) => !number.startsWith('NW-00.')).map(({ number, title }) => `${number} ${title}`);
    expect(others(after)).toEqual(others(before));
    const field = sheetsOf(built.plan, { set: 'field' }).map(({ number }) => number);
    expect(field.filter((number) => after.some((sheet) => sheet.number === number))).toEqual([]);
  });

  test('an empty plan still gives a sheet', () => {
    const sheets = sheetsOf(newPlan('metric'));
    expect(sheets.length).toBeGreaterThan(0);
    expectSound(sheets);
  });

  test('notes, revisions and a job of any length are printed in full', () => {
    const built = hut();
    const long = 'word '.repeat(1500).trim();
    built.plan.info = {
      ...built.plan.info,
      project: 'A project with a name that is far too long for the title block of any paper '.repeat(2).slice(0, 200),
      notes: `${long}\n\nlast line`,
      revisions: Array.from({ length: 9 }, (_, i) => ({ mark: String.fromCharCode(65 + i), date: '2026-01-01', text: `${long} ${i}` })),
    };
    const sheets = sheetsOf(built.plan, { paper: 'A4' });
    expectSound(sheets);
    const all = sheets.flatMap(wordsOf).join(' ');
    expect(all).toContain('last line');
    expect(all.match(/\bword\b/g)?.length).toBeGreaterThanOrEqual(1500 * 10);
    expect(all).toContain('(continued)');
  });

  test('names as long as a plan may hold them spoil no sheet', () => {
    for (const name of ['x'.repeat(200), 'long words '.repeat(18).trim()]) {
      const built = planBuilder('feet').room(5, 4, 2.6, { x: 0, y: 0 }, { name }).room(5, 4, 2.6, { x: 6, y: 0 }, { name });
      built.obstruction('rack', [{ x: 1, y: 1 }, { x: 2, y: 1 }, { x: 2, y: 2 }], 0, 2, { name }).opening(0, 2, 0.9, { name });
      for (const x of [3, 9]) built.network({ name }).run([place3(x, 1, 2), place3(x, 1, 2.5), place3(x, 3, 2.5), place3(x, 3, 2.3)]).nozzle(x, 3, 2.3, [0], { name });
      for (const level of Object.values(built.plan.levels)) level.name = name;
      built.plan.info = { ...built.plan.info, project: name, client: name, site: name, code: name, edition: name, drawnBy: name, sheetPrefix: name };
      for (const paper of ['A4', 'ANSI-D'] as const) for (const set of ['submittal', 'field'] as const) expectSound(sheetsOf(built.plan, { paper, set }));
    }
  });

  test('signs that the font lacks, line breaks and direction marks do no harm', () => {
    const built = hut().note(2, 3, 'first\nsecond \u202e図');
    built.plan.info = { ...built.plan.info, client: 'Zażółć \u0000 漢字\ttab' };
    const sheets = sheetsOf(built.plan);
    expectSound(sheets);
    expect(sheets.flatMap(wordsOf)).toEqual(expect.arrayContaining(['first', 'second □', 'Zażółć □□ tab']));
  });

  test('a level too large for the paper is parted with match lines, and no nozzle is lost', () => {
    const built = planBuilder().room(120, 70, 4).network().run([place3(1, 1, 3), place3(110, 1, 3)]);
    for (const [x, y] of [[20, 20], [60, 35], [110, 60]] as const) built.nozzle(x, y, 3.8);
    const sheets = sheetsOf(built.plan, { paper: 'A3' });
    expectSound(sheets);
    const plans = sheets.filter(({ title }) => title.startsWith('Nozzle and pipe plan'));
    expect(plans.length).toBeGreaterThan(1);
    for (const nozzle of ['N1', 'N2', 'N3']) expect(plans.filter((sheet) => wordsOf(sheet).includes(nozzle)).length, nozzle).toBe(1);
    expect(plans.flatMap(wordsOf)).toEqual(expect.arrayContaining(['110.000 m from west face', '60.000 m from south face']));
  });

  test('a slip of the scale, or things strewn far apart, end in readable sheets and not in thousands', () => {
    const slip = sheetsOf(hut().plan, { paper: 'A3', scale: 1 });
    // 40 parts at most, the rest of a set, and on A3 a further cover sheet for the full stamp box.
    expect(slip.length).toBeLessThanOrEqual(60);
    expect(slip.flatMap(wordsOf).join(' ')).toContain('would need more than 40 sheets');
    expectSound(slip);
    const strewn = hut().room(90_000, 3, 2.5, { x: -90_000, y: 80_000 }).plan;
    const sheets = sheetsOf(strewn, { paper: 'A3' });
    expect(sheets.length).toBeLessThanOrEqual(60);
    expectSound(sheets);
  });

  test('a void with nozzles has a plan of its own', async () => {
    const titles = (await composedDemo('F2')).map(({ title }) => title);
    expect(titles.filter((title) => title.includes('under the floor'))).toHaveLength(1);
  });

  test('the field set has fields to write in and no findings', async () => {
    const words = (await demoSheets('F1', { set: 'field' })).flatMap(wordsOf);
    expect(words).toEqual(expect.arrayContaining(['Field verification', 'N1 a', 'Hold points', 'H12']));
    expect(words).not.toContain('Findings');
  });

  test('whatever room is drawn, its sheets are sound', () => {
    const length = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(length(1, 40), length(1, 30), length(0, 1), length(0, 1), fc.constantFrom(...PAPER_CHOICES), fc.constantFrom('feet' as const, 'metric' as const), length(-0.7, 0.7), (width, depth, u, v, paper, lengths, turn) => {
        const turned = ([x, y]: readonly [number, number]) => ({ x: x * Math.cos(turn) - y * Math.sin(turn), y: x * Math.sin(turn) + y * Math.cos(turn) });
        const corners = ([[0, 0], [width, 0], [width, depth], [0, depth]] as const).map(turned);
        const at = turned([width * u, depth * v]);
        const built = planBuilder(lengths).outline(corners, 2.5).opening(0, width / 2, 0.9).network().cylinder(at.x, at.y, turn);
        built.run([place3(at.x, at.y, 1.7), place3(at.x, at.y, 2.3), place3(0.3, 0.2, 2.3), place3(0.3, 0.2, 2.2)]).nozzle(0.3, 0.2, 2.2);
        expectSound(sheetsOf(built.plan, { paper }));
      }),
      { numRuns: 25 },
    );
  });
});
