import { blockersOf } from '../derived/nozzles.ts';
import type { HungNozzle } from '../derived/derived.ts';
import type { PlanPoint } from '../geometry/point.ts';
import type { Site } from './site.ts';

/** The nozzle as if it stood at another place of its space, its height and its holes as drawn: for what looks at it alone. */
export function standIn({ nozzle: { network: _, ...hung }, at, space }: Site, to: PlanPoint): HungNozzle {
  const there = { x: to.x, y: to.y, z: at.z };
  return { ...hung, at: there, localCeiling_m: space.ceilingAt_m(there), blockers: blockersOf(space, there) };
}
