import { type PlanPoint, planPoint } from '#shared/geometry/point';
import { rectangle } from '#shared/geometry/outline';
import type { Plan } from '#shared/model/plan';
import { type LayoutSpec, at3, layout } from './layout.ts';
import { frozen } from './frozen.ts';

const HALF = Math.PI / 2;

/** A rectangle or an L, counter-clockwise. */
function roomOf(next: () => number): PlanPoint[] {
  const [width_m, depth_m] = [3.5 + 2.5 * next(), 3.5 + 2.5 * next()];
  if (next() < 0.6) return rectangle(width_m, depth_m);
  const [x, y] = [width_m * (0.55 + 0.25 * next()), depth_m * (0.55 + 0.25 * next())];
  return [planPoint(0, 0), planPoint(width_m, 0), planPoint(width_m, y), planPoint(x, y), planPoint(x, depth_m), planPoint(0, depth_m)];
}

const between = (next: () => number, from: number, to: number): number => from + (to - from) * next();

/** A small room with one or two nozzles on square pipe, things standing and hanging in it, and limits of any size. */
export function patchPlan(next: () => number): Plan {
  const room = roomOf(next);
  const height_m = 2.6;
  const z = between(next, 2.35, 2.55);
  const run_m = 2.58;
  const [x, y] = [between(next, 1.2, 2.2), between(next, 1.2, 2.2)];
  const hasTwo = next() < 0.4;
  const second_m = between(next, 0.9, 1.4);
  const holes_rad = next() < 0.3 ? [0, Math.PI] : next() < 0.5 ? [HALF, -HALF] : [between(next, 0, 3), between(next, 3, 6)];
  const things = Array.from({ length: Math.floor(next() * 4) }, (): NonNullable<LayoutSpec['obstructions']>[number] => {
    const footprint = rectangle(between(next, 0.1, 0.7), between(next, 0.1, 0.7), planPoint(between(next, 2.4, 4), between(next, 0.3, 4)));
    const kind = next();
    if (kind < 0.4) return { kind: 'rack', footprint, bottom_m: 0, top_m: between(next, 1.6, 2.34) };
    if (kind < 0.6) return { kind: 'column', footprint, bottom_m: 0, top_m: height_m };
    if (kind > 0.92) return { kind: 'live-part', footprint, bottom_m: 0, top_m: between(next, 1.9, 2.3), voltage_V: 277 };
    return { kind: 'duct', footprint, bottom_m: between(next, 2.2, 2.5), top_m: height_m };
  });
  const source = at3(0.2, 0.6, run_m);
  const runs = hasTwo
    ? [
        { places: [source, at3(0.2, y, run_m), at3(x, y, run_m)] },
        { places: [at3(x, y, run_m), at3(x, y - second_m / 2, run_m), at3(x, y - second_m / 2, z)] },
        { places: [at3(x, y, run_m), at3(x, y + second_m, run_m), at3(x, y + second_m, z)] },
      ]
    : [{ places: [source, at3(0.2, y, run_m), at3(x, y, run_m), at3(x, y, z)] }];
  const nozzles = hasTwo
    ? [
        { at: at3(x, y - second_m / 2, z), holes_rad },
        { at: at3(x, y + second_m, z), holes_rad },
      ]
    : [{ at: at3(x, y, z), holes_rad }];
  const zone = next() < 0.5 ? { ceilingZones: { z1: { id: 'z1', name: 'Zone', outline: rectangle(1.2, 1.1, planPoint(between(next, 1.5, 3), between(next, 1.5, 3))).map((p) => ({ x: p.x, y: p.y })), height_m: between(next, 2.2, 2.9) } } } : {};
  const slope = next() < 0.2 ? { slope: { at: { x: 2, y: 2 }, direction_rad: between(next, 0, 6), rise: 0.08 } } : {};
  return frozen(
    layout({
      room,
      height_m,
      nozzles,
      runs,
      obstructions: things,
      limits: {
        nozzleToWall_m: between(next, 0.1, 0.5),
        freeJet_m: between(next, 0.2, 0.9),
        cornerZone_m: between(next, 0.5, 1.5),
        cornerAngle_rad: between(next, 0.1, 0.4),
        nearWallZone_m: between(next, 0.3, 0.9),
        nearWallAngle_rad: between(next, 0.1, 0.6),
        // Left to the trials of every rule, which have a test of their own.
        nozzleReach_m: 20,
        nozzleArea_m2: 400,
        pathLength_m: next() < 0.5 ? between(next, 5, 9) : 30,
      },
      footprint: { shape: next() < 0.5 ? 'circle' : 'rectangle', radius_m: between(next, 5, 9), length_m: between(next, 8, 14), width_m: between(next, 8, 14), source: 'test' } as never,
      enclosure: { ...zone, ...slope },
    }),
  );
}
