import { moveNozzle } from '../commands/move-nozzle.ts';
import type { Outcome } from '../commands/command.ts';
import type { PlanPoint, PlanPoint3 } from '../geometry/point.ts';
import type { Network, Plan, RefOf } from '../model/plan.ts';

/** How a place of the pipe follows the nozzle: a shift (dx, dy) of the nozzle shifts it by (xx·dx + xy·dy, yx·dx + yy·dy). */
export interface Follow {
  readonly xx: number;
  readonly xy: number;
  readonly yx: number;
  readonly yy: number;
}

/** It stays where it is. */
export const STAYS: Follow = { xx: 0, xy: 0, yx: 0, yy: 0 };

/** How the pipe of a network follows one of its nozzles as that is moved on the plan; nodes that stay are left out. */
export interface NozzleMotion {
  readonly network: Network;
  readonly at: PlanPoint3;
  readonly follows: ReadonlyMap<string, Follow>;
}

/** The shift by which the motion is tried [m]. */
const TRIED_m = 0.01;
/** What a place may be off the straight way that it follows [m]. */
const NOISE_m = 1e-8;

/** The plan with a nozzle moved as the program moves it: its drop goes along, the runs to it stretch at right angles where the elbow before can slide. */
export const movedTo = (plan: Plan, { network, id }: RefOf<'nozzle'>, at: PlanPoint, height_m: number): Outcome => moveNozzle({ kind: 'nozzle', network, id }, { x: at.x, y: at.y, z: height_m })(plan);

/**
 * How everything follows a nozzle, found by moving it a little with the program's own command, so that it is that command's
 * answer whatever it comes to do. Places follow along straight lines, for the command shifts and slides them.
 * @returns undefined when the command refuses, makes or takes away pipe, or moves a place along no straight line
 */
export function motionOf(plan: Plan, ref: RefOf<'nozzle'>): NozzleMotion | undefined {
  const network = plan.networks[ref.network];
  const at = network?.nodes[network.nozzles[ref.id]?.node ?? '']?.at;
  if (!network || !at) return undefined;
  const tried = (dx: number, dy: number): ReadonlyMap<string, PlanPoint> | undefined => {
    const outcome = movedTo(plan, ref, { x: at.x + dx, y: at.y + dy }, at.z);
    const nodes = outcome.ok ? outcome.next.networks[ref.network]?.nodes : undefined;
    if (!nodes || Object.keys(nodes).length !== Object.keys(network.nodes).length) return undefined;
    const shifts = new Map<string, PlanPoint>();
    for (const { id, at: before } of Object.values(network.nodes)) {
      const after = nodes[id]?.at;
      if (!after) return undefined;
      if (after !== before) shifts.set(id, { x: (after.x - before.x) / TRIED_m, y: (after.y - before.y) / TRIED_m });
    }
    return shifts;
  };
  const none = { x: 0, y: 0 };
  for (const way of [1, -1]) {
    const east = tried(way * TRIED_m, 0);
    const north = tried(0, way * TRIED_m);
    const both = tried(way * TRIED_m, way * TRIED_m);
    if (!east || !north || !both) continue;
    const follows = new Map<string, Follow>();
    for (const id of new Set([...east.keys(), ...north.keys()])) {
      const [e, n, b] = [east.get(id) ?? none, north.get(id) ?? none, both.get(id) ?? none];
      if (Math.hypot(e.x + n.x - b.x, e.y + n.y - b.y) * TRIED_m > NOISE_m) return undefined;
      // Slides are square: what float noise leaves of a nought or a one goes.
      const clean = (value: number): number => (Math.abs(value - Math.round(value)) < 1e-6 ? Math.round(value) : value);
      follows.set(id, { xx: clean(way * e.x), yx: clean(way * e.y), xy: clean(way * n.x), yy: clean(way * n.y) });
    }
    return { network, at, follows };
  }
  return undefined;
}

/** How a place of the pipe follows. */
export const followOf = ({ follows }: NozzleMotion, node: string): Follow => follows.get(node) ?? STAYS;

/** Where a place that follows goes when the nozzle stands at a place. */
export function followed(motion: NozzleMotion, node: string, to: PlanPoint): PlanPoint3 | undefined {
  const at = motion.network.nodes[node]?.at;
  if (!at) return undefined;
  const { xx, xy, yx, yy } = followOf(motion, node);
  const [dx, dy] = [to.x - motion.at.x, to.y - motion.at.y];
  return { x: at.x + xx * dx + xy * dy, y: at.y + yx * dx + yy * dy, z: at.z };
}

/** The network with the nozzle at a place, nothing but places changed: quickly made, for what looks only at these. */
export function networkAt(motion: NozzleMotion, to: PlanPoint): Network {
  const nodes = { ...motion.network.nodes };
  for (const id of motion.follows.keys()) {
    const node = nodes[id];
    const at = followed(motion, id, to);
    if (node && at) nodes[id] = { ...node, at };
  }
  return { ...motion.network, nodes };
}
