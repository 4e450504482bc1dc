import type { DerivedNetwork, DerivedPipe } from '../../derived/derived.ts';
import { angleBetween3_rad, direction3 } from '../../geometry/vector3.ts';
import { SAME_PLACE_m } from '../../geometry/tolerance.ts';
import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import type { FlowStretch } from '../discharge/discharge.ts';
import { type LossKind, contractionLoss, fittingLoss } from '../formulas/fitting-losses.ts';

/** A network as a tree of stretches between the nodes where something happens to the flow. */
export interface FlowTree {
  /** Plan node of each flow node; the first is the source. */
  readonly nodeIds: readonly string[];
  readonly stretches: readonly FlowStretch[];
}

/** A leg that goes on within this of straight is the run of a tee [rad]. */
const STRAIGHT_rad = Math.PI / 6;

const upstreamNode = (pipe: DerivedPipe): string => (pipe.from === pipe.network.network.nodes[pipe.pipe.from]?.at ? pipe.pipe.from : pipe.pipe.to);
const downstreamNode = (pipe: DerivedPipe): string => (upstreamNode(pipe) === pipe.pipe.from ? pipe.pipe.to : pipe.pipe.from);

/** Loss of coming from one pipe into the next at a node with this many outgoing pipes, on the velocity head of the next. */
function lossBetween(before: DerivedPipe | undefined, next: DerivedPipe, outgoing: number, { lossSet }: BasisOfDesign): number {
  if (!before) return 0;
  const [come, go] = [direction3(before.from, before.to, SAME_PLACE_m), direction3(next.from, next.to, SAME_PLACE_m)];
  const turn_rad = come && go ? angleBetween3_rad(come, go) : 0;
  const kinds: LossKind[] = [];
  if (outgoing > 1) kinds.push(turn_rad < STRAIGHT_rad ? 'tee-run' : 'tee-branch');
  else if (turn_rad > (3 * Math.PI) / 8) kinds.push('elbow-90');
  else if (turn_rad > Math.PI / 180) kinds.push('elbow-45');
  const losses = kinds.reduce((sum, kind) => sum + fittingLoss(lossSet, kind, next.pipe.size, next.bore_m).lossCoefficient, 0);
  return losses + (next.bore_m < before.bore_m ? contractionLoss(before.bore_m, next.bore_m) : 0);
}

/**
 * The stretches of a network without faults: pipes that follow each other with one bore are one stretch, which ends
 * where flow parts, the bore changes or a nozzle sits. A bend of any angle counts as the next larger elbow.
 * @throws {RangeError} a fitting that the loss set does not have
 */
export function flowTreeOf(network: DerivedNetwork, basis: BasisOfDesign): FlowTree {
  const outgoing = new Map<string, DerivedPipe[]>();
  for (const pipe of network.pipes) {
    const node = upstreamNode(pipe);
    outgoing.set(node, [...(outgoing.get(node) ?? []), pipe]);
  }
  const ends = new Set(network.nozzles.map(({ nozzle }) => nozzle.node));
  const source = network.network.source ?? '';
  const nodeIds = [source];
  const stretches: FlowStretch[] = [];
  const walks: { readonly from: number; readonly pipe: DerivedPipe; readonly before: DerivedPipe | undefined }[] = (outgoing.get(source) ?? []).map((pipe) => ({ from: 0, pipe, before: undefined }));
  for (let walk = walks.shift(); walk; walk = walks.shift()) {
    let { pipe, before } = walk;
    let length_m = 0;
    let lossFactor = 0;
    let legs = outgoing.get(upstreamNode(pipe)) ?? [];
    for (;;) {
      length_m += pipe.length_m;
      lossFactor += lossBetween(before, pipe, legs.length, basis);
      const node = downstreamNode(pipe);
      legs = outgoing.get(node) ?? [];
      const [next] = legs;
      if (legs.length !== 1 || !next || ends.has(node) || next.bore_m !== pipe.bore_m) {
        const to = nodeIds.push(node) - 1;
        stretches.push({ from: walk.from, to, length_m, bore_m: pipe.bore_m, roughness_m: basis.pipeRoughness_m, lossFactor });
        for (const leg of legs) walks.push({ from: to, pipe: leg, before: pipe });
        break;
      }
      before = pipe;
      pipe = next;
    }
  }
  return { nodeIds, stretches };
}
