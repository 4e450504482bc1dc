import type { Solid } from '../derived/derived.ts';
import { findPanelSpace, panelZone } from '../derived/panel-space.ts';
import { boundsOf, isInside } from '../geometry/outline.ts';
import { type PlanPoint, polar } from '../geometry/point.ts';
import { formatLength } from '../units/length-text.ts';
import { heightText } from './sheet-text.ts';
import { line, pen, ring } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import { addLabel } from './labels.ts';
import { arrowHead, seatSymbol } from './symbols.ts';
import { type ViewDraft, addLine, onPaper } from './view-draft.ts';
import { zigzagRows } from './zigzag.ts';

/** A thing whose underside is higher than this hangs overhead: a person walks below it [m]. */
const OVERHEAD_m = 1.8;

/** Whether a thing hangs overhead and is drawn dashed. */
export const isOverhead = ({ obstruction, bottom_m }: Solid): boolean => obstruction.kind === 'beam' || bottom_m > OVERHEAD_m;

/** Draws what stands or hangs in the rooms; overhead things dashed. */
export function drawSolids(view: ViewDraft, solids: readonly Solid[]): void {
  const stroke = pen(WEIGHT.thin * view.sizes.factor, PRINT.solid);
  for (const solid of solids) {
    const places = onPaper(view.frame, solid.footprint);
    const { kind } = solid.obstruction;
    if (kind === 'work-place') {
      drawWorkPlace(view, solid, places);
      continue;
    }
    if (kind === 'live-part') view.used.add('live-part');
    if (isOverhead(solid)) {
      if (kind !== 'live-part') view.used.add('overhead');
      const dashed = { ...stroke, dash_mm: [2.4 * view.sizes.factor, 1.2 * view.sizes.factor] };
      addLine(view, places, { kind: 'line', places, closed: true, stroke: dashed }, 3, true);
      if (kind === 'live-part') drawZigzag(view, solid);
      continue;
    }
    addLine(view, places, ring(stroke, places, PRINT.solidFill), 4, true);
    if (kind === 'live-part') {
      drawZigzag(view, solid);
      continue;
    }
    view.used.add('standing');
    drawPanelSpace(view, solid);
    const { minX, minY, maxX, maxY } = boundsOf(solid.footprint);
    if (solid.footprint.length === 4) {
      const diagonal = onPaper(view.frame, [
        { x: minX, y: minY },
        { x: maxX, y: maxY },
      ]);
      addLine(view, diagonal, line(pen(WEIGHT.hair, PRINT.faint), ...diagonal), 1);
    }
  }
}

/** Zigzag rows in a part that carries voltage. */
function drawZigzag(view: ViewDraft, { footprint }: Solid): void {
  const { frame, sizes } = view;
  const stroke = pen(WEIGHT.thin * sizes.factor, PRINT.solid);
  const tooth_m = (1.2 * sizes.factor) / frame.mm(1);
  for (const row of zigzagRows(boundsOf(footprint), { x: 0, y: 0 }, tooth_m, tooth_m * 2.6)) {
    let run: PlanPoint[] = [];
    const end = (): void => {
      if (run.length > 1) view.lines.push(line(stroke, ...onPaper(frame, run)));
      run = [];
    };
    for (const p of row) {
      if (isInside(p, footprint)) run.push(p);
      else end();
    }
    end();
  }
}

/** A place where somebody works: a dashed outline with a seat. */
function drawWorkPlace(view: ViewDraft, { footprint }: Solid, places: readonly number[]): void {
  const { frame, sizes } = view;
  view.used.add('work-place');
  addLine(view, places, { kind: 'line', places, closed: true, stroke: pen(WEIGHT.thin * sizes.factor, PRINT.solid, [1.2 * sizes.factor, 0.8 * sizes.factor]) }, 3, true);
  const { minX, minY, maxX, maxY } = boundsOf(footprint);
  const radius = Math.min(1.6 * sizes.factor, frame.mm(Math.min(maxX - minX, maxY - minY)) / 5);
  if (radius > 0.3) view.lines.push(...seatSymbol(frame.x((minX + maxX) / 2), frame.y((minY + maxY) / 2), radius, sizes.factor));
}

/** The working space before an electrical panel, where its front is known: a dotted outline with a stroke out of the panel's front. */
function drawPanelSpace(view: ViewDraft, { obstruction }: Solid): void {
  const space = findPanelSpace(obstruction);
  if (!space) return;
  const { factor } = view.sizes;
  const places = onPaper(view.frame, panelZone(space));
  addLine(view, places, ring(pen(WEIGHT.thin * factor, PRINT.ink, [0.5 * factor, 0.8 * factor]), places), 3, true);
  const [x = 0, y = 0, endX = 0, endY = 0] = onPaper(view.frame, [space.at, polar(space.at, space.front_rad, Math.min(space.depth_m, 0.3))]);
  view.lines.push(line(pen(WEIGHT.thin * factor), x, y, endX, endY), arrowHead(endX, endY, space.front_rad, 1.6 * factor, PRINT.ink));
}

/** Names things and gives the height that matters: the top of what stands, the underside of what hangs. */
export function labelSolids(view: ViewDraft, solids: readonly Solid[]): void {
  for (const solid of solids) {
    const { minX, minY, maxX, maxY } = boundsOf(solid.footprint);
    const x = view.frame.x((minX + maxX) / 2);
    const y = view.frame.y((minY + maxY) / 2);
    const name = solid.obstruction.name || solid.obstruction.kind;
    const height = isOverhead(solid) ? `underside ${heightText(solid.bottom_m, view.lengths)}` : `top ${formatLength(solid.top_m, view.lengths)}`;
    const isUpright = maxY - minY > maxX - minX;
    const half = view.frame.mm(Math.max(maxX - minX, maxY - minY)) / 2;
    const along = isUpright ? { ax: x, ay: y + half, bx: x, by: y - half } : { ax: x - half, ay: y, bx: x + half, by: y };
    const isBroad = view.frame.mm(Math.min(maxX - minX, maxY - minY)) > 12 * view.sizes.factor;
    const words = isBroad ? [name, height] : [`${name}, ${height}`];
    const spots = [0, 1, -1, 2, -2].flatMap((i) => [0, 1, -1, 2, -2].flatMap((j) => [x + (i * view.frame.mm(maxX - minX)) / 7, y + (j * view.frame.mm(maxY - minY)) / 7]));
    addLabel(view, words.map((text) => ({ text, colour: PRINT.solid })), { x, y, clearance_mm: 0.4, toward_rad: Math.PI / 2, ...(isBroad ? { spots } : { along }) }, name);
  }
}
