import type { DerivedNetwork, DerivedPipe } from '../../derived/derived.ts';
import { pipeTreeOf } from '../../derived/pipe-tree.ts';
import { SAME_PLACE_m } from '../../geometry/tolerance.ts';
import { type Direction3, angleBetween3_rad, direction3 } from '../../geometry/vector3.ts';
import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import type { FlowStretch } from '../discharge/discharge.ts';
import { type LossKind, contractionLoss, enlargementLoss, fittingLoss } from '../formulas/fitting-losses.ts';

/** A network as a tree of stretches between the nodes where something happens to the flow. */
export interface FlowTree {
  /** Plan node of each flow node; the first is the source. */
  readonly nodeIds: readonly string[];
  readonly stretches: readonly FlowStretch[];
}

const QUARTER_rad = Math.PI / 2;
/** A made fitting takes up this much of a crooked run [rad]. */
const AS_MADE_rad = Math.PI / 180;
/** A leg that goes on within this of straight is the run of a tee [rad]. */
const STRAIGHT_rad = Math.PI / 6;

/** The elbows that a bend counts as: the next larger one; beyond a quarter turn, two. */
function elbowsOf(turn_rad: number): LossKind[] {
  const isWithin = (made_rad: number): boolean => turn_rad <= made_rad + AS_MADE_rad;
  if (isWithin(0)) return [];
  if (isWithin(QUARTER_rad / 2)) return ['elbow-45'];
  if (isWithin(QUARTER_rad)) return ['elbow-90'];
  return isWithin(1.5 * QUARTER_rad) ? ['elbow-90', 'elbow-45'] : ['elbow-90', 'elbow-90'];
}

/** What the flow went through before a pipe: undefined at the source, where nobody knows which way it comes. */
interface Before {
  readonly bore_m: number;
  /** Which way it flowed; undefined while no pipe had any length. */
  readonly heading: Direction3 | undefined;
}

const headingOf = ({ from, to }: DerivedPipe, before: Before | undefined): Direction3 | undefined => direction3(from, to, SAME_PLACE_m) ?? before?.heading;

/** Loss of coming into a pipe at a node that this many pipes leave, on the velocity head in it. */
function lossInto(pipe: DerivedPipe, before: Before | undefined, leaving: number, { lossSet }: BasisOfDesign): number {
  const heading = headingOf(pipe, before);
  const turn_rad = before?.heading && heading ? angleBetween3_rad(before.heading, heading) : undefined;
  const atTee = turn_rad !== undefined && turn_rad < STRAIGHT_rad ? 'tee-run' : 'tee-branch';
  const kinds: LossKind[] = leaving > 1 ? [atTee] : elbowsOf(turn_rad ?? 0);
  const fittings = kinds.reduce((sum, kind) => sum + fittingLoss(lossSet, kind, pipe.pipe.size, pipe.bore_m).lossCoefficient, 0);
  if (!before || before.bore_m === pipe.bore_m) return fittings;
  return fittings + (pipe.bore_m < before.bore_m ? contractionLoss(before.bore_m, pipe.bore_m) : enlargementLoss(before.bore_m, pipe.bore_m));
}

/** Nodes that lead to a nozzle, or have one. */
function liveNodesOf({ network }: DerivedNetwork, upstream: ReadonlyMap<string, string>): ReadonlySet<string> {
  const above = new Map([...upstream].flatMap(([id, node]): [string, string][] => {
    const pipe = network.pipes[id];
    return pipe ? [[pipe.from === node ? pipe.to : pipe.from, node]] : [];
  }));
  const live = new Set<string>();
  for (const { node } of Object.values(network.nozzles)) {
    for (let at: string | undefined = node; at !== undefined && !live.has(at); at = above.get(at)) live.add(at);
  }
  return live;
}

/**
 * The stretches of a network without faults: pipes that follow each other with one bore are one stretch, which ends
 * where flow parts, the bore changes or the pipe ends at its nozzle. A bend of any angle counts as the next larger elbow; every leg
 * that leaves a tee other than straight on as its branch, and so does each where the pipe begins with more than one.
 * @throws {RangeError} a fitting that the loss set does not have
 */
export function flowTreeOf(derived: DerivedNetwork, basis: BasisOfDesign): FlowTree {
  const { network } = derived;
  const { upstream } = pipeTreeOf(network);
  const leaving = new Map<string, DerivedPipe[]>();
  for (const pipe of derived.pipes) {
    const node = upstream.get(pipe.pipe.id) ?? pipe.pipe.from;
    const others = leaving.get(node);
    if (others) others.push(pipe);
    else leaving.set(node, [pipe]);
  }
  const lowerNode = ({ pipe: { id, from, to } }: DerivedPipe): string => (upstream.get(id) === to ? from : to);
  const source = network.source ?? '';
  const nodeIds = [source];
  const stretches: FlowStretch[] = [];

  const live = liveNodesOf(derived, upstream);
  const walks: { readonly from: number; readonly first: DerivedPipe; readonly before: Before | undefined; readonly beside: number }[] = [];
  const leave = (from: number, legs: readonly DerivedPipe[], before: Before | undefined): void => {
    // What leads to no nozzle takes no flow, but it makes a tee of the place.
    for (const first of legs) if (live.has(lowerNode(first))) walks.push({ from, first, before, beside: legs.length });
  };
  leave(0, leaving.get(source) ?? [], undefined);
  for (let walk = walks.shift(); walk; walk = walks.shift()) {
    let pipe = walk.first;
    let lossFactor = lossInto(pipe, walk.before, walk.beside, basis);
    let before: Before = { bore_m: pipe.bore_m, heading: headingOf(pipe, walk.before) };
    let length_m = pipe.length_m;
    let node = lowerNode(pipe);
    let legs = leaving.get(node) ?? [];
    for (let [next] = legs; next && legs.length === 1 && next.bore_m === pipe.bore_m; [next] = legs) {
      lossFactor += lossInto(next, before, 1, basis);
      before = { bore_m: next.bore_m, heading: headingOf(next, before) };
      length_m += next.length_m;
      pipe = next;
      node = lowerNode(pipe);
      legs = leaving.get(node) ?? [];
    }
    const to = nodeIds.push(node) - 1;
    stretches.push({ from: walk.from, to, length_m, bore_m: pipe.bore_m, roughness_m: basis.pipeRoughness_m, lossFactor });
    leave(to, legs, before);
  }
  return { nodeIds, stretches };
}
