import fc from 'fast-check';
import type { Plan } from '#shared/model/plan';

/** A way to lay the same building elsewhere: mirrored east-west when asked, turned about the origin, then shifted. */
export interface Placing {
  readonly angle_rad: number;
  readonly dx: number;
  readonly dy: number;
  readonly isMirrored: boolean;
}

/** Any placing within a few hundred metres. */
export const anyPlacing = fc.record({
  angle_rad: fc.integer({ min: 0, max: 6283 }).map((milli) => milli / 1000),
  dx: fc.integer({ min: -300, max: 300 }),
  dy: fc.integer({ min: -300, max: 300 }),
  isMirrored: fc.boolean(),
});

/** Where a place goes. */
export function movedPlace<P extends { x: number; y: number }>(p: P, { angle_rad, dx, dy, isMirrored }: Placing): P {
  const x = isMirrored ? -p.x : p.x;
  return { ...p, x: x * Math.cos(angle_rad) - p.y * Math.sin(angle_rad) + dx, y: x * Math.sin(angle_rad) + p.y * Math.cos(angle_rad) + dy };
}

/** The same plan laid elsewhere. */
export function movedPlan(source: Plan, placing: Placing): Plan {
  const plan = structuredClone(source);
  const move = <P extends { x: number; y: number }>(p: P): P => movedPlace(p, placing);
  const turn = (angle_rad: number): number => (placing.isMirrored ? Math.PI - angle_rad : angle_rad) + placing.angle_rad;
  for (const level of Object.values(plan.levels)) {
    for (const enclosure of Object.values(level.enclosures)) {
      enclosure.outline = enclosure.outline.map(move);
      enclosure.holes = enclosure.holes.map((hole) => hole.map(move));
      for (const zone of Object.values(enclosure.ceilingZones)) zone.outline = zone.outline.map(move);
      if (enclosure.slope) enclosure.slope = { ...enclosure.slope, at: move(enclosure.slope.at), direction_rad: turn(enclosure.slope.direction_rad) };
    }
    for (const obstruction of Object.values(level.obstructions)) obstruction.footprint = obstruction.footprint.map(move);
  }
  for (const network of Object.values(plan.networks)) {
    for (const node of Object.values(network.nodes)) node.at = move(node.at);
    for (const nozzle of Object.values(network.nozzles)) {
      nozzle.holes_rad = nozzle.holes_rad.map((hole_rad) => (placing.isMirrored ? -hole_rad : hole_rad));
      nozzle.rotation_rad = turn(nozzle.rotation_rad);
    }
  }
  return plan;
}
