import type { PlanPoint3 } from '#shared/geometry/point';
import { type PlanBuilder, planBuilder } from '../../support/plan-builder.ts';

const FOOT_m = 0.3048;
/** Feet and inches as metres: ft(9, 6) is 9 ft 6 in. */
export const ft = (feet: number, inches = 0): number => (feet + inches / 12) * FOOT_m;
const ft3 = (x: number, y: number, z: number): PlanPoint3 => ({ x: ft(x), y: ft(y), z: ft(z) });
const box = (x1: number, y1: number, x2: number, y2: number) => [
  { x: ft(x1), y: ft(y1) },
  { x: ft(x2), y: ft(y1) },
  { x: ft(x2), y: ft(y2) },
  { x: ft(x1), y: ft(y2) },
];
const NORTH_SOUTH = [Math.PI / 2, -Math.PI / 2];

/** A hut with one nozzle: invented plan F1. */
export const hut = (): PlanBuilder =>
  planBuilder('feet')
    .outline(box(0, 0, 16, 11), ft(8))
    .obstruction('cabinet', box(4, 7, 10, 10), 0, ft(6, 8))
    .network()
    .cylinder(ft(0, 9), ft(9, 6), Math.PI)
    .run([ft3(0.75, 9.5, 6.5), ft3(0.75, 9.5, 7 + 8 / 12), ft3(8, 9.5, 7 + 8 / 12), ft3(8, 5.5, 7 + 8 / 12), ft3(8, 5.5, 7 + 4 / 12)])
    .nozzle(ft(8), ft(5, 6), ft(7, 4));

/** An L-shaped archive with beams, racks and an under-floor void: invented plan F2. */
export function archive(): PlanBuilder {
  const main = 7 + 10 / 12;
  const high = 9 + 2 / 12;
  const built = planBuilder('feet')
    .outline(
      [
        [0, 0],
        [31.5, 0],
        [31.5, 15],
        [19.5, 15],
        [19.5, 25.5],
        [0, 25.5],
      ].map(([x = 0, y = 0]) => ({ x: ft(x), y: ft(y) })),
      ft(9, 6),
      { underFloor: { depth_m: ft(1), isProtected: true, exclusion: null } },
    )
    .obstruction('beam', box(10, 0, 11, 25.5), ft(8, 2), ft(9, 6))
    .obstruction('beam', box(20.5, 0, 21.5, 15), ft(8, 2), ft(9, 6))
    .obstruction('rack', box(6.5, 3, 9.5, 17), 0, ft(7))
    .obstruction('rack', box(12, 3, 15, 23), 0, ft(7))
    .obstruction('rack', box(23, 2, 26, 12), 0, ft(7))
    .network();
  const trunk = [ft3(30.75, 10, 7), ft3(30.75, 10, main), ft3(29.5, 10, main), ft3(26.5, 10, main), ft3(15.5, 10, main), ft3(5, 10, main)];
  built.run(trunk, '1-1/4');
  for (const [x, ys] of [
    [5, [6.5, 19]],
    [15.5, [6.5, 19]],
    [26.5, [7.5]],
  ] as const) {
    built.run([ft3(x, 10, main), ft3(x, 10, high)], '1');
    for (const y of ys) {
      built.run([ft3(x, 10, high), ft3(x, y, high), ft3(x, y, 8.75)], '3/4').nozzle(ft(x), ft(y), ft(8, 9), NORTH_SOUTH);
    }
  }
  const low = -4 / 12;
  built.run([ft3(29.5, 10, main), ft3(29.5, 10, low), ft3(23.5, 10, low)], '1');
  built.run([ft3(23.5, 10, low), ft3(23.5, 7.5, low), ft3(23.5, 7.5, -7 / 12)], '3/4').nozzle(ft(23, 6), ft(7, 6), ft(0, -7));
  built.run([ft3(23.5, 10, low), ft3(9.75, 10, low)], '1');
  built.run([ft3(9.75, 10, low), ft3(9.75, 19, low), ft3(9.75, 19, -7 / 12)], '3/4').nozzle(ft(9, 9), ft(19), ft(0, -7));
  built.run([ft3(9.75, 10, low), ft3(8, 10, low), ft3(8, 6.5, low), ft3(8, 6.5, -7 / 12)], '3/4').nozzle(ft(8), ft(6, 6), ft(0, -7));
  return built;
}
