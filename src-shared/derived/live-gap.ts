import { boundsOf } from '../geometry/outline.ts';
import type { PlanPoint3 } from '../geometry/point.ts';
import { segmentToPrism_m } from '../geometry/prism.ts';
import type { Cylinder } from '../model/plan.ts';
import { assemblyRunOf } from './assembly-run.ts';
import { clashPipesOf } from './clash-pipe.ts';
import type { DerivedNetwork, DerivedNozzle, Solid } from './derived.ts';
import { remembered } from './remember.ts';

/** A part of the system as a thing in space: its outside around a straight axis, with round ends. */
export interface SystemPart {
  /** As a sentence names it: "nozzle N2", "the 3/4 in pipe". */
  readonly name: string;
  readonly from: PlanPoint3;
  readonly to: PlanPoint3;
  readonly outside_m: number;
  /** The nozzle whose drop it is, or which it is. */
  readonly nozzle: DerivedNozzle | undefined;
}

/** A cylinder from the floor to its valve outlet; none while its diameter or outlet is not known. */
function cylinderPart({ name, at }: Cylinder, { profile }: DerivedNetwork): SystemPart[] {
  const { cylinderDiameter_m, outletHeight_m } = profile?.limits ?? {};
  if (!cylinderDiameter_m || !outletHeight_m) return [];
  return [{ name: `cylinder ${name}`, from: { x: at.x, y: at.y, z: 0 }, to: { x: at.x, y: at.y, z: outletHeight_m.value }, outside_m: cylinderDiameter_m.value, nozzle: undefined }];
}

/**
 * Pipe with its insulation, nozzles, cylinders and the parts of the discharge assembly of a network. A nozzle and a part of
 * the assembly are taken as thick as the thickest pipe that meets them, for nothing else is known of their outside.
 */
export const systemPartsOf = remembered((network: DerivedNetwork): readonly SystemPart[] => {
  const pipes = clashPipesOf(network);
  const byNode = new Map<string, DerivedNozzle>(network.nozzles.map((nozzle) => [nozzle.nozzle.node, nozzle]));
  const outsideAt_m = new Map<string, number>();
  for (const { pipe, outside_m } of pipes) for (const node of [pipe.from, pipe.to]) outsideAt_m.set(node, Math.max(outsideAt_m.get(node) ?? 0, outside_m));
  const source_m = (network.network.source !== null && outsideAt_m.get(network.network.source)) || 0;
  return [
    ...network.nozzles.flatMap((nozzle): SystemPart[] => (nozzle.at ? [{ name: `nozzle ${nozzle.nozzle.name}`, from: nozzle.at, to: nozzle.at, outside_m: outsideAt_m.get(nozzle.nozzle.node) ?? 0, nozzle }] : [])),
    ...pipes.map(({ pipe, from, to, outside_m }): SystemPart => ({ name: `the ${pipe.size} in pipe`, from, to, outside_m, nozzle: byNode.get(pipe.from) ?? byNode.get(pipe.to) })),
    ...assemblyRunOf(network).pieces.flatMap(({ part, curve }) => curve.slice(1).map((to, i): SystemPart => ({ name: part.name || 'the discharge assembly', from: curve[i] ?? to, to, outside_m: source_m, nozzle: undefined }))),
    ...Object.values(network.network.cylinders).flatMap((cylinder) => cylinderPart(cylinder, network)),
  ];
});

/** Gap in space between the outside of a part and a solid [m]; negative by as much as the outside reaches in. */
export const gapTo_m = ({ from, to, outside_m }: Pick<SystemPart, 'from' | 'to' | 'outside_m'>, solid: Solid): number => segmentToPrism_m({ a: from, b: to }, solid) - outside_m / 2;

/** The part nearest to a solid; undefined for a network of which nothing is drawn. */
export function nearestPart(parts: readonly SystemPart[], solid: Solid): { readonly part: SystemPart; readonly gap_m: number } | undefined {
  let nearest: { readonly part: SystemPart; readonly gap_m: number } | undefined;
  const { bounds, bottom_m, top_m } = solid;
  for (const part of parts) {
    const { minX, minY, maxX, maxY } = boundsOf([part.from, part.to]);
    const [low_m, high_m] = part.from.z < part.to.z ? [part.from.z, part.to.z] : [part.to.z, part.from.z];
    // No nearer than their boxes: most parts are told apart by these.
    const boxes_m = Math.hypot(Math.max(0, bounds.minX - maxX, minX - bounds.maxX), Math.max(0, bounds.minY - maxY, minY - bounds.maxY), Math.max(0, bottom_m - high_m, low_m - top_m));
    if (nearest && boxes_m - part.outside_m / 2 >= nearest.gap_m) continue;
    const gap_m = gapTo_m(part, solid);
    if (!nearest || gap_m < nearest.gap_m) nearest = { part, gap_m };
  }
  return nearest;
}
