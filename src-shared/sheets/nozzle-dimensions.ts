import type { DerivedNozzle, Space, WallFace } from '../derived/derived.ts';
import { isInside } from '../geometry/outline.ts';
import { type PlanPoint, bearing_rad, distance_m } from '../geometry/point.ts';
import { formatLength } from '../units/length-text.ts';
import { type Datum, faceName, findDatum, fromFace_m } from '../derived/datum.ts';
import { type Slot, addDimension, slotsOutward } from './dimension-line.ts';
import { datumSymbol } from './symbols.ts';
import { addLabel } from './labels.ts';
import { type ViewDraft, uprightBox } from './view-draft.ts';

/** Distances closer than this share one dimension line [m]. */
const SAME_DISTANCE_m = 0.0002;
/** First dimension line outside a face and the pitch of further ones [mm at factor 1]. */
const FIRST_mm = 10;
const PITCH_mm = 7;
/** Walls shorter than this get no dimension of their own [m]. */
const SHORT_WALL_m = 0.15;

/** Nozzles at one distance from a datum face. */
interface Group {
  readonly distance_m: number;
  readonly nozzles: readonly { readonly nozzle: DerivedNozzle; readonly at: PlanPoint }[];
}

function groupsAlong(face: WallFace, nozzles: readonly DerivedNozzle[]): Group[] {
  const groups: { distance_m: number; nozzles: { nozzle: DerivedNozzle; at: PlanPoint }[] }[] = [];
  for (const nozzle of nozzles) {
    if (!nozzle.at) continue;
    const distance = fromFace_m(face, nozzle.at);
    const known = groups.find((group) => Math.abs(group.distance_m - distance) < SAME_DISTANCE_m);
    if (known) known.nozzles.push({ nozzle, at: nozzle.at });
    else groups.push({ distance_m: distance, nozzles: [{ nozzle, at: nozzle.at }] });
  }
  return groups.sort((a, b) => a.distance_m - b.distance_m);
}

/** The dimension line's own frame: `along` into the room from the face, `aside` to its left. */
function faceFrame(view: ViewDraft, face: WallFace, origin: PlanPoint) {
  const along_rad = face.inward_rad;
  const x = view.frame.x(origin.x);
  const y = view.frame.y(origin.y);
  const aside_mm = (p: PlanPoint): number => view.frame.mm(-(p.x - origin.x) * Math.sin(along_rad) + (p.y - origin.y) * Math.cos(along_rad));
  return { x, y, along_rad, aside_mm };
}

const foreignTo = (view: ViewDraft, space: Space, rooms: readonly Space[]) => {
  const others = rooms.filter((room) => room.enclosure.id !== space.enclosure.id);
  return (x: number, y: number): boolean => {
    const at = { x: (x - view.frame.x(0)) / view.frame.mm(1), y: (view.frame.y(0) - y) / view.frame.mm(1) };
    return others.some(({ outline }) => isInside(at, outline));
  };
};

/**
 * Dimensions every nozzle of a space from the two datum faces of its one datum corner, never from nozzle to nozzle.
 * @param datum    that of its enclosure; without one nothing can be measured
 * @param isShown  whether a place lies in this view; a nozzle whose datum lies on another sheet is not drawn
 * @returns by nozzle id, in words, the distances that could not be drawn
 */
export function dimensionNozzles(
  view: ViewDraft,
  space: Space,
  datum: Datum | undefined,
  nozzles: readonly DerivedNozzle[],
  rooms: readonly Space[],
  isShown: (at: PlanPoint) => boolean,
): ReadonlyMap<string, readonly string[]> {
  const words = new Map<string, string[]>();
  const shown = nozzles.filter(({ at }) => at && isShown(at));
  if (!datum || shown.length === 0) return words;
  const isDatumShown = isShown(datum.corner);
  if (isDatumShown && view.hand?.round !== 'placed') drawDatum(view, datum);
  const tell = (group: Group, face: WallFace): void => {
    for (const { nozzle } of group.nozzles) {
      words.set(nozzle.ref.id, [...(words.get(nozzle.ref.id) ?? []), `${formatLength(group.distance_m, view.lengths)} from ${faceName(face)}`]);
    }
  };
  datum.faces.forEach((face, i) => {
    const other = datum.faces[1 - i];
    for (const group of groupsAlong(face, shown)) {
      const isDrawn = isDatumShown && other && group.distance_m > 0 && drawGroup(view, space, datum.corner, face, other, group, rooms);
      if (!isDrawn) tell(group, face);
    }
  });
  return words;
}

/** Which wall of which enclosure a face belongs to. */
const wallId = ({ ref }: WallFace): string => `${ref.enclosure}/${ref.id}`;

/** Names in one: what they begin with alike is written once. `206-N1, N2` */
export function joinNames(names: readonly string[]): string {
  const [first = '', ...others] = names;
  const shared = /^.*[-–. /]/.exec(first)?.[0] ?? '';
  return [first, ...others.map((name) => (shared && name.startsWith(shared) ? name.slice(shared.length) : name))].join(', ');
}

function drawGroup(view: ViewDraft, space: Space, corner: PlanPoint, face: WallFace, other: WallFace, group: Group, rooms: readonly Space[]): boolean {
  const { factor } = view.sizes;
  const { x, y, along_rad, aside_mm } = faceFrame(view, face, corner);
  const to = group.nozzles.map(({ at }) => aside_mm(at));
  const spread = space.outline.map(aside_mm);
  const [low, high] = [Math.min(...spread), Math.max(...spread)];
  const isDatumLow = Math.sin(other.inward_rad - along_rad) > 0;
  const slots: Slot[] = [
    ...slotsOutward(low - FIRST_mm * factor, -1, 12, PITCH_mm * factor, isDatumLow ? 0 : 5),
    ...slotsOutward(high + FIRST_mm * factor, 1, 12, PITCH_mm * factor, isDatumLow ? 5 : 0),
    ...to.flatMap((aside) => [
      ...slotsOutward(aside - 5 * factor, -1, 10, 2.5 * factor, 16, 0.6),
      ...slotsOutward(aside + 5 * factor, 1, 10, 2.5 * factor, 16, 0.6),
    ]),
  ].filter(({ aside_mm: aside }) => aside < low - 3 * factor || aside > high + 3 * factor || (aside > low + 2 * factor && aside < high - 2 * factor));
  const names = joinNames(group.nozzles.map(({ nozzle }) => nozzle.nozzle.name));
  return addDimension(view, {
    x,
    y,
    along_rad,
    length_mm: view.frame.mm(group.distance_m),
    words: `${names}: ${formatLength(group.distance_m, view.lengths)}`,
    isBold: true,
    fromAside_mm: [aside_mm(face.segment.a), aside_mm(face.segment.b)],
    toAside_mm: to,
    slots,
    fromDatum: true,
    isForeign: foreignTo(view, space, rooms),
    of: group.nozzles.map(({ nozzle: { ref } }) => `nozzle/${ref.network}/${ref.id}/${wallId(face)}`),
  });
}

function drawDatum(view: ViewDraft, { corner, faces }: Datum): void {
  const { factor } = view.sizes;
  view.used.add('datum');
  const x = view.frame.x(corner.x);
  const y = view.frame.y(corner.y);
  view.lines.push(...datumSymbol(x, y, factor));
  view.placer.block(uprightBox(x, y, 2.4 * factor, 2.4 * factor), `datum ${corner.x} ${corner.y}`);
  const outward = Math.atan2(-faces.reduce((sum, { inward_rad }) => sum + Math.sin(inward_rad), 0), -faces.reduce((sum, { inward_rad }) => sum + Math.cos(inward_rad), 0));
  addLabel(
    view,
    [{ text: 'DATUM', font: 'bold' }],
    { x, y, clearance_mm: 3 * factor, owner: `datum ${corner.x} ${corner.y}`, toward_rad: outward },
    'the datum',
  );
}

/** Dimensions the walls of a room, so that the fitter can check it: two sides of a rectangle, every wall of another shape. */
export function dimensionRoom(view: ViewDraft, room: Space, rooms: readonly Space[]): void {
  const { factor } = view.sizes;
  const datum = findDatum(room, []);
  const isRectangle = room.walls.length === 4 && room.convexCorners.length === 4;
  const onDatum = (wall: WallFace): boolean => datum?.faces.some(({ ref }) => ref.id === wall.ref.id) ?? false;
  const own = new Set(room.enclosure.outline.map(({ id }) => id));
  for (const wall of room.walls.filter(({ ref }) => own.has(ref.id))) {
    const length = distance_m(wall.segment.a, wall.segment.b);
    if (length < SHORT_WALL_m || (isRectangle && onDatum(wall))) continue;
    const along_rad = bearing_rad(wall.segment.a, wall.segment.b);
    const outSense = Math.sin(wall.inward_rad - along_rad) > 0 ? -1 : 1;
    const inSense = outSense === 1 ? -1 : 1;
    const across_mm = isRectangle ? view.frame.mm(Math.max(...room.outline.map((p) => fromFace_m(wall, p)))) : 0;
    addDimension(view, {
      x: view.frame.x(wall.segment.a.x),
      y: view.frame.y(wall.segment.a.y),
      along_rad,
      length_mm: view.frame.mm(length),
      words: formatLength(length, view.lengths),
      fromAside_mm: isRectangle ? [0, inSense * across_mm] : [0],
      toAside_mm: isRectangle ? [0, inSense * across_mm] : [0],
      slots: [
        ...slotsOutward(outSense * 5 * factor, outSense, 12, 4 * factor, 0),
        ...slotsOutward(inSense * 4 * factor, inSense, 6, 3 * factor, 14),
        ...(isRectangle ? slotsOutward(inSense * (across_mm + 5 * factor), inSense, 12, 4 * factor, 2) : []),
      ],
      fromDatum: false,
      isForeign: foreignTo(view, room, rooms),
      of: [`wall/${room.key}/${wallId(wall)}`],
    });
  }
}
