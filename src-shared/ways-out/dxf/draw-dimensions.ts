import { type Datum, fromFace_m } from '../../derived/datum.ts';
import type { DerivedNozzle, Space, WallFace } from '../../derived/derived.ts';
import { isInside } from '../../geometry/outline.ts';
import { type PlanPoint, bearing_rad, distance_m, planPoint, polar } from '../../geometry/point.ts';
import { SAME_PLACE_m } from '../../geometry/tolerance.ts';
import type { Level } from '../../model/plan.ts';
import { joinNames } from '../../sheets/nozzle-dimensions.ts';
import { datumSymbol } from '../../sheets/symbols.ts';
import { type DrawingDraft, M_PER_MM, addSymbol, at3, symbolLines } from './drawing-draft.ts';
import { layerName } from './layers.ts';

/** First dimension line of walls and of nozzles outside a face, and the pitch of further ones [m]. */
const WALL_m = 6 * M_PER_MM;
const FIRST_m = 13 * M_PER_MM;
const PITCH_m = 7 * M_PER_MM;
const MOST_ROWS = 12;
/** Distances closer than this share one dimension [m]. */
const SAME_DISTANCE_m = 0.0002;
/** Walls shorter than this get no dimension [m]. */
const SHORT_WALL_m = 0.15;

/** Where dimension lines of one room already lie. */
type Taken = { readonly from: PlanPoint; readonly to: PlanPoint }[];

const middle = ({ from, to }: { readonly from: PlanPoint; readonly to: PlanPoint }): PlanPoint => planPoint((from.x + to.x) / 2, (from.y + to.y) / 2);

function isFree(line: { readonly from: PlanPoint; readonly to: PlanPoint }, taken: Taken, others: readonly Space[]): boolean {
  if (others.some(({ outline }) => [line.from, middle(line), line.to].some((p) => isInside(p, outline)))) return false;
  const along_rad = bearing_rad(line.from, line.to);
  const local = (p: PlanPoint): readonly [number, number] => [
    (p.x - line.from.x) * Math.cos(along_rad) + (p.y - line.from.y) * Math.sin(along_rad),
    -(p.x - line.from.x) * Math.sin(along_rad) + (p.y - line.from.y) * Math.cos(along_rad),
  ];
  const long = distance_m(line.from, line.to);
  return taken.every((other) => {
    const [[a, u], [b, v]] = [local(other.from), local(other.to)];
    const isBeside = Math.min(Math.abs(u), Math.abs(v)) >= PITCH_m * 0.8 && u * v > 0;
    return isBeside || Math.max(a, b) < 0 || Math.min(a, b) > long;
  });
}

/** The first distance aside at which a dimension line of a → b lies free; the first of all where none does. */
function freeOffset(a: PlanPoint, b: PlanPoint, offsets: readonly number[], taken: Taken, others: readonly Space[]): number {
  const square_rad = bearing_rad(a, b) + Math.PI / 2;
  const lineAt = (offset: number) => ({ from: polar(a, square_rad, offset), to: polar(b, square_rad, offset) });
  const offset = offsets.find((each) => isFree(lineAt(each), taken, others)) ?? offsets[0] ?? 0;
  taken.push(lineAt(offset));
  return offset;
}

const rows = (first: number, sense: 1 | -1): number[] => Array.from({ length: MOST_ROWS }, (_, i) => first + sense * i * PITCH_m);

/** The finished walls of rooms, measured on their outer side. */
export function dimensionWalls(draft: DrawingDraft, room: Space, rooms: readonly Space[], taken: Taken): void {
  const others = rooms.filter(({ key }) => key !== room.key);
  for (const { segment, inward_rad } of room.walls) {
    const { a, b } = segment;
    const length_m = distance_m(a, b);
    if (length_m < SHORT_WALL_m) continue;
    const out = Math.sin(inward_rad - bearing_rad(a, b)) > 0 ? -1 : 1;
    const offset_m = freeOffset(a, b, [...rows(out * WALL_m, out), ...rows(-out * WALL_m, out === 1 ? -1 : 1)], taken, others);
    draft.entities.push({ kind: 'dimension', layer: layerName('wallDimensions'), a: at3(a), b: at3(b), offset_m, name: '' });
  }
}

/**
 * Every nozzle of a space from the two faces of its datum, never from nozzle to nozzle: each dimension is a line
 * from its foot on the face, or on the face's straight continuation, to the nozzle itself.
 */
export function dimensionNozzles(draft: DrawingDraft, space: Space, datum: Datum | undefined, nozzles: readonly DerivedNozzle[], rooms: readonly Space[], taken: Taken): void {
  if (!datum || nozzles.length === 0) return;
  const others = rooms.filter(({ enclosure }) => enclosure.id !== space.enclosure.id);
  addSymbol(draft, 'datums', 'Datum', symbolLines(datumSymbol(0, 0, 1)), datum.corner, 0, { name: 'DATUM', height_m: undefined, nameOff_m: null });
  for (const face of datum.faces) {
    for (const { names, at, distance } of alongFace(face, nozzles)) {
      const foot = polar(at, face.inward_rad + Math.PI, distance);
      const aside = space.outline.map((p) => -(p.x - foot.x) * Math.sin(face.inward_rad) + (p.y - foot.y) * Math.cos(face.inward_rad));
      const [low, high] = [Math.min(...aside), Math.max(...aside)];
      const inside = [0, 1, -1, 2, -2, 3, -3].map((k) => (k + 0.75) * PITCH_m);
      const sense = distance < 0 ? -1 : 1;
      const offsets = [...rows(low - FIRST_m, -1), ...rows(high + FIRST_m, 1), ...inside].map((offset) => offset * sense);
      const offset_m = freeOffset(foot, at, offsets, taken, others);
      draft.entities.push({ kind: 'dimension', layer: layerName('nozzleDimensions'), a: at3(foot), b: at3(at), offset_m, name: joinNames(names) });
    }
  }
}

/** Nozzles by their distance from a face, the nearest first; those at one distance share a dimension. */
function alongFace(face: WallFace, nozzles: readonly DerivedNozzle[]): { readonly names: string[]; readonly at: PlanPoint; readonly distance: number }[] {
  const groups: { names: string[]; at: PlanPoint; distance: number }[] = [];
  for (const { at, nozzle } of nozzles) {
    if (!at) continue;
    const distance = fromFace_m(face, at);
    const known = groups.find((group) => Math.abs(group.distance - distance) < SAME_DISTANCE_m);
    if (known) known.names.push(nozzle.name);
    else if (Math.abs(distance) > SAME_PLACE_m) groups.push({ names: [nozzle.name], at, distance });
  }
  return groups.sort((p, q) => p.distance - q.distance);
}

/** The dimensions that the user drew, where they were drawn. */
export function drawUserDimensions(draft: DrawingDraft, level: Level): void {
  for (const { a, b, offset_m } of Object.values(level.dimensions)) {
    if (distance_m(a, b) > SAME_PLACE_m) draft.entities.push({ kind: 'dimension', layer: layerName('drawnDimensions'), a: at3(a), b: at3(b), offset_m, name: '' });
  }
}
