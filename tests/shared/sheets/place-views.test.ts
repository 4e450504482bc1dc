import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { addSheetNote } from '#shared/commands/add-sheet-note';
import { editInfo } from '#shared/commands/edit-info';
import { editSheetNote } from '#shared/commands/edit-sheet-note';
import { editTitleBlock } from '#shared/commands/edit-title-block';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { placeView } from '#shared/commands/place-view';
import { removeSheetNote } from '#shared/commands/remove-sheet-note';
import { resetView } from '#shared/commands/reset-view';
import type { Plan } from '#shared/model/plan';
import type { Sheet, SheetView } from '#shared/sheets/sheet';
import { type DemoName, buildDemo } from '../../../src-main/demos/build-demo.ts';
import '../../support/property-seed.ts';
import { allMarks, sheetsOf, wordsOf } from '../../support/sheet-set.ts';
import { done, refusal } from '../../support/try-command.ts';

let plan: Plan;
let usual: Sheet[];
const DEMO: DemoName = 'F1';

/** A view and its sheet by the beginning of its key. */
function found(sheets: readonly Sheet[], begins: string): { readonly sheet: Sheet; readonly view: SheetView } {
  for (const sheet of sheets) {
    const view = sheet.views.find(({ key }) => key.startsWith(begins));
    if (view) return { sheet, view };
  }
  throw new Error(`No view ${begins}.`);
}
const remarksOf = (sheets: readonly Sheet[]): string[] => sheets.flatMap(({ placing }) => placing);

beforeAll(async () => {
  plan = (await buildDemo(DEMO)).plan;
  usual = sheetsOf(plan, { paper: 'ANSI-D' });
});

describe('views of the sheets', () => {
  test('have keys of their own, and boxes on their paper', () => {
    const views = usual.flatMap(({ views: own }) => own);
    expect(views.length).toBeGreaterThan(2);
    expect(new Set(views.map(({ key }) => key)).size).toBe(views.length);
    for (const { paper, views: own } of usual) for (const { box } of own) expect(box.left > 0 && box.top > 0 && box.right < paper.width_mm && box.bottom < paper.height_mm).toBe(true);
    expect(remarksOf(usual)).toEqual([]);
  });

  test('a placed view stands at its place and at its scale, and reset gives it back', () => {
    const { view } = found(usual, 'plan/');
    const at = { x_mm: view.corner.x_mm + 41, y_mm: view.corner.y_mm + 33 };
    const next = done(plan, placeView(view.key, { at, scale: 48 })).next;
    const after = found(sheetsOf(next, { paper: 'ANSI-D' }), view.key).view;
    expect(after.scale).toBe(48);
    expect(after.corner.x_mm).toBeCloseTo(at.x_mm, 9);
    expect(after.corner.y_mm).toBeCloseTo(at.y_mm, 9);
    const back = sheetsOf(done(next, resetView(view.key)).next, { paper: 'ANSI-D' });
    expect(back).toEqual(usual);
    expect(refusal(plan, resetView(view.key))).toContain('already');
  });

  test('the scale is true: the shown part is as large on paper as it says', () => {
    const { view } = found(usual, 'plan/');
    const { shown } = view;
    if (!shown) throw new Error('A plan shows a part of the site.');
    const crop = { least: { x: shown.minX, y: shown.minY }, most: { x: shown.minX + 2, y: shown.maxY } };
    const sheet = found(sheetsOf(done(plan, placeView(view.key, { crop, scale: 24 })).next, { paper: 'ANSI-D' }), view.key).sheet;
    // 2 m at 1:24, reckoned here: 83.33 mm.
    expect(allMarks(sheet.marks).some((mark) => mark.kind === 'clip' && Math.abs(mark.width_mm - 2000 / 24) < 1e-6)).toBe(true);
    expect(refusal(plan, placeView(view.key, { crop: { least: { x: 0, y: 0 }, most: { x: 0.05, y: 3 } } }))).toContain('too small');
  });

  test('what does not fit falls back, and says so', () => {
    const { view } = found(usual, 'plan/');
    const tooLarge = sheetsOf(done(plan, placeView(view.key, { scale: 2 })).next, { paper: 'ANSI-D' });
    expect(found(tooLarge, view.key).view).toEqual(view);
    expect(remarksOf(tooLarge).join()).toContain('larger than the paper');
    const over = sheetsOf(done(plan, placeView(view.key, { at: { x_mm: -40, y_mm: view.corner.y_mm } })).next, { paper: 'ANSI-D' });
    expect(found(over, view.key).view.box.left).toBeGreaterThan(20);
    expect(remarksOf(over).join()).toContain('moved in');
  });

  test('a view goes to another sheet, an empty sheet is left out, and a sheet that is gone is told', () => {
    const { sheet: home, view } = found(usual, 'elevation/');
    const target = found(usual, 'plan/').sheet;
    const next = sheetsOf(done(plan, placeView(view.key, { sheet: target.home })).next, { paper: 'ANSI-D' });
    expect(found(next, view.key).sheet.home).toBe(target.home);
    if (home.views.length === 1 && home.home !== target.home) expect(next.length).toBe(usual.length - 1);
    const lost = sheetsOf(done(plan, placeView(view.key, { sheet: 'No such sheet' })).next, { paper: 'ANSI-D' });
    expect(found(lost, view.key).sheet.home).toBe(home.home);
    expect(remarksOf(lost).join()).toContain('no longer in the set');
    const gone = sheetsOf(done(plan, placeView('section/nowhere', { scale: 50 })).next, { paper: 'ANSI-D' });
    expect(remarksOf(gone)).toEqual(['A view that was placed by hand is no longer in the set. It was left out.']);
  });

  test('a view over another one is told', () => {
    const { view } = found(usual, 'plan/');
    const other = usual.find(({ views }) => views.length > 1);
    const [a, b] = other?.views ?? [];
    if (!a || !b) return;
    const over = sheetsOf(done(plan, placeView(b.key, { at: a.corner })).next, { paper: 'ANSI-D' });
    expect(remarksOf(over).join()).toContain('lies over');
    expect(view.key).not.toBe('');
  });

  test('what the user placed stays where it is, whatever else is edited', () => {
    const { view } = found(usual, 'plan/');
    const at = { x_mm: view.corner.x_mm + 45, y_mm: view.corner.y_mm + 40 };
    const start = done(plan, placeView(view.key, { at, scale: 48 })).next;
    const refs = Object.values(start.networks).flatMap((network) => Object.keys(network.nozzles).map((id) => ({ kind: 'nozzle' as const, network: network.id, id })));
    fc.assert(
      fc.property(fc.nat(), fc.double({ min: -0.3, max: 0.3, noNaN: true }), fc.string({ maxLength: 40 }), (pick, by_m, notes) => {
        const ref = refs[pick % refs.length];
        const node = ref && start.networks[ref.network]?.nodes[start.networks[ref.network]?.nozzles[ref.id]?.node ?? ''];
        if (!ref || !node) return;
        const moved = moveNozzle(ref, { ...node.at, x: node.at.x + by_m })(start);
        const next = done(moved.ok ? moved.next : start, editInfo({ notes })).next;
        const { view: after } = found(sheetsOf(next, { paper: 'ANSI-D' }), view.key);
        expect([after.corner.x_mm, after.corner.y_mm].map((each) => Math.round(each * 1e6))).toEqual([at.x_mm, at.y_mm].map((each) => Math.round(each * 1e6)));
        expect(after.scale).toBe(48);
      }),
      { numRuns: 6 },
    );
  }, 60_000);
});

describe('what the user writes on sheets', () => {
  test('notes stand on their sheet only, are edited and removed', () => {
    const { sheet } = found(usual, 'plan/');
    const next = done(plan, addSheetNote(sheet.home, 60, 60, 50, 'Coordinate with the ceiling grid')).next;
    const with1 = sheetsOf(next, { paper: 'ANSI-D' });
    expect(with1.filter((each) => wordsOf(each).join(' ').includes('Coordinate with the')).map(({ home }) => home)).toEqual([sheet.home]);
    const id = Object.keys(next.settings.sheets.notes)[0] ?? '';
    const edited = done(next, editSheetNote(id, { text: 'Other words', x_mm: 70 })).next;
    expect(edited.settings.sheets.notes[id]).toMatchObject({ text: 'Other words', x_mm: 70, y_mm: 60 });
    expect(refusal(next, editSheetNote(id, { text: ' ' }))).toContain('needs a text');
    expect(refusal(plan, addSheetNote(sheet.home, 9000, 0, 50, 'far'))).toContain('stands on the paper');
    expect(done(edited, removeSheetNote(id)).next.settings.sheets.notes).toEqual({});
    expect(refusal(plan, removeSheetNote('x'))).toContain('no longer');
  });

  test('the head of the title column holds the user’s lines, and the stamp box is 4 × 6 in where the paper allows, else once on the cover', () => {
    const lines = [{ label: 'Job no.', value: '4711' }, { label: 'Phone', value: '555 0100' }];
    const next = done(plan, editTitleBlock({ titleBlock: { logo: null, lines } })).next;
    for (const sheet of sheetsOf(next, { paper: 'ARCH-D' })) expect(wordsOf(sheet)).toEqual(expect.arrayContaining(['Job no.', '4711', '555 0100']));
    const said = (paper: 'ARCH-D' | 'A4', own: Plan): string[] => sheetsOf(own, { paper }).flatMap(wordsOf).filter((words) => words.startsWith('Stamp and signature'));
    expect(said('ARCH-D', plan).some((words) => words.includes('4 × 6 in clear'))).toBe(true);
    // Small paper has it once, on the cover, and every other sheet says where.
    const small = said('A4', plan);
    expect(small.filter((words) => words.includes('4 × 6 in clear'))).toHaveLength(1);
    expect(sheetsOf(plan, { paper: 'A4' }).find((sheet) => wordsOf(sheet).includes('Stamp and signature, 4 × 6 in clear'))?.title).toMatch(/stamp/i);
    for (const words of small) expect(words).toMatch(/4 × 6 in clear$|on sheet|sheet NW-00/);
    expect(said('ARCH-D', done(plan, editTitleBlock({ hasStampBox: false })).next)).toEqual([]);
    expect(refusal(plan, editTitleBlock({ titleBlock: { logo: null, lines: Array.from({ length: 9 }, () => ({ label: 'a', value: 'b' })) } }))).toContain('8 lines');
  });
});
