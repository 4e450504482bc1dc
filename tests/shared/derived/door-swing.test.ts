import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { type LeafSweep, distanceToSweep_m, doorsByLevel, sweepOutline } from '#shared/derived/door-swing';
import { area_m2, rectangle } from '#shared/geometry/outline';
import { distance_m, planPoint, polar } from '#shared/geometry/point';
import type { Opening } from '#shared/model/plan';
import { layout } from '../../support/layout.ts';

const sweep: fc.Arbitrary<LeafSweep> = fc
  .record({ x: fc.double({ min: -5, max: 5, noNaN: true }), y: fc.double({ min: -5, max: 5, noNaN: true }), shut_rad: fc.double({ min: -4, max: 4, noNaN: true }), width_m: fc.double({ min: 0.5, max: 2, noNaN: true }), isLeft: fc.boolean() })
  .map(({ x, y, shut_rad, width_m, isLeft }) => ({ hinge: planPoint(x, y), shut_rad, open_rad: shut_rad + (isLeft ? 1 : -1) * (Math.PI / 2), width_m }));

/** Least distance to a fine net of places that the leaf sweeps: an independent look. */
function sampled_m(p: { x: number; y: number }, { hinge, shut_rad, open_rad, width_m }: LeafSweep, steps: number): number {
  let least = Infinity;
  for (let i = 0; i <= steps; i += 1) {
    for (let k = 0; k <= steps; k += 1) {
      const angle_rad = shut_rad + ((open_rad - shut_rad) * i) / steps;
      least = Math.min(least, distance_m(p, polar(hinge, angle_rad, (width_m * k) / steps)));
    }
  }
  return least;
}

describe('sweep of a door leaf', () => {
  test('the distance agrees with a net of places of the sweep', () => {
    fc.assert(
      fc.property(sweep, fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: -3, max: 3, noNaN: true }), (leaf, dx, dy) => {
        const p = planPoint(leaf.hinge.x + dx, leaf.hinge.y + dy);
        const steps = 60;
        const exact_m = distanceToSweep_m(p, leaf);
        const seen_m = sampled_m(p, leaf, steps);
        expect(seen_m).toBeGreaterThanOrEqual(exact_m - 1e-9);
        expect(seen_m - exact_m).toBeLessThanOrEqual((2 * leaf.width_m) / steps);
      }),
      { numRuns: 60 },
    );
  });

  test('its ring is a quarter circle but for the chords', () => {
    fc.assert(
      fc.property(sweep, (leaf) => {
        expect(area_m2(sweepOutline(leaf)) / ((Math.PI / 4) * leaf.width_m ** 2)).toBeCloseTo(1, 2);
      }),
    );
  });
});

test('a leaf that swings out into the next room hangs on the far face of the wall', () => {
  const door: Opening = { crossing: null, undercut_m: null, ventPath: [], id: 'd', name: 'Door', kind: 'door', wall: 'c2', along_m: 3, width_m: 1, bottom_m: 0, height_m: 2, swing: 'out', hinge: 'end', freeArea_m2: null, leadsTo: 'room', closes: true };
  const plan = layout({ room: rectangle(6, 4), enclosure: { openings: { d: door } } });
  const first = plan.levels['level-0']?.enclosures.e1;
  if (!plan.levels['level-0'] || !first) throw new Error('The layout has its room.');
  const [alone] = doorsByLevel(derivePlan(plan).spaces).get('level-0') ?? [];
  expect(alone?.sweep?.hinge.y).toBeCloseTo(4, 9);
  expect(alone?.doorways).toHaveLength(1);
  plan.levels['level-0'].enclosures.e2 = { ...first, id: 'e2', name: 'Next', openings: {}, outline: rectangle(6, 3, planPoint(0, 4.15)).map(({ x, y }, i) => ({ ...structuredClone(first.outline[0] ?? { wall: null as never }), id: `b${i}`, x, y })) };
  const [between] = doorsByLevel(derivePlan(plan).spaces).get('level-0') ?? [];
  expect(between?.sweep?.hinge).toMatchObject({ x: expect.closeTo(2.5, 9), y: expect.closeTo(4.15, 9) });
  expect(between?.doorways.map(({ a }) => a.y)).toEqual([expect.closeTo(4, 9), expect.closeTo(4.15, 9)]);
});
