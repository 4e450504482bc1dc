import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { momentsOf } from '#shared/geometry/moments';
import { rectangle } from '#shared/geometry/outline';
import { allowedPatch } from '#shared/margins/allowed-patch';
import { reachOf } from '#shared/margins/patch-reach';
import type { RefOf } from '#shared/model/plan';
import { type LayoutSpec, at3, layout } from '../../support/layout.ts';
import { frozen } from '../../support/frozen.ts';

const N1: RefOf<'nozzle'> = { kind: 'nozzle', network: 'net', id: 'n1' };

/** A room 6 × 4 m with one nozzle in its middle on a square run; its coverage reaches everywhere. */
const SPEC: LayoutSpec = {
  room: rectangle(6, 4),
  height_m: 2.7,
  nozzles: [{ at: at3(3, 2, 2.5), holes_rad: [0, Math.PI] }],
  runs: [{ places: [at3(0.3, 0.6, 2.65), at3(0.3, 2, 2.65), at3(3, 2, 2.65), at3(3, 2, 2.5)] }],
  footprint: { shape: 'circle', radius_m: 9, source: 'test' },
  limits: { nozzleToWall_m: 0.25, freeJet_m: 0.3, cornerZone_m: 0.1, nearWallZone_m: 0.1, nozzleReach_m: 20, nozzleArea_m2: 400 },
};
const patchOf = (spec: Partial<LayoutSpec>) => allowedPatch(derivePlan(frozen(layout({ ...SPEC, ...spec }))), N1);
const areaOf_m2 = (spec: Partial<LayoutSpec>): number => {
  const patch = patchOf(spec);
  return patch.isKnown ? patch.parts.reduce((sum, part) => sum + momentsOf(part).area_m2, 0) : Number.NaN;
};

describe('what takes room away', () => {
  test('walls: the room less the limit on every side, but for the jets and the piece of pipe before it', () => {
    const patch = patchOf({});
    expect(patch.isKnown && patch.holdsPlace).toBe(true);
    const ys = patch.isKnown ? (patch.parts[0]?.[0] ?? []).map(({ y }) => y) : [];
    expect(Math.max(...ys)).toBeCloseTo(3.75, 3);
  });

  test('a ceiling zone that hangs lower than the orifice', () => {
    const zone = { ceilingZones: { z: { id: 'z', name: 'Zone', outline: rectangle(1, 1, { x: 3.5, y: 2.5 }).map(({ x, y }) => ({ x, y })), height_m: 2.45 } } };
    expect(areaOf_m2({}) - areaOf_m2({ enclosure: zone })).toBeGreaterThan(0.9);
  });

  test('a thing at the height of the orifice: what is in it, and what a hole blows at too soon', () => {
    const thing = { kind: 'duct' as const, footprint: rectangle(0.5, 0.5, { x: 4, y: 2.6 }), bottom_m: 2.4, top_m: 2.55 };
    expect(areaOf_m2({}) - areaOf_m2({ obstructions: [thing] })).toBeGreaterThan((0.5 + 2 * 0.3) * 0.5 - 0.01);
  });

  test('a path budget that leaves 10 cm', () => {
    const length_m = 1.4 + 2.7 + 0.15;
    const patch = patchOf({ limits: { ...SPEC.limits, pathLength_m: length_m + 0.1 } });
    // East both the run and nothing else grows; north the run from the wall does.
    expect(patch.isKnown && reachOf(patch, 0).reach_m).toBeCloseTo(0.1, 3);
    expect(patch.isKnown && reachOf(patch, 0)).toMatchObject({ endedBy: 'P2' });
  });

  test('a blank limit, no coverage and a nozzle in no room make it unknown, never large', () => {
    expect(patchOf({ limits: { ...SPEC.limits, freeJet_m: null } })).toMatchObject({ isKnown: false });
    expect(patchOf({ footprint: null })).toMatchObject({ isKnown: false });
    expect(patchOf({ nozzles: [{ at: at3(30, 2, 2.5) }], runs: [] })).toMatchObject({ isKnown: false });
  });

  test('beside a tee it shifts only within the degree that fittings take up', () => {
    const tee = { nozzles: [{ at: at3(3, 1, 2.5), holes_rad: [0, Math.PI] }, { at: at3(3, 3, 2.5) }], runs: [{ places: [at3(0.3, 2, 2.65), at3(3, 2, 2.65)] }, { places: [at3(3, 2, 2.65), at3(3, 1, 2.65), at3(3, 1, 2.5)] }, { places: [at3(3, 2, 2.65), at3(3, 3, 2.65), at3(3, 3, 2.5)] }] };
    const patch = patchOf(tee);
    const xs = patch.isKnown ? (patch.parts[0]?.[0] ?? []).map(({ x }) => x) : [];
    // One degree over at most 1.75 m of run.
    expect(Math.max(...xs) - 3).toBeCloseTo(1.75 * Math.tan(Math.PI / 180), 3);
  });
});
