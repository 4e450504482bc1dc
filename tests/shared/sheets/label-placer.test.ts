import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { labelPlacer, readable_rad } from '#shared/sheets/label-placer';
import { type TurnedBox, turnedBoxesOverlap } from '#shared/sheets/text-box';

const VIEW = { left: 0, top: 0, right: 200, bottom: 150 };
const label = { width_mm: 20, height_mm: 8, x: 100, y: 75, clearance_mm: 2, leaderAt_mm: 2 };

describe('label placer', () => {
  test('an empty view lets a label stand close, without a leader', () => {
    const placed = labelPlacer(VIEW).find(label);
    expect(placed?.leader).toBeUndefined();
    expect(Math.hypot((placed?.box.x ?? 0) - 100, (placed?.box.y ?? 0) - 75)).toBeLessThan(20);
  });

  test('labels never overlap each other nor leave the view, however many there are', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.double({ min: 5, max: 195, noNaN: true }), fc.double({ min: 5, max: 145, noNaN: true })), { maxLength: 60 }), (places) => {
        const placer = labelPlacer(VIEW);
        const boxes: TurnedBox[] = [];
        for (const [x, y] of places) {
          const placed = placer.find({ ...label, x, y });
          if (!placed) continue;
          placer.take(placed);
          for (const other of boxes) expect(turnedBoxesOverlap(placed.box, other)).toBe(false);
          expect(placed.box.x - 10).toBeGreaterThanOrEqual(0);
          expect(placed.box.x + 10).toBeLessThanOrEqual(200);
          expect(placed.box.y - 4).toBeGreaterThanOrEqual(0);
          expect(placed.box.y + 4).toBeLessThanOrEqual(150);
          boxes.push(placed.box);
        }
      }),
      { numRuns: 30 },
    );
  });

  test('a label that must stand apart has a leader from its thing', () => {
    const placer = labelPlacer(VIEW);
    placer.block({ x: 100, y: 75, halfWidth: 30, halfHeight: 25, rotation_rad: 0 }, 'thing');
    const placed = placer.find({ ...label, owner: 'thing' });
    expect(placed?.leader).toBeDefined();
    const [x = 0, y = 0] = placed?.leader ?? [];
    expect(Math.hypot(x - 100, y - 75)).toBeCloseTo(2, 6);
  });

  test('a label keeps off lines where there is room', () => {
    const placer = labelPlacer(VIEW);
    for (let y = 40; y < 75; y += 1) placer.avoid(0, y, 200, y, 14);
    const placed = placer.find({ ...label, toward_rad: Math.PI / 2 });
    expect(placer.priceOf(placed?.box ?? { x: 100, y: 50, halfWidth: 1, halfHeight: 1, rotation_rad: 0 })).toBe(0);
  });

  test('a label along a pipe is turned with it and stands beside it', () => {
    const placed = labelPlacer(VIEW).find({ ...label, clearance_mm: 1, along: { ax: 100, ay: 140, bx: 100, by: 20 } });
    expect(placed?.box.rotation_rad).toBeCloseTo(Math.PI / 2, 9);
    expect(Math.abs((placed?.box.x ?? 0) - 100)).toBeCloseTo(1 + 4, 9);
  });

  test('what is given back is free again', () => {
    const placer = labelPlacer(VIEW);
    const placed = placer.find(label);
    if (!placed) throw new Error('There is room.');
    placer.take(placed);
    expect(placer.isFree(placed.box)).toBe(false);
    placer.giveBack(placed);
    expect(placer.isFree(placed.box)).toBe(true);
  });

  test('a full view answers that it has no room', () => {
    const placer = labelPlacer(VIEW);
    placer.block({ x: 100, y: 75, halfWidth: 100, halfHeight: 75, rotation_rad: 0 });
    expect(placer.find(label)).toBeUndefined();
    expect(placer.find({ ...label, width_mm: 300 })).toBeUndefined();
  });

  test('a thing far outside the view costs no time and no memory', () => {
    const placer = labelPlacer(VIEW);
    placer.avoid(-1e9, -1e9, 1e9, 1.1e9, 5);
    placer.block({ x: 1e8, y: 1e8, halfWidth: 1e9, halfHeight: 1e7, rotation_rad: 0.3 });
    expect(placer.find(label)).toBeDefined();
  });

  test('a text along anything can be read from the bottom or the right', () => {
    fc.assert(
      fc.property(fc.double({ min: -20, max: 20, noNaN: true }), (angle) => {
        const turned = readable_rad(angle);
        expect(Math.cos(turned)).toBeGreaterThanOrEqual(-1e-6);
        expect(Math.abs(Math.sin(turned - angle))).toBeLessThan(1e-9);
      }),
    );
    expect(readable_rad(Math.PI / 2)).toBeCloseTo(Math.PI / 2, 9);
    expect(readable_rad(-Math.PI / 2)).toBeCloseTo(Math.PI / 2, 9);
  });
});
