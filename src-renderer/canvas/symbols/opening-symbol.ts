import type { Opening } from '#shared/model/plan';
import { type Pen, type Px, fillRing, line, pieces, polyline, ring, setLine } from '../pen.ts';

export interface OpeningPlace {
  /** Ends of the opening on the finished wall face, the one nearer the wall's corner first. */
  readonly a: Px;
  readonly b: Px;
  /** Unit vector on the screen from the wall into the room. */
  readonly inward: Px;
  /** How thick the wall is drawn [px]. */
  readonly thickness_px: number;
}

export interface OpeningLook {
  readonly colour: string;
  readonly paper: string;
  readonly wall_px: number;
}

const shift = (p: Px, way: Px, distance: number): Px => ({ x: p.x + way.x * distance, y: p.y + way.y * distance });

/** An opening in a wall seen from above: the gap between its jambs, and what closes or fills it. */
export function drawOpening(pen: Pen, opening: Pick<Opening, 'kind' | 'swing' | 'hinge'>, place: OpeningPlace, look: OpeningLook): void {
  const { a, b, inward, thickness_px } = place;
  const inner = look.wall_px / 2 + 0.5;
  const outer = -thickness_px;
  const face = (end: Px, depth: number): Px => shift(end, inward, depth);
  if (opening.kind !== 'penetration') {
    fillRing(pen, [face(a, inner), face(b, inner), face(b, outer), face(a, outer)], look.paper);
    setLine(pen, { colour: look.colour, width: 1.75 });
    for (const end of [a, b]) line(pen, face(end, inner), face(end, outer));
  }
  switch (opening.kind) {
    case 'door':
      drawDoor(pen, opening, place, look);
      break;
    case 'relief-vent':
      drawReliefVent(pen, place, look);
      break;
    case 'damper':
      setLine(pen, { colour: look.colour, width: 1.5 });
      polyline(pen, [a, b, face(b, outer), face(a, outer)], true);
      line(pen, a, face(b, outer));
      break;
    case 'grille':
      setLine(pen, { colour: look.colour, width: 1.25 });
      pieces(pen, slats(place, 5));
      line(pen, a, b);
      line(pen, face(a, outer), face(b, outer));
      break;
    case 'window':
      setLine(pen, { colour: look.colour, width: 1.25 });
      for (const depth of [0, outer / 2, outer]) line(pen, face(a, depth), face(b, depth));
      break;
    default:
      drawPenetration(pen, place, look);
  }
}

/** Leaf, square to the wall, and the arc that it sweeps. */
function drawDoor(pen: Pen, { swing, hinge }: Pick<Opening, 'swing' | 'hinge'>, { a, b, inward, thickness_px }: OpeningPlace, { colour }: OpeningLook): void {
  const width = Math.hypot(b.x - a.x, b.y - a.y);
  const way = swing === 'out' ? -1 : 1;
  const plane = swing === 'out' ? -thickness_px : 0;
  const pivot = shift(hinge === 'start' ? a : b, inward, plane);
  const shut = shift(hinge === 'start' ? b : a, inward, plane);
  setLine(pen, { colour, width: 1 });
  if (swing === 'none') {
    line(pen, shift(a, inward, -thickness_px / 2), shift(b, inward, -thickness_px / 2));
    return;
  }
  const tip = shift(pivot, inward, way * width);
  setLine(pen, { colour, width: 2.25 });
  line(pen, pivot, tip);
  setLine(pen, { colour, width: 1 });
  const from = Math.atan2(tip.y - pivot.y, tip.x - pivot.x);
  const to = Math.atan2(shut.y - pivot.y, shut.x - pivot.x);
  const turn = Math.atan2(Math.sin(to - from), Math.cos(to - from));
  pen.beginPath();
  pen.arc(pivot.x, pivot.y, width, from, from + turn, turn < 0);
  pen.stroke();
}

/** Louvres in the gap and an arrow outward, the way the pressure leaves. */
function drawReliefVent(pen: Pen, place: OpeningPlace, { colour }: OpeningLook): void {
  const { a, b, inward, thickness_px } = place;
  setLine(pen, { colour, width: 1.25 });
  pieces(pen, slats(place, 7, thickness_px * 0.4));
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const tail = shift(middle, inward, 6);
  const tip = shift(middle, inward, -thickness_px - 16);
  setLine(pen, { colour, width: 1.75, cap: 'round' });
  line(pen, tail, tip);
  const side = { x: -inward.y, y: inward.x };
  polyline(pen, [shift(shift(tip, inward, 6), side, 4), tip, shift(shift(tip, inward, 6), side, -4)]);
}

/** Short strokes across the wall, evenly spread; slanted when `lean_px` is given. */
function* slats({ a, b, inward, thickness_px }: OpeningPlace, spacing_px: number, lean_px = 0): Generator<[Px, Px]> {
  const width = Math.hypot(b.x - a.x, b.y - a.y);
  const count = Math.max(2, Math.min(40, Math.floor(width / spacing_px)));
  const run = { x: (b.x - a.x) / (width || 1), y: (b.y - a.y) / (width || 1) };
  for (let i = 1; i < count; i += 1) {
    const foot = { x: a.x + ((b.x - a.x) * i) / count, y: a.y + ((b.y - a.y) * i) / count };
    yield [foot, shift(shift(foot, inward, -thickness_px), run, lean_px)];
  }
}

/** A crossed ring in the wall. */
function drawPenetration(pen: Pen, { a, b, inward, thickness_px }: OpeningPlace, { colour, paper }: OpeningLook): void {
  const middle = shift({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, inward, -thickness_px / 2);
  const radius = Math.max(4, Math.min(10, Math.hypot(b.x - a.x, b.y - a.y) / 2));
  setLine(pen, { colour, width: 1.5 });
  ring(pen, middle, radius, paper);
  const r = radius * 0.7;
  line(pen, { x: middle.x - r, y: middle.y - r }, { x: middle.x + r, y: middle.y + r });
  line(pen, { x: middle.x - r, y: middle.y + r }, { x: middle.x + r, y: middle.y - r });
}
