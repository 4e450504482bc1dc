import { meetingOf, distanceToSegment_m } from '../geometry/segment.ts';
import type { IsoPlace } from './project.ts';

/** A drawn pipe with its end nodes. */
export interface DrawnPiece {
  readonly from: string;
  readonly to: string;
  readonly a: IsoPlace;
  readonly b: IsoPlace;
}

/** Price of two pipes that cross or lie over each other, against one for two that all but touch. */
const CROSSED = 4;
/** Two pipes that leave a node closer than this run over each other [rad]. */
const SAME_WAY_rad = 0.15;

const awayFrom = ({ from, a, b }: DrawnPiece, node: string): number => (from === node ? Math.atan2(b.y - a.y, b.x - a.x) : Math.atan2(a.y - b.y, a.x - b.x));
const length = ({ a, b }: DrawnPiece): number => Math.hypot(b.x - a.x, b.y - a.y);

function pairPrice(one: DrawnPiece, other: DrawnPiece, gap: number): number {
  const shared = one.from === other.from || one.from === other.to ? one.from : one.to === other.from || one.to === other.to ? one.to : undefined;
  if (shared !== undefined) {
    if (length(one) === 0 || length(other) === 0) return 0;
    const turn = awayFrom(one, shared) - awayFrom(other, shared);
    return Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn))) < SAME_WAY_rad ? CROSSED : 0;
  }
  const isFar =
    Math.max(one.a.x, one.b.x) + gap < Math.min(other.a.x, other.b.x) ||
    Math.max(other.a.x, other.b.x) + gap < Math.min(one.a.x, one.b.x) ||
    Math.max(one.a.y, one.b.y) + gap < Math.min(other.a.y, other.b.y) ||
    Math.max(other.a.y, other.b.y) + gap < Math.min(one.a.y, one.b.y);
  if (isFar) return 0;
  if (meetingOf(one, other)) return CROSSED;
  const apart = Math.min(distanceToSegment_m(one.a, other), distanceToSegment_m(one.b, other), distanceToSegment_m(other.a, one), distanceToSegment_m(other.b, one));
  return apart < gap ? 1 - apart / gap : 0;
}

/** How hard drawn pipes are to tell apart: 0 when none crosses another or comes nearer to it than `gap`. */
export function crowding(pieces: readonly DrawnPiece[], gap: number): number {
  let price = 0;
  pieces.forEach((one, i) => {
    for (let k = i + 1; k < pieces.length; k += 1) {
      const other = pieces[k];
      if (other) price += pairPrice(one, other, gap);
    }
  });
  return price;
}
