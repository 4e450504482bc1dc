import { liveClearance_m } from '../calculations/formulas/live-clearance.ts';
import { clashPass } from '../derived/clash-pass.ts';
import { clashPipesOf } from '../derived/clash-pipe.ts';
import { standingOf } from '../derived/clash-standing.ts';
import { nearestPart, systemPartsOf } from '../derived/live-gap.ts';
import { convexHull } from '../geometry/convex-hull.ts';
import { clipToHalfPlane } from '../geometry/half-plane.ts';
import type { Outline } from '../geometry/outline.ts';
import { type OverFace, faceHeight_m } from '../geometry/over-face.ts';
import type { PlanPoint } from '../geometry/point.ts';
import { trianglesOf } from '../geometry/triangles.ts';
import { LENGTH_SLACK_m } from '../geometry/tolerance.ts';
import { pipeOutside_m } from '../profile/pipe-table.ts';
import type { MovedPipe } from './moved-pipes.ts';
import type { NozzleMotion } from './nozzle-motion.ts';
import type { Site } from './site.ts';

/** A convex part of something that pipe must not run into, between two heights [m]. */
export interface PipeScreen {
  readonly corners: readonly PlanPoint[];
  readonly bottom_m: number;
  readonly top_m: number;
  /** Half its thickness where it is pipe [m]. */
  readonly radius_m: number;
}

const partsOf = (footprint: Outline): (readonly PlanPoint[])[] => (convexHull(footprint).length === footprint.length ? [footprint] : trianglesOf(footprint));

/** Half the thickness of a pipe with its insulation [m]. */
export const pipeReach_m = ({ pipe: { size, insulation_m } }: MovedPipe): number => pipeOutside_m(size) / 2 + insulation_m;

/** A face of a ceiling and all above it; of a slope the part that comes down to a pipe of this height. Holes of a room are taken as ceiling. */
function underFace(face: OverFace, pipe: MovedPipe): PipeScreen[] {
  const [outer] = face.rings;
  if (!outer) return [];
  if (face.east === 0 && face.north === 0) return partsOf(outer).map((corners) => ({ corners, bottom_m: face.at.z, top_m: Infinity, radius_m: 0 }));
  const reach_m = pipeReach_m(pipe);
  const low_m = Math.max(pipe.from.z, pipe.to.z) + reach_m * Math.hypot(1, face.east, face.north);
  const low = clipToHalfPlane(outer, { x: face.east, y: face.north, limit: low_m - faceHeight_m(face, { x: 0, y: 0 }) });
  return low.length === 0 ? [] : partsOf(low).map((corners) => ({ corners, bottom_m: -Infinity, top_m: Infinity, radius_m: -reach_m }));
}

/** Live parts, grown by the clearance that their voltage asks for, to which the network keeps it as drawn. */
export const livePartsFor = ({ derived, nozzle: { network } }: Site): PipeScreen[] =>
  derived.solids.flatMap((solid): PipeScreen[] => {
    const { kind, voltage_V } = solid.obstruction;
    const least_m = kind === 'live-part' && solid.ref.level === network.level.id && voltage_V !== null ? liveClearance_m(voltage_V) : undefined;
    if (least_m === undefined || (nearestPart(systemPartsOf(network), solid)?.gap_m ?? 0) < least_m - LENGTH_SLACK_m) return [];
    return partsOf(solid.footprint).map((corners) => ({ corners, bottom_m: solid.bottom_m, top_m: solid.top_m, radius_m: least_m }));
  });

/** All that a moved pipe may run into and does not touch, cross or join as it is drawn. Floors are left out: a move on the plan goes over them. */
export function pipeScreensOf({ derived, nozzle }: Site, motion: NozzleMotion): (pipe: MovedPipe) => PipeScreen[] {
  const { network } = nozzle;
  const level = network.level.id;
  const things = derived.levels.filter((each) => each.level.id === level).flatMap((each) => standingOf(each));
  const all = derived.networks.filter((each) => each.level.id === level).flatMap((each) => clashPipesOf(each));
  const index = derived.networks.indexOf(network);
  const contacts = new Map((clashPass(derived)[index] ?? []).map((each) => [each.pipe.ref.id, each]));
  const isMoved = (id: string): boolean => {
    const pipe = network.network.pipes[id];
    return pipe !== undefined && (motion.follows.has(pipe.from) || motion.follows.has(pipe.to));
  };
  return (moving) => {
    const pipe = moving.pipe.id;
    const near = contacts.get(pipe);
    const apart = new Set<unknown>([
      ...(near?.beside ?? []).filter(({ why }) => why !== 'told-by-other').map(({ thing }) => (thing.kind === 'pipe' ? thing.pipe : thing)),
      ...(near?.contacts ?? []).filter(({ clearance_m }) => clearance_m < 0).map(({ thing }) => (thing.kind === 'pipe' ? thing.pipe : thing)),
      ...(near?.joined ?? []),
    ]);
    const standing = things.flatMap((thing): PipeScreen[] => {
      if (apart.has(thing)) return [];
      if (thing.kind === 'ceiling') return thing.ceiling.faces.flatMap((face) => underFace(face, moving));
      const prism = thing.kind === 'solid' ? thing.solid : thing.kind === 'wall' ? thing.wall.prism : undefined;
      return prism ? partsOf(prism.footprint).map((corners) => ({ corners, bottom_m: prism.bottom_m, top_m: prism.top_m, radius_m: 0 })) : [];
    });
    const pipes = all.flatMap((other): PipeScreen[] => {
      const isOwn = other.ref.network === network.ref.id;
      if (apart.has(other) || (isOwn && (other.ref.id === pipe || isMoved(other.ref.id)))) return [];
      return [{ corners: [other.from, other.to], bottom_m: Math.min(other.from.z, other.to.z), top_m: Math.max(other.from.z, other.to.z), radius_m: other.outside_m / 2 }];
    });
    return [...standing, ...pipes];
  };
}
