import type { Space } from '../derived/derived.ts';
import { isInside } from '../geometry/outline.ts';
import { type PlanPoint, bearing_rad, distance_m, planPoint, polar } from '../geometry/point.ts';
import type { Corner, Opening } from '../model/plan.ts';
import { formatLength } from '../units/length-text.ts';
import { formatQuantity } from '../units/quantity-text.ts';
import { arrowHead, arcPlaces } from './symbols.ts';
import { line, pen, ring, segments } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import { addLabel } from './labels.ts';
import { clipPiece } from './text-box.ts';
import { type ViewDraft, addLine, onPaper, uprightBox } from './view-draft.ts';

/** Distance between the ticks outside a finished face, and their length [mm at factor 1]. */
const TICK_EVERY_mm = 2.4;
const TICK_mm = 1.7;

interface OpeningPlace {
  readonly opening: Opening;
  readonly start: PlanPoint;
  readonly end: PlanPoint;
  readonly middle: PlanPoint;
  /** Direction of the wall from its corner. */
  readonly wall_rad: number;
  readonly inward_rad: number;
}

/** Where the openings of a room lie on the plan. */
export function openingPlaces(room: Space): OpeningPlace[] {
  const rings: readonly (readonly Corner[])[] = [room.enclosure.outline, ...room.enclosure.holes];
  return Object.values(room.enclosure.openings).flatMap((opening) => {
    const corners = rings.find((list) => list.some(({ id }) => id === opening.wall));
    const index = corners?.findIndex(({ id }) => id === opening.wall) ?? -1;
    const a = corners?.[index];
    const b = corners?.[(index + 1) % (corners.length || 1)];
    const face = room.walls.find(({ ref }) => ref.id === opening.wall);
    if (!a || !b || !face) return [];
    const wall_rad = bearing_rad(a, b);
    const at = (along_m: number): PlanPoint => polar(a, wall_rad, along_m);
    const half = opening.width_m / 2;
    return [{ opening, start: at(opening.along_m - half), end: at(opening.along_m + half), middle: at(opening.along_m), wall_rad, inward_rad: face.inward_rad }];
  });
}

/** How far open door leaves reach: the tip of each, and of its arc. */
export const swingTips = (room: Space): PlanPoint[] =>
  openingPlaces(room).flatMap(({ opening, start, end, inward_rad }) => {
    if (opening.kind !== 'door' || opening.swing === 'none') return [];
    const hinge = opening.hinge === 'start' ? start : end;
    return [polar(hinge, opening.swing === 'in' ? inward_rad : inward_rad + Math.PI, opening.width_m)];
  });

/** Pieces of a wall between its door openings. */
function solidPieces(a: PlanPoint, b: PlanPoint, gaps: readonly { from: number; to: number }[]): [PlanPoint, PlanPoint][] {
  const length = distance_m(a, b);
  const angle = bearing_rad(a, b);
  const pieces: [PlanPoint, PlanPoint][] = [];
  let from = 0;
  for (const gap of [...gaps].sort((p, q) => p.from - q.from)) {
    if (gap.from > from) pieces.push([polar(a, angle, from), polar(a, angle, Math.min(gap.from, length))]);
    from = Math.max(from, gap.to);
  }
  if (from < length) pieces.push([polar(a, angle, from), b]);
  return pieces;
}

/** Draws the finished faces of rooms: a heavy line with ticks on its outer side, doors cut out. */
export function drawWalls(view: ViewDraft, rooms: readonly Space[]): void {
  const { frame, sizes } = view;
  if (rooms.length > 0) view.used.add('wall');
  for (const room of rooms) {
    const places = openingPlaces(room);
    const ticks: number[] = [];
    for (const face of room.walls) {
      const { a, b } = face.segment;
      const angle = bearing_rad(a, b);
      const gaps = places
        .filter(({ opening }) => opening.kind === 'door' && opening.wall === face.ref.id)
        .map(({ start, end }) => [start, end].map((p) => (p.x - a.x) * Math.cos(angle) + (p.y - a.y) * Math.sin(angle)))
        .map(([p = 0, q = 0]) => ({ from: Math.min(p, q), to: Math.max(p, q) }));
      for (const [from, to] of solidPieces(a, b, gaps)) {
        const piece = onPaper(frame, [from, to]);
        addLine(view, piece, line(pen(WEIGHT.heavy * sizes.factor), ...piece), 26);
        const step_m = (TICK_EVERY_mm * sizes.factor) / frame.mm(1);
        const long_m = (TICK_mm * sizes.factor) / frame.mm(1);
        const shown = clipPiece(view.room, piece[0] ?? 0, piece[1] ?? 0, piece[2] ?? 0, piece[3] ?? 0);
        if (!shown) continue;
        // Ticks begin at the wall's own corner, so that a cut view shows the same ones as a whole one.
        const way = (x: number, y: number): number => Math.hypot(x - (piece[0] ?? 0), y - (piece[1] ?? 0)) / frame.mm(1);
        const first = Math.ceil(way(shown[0], shown[1]) / step_m - 0.5);
        const last_m = way(shown[2], shown[3]);
        for (let along = (Math.max(0, first) + 0.5) * step_m; along < last_m; along += step_m) {
          const foot = polar(from, angle, along);
          const end = polar(foot, face.inward_rad + Math.PI * 0.75, long_m);
          if (rooms.some((other) => other !== room && isInside(end, other.outline))) continue;
          ticks.push(...onPaper(frame, [foot, end]));
        }
      }
    }
    view.lines.push(segments(pen(WEIGHT.hair), ticks));
    for (const place of places) drawOpening(view, place);
  }
}

function drawOpening(view: ViewDraft, place: OpeningPlace): void {
  const { frame, sizes } = view;
  const { opening, start, end, middle, wall_rad, inward_rad } = place;
  const thin = pen(WEIGHT.thin * sizes.factor);
  const across_m = (1.8 * sizes.factor) / frame.mm(1);
  const out_rad = inward_rad + Math.PI;
  if (opening.kind === 'door') {
    view.used.add('door');
    for (const jamb of [start, end]) {
      const places = onPaper(frame, [jamb, polar(jamb, out_rad, across_m)]);
      view.lines.push(line(pen(WEIGHT.medium * sizes.factor), ...places));
    }
    const sill = onPaper(frame, [start, end]);
    addLine(view, sill, line(pen(WEIGHT.hair), ...sill), 4);
    if (opening.swing === 'none') return;
    const hinge = opening.hinge === 'start' ? start : end;
    const swing_rad = opening.swing === 'in' ? inward_rad : out_rad;
    const leaf = onPaper(frame, [hinge, polar(hinge, swing_rad, opening.width_m)]);
    addLine(view, leaf, line(pen(WEIGHT.medium * sizes.factor), ...leaf), 8);
    const shut_rad = opening.hinge === 'start' ? wall_rad : wall_rad + Math.PI;
    const turn = Math.atan2(Math.sin(shut_rad - swing_rad), Math.cos(shut_rad - swing_rad));
    const arc = arcPlaces(frame.x(hinge.x), frame.y(hinge.y), frame.mm(opening.width_m), swing_rad, swing_rad + turn);
    addLine(view, arc, line(thin, ...arc), 6);
    return;
  }
  view.used.add(opening.kind === 'relief-vent' ? 'relief-vent' : 'opening');
  const outside = [start, end, polar(end, out_rad, across_m), polar(start, out_rad, across_m)];
  const frameRing = onPaper(frame, outside);
  addLine(view, frameRing, ring(thin, frameRing, PRINT.paper), 6, true);
  if (opening.kind === 'relief-vent') {
    const tip = polar(middle, out_rad, across_m * 3.2);
    const stem = onPaper(frame, [polar(middle, out_rad, across_m * 0.3), tip]);
    addLine(view, stem, line(thin, ...stem), 6);
    view.lines.push(arrowHead(frame.x(tip.x), frame.y(tip.y), out_rad, 1.8 * sizes.factor, PRINT.ink));
    view.placer.block(uprightBox(((stem[0] ?? 0) + (stem[2] ?? 0)) / 2, ((stem[1] ?? 0) + (stem[3] ?? 0)) / 2, 3 * sizes.factor, 3 * sizes.factor), opening.id);
  } else {
    const [p = planPoint(0, 0), q = planPoint(0, 0), r = planPoint(0, 0), s = planPoint(0, 0)] = outside;
    view.lines.push(line(thin, ...onPaper(frame, [p, r])), line(thin, ...onPaper(frame, [q, s])));
  }
}

/** Names the openings beside them. */
export function labelOpenings(view: ViewDraft, rooms: readonly Space[]): void {
  const { frame, lengths, sizes } = view;
  for (const room of rooms) {
    for (const { opening, middle, inward_rad } of openingPlaces(room)) {
      const isDoor = opening.kind === 'door';
      const free = opening.freeArea_m2;
      const figure = isDoor ? formatLength(opening.width_m, lengths) : free === null ? '' : `free ${formatQuantity(free, 'area', lengths)}`;
      const name = opening.name || (isDoor ? 'Door' : 'Opening');
      const reach_m = isDoor ? opening.width_m * 0.45 : (4 * sizes.factor) / frame.mm(1);
      const out_rad = isDoor && opening.swing === 'in' ? inward_rad : inward_rad + Math.PI;
      const at = isDoor ? polar(middle, out_rad, reach_m) : polar(middle, out_rad, reach_m / 2);
      const [x, y] = [frame.x(at.x), frame.y(at.y)];
      addLabel(
        view,
        isDoor ? [{ text: `${name} ${figure}` }] : [{ text: name }, { text: figure }],
        { x, y, clearance_mm: isDoor ? 0.5 : 3 * sizes.factor, owner: opening.id, toward_rad: out_rad, ...(isDoor ? { spots: [x, y] } : {}) },
        `${name} of ${room.name}`,
      );
    }
  }
}
