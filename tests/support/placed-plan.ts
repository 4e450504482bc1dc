import type { PlanPoint } from '#shared/geometry/point';
import type { Plan } from '#shared/model/plan';
import { type Placing, placed, placedAngle_rad } from './layout.ts';

/** A place of the plan file. */
const isPlace = (thing: unknown): thing is PlanPoint => typeof thing === 'object' && thing !== null && typeof Reflect.get(thing, 'x') === 'number' && typeof Reflect.get(thing, 'y') === 'number';

/** Directions on the plan by their name in the file. What is turned with its owner, or measured against something, is none of them. */
const DIRECTIONS: ReadonlySet<string> = new Set(['back_rad', 'front_rad', 'facing_rad', 'outlet_rad', 'direction_rad']);

/**
 * The same plan laid elsewhere, whatever is on it: every place and every direction goes along. Rotations of nozzles stay 0
 * when they are 0, and their holes turn.
 */
export function placedPlan(source: Plan, placing: Placing): Plan {
  const go = (thing: unknown, name: string): unknown => {
    if (Array.isArray(thing)) return name === 'holes_rad' ? thing.map((hole_rad: number) => placedAngle_rad(hole_rad, placing)) : thing.map((each) => go(each, name));
    if (typeof thing === 'number') return DIRECTIONS.has(name) ? placedAngle_rad(thing, placing) : thing;
    if (typeof thing !== 'object' || thing === null) return thing;
    const inner = Object.fromEntries(Object.entries(thing).map(([key, value]) => [key, go(value, key)]));
    return isPlace(inner) ? placed(inner, placing) : inner;
  };
  const moved = go({ levels: source.levels, networks: source.networks }, '') as Pick<Plan, 'levels' | 'networks'>;
  for (const network of Object.values(moved.networks)) {
    for (const nozzle of Object.values(network.nozzles)) if (placing.isMirrored) nozzle.rotation_rad = -nozzle.rotation_rad;
  }
  return { ...structuredClone(source), ...moved };
}

/** Turns and mirrorings that a rule is tried with one by one. */
export const PLACINGS: readonly Placing[] = [
  { angle_rad: 0, dx: 0, dy: 0, isMirrored: false },
  { angle_rad: Math.PI / 2, dx: 0, dy: 0, isMirrored: false },
  { angle_rad: 2.1, dx: 30, dy: -12, isMirrored: false },
  { angle_rad: 0, dx: 0, dy: 0, isMirrored: true },
  { angle_rad: 0.7, dx: -200, dy: 75, isMirrored: true },
];
