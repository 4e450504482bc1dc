import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { doorsByLevel } from '#shared/derived/door-swing';
import { frontZone } from '#shared/derived/front-depth';
import { type Removal, canTakeOut, doorsOfRoom, hasWayOut, isPlainlyWide } from '#shared/derived/removal-way';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { unknownWall } from '#shared/model/plan';
import { anyPlacing, placed, placedAngle_rad, placedLayout } from '../../support/layout.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const rack = fc.record({ x: number(1, 5), y: number(0, 2.5), width: number(0.2, 2), depth: number(0.2, 2), bottom_m: fc.constantFrom(0, 1.9, 2.1) });

describe('the way out for a cylinder', () => {
  test('a way that is plainly wide is one for the exact look, too', () => {
    let plain = 0;
    fc.assert(
      fc.property(anyPlacing, fc.array(rack, { maxLength: 4 }), number(0.3, 0.95), number(0.5, 2.5), fc.option(number(0.5, 2.5)), fc.boolean(), (placing, racks, width_m, along_m, beside_m, isHoled) => {
        const plan = placedLayout(
          {
            room: rectangle(6, 3),
            enclosure: {
              holes: isHoled ? [rectangle(0.5, 0.5, planPoint(2.5, 1.2)).map((corner, i) => ({ id: `h${i}`, ...placed(corner, placing), wall: unknownWall() }))] : [],
              openings: Object.fromEntries(
                [['d1', 'c1', along_m] as const, ['d2', 'c2', 2] as const].map(([id, wall, along]) => [
                  id,
                  { id, name: 'Door', kind: 'door', wall, along_m: along, width_m: 0.9, bottom_m: 0, height_m: 2.1, swing: 'out', hinge: 'start', freeArea_m2: null, leadsTo: 'corridor', closes: true, crossing: null, undercut_m: null, ventPath: [] },
                ]),
              ),
            },
            obstructions: racks.map(({ x, y, width, depth, bottom_m }) => ({ kind: 'rack' as const, footprint: rectangle(width, depth, planPoint(x, y)), bottom_m, top_m: 2.2 })),
          },
          placing,
        );
        const { spaces } = derivePlan(plan);
        const room = spaces.find(({ kind }) => kind === 'room');
        if (!room) throw new Error('no room');
        const removal: Removal = {
          front: frontZone({ at: placed({ x: 0.2, y: 1.5 }, placing), front_rad: placedAngle_rad(0, placing), radius_m: 0.15 }, 0.9),
          room,
          doors: doorsOfRoom(room, doorsByLevel(spaces).get(room.level.id) ?? []),
          others: beside_m === null ? [] : [{ name: 'C2', at: placed({ x: 0.2, y: beside_m }, placing), radius_m: 0.15 }],
        };
        const exact = hasWayOut(removal, width_m);
        if (isPlainlyWide(removal, width_m)) {
          plain += 1;
          expect(exact).toBe(true);
        }
        expect(canTakeOut(removal, width_m)).toBe(exact);
      }),
    );
    expect(plain).toBeGreaterThan(10);
  });
});
