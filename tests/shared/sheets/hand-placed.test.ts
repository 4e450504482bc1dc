import { beforeAll, describe, expect, test } from 'vitest';
import { editNozzle } from '#shared/commands/edit-nozzle';
import { deleteThings } from '#shared/commands/delete-things';
import { moveDimensionText } from '#shared/commands/move-dimension-text';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { resetDimensionText } from '#shared/commands/reset-dimension-text';
import type { Plan } from '#shared/model/plan';
import type { Sheet, SheetDimension } from '#shared/sheets/sheet';
import { boxAround, boxHolds, cornersOf, turnedBoxesOverlap } from '#shared/sheets/text-box';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { allMarks, sheetsOf, textsOf } from '../../support/sheet-set.ts';
import { done, refusal } from '../../support/try-command.ts';

const PAPER = { paper: 'ANSI-D' } as const;
let plan: Plan;
let usual: Sheet[];

const all = (sheets: readonly Sheet[]): SheetDimension[] => sheets.flatMap(({ dimensions }) => dimensions);
const byKey = (sheets: readonly Sheet[], key: string): SheetDimension => {
  const found = all(sheets).find((each) => each.key === key);
  if (!found) throw new Error(`No dimension ${key}.`);
  return found;
};
/** A dimension of a nozzle on a plan of a room. */
const one = (): SheetDimension => {
  const found = all(usual).find(({ key }) => key.startsWith('plan/') && key.includes('|nozzle/'));
  if (!found) throw new Error('No nozzle is dimensioned.');
  return found;
};
const idOf = (key: string): { kind: 'nozzle'; network: string; id: string } => {
  const [, network = '', id = ''] = (key.split('|')[1] ?? '').split('/');
  return { kind: 'nozzle', network, id };
};

beforeAll(async () => {
  ({ plan } = await buildDemo('F1'));
  usual = sheetsOf(plan, PAPER);
});

describe('texts of dimensions', () => {
  test('have keys of their own, in plans and in sections', () => {
    const keys = all(usual).map(({ key }) => key);
    expect(keys.length).toBeGreaterThanOrEqual(6);
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys.some((key) => key.startsWith('section/') && key.includes('|height/'))).toBe(true);
    expect(keys.every((key) => key.length <= 400)).toBe(true);
    expect(all(usual).every(({ isByHand }) => !isByHand)).toBe(true);
  });

  test('stand where the user put them, with their line and its ends', () => {
    const { key, along_mm, off_mm, along_rad, box } = one();
    const sense = off_mm < 0 ? -1 : 1;
    const next = done(plan, moveDimensionText(key, { along_mm: along_mm + 3, off_mm: off_mm + sense * 4 })).next;
    const sheets = sheetsOf(next, PAPER);
    const after = byKey(sheets, key);
    expect(after.isByHand).toBe(true);
    expect(after.words).toBe(one().words);
    // Reckoned here: 3 mm along the measured way and 4 mm to the side of it, paper y down.
    expect(after.box.x).toBeCloseTo(box.x + 3 * Math.cos(along_rad) - sense * 4 * Math.sin(along_rad), 6);
    expect(after.box.y).toBeCloseTo(box.y - 3 * Math.sin(along_rad) - sense * 4 * Math.cos(along_rad), 6);
    // Its line runs under the text: some line of its layer passes within a text height of its middle, over its whole width.
    const isUnder = sheets.flatMap(({ marks }) => allMarks(marks)).some((mark) => mark.kind === 'line' && mark.layer === 'dimensions' && mark.places.length === 4 && runsUnder(mark.places, after));
    expect(isUnder).toBe(true);
    expect(sheetsOf(done(next, resetDimensionText(key)).next, PAPER)).toEqual(usual);
  });

  test('stay by the thing when other things are moved and renamed, and when it is', () => {
    const { key, along_mm, off_mm } = one();
    const ref = idOf(key);
    const placed = { along_mm: along_mm + 2, off_mm: off_mm + 2 };
    const start = done(plan, moveDimensionText(key, placed)).next;
    const network = start.networks[ref.network];
    for (const id of Object.keys(network?.nozzles ?? {})) {
      const node = network?.nodes[network.nozzles[id]?.node ?? ''];
      if (!node) continue;
      const moved = moveNozzle({ ...ref, id }, { ...node.at, x: node.at.x + 0.11 })(start);
      const renamed = editNozzle({ ...ref, id }, { name: 'Other name' })(moved.ok ? moved.next : start);
      const after = byKey(sheetsOf(renamed.ok ? renamed.next : start, PAPER), key);
      expect([after.isByHand, after.off_mm.toFixed(6), after.along_mm.toFixed(6)]).toEqual([true, placed.off_mm.toFixed(6), placed.along_mm.toFixed(6)]);
    }
  });

  test('are kept off by all that the program places afterwards', () => {
    const { key } = one();
    const start = done(plan, moveDimensionText(key, { along_mm: 0, off_mm: one().off_mm + 6 })).next;
    const sheets = sheetsOf(start, PAPER);
    const sheet = sheets.find(({ dimensions }) => dimensions.some((each) => each.key === key));
    const { box, isOver } = byKey(sheets, key);
    if (!sheet || isOver) throw new Error('Put it where nothing stands.');
    const others = all([sheet]).filter((each) => each.key !== key);
    expect(others.filter((other) => turnedBoxesOverlap(other.box, box))).toEqual([]);
    expect(textsOf(sheet).length).toBe(textsOf(usual.find(({ home }) => home === sheet.home) ?? sheet).length);
  });

  test('never leave the paper of their view', () => {
    const { key } = one();
    const sheets = sheetsOf(done(plan, moveDimensionText(key, { along_mm: 4000, off_mm: -3000 })).next, PAPER);
    for (const { paper, dimensions } of sheets) {
      for (const { box } of dimensions) expect(boxHolds({ left: 0, top: 0, right: paper.width_mm, bottom: paper.height_mm }, boxAround(cornersOf(box)))).toBe(true);
    }
  });

  test('are refused off every paper, and given back only once', () => {
    const { key } = one();
    expect(done(plan, moveDimensionText(key, { along_mm: 5000, off_mm: -5000 })).next.settings.sheets.dimensions[key]).toEqual({ along_mm: 5000, off_mm: -5000 });
    expect(refusal(plan, moveDimensionText(key, { along_mm: 5000.1, off_mm: 0 }))).toContain('stands on the paper');
    expect(refusal(plan, moveDimensionText(key, { along_mm: Number.NaN, off_mm: 0 }))).toContain('stands on the paper');
    expect(refusal(plan, moveDimensionText('', { along_mm: 0, off_mm: 0 }))).toContain('stands on the paper');
    expect(refusal(plan, moveDimensionText('k'.repeat(401), { along_mm: 0, off_mm: 0 }))).toContain('stands on the paper');
    expect(refusal(plan, resetDimensionText(key))).toContain('already');
  });

  test('whose thing is gone change nothing else', () => {
    const { key } = one();
    const without = done(plan, deleteThings([idOf(key)])).next;
    const start = done(plan, moveDimensionText(key, { along_mm: 1, off_mm: 9 })).next;
    const after = sheetsOf(done(start, deleteThings([idOf(key)])).next, PAPER);
    expect(all(after).filter(({ isByHand }) => isByHand)).toEqual([]);
    expect(all(after)).toEqual(all(sheetsOf(without, PAPER)));
  });
});

/** Whether a straight piece runs along a text, close under it, from end to end. */
function runsUnder(places: ArrayLike<number>, { box, along_rad }: SheetDimension): boolean {
  const [cos, sin] = [Math.cos(along_rad), Math.sin(along_rad)];
  const along = [0, 2].map((i) => ((places[i] ?? 0) - box.x) * cos - ((places[i + 1] ?? 0) - box.y) * sin);
  const aside = [0, 2].map((i) => ((places[i] ?? 0) - box.x) * sin + ((places[i + 1] ?? 0) - box.y) * cos);
  return Math.min(...along) <= -box.halfWidth + 1e-6 && Math.max(...along) >= box.halfWidth - 1e-6 && aside.every((each) => Math.abs(each) < 2 * box.halfHeight + 1);
}
