import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Viewport, toPlanPlace, toScreen } from '../../../src-renderer/canvas/viewport.ts';
import { pinched, wheelFactor } from '../../../src-renderer/input/camera-input.ts';
import { isForTool } from '../../../src-renderer/input/pointer-input.ts';

const view: Viewport = { camera: { at: { x: 3, y: 2 }, scale_px_m: 100 }, width: 800, height: 600 };

test('only the first button or finger draws, and not while the board is moved', () => {
  expect(isForTool({ button: 0, isPrimary: true }, false)).toBe(true);
  expect(isForTool({ button: 0, isPrimary: true }, true)).toBe(false);
  expect(isForTool({ button: 1, isPrimary: true }, false)).toBe(false);
  expect(isForTool({ button: 2, isPrimary: true }, false)).toBe(false);
  expect(isForTool({ button: 0, isPrimary: false }, false)).toBe(false);
});

describe('the wheel', () => {
  test('turned up it zooms in, turned down it zooms out by as much', () => {
    const up = wheelFactor({ deltaY: -100, deltaMode: 0, ctrlKey: false });
    const down = wheelFactor({ deltaY: 100, deltaMode: 0, ctrlKey: false });
    expect(up).toBeGreaterThan(1);
    expect(up * down).toBeCloseTo(1);
  });

  test('lines and pixels mean the same notch', () => {
    expect(wheelFactor({ deltaY: 3, deltaMode: 1, ctrlKey: false })).toBeCloseTo(wheelFactor({ deltaY: 100, deltaMode: 0, ctrlKey: false }));
  });

  test('a wild turn is held to a few notches', () => {
    expect(wheelFactor({ deltaY: -1e6, deltaMode: 0, ctrlKey: false })).toBeLessThan(2);
  });
});

test('two fingers hold on to the places under them', () => {
  const px = fc.record({ x: fc.integer({ min: 0, max: 800 }), y: fc.integer({ min: 0, max: 600 }) });
  fc.assert(
    fc.property(px, fc.integer({ min: 30, max: 300 }), px, fc.integer({ min: 30, max: 300 }), (from, spread, to, wide) => {
      const before = [from, { x: from.x + spread, y: from.y }] as const;
      const after = [to, { x: to.x + wide, y: to.y }] as const;
      const camera = pinched(view, before, after);
      for (const i of [0, 1] as const) {
        const place = toScreen({ ...view, camera }, toPlanPlace(view, before[i]));
        expect(place.x).toBeCloseTo(after[i].x, 3);
        expect(place.y).toBeCloseTo(after[i].y, 3);
      }
    }),
  );
});
