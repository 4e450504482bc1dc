import { type PlanPoint3, distance_m } from '../geometry/point.ts';
import type { Network, Pipe } from '../model/plan.ts';
import { nodeIn } from './lookup.ts';
import { asItStands, nozzleAt, otherEnd, pipesAt, refuseShortPipes } from './pipe-joins.ts';
import { JOIN_m, soundPoint3 } from './sound-value.ts';

/** Whether a pipe stands upright: its ends lie over each other on the plan. */
export const isUpright = (network: Network, { from, to }: Pipe): boolean => distance_m(nodeIn(network, from).at, nodeIn(network, to).at) < JOIN_m;

/** Whether pipe ends here on purpose: in a dirt trap, a drain, a cap or a plug. */
const isClosedEnd = (network: Network, node: string): boolean => nodeIn(network, node).part !== null && !nozzleAt(network, node) && pipesAt(network, node).length === 1;

/**
 * The node with all nodes that upright pipes join to it: they keep over each other when one of them moves on the plan.
 * The nipple of a dirt trap or drain goes with the tee that it is screwed into.
 */
export function columnOf(network: Network, node: string): Set<string> {
  const column = new Set([node]);
  for (const member of column) {
    for (const pipe of pipesAt(network, member)) if (isUpright(network, pipe) || isClosedEnd(network, otherEnd(pipe, member))) column.add(otherEnd(pipe, member));
  }
  return column;
}

interface Slide {
  readonly dx: number;
  readonly dy: number;
}

const SQUARE_SLACK_m = 1e-6;

/** The part of a shift that is square to a run, from its end at `from`. */
function acrossRun(from: PlanPoint3, to: PlanPoint3, { dx, dy }: Slide): Slide {
  const length_m = distance_m(from, to);
  const [ux, uy] = [(to.x - from.x) / length_m, (to.y - from.y) / length_m];
  const along_m = dx * ux + dy * uy;
  return { dx: dx - along_m * ux, dy: dy - along_m * uy };
}

const isNothing = ({ dx, dy }: Slide): boolean => Math.hypot(dx, dy) <= SQUARE_SLACK_m;

/**
 * How the elbows next to a moved part slide along so that its runs keep their direction: an elbow whose other
 * run lies in the direction of the slide only makes that run longer or shorter. Anything else (a branch, a
 * nozzle, the source, a run that would turn back) stays, and the run to it goes askew.
 */
function slidesFor(network: Network, moving: ReadonlySet<string>, shift: Slide): Map<string, Slide> {
  const slides = new Map<string, Slide>();
  const tried = new Set<string>();
  for (const pipe of Object.values(network.pipes)) {
    if (moving.has(pipe.from) === moving.has(pipe.to) || isUpright(network, pipe)) continue;
    const near = moving.has(pipe.from) ? pipe.from : pipe.to;
    const far = otherEnd(pipe, near);
    const wanted = acrossRun(nodeIn(network, near).at, nodeIn(network, far).at, shift);
    if (isNothing(wanted) || tried.has(far)) continue;
    const column = columnOf(network, far);
    for (const member of column) tried.add(member);
    if (canSlide(network, column, pipe, wanted)) for (const member of column) slides.set(member, wanted);
  }
  return slides;
}

function canSlide(network: Network, column: ReadonlySet<string>, by: Pipe, slide: Slide): boolean {
  let runs = 0;
  for (const member of column) {
    if (network.source === member || nozzleAt(network, member)) return false;
    for (const pipe of pipesAt(network, member)) {
      if (pipe.id === by.id || column.has(otherEnd(pipe, member))) continue;
      const from = nodeIn(network, member).at;
      const to = nodeIn(network, otherEnd(pipe, member)).at;
      const rest_m = distance_m(from, to) - (slide.dx * (to.x - from.x) + slide.dy * (to.y - from.y)) / distance_m(from, to);
      if (!isNothing(acrossRun(from, to, slide)) || rest_m < JOIN_m) return false;
      runs += 1;
    }
  }
  return runs === 1;
}

/**
 * Shifts nodes on the plan. Upright pipes stay upright: whatever stands over or under a node goes with it.
 * Runs stretch, and where an elbow next to it can slide along, they keep their direction too.
 * Refuses when a pipe would have no length.
 * @returns every node that moved
 */
export function shiftNodes(network: Network, nodes: Iterable<string>, dx: number, dy: number): Set<string> {
  const still = asItStands(network);
  const moving = new Set<string>();
  for (const node of nodes) if (!moving.has(node)) for (const member of columnOf(still, node)) moving.add(member);
  if (dx === 0 && dy === 0) return moving;
  const slides = slidesFor(still, moving, { dx, dy });
  for (const id of moving) slides.set(id, { dx, dy });
  for (const [id, slide] of slides) {
    const node = nodeIn(network, id);
    node.at = soundPoint3({ x: node.at.x + slide.dx, y: node.at.y + slide.dy, z: node.at.z });
  }
  const moved = new Set(slides.keys());
  refuseShortPipes(network, moved);
  return moved;
}
