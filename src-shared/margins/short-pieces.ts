import { effectiveThread_m } from '../calculations/formulas/pipe-threads.ts';
import type { Region } from '../derived/polygon-sums.ts';
import { fillOf } from '../derived/polygon-sums.ts';
import { clipToHalfPlane } from '../geometry/half-plane.ts';
import { ringAround } from '../geometry/round-rings.ts';
import { type PlanPoint, distance_m, planPoint } from '../geometry/point.ts';
import { type Piece, usualPiecesOf } from '../take-off/pieces-of.ts';
import { followKindOf } from './follow-kind.ts';
import { halfWindow } from './half-window.ts';
import { type MovedPipe, isParallel } from './moved-pipes.ts';
import type { NozzleMotion } from './nozzle-motion.ts';
import { type Forbidden, HAIR_m, type Site } from './site.ts';

/** Two places nearer than this are one to the program: a run must stay longer [m]. */
const JOIN_m = 0.001;
/** A run is square to another when it goes no farther along it than this [m]. */
const SQUARE_m = 1e-6;

/** Centre to centre, the least that a piece can be so that it is threaded at both ends [m]; undefined where it cannot be told here. */
function leastOf_m({ from, to, joint, size }: Piece): number | undefined {
  const ends = [from.takeOff, to.takeOff];
  if (from.node === null || to.node === null || ends.some((end) => end.isKnown && end.isOutside)) return undefined;
  const taken_m = ends.reduce((sum, end) => sum + (end.isKnown ? end.takeOff_m : 0), 0);
  const engaged_m = ends.reduce((sum, end) => sum + (end.isKnown ? end.engagement_m : 0), 0);
  const threads_m = joint === 'threaded' ? 2 * effectiveThread_m(size) : 0;
  return taken_m + Math.max(threads_m, ends.every(({ isKnown }) => isKnown) ? engaged_m : 0);
}

/** Where the nozzle must not stand so that a pipe stays as long as this. */
function tooShort(site: Site, { at }: NozzleMotion, { from, to, stretch, way }: MovedPipe, least_m: number, mayTurnBack: boolean): Region {
  const length_m = distance_m(from, to);
  const flat_m = Math.sqrt(Math.max(0, least_m ** 2 - (to.z - from.z) ** 2)) + HAIR_m;
  if (stretch.kind === 'goes' || stretch.kind === 'backs') {
    // Where the moved end would lie on the other one.
    const sign = stretch.kind === 'goes' ? 1 : -1;
    const meet: PlanPoint = planPoint(at.x + sign * (from.x - to.x), at.y + sign * (from.y - to.y));
    return way ? fillOf([ringAround(meet, flat_m)]) : [];
  }
  if ((stretch.kind !== 'slides' && stretch.kind !== 'shrinks') || !way || !isParallel(stretch.along, way)) return [];
  // length + way·shift < least
  const sign = stretch.kind === 'slides' ? 1 : -1;
  const [x, y] = [sign * way.x, sign * way.y];
  const here_m = x * at.x + y * at.y - length_m;
  const short = halfWindow(site, { x, y, limit: here_m + flat_m });
  return mayTurnBack ? short.map((ring) => clipToHalfPlane(ring, { x: -x, y: -y, limit: flat_m - here_m })).filter((ring) => ring.length > 0) : short;
}

/**
 * Whether a run may lead the other way when the nozzle is put beyond its far end: it goes with the nozzle at one end, and turns a
 * corner at the other, so that it only leaves that elbow on its other side.
 */
function isTurnable({ nozzle: { network: { network } } }: Site, { pipe, fromFollow, toFollow, way }: MovedPipe): boolean {
  const [fromKind, toKind] = [followKindOf(fromFollow).kind, followKindOf(toFollow).kind];
  if (!way || (fromKind === 'goes') === (toKind === 'goes')) return false;
  const [near, far] = fromKind === 'goes' ? [pipe.from, pipe.to] : [pipe.to, pipe.from];
  const others = (node: string) => Object.values(network.pipes).filter(({ id, from, to }) => id !== pipe.id && (from === node || to === node));
  const isSquareAt = (node: string): boolean => {
    const at = network.nodes[node]?.at;
    const ends = others(node).map(({ from, to }) => network.nodes[from === node ? to : from]?.at);
    return at !== undefined && ends.every((end) => end !== undefined && Math.abs((end.x - at.x) * way.x + (end.y - at.y) * way.y) <= SQUARE_m);
  };
  // A nipple that is screwed on in the line of the run would come to lie in it.
  return others(far).length === 1 && isSquareAt(far) && isSquareAt(near);
}

/**
 * P16, and what the program refuses: the places to which a nozzle cannot be moved because a piece of pipe would become too
 * short to be threaded at both ends, or would turn back on itself. Beyond a square corner a run may lead the other way.
 */
export function shortPieces(site: Site, motion: NozzleMotion, moved: readonly MovedPipe[]): Forbidden {
  const pieces = usualPiecesOf(site.nozzle.network).filter(({ basis, isTooShort }) => basis === 'drawn' && !isTooShort);
  const region = moved.flatMap((each): Region => {
    const piece = pieces.find(({ pipes }) => pipes.includes(each.pipe.id));
    const piece_m = (piece && leastOf_m(piece)) ?? JOIN_m;
    // What the other pipes of the piece are long is not asked of this one.
    const others_m = piece && piece.pipes.length > 1 ? piece.centreToCentre_m - Math.hypot(distance_m(each.from, each.to), each.to.z - each.from.z) : 0;
    return tooShort(site, motion, each, Math.max(JOIN_m, piece_m - others_m), others_m === 0 && isTurnable(site, each));
  });
  return { rule: 'P16', region };
}
