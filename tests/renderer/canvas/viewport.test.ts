import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  GREATEST_SCALE_px_m,
  type Viewport,
  fittedCamera,
  isSameView,
  pannedBy,
  toPlanPlace,
  toScreen,
  transformBetween,
  visibleBox,
  zoomedAt,
} from '../../../src-renderer/canvas/viewport.ts';

const view: Viewport = { camera: { at: { x: 3, y: 2 }, scale_px_m: 100 }, width: 800, height: 600 };
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyView = fc.record({ x: number(-500, 500), y: number(-500, 500), scale: number(0.5, 5000) }).map(
  ({ x, y, scale }): Viewport => ({ camera: { at: { x, y }, scale_px_m: scale }, width: 1280, height: 720 }),
);
const anyPx = fc.record({ x: number(-200, 1500), y: number(-200, 900) });

describe('places', () => {
  test('the camera looks at the middle of the board, north up', () => {
    expect(toScreen(view, { x: 3, y: 2 })).toEqual({ x: 400, y: 300 });
    expect(toScreen(view, { x: 4, y: 2 })).toEqual({ x: 500, y: 300 });
    expect(toScreen(view, { x: 3, y: 3 })).toEqual({ x: 400, y: 200 });
  });

  test('screen and plan places undo each other', () => {
    fc.assert(
      fc.property(anyView, anyPx, (each, p) => {
        const back = toScreen(each, toPlanPlace(each, p));
        expect(back.x).toBeCloseTo(p.x, 4);
        expect(back.y).toBeCloseTo(p.y, 4);
      }),
    );
  });

  test('the visible part is what the corners show', () => {
    expect(visibleBox(view)).toEqual({ minX: -1, minY: -1, maxX: 7, maxY: 5 });
    expect(visibleBox(view, 100)).toEqual({ minX: -2, minY: -2, maxX: 8, maxY: 6 });
  });
});

describe('moving the camera', () => {
  test('the place under the pointer stays there while zooming', () => {
    fc.assert(
      fc.property(anyView, anyPx, number(0.2, 5), (each, pointer, factor) => {
        const held = toPlanPlace(each, pointer);
        const after = toScreen({ ...each, camera: zoomedAt(each, pointer, factor) }, held);
        expect(after.x).toBeCloseTo(pointer.x, 3);
        expect(after.y).toBeCloseTo(pointer.y, 3);
      }),
    );
  });

  test('zooming ends at the largest scale', () => {
    expect(zoomedAt(view, { x: 10, y: 10 }, 1e9).scale_px_m).toBe(GREATEST_SCALE_px_m);
  });

  test('dragging moves the drawing with the pointer', () => {
    const camera = pannedBy(view, 30, -40);
    expect(toScreen({ ...view, camera }, { x: 3, y: 2 })).toEqual({ x: 430, y: 260 });
  });
});

describe('fitting', () => {
  test('a whole box is shown, its middle in the middle', () => {
    fc.assert(
      fc.property(number(-100, 100), number(-100, 100), number(0.5, 80), number(0.5, 80), (x, y, w, h) => {
        const board = { width: 900, height: 500 };
        const shown = { camera: fittedCamera({ minX: x, minY: y, maxX: x + w, maxY: y + h }, board), ...board };
        const a = toScreen(shown, { x, y: y + h });
        const b = toScreen(shown, { x: x + w, y });
        expect(a.x).toBeGreaterThanOrEqual(47.9);
        expect(a.y).toBeGreaterThanOrEqual(47.9);
        expect(b.x).toBeLessThanOrEqual(852.1);
        expect(b.y).toBeLessThanOrEqual(452.1);
      }),
    );
  });

  test('nothing drawn is shown as an empty board around the origin', () => {
    expect(fittedCamera({ minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity }, { width: 800, height: 600 })).toEqual({ at: { x: 0, y: 0 }, scale_px_m: 60 });
  });

  test('a single place is shown with room around it', () => {
    const { scale_px_m, at } = fittedCamera({ minX: 2, minY: 2, maxX: 2, maxY: 2 }, { width: 496, height: 400 });
    expect(at).toEqual({ x: 2, y: 2 });
    expect(scale_px_m).toBe(100);
  });
});

test('a picture drawn for one view lies right under another', () => {
  fc.assert(
    fc.property(anyView, anyView, anyPx, (drawn, shown, p) => {
      const { scale, dx_px, dy_px } = transformBetween(drawn, shown);
      const place = toPlanPlace(drawn, p);
      const there = toScreen(shown, place);
      fc.pre(Math.hypot(there.x, there.y) < 1e6);
      expect(p.x * scale + dx_px).toBeCloseTo(there.x, 2);
      expect(p.y * scale + dy_px).toBeCloseTo(there.y, 2);
    }),
  );
});

test('views are the same only when place, scale and size are', () => {
  expect(isSameView(view, { ...view, camera: { at: { x: 3, y: 2 }, scale_px_m: 100 } })).toBe(true);
  expect(isSameView(view, { ...view, height: 601 })).toBe(false);
  expect(isSameView(view, { ...view, camera: { at: { x: 3, y: 2.001 }, scale_px_m: 100 } })).toBe(false);
});
