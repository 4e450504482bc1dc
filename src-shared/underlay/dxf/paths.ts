import { fillRings } from '../fill-rings.ts';
import { pushBulge, type Run } from '../flatten.ts';
import type { LineWork } from '../line-work.ts';
import { IDENTITY, type Matrix, transformed } from '../matrix.ts';

/** A corner of a path and what the piece that leaves it looks like. */
export interface PathCorner {
  readonly x: number;
  readonly y: number;
  readonly bulge: number;
  readonly startWidth: number;
  readonly endWidth: number;
}

/** Longest mitre, in half widths: sharper corners are cut. */
const LONGEST_MITRE = 4;

/** Middle line of a path with half its width at each place. */
function middleLine(corners: readonly PathCorner[], isClosed: boolean, tolerance: number): { places: Run; halves: number[] } {
  const places: Run = [];
  const halves: number[] = [];
  const [first] = corners;
  if (!first) return { places, halves };
  places.push(first.x, first.y);
  halves.push(first.startWidth / 2);
  for (let i = 0; i < corners.length; i += 1) {
    const from = corners[i];
    const to = corners[i + 1] ?? (isClosed ? first : undefined);
    if (!from || !to) break;
    const before = places.length / 2;
    pushBulge(places, from.x, from.y, to.x, to.y, from.bulge, tolerance);
    const added = places.length / 2 - before;
    for (let k = 1; k <= added; k += 1) halves.push((from.startWidth + ((from.endWidth - from.startWidth) * k) / added) / 2);
  }
  return { places, halves };
}

/** Both faces of a wide path as one ring, or as two when it is closed. */
export function wideRings(places: readonly number[], halves: readonly number[], isClosed: boolean): Float64Array[] {
  const line: { x: number; y: number; half: number }[] = [];
  for (let i = 0; 2 * i < places.length; i += 1) {
    const x = places[2 * i] ?? 0;
    const y = places[2 * i + 1] ?? 0;
    const last = line[line.length - 1];
    if (!last || Math.hypot(x - last.x, y - last.y) > 1e-9) line.push({ x, y, half: halves[i] ?? 0 });
  }
  const [first] = line;
  const end = line[line.length - 1];
  if (isClosed && line.length > 2 && first && end && Math.hypot(first.x - end.x, first.y - end.y) <= 1e-9) line.pop();
  if (line.length < 2) return [];
  const left: number[] = [];
  const right: number[] = [];
  const direction = (i: number, j: number): [number, number] | undefined => {
    const a = line[i];
    const b = line[j];
    if (!a || !b) return undefined;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    return [(b.x - a.x) / length, (b.y - a.y) / length];
  };
  line.forEach(({ x, y, half }, i) => {
    const before = direction(i > 0 ? i - 1 : isClosed ? line.length - 1 : -1, i);
    const after = direction(i, i + 1 < line.length ? i + 1 : isClosed ? 0 : -1);
    const [ux, uy] = before ?? after ?? [1, 0];
    const [vx, vy] = after ?? [ux, uy];
    const sumX = -uy - vy;
    const sumY = ux + vx;
    // |sum|² / 2 = 1 + cos of the turn: the mitre is the sum of both normals over it.
    const share = Math.max((sumX * sumX + sumY * sumY) / 2, 2 / LONGEST_MITRE ** 2);
    left.push(x + (sumX / share) * half, y + (sumY / share) * half);
    right.push(x - (sumX / share) * half, y - (sumY / share) * half);
  });
  if (isClosed) return [Float64Array.from(left), Float64Array.from(right)];
  for (let i = right.length - 2; i >= 0; i -= 2) left.push(right[i] ?? 0, right[i + 1] ?? 0);
  return [Float64Array.from(left)];
}

/** Draws a path of straight and bulged pieces; a wide one by both its faces, filled between. */
export function drawPath(work: LineWork, plane: Matrix, corners: readonly PathCorner[], isClosed: boolean, tolerance: number): void {
  const { places, halves } = middleLine(corners, isClosed, tolerance);
  const onPlan = (ring: ArrayLike<number>): ArrayLike<number> => (plane === IDENTITY ? ring : transformed(plane, ring));
  if (!halves.some((half) => half > 0)) {
    work.polyline(onPlan(places), isClosed);
    return;
  }
  const faces = wideRings(places, halves, isClosed).map(onPlan);
  for (const face of faces) work.polyline(face, true);
  for (const ring of fillRings(faces, 'evenodd')) work.fill(ring);
}
