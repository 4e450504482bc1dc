import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { type OpeningFace, jetsAtOpening } from '#shared/derived/vent-in-jet';
import { planPoint } from '#shared/geometry/point';
import { at3, layout } from '../../support/layout.ts';

const SPREAD_rad = Math.PI / 18;
/** A vent in the east wall of a room of 6 by 4 m, 0.4 m wide about y, 2 to 2.4 m high. */
const vent = (y: number, bottom_m = 2): OpeningFace => ({ wall: 'c1', on: { a: planPoint(6, y - 0.2), b: planPoint(6, y + 0.2) }, bottom_m, top_m: bottom_m + 0.4 });
const jets = (face: OpeningFace, z = 2.2, room?: readonly { x: number; y: number }[], spread_rad = SPREAD_rad) => {
  const [nozzle] = derivePlan(layout({ nozzles: [{ at: at3(3, 2, z) }], ...(room ? { room } : {}) })).nozzles;
  return nozzle ? jetsAtOpening(nozzle, spread_rad, face) : [];
};

describe('a jet that spreads by 10 degrees to either side', () => {
  test('blows straight at a vent before it', () => expect(jets(vent(2))).toMatchObject([{ azimuth_rad: 0, distance_m: 3 }]));
  test('reaches a vent beside its axis by its edge', () => {
    // Its edge comes to the wall 3·tan 10° = 0.529 m off the axis.
    const [jet] = jets(vent(2.7));
    expect(jet?.distance_m).toBeCloseTo(Math.hypot(3, 0.5), 9);
    expect(jets(vent(2.73 + 1e-3))).toEqual([]);
  });
  test('a vent behind the nozzle is not blown at by the hole that looks away', () => expect(jets(vent(2)).map(({ azimuth_rad }) => azimuth_rad)).toEqual([0]));
  test('reaches up and down as far as it spreads', () => {
    expect(jets(vent(2, 2.2 + 0.5))).toHaveLength(1);
    expect(jets(vent(2, 2.2 + 0.6))).toEqual([]);
    expect(jets(vent(2, 2.2 + 0.5))[0]?.distance_m).toBeCloseTo(Math.hypot(3, 0.5), 9);
  });
  test('a spread of more than a half circle reaches all that lies before the hole, and no more', () => expect(jets(vent(3.5), 2.2, undefined, 3)).toHaveLength(1));
  test('does not reach behind a wall of the room', () => {
    const notched = [planPoint(0, 0), planPoint(4, 0), planPoint(4, 3), planPoint(5, 3), planPoint(5, 0), planPoint(6, 0), planPoint(6, 4), planPoint(0, 4)];
    const east: OpeningFace = { ...vent(2), wall: 'c5' };
    expect(jets(east, 2.2, notched)).toEqual([]);
  });
});
