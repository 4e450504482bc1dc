import { describe, expect, test } from 'vitest';
import type { SheetDimension, SheetView } from '#shared/sheets/sheet';
import { snapText, textHolds, textMovedBy } from '../../../../src-renderer/panels/paper/dimension-handle.ts';
import { hitAt, partOf, pulled, shownBox, snapMove } from '../../../../src-renderer/panels/paper/paper-geometry.ts';

const box = (left: number, top: number, right: number, bottom: number) => ({ left, top, right, bottom });
/** 6 × 4 m at 1:50 is 120 × 80 mm. */
const view: SheetView = { key: 'plan/a/room', title: 'Plan', box: box(40, 40, 190, 150), corner: { x_mm: 50, y_mm: 50 }, scale: 50, shown: { minX: 1, minY: 2, maxX: 7, maxY: 6 } };

/** The text of a dimension measured up the paper. */
const upright = (parts: Partial<SheetDimension>): SheetDimension => ({ key: 'k', words: '5', along_rad: Math.PI / 2, along_mm: 4, off_mm: 10, isByHand: false, box: { x: 0, y: 0, halfWidth: 5, halfHeight: 1, rotation_rad: Math.PI / 2 }, ...parts });

describe('the text of a dimension', () => {
  test('is held in its turned paper, and a little around it', () => {
    const { box: turned } = upright({});
    expect(textHolds(turned, { x: 0.9, y: 4.9 }, 0)).toBe(true);
    expect(textHolds(turned, { x: 4.9, y: 0.9 }, 0)).toBe(false);
    expect(textHolds(turned, { x: 1.9, y: 0 }, 1)).toBe(true);
  });

  test('goes along and off its line as the hand goes, y of the paper being down', () => {
    // Up the paper is along, to the left of it is aside: 3 mm up and 2 mm to the left.
    expect(textMovedBy(upright({}), -2, -3)).toEqual({ along_mm: 7, off_mm: 12 });
    expect(textMovedBy(upright({ along_rad: 0 }), 3, -2)).toEqual({ along_mm: 7, off_mm: 12 });
  });

  test('keeps to its line and its middle where it is nearly there', () => {
    const near = textMovedBy(upright({}), ...pair(snapText(upright({}), 1.5, 3, 2)));
    expect(near).toEqual({ along_mm: 0, off_mm: 10 });
    const far = textMovedBy(upright({}), ...pair(snapText(upright({}), -6, -5, 2)));
    expect(far).toEqual({ along_mm: 9, off_mm: 16 });
  });
});

const pair = ({ dx, dy }: { readonly dx: number; readonly dy: number }): [number, number] => [dx, dy];

describe('the sheet under the pointer', () => {
  test('a note is found before a view, a small view before the large one under it', () => {
    const small: SheetView = { ...view, key: 'section/a', box: box(60, 60, 80, 80) };
    const dimensions = [upright({ key: 'plan/a/room|nozzle/n/1', box: { x: 66, y: 72, halfWidth: 2, halfHeight: 8, rotation_rad: 0 } })];
    const sheet = { views: [view, small], notes: [{ id: 'n1', box: box(62, 62, 70, 66) }], dimensions };
    expect(hitAt(sheet, { x: 64, y: 64 })).toEqual({ kind: 'note', id: 'n1' });
    expect(hitAt(sheet, { x: 66, y: 65 })).toEqual({ kind: 'note', id: 'n1' });
    expect(hitAt(sheet, { x: 66, y: 80.5 })).toEqual({ kind: 'dimension', key: dimensions[0]?.key });
    expect(hitAt(sheet, { x: 75, y: 75 })).toEqual({ kind: 'view', key: 'section/a' });
    expect(hitAt(sheet, { x: 40, y: 150 })).toEqual({ kind: 'view', key: view.key });
    expect(hitAt(sheet, { x: 39.9, y: 150 })).toBeUndefined();
  });

  test('a dragged view snaps to edges and middles within reach, not beyond', () => {
    const other = box(200, 40, 300, 150);
    expect(snapMove(box(10, 10, 50, 60), 148, 3, [other], 3)).toMatchObject({ dx: 150, xs: [200] });
    expect(snapMove(box(10, 10, 50, 60), 140, 20, [other], 3)).toMatchObject({ dx: 140, dy: 20, xs: [], ys: [] });
    expect(snapMove(box(10, 10, 50, 60), 0, 29, [other], 3)).toMatchObject({ dy: 30, ys: [40] });
  });

  test('a pulled corner shows another part of the plan, to scale', () => {
    expect(shownBox(view)).toEqual(box(50, 50, 170, 130));
    const half = pulled(box(50, 50, 170, 130), 'se', { x: 110, y: 90 });
    const part = partOf(view, half);
    expect(part?.minX).toBeCloseTo(1, 9);
    expect(part?.maxX).toBeCloseTo(4, 9);
    expect(part?.maxY).toBeCloseTo(6, 9);
    expect(part?.minY).toBeCloseTo(4, 9);
    expect(pulled(box(50, 50, 170, 130), 'nw', { x: 900, y: 900 })).toEqual(box(160, 120, 170, 130));
    expect(shownBox({ ...view, shown: null })).toBeUndefined();
  });
});
