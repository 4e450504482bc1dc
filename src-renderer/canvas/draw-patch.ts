import { legalArcs } from '#shared/derived/legal-arc';
import type { Arc } from '#shared/derived/turn-intervals';
import type { HungNozzle } from '#shared/derived/derived';
import type { PlanPoint } from '#shared/geometry/point';

import type { Room } from '../store/room-to-move.ts';
import type { Ink } from '../ink.ts';
import { write } from './lettering.ts';
import { type Pen, type Px, along, line, polyline, setLine, trace } from './pen.ts';
import { type Viewport, toScreen } from './viewport.ts';

const BRACKET_px = 9;
const ARC_px = 34;
const DIAL_px = 46;

/** Brackets at the corners of the box around a ring, outside it: they say that it is a room to move and no wall. */
function drawBrackets(pen: Pen, places: readonly Px[]): void {
  const xs = places.map(({ x }) => x);
  const ys = places.map(({ y }) => y);
  const [left, right, top, bottom] = [Math.min(...xs) - 5, Math.max(...xs) + 5, Math.min(...ys) - 5, Math.max(...ys) + 5];
  for (const [x, y, dx, dy] of [
    [left, top, 1, 1],
    [right, top, -1, 1],
    [right, bottom, -1, -1],
    [left, bottom, 1, -1],
  ] as const) {
    polyline(pen, [{ x: x + dx * BRACKET_px, y }, { x, y }, { x, y: y + dy * BRACKET_px }]);
  }
}

/** Where the selected nozzle may be put: closed thin lines with corner brackets; dashed while it is being found anew. */
export function drawPatch(pen: Pen, view: Viewport, { patch }: Room, isStale: boolean, ink: Ink): void {
  if (!patch.isKnown) return;
  for (const part of patch.parts) {
    const rings = part.map((ring) => ring.map((p) => toScreen(view, p)));
    pen.globalAlpha = 0.07;
    pen.fillStyle = ink.snap;
    pen.beginPath();
    for (const ring of rings) trace(pen, ring, true);
    pen.fill('evenodd');
    pen.globalAlpha = 1;
    setLine(pen, { colour: ink.snap, width: 1.25, dash: isStale ? [2, 4] : [] });
    for (const ring of rings) polyline(pen, ring, true);
    setLine(pen, { colour: ink.snap, width: 2 });
    drawBrackets(pen, rings[0] ?? []);
  }
}

/** Arcs round a place with ticks at their ends, for directions counter-clockwise from east. */
function drawArcs(pen: Pen, at: Px, arcs: readonly { readonly from_rad: number; readonly to_rad: number }[], radius: number, colour: string): void {
  for (const { from_rad, to_rad } of arcs) {
    setLine(pen, { colour, width: 2.5 });
    pen.beginPath();
    pen.arc(at.x, at.y, radius, -from_rad, -to_rad, true);
    pen.stroke();
    if (to_rad - from_rad >= 2 * Math.PI - 1e-6) continue;
    setLine(pen, { colour, width: 1.75 });
    for (const end of [from_rad, to_rad]) line(pen, along(at, end, radius - 6), along(at, end, radius + 6));
  }
}

/** Directions that the first hole may take, as arcs. */
const firstHoleArcs = (nozzle: HungNozzle) => legalArcs(nozzle).map(({ from_rad, to_rad }) => ({ from_rad: from_rad + (nozzle.nozzle.holes_rad[0] ?? 0), to_rad: to_rad + (nozzle.nozzle.holes_rad[0] ?? 0) }));

/** The directions that the nozzle's first hole may take where it hangs, as an arc with end ticks. */
export function drawTurnRange(pen: Pen, view: Viewport, at: PlanPoint, range: Arc, ink: Ink): void {
  drawArcs(pen, toScreen(view, at), [range], ARC_px, ink.snap);
}

/** The dial at the pointer: a thin ring, arcs where the first hole may blow there, and the holes as they point now. */
export function drawPointerDial(pen: Pen, view: Viewport, at: PlanPoint, there: HungNozzle | undefined, ink: Ink): void {
  const p = toScreen(view, at);
  setLine(pen, { colour: ink.quiet, width: 1, dash: [2, 3] });
  pen.beginPath();
  pen.arc(p.x, p.y, DIAL_px, 0, 2 * Math.PI);
  pen.stroke();
  if (!there) return;
  const arcs = firstHoleArcs(there);
  drawArcs(pen, p, arcs, DIAL_px, ink.snap);
  there.holes_rad.forEach((hole, i) => {
    setLine(pen, { colour: ink.ink, width: i === 0 ? 2 : 1 });
    line(pen, along(p, hole, 12), along(p, hole, i === 0 ? DIAL_px - 8 : DIAL_px - 20));
  });
  if (arcs.length === 0) write(pen, 'No direction is allowed here', { x: p.x, y: p.y + DIAL_px + 14 }, { colour: ink.verdict.stop, halo: ink.paper, align: 'center', bold: true });
}
