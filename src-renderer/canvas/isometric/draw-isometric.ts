import type { Isometric, IsometricRun } from '#shared/isometric/layout-isometric';
import { holeHeadings } from '#shared/isometric/layout-isometric';
import { fittingSign } from '#shared/isometric/fitting-sign';
import type { Ink } from '../../ink.ts';
import { type Pen, type Px, along, between, disc, fillRing, gap_px, heading_rad, line, ring, setLine } from '../pen.ts';
import { drawAssemblyPart } from '../symbols/assembly-symbols.ts';
import { drawCylinder, drawRail } from '../symbols/cylinder-symbol.ts';
import { drawFitting } from '../symbols/fitting-symbol.ts';
import { drawNozzle } from '../symbols/nozzle-symbol.ts';
import { drawHighPressureLine, drawLowPressureLine } from '../symbols/pressure-line.ts';
import { drawSupport, drawSupportTick } from '../symbols/support-symbol.ts';
import { type Viewport, toScreen } from '../viewport.ts';
import { type IsometricDetail, isometricDetail } from './isometric-detail.ts';
import { CYLINDER_px, type IsometricMarks, type PlacedAssembly, placedAssembly, runStretch } from './isometric-things.ts';
import type { ShownIsometric } from './keep-isometric.ts';

/** Widths of a run's line on the screen [px]. */
const LOW_px = 3.5;
const HIGH_px = 6;
/** A run keeps so far from its ends where it hides what lies behind [px]. */
const BARED_px = 7;
/** Shares of a run where the flow arrow and the break stand. */
const ARROW_AT = 0.62;
const BREAK_AT = 0.38;

/** Pipe, fittings, supports, nozzles and the discharge assembly of a network, from the back to the front. */
export function drawIsometric(pen: Pen, view: Viewport, shown: ShownIsometric, ink: Ink): void {
  const { iso } = shown;
  const detail = isometricDetail(view.camera.scale_px_m, iso);
  const assembly = placedAssembly(view, shown);
  if (assembly) drawAssembly(pen, assembly, detail, ink);
  for (const run of [...iso.runs].sort((a, b) => a.nearness - b.nearness)) drawRun(pen, view, run, iso, detail, ink);
  if (detail.fittings) drawFittings(pen, view, iso, ink);
  for (const { placed, place, pipe_rad } of iso.supports) {
    const at = toScreen(view, place);
    if (detail.fittings) drawSupport(pen, at, { kind: placed.support.kind, lie: { pipe_rad }, colour: ink.ink, pipe_px: LOW_px });
    else drawSupportTick(pen, at, { pipe_rad }, ink.ink);
  }
  for (const node of iso.nodes) {
    const at = toScreen(view, node.place);
    if (node.nozzle) drawNozzle(pen, at, { colour: ink.ink, paper: ink.paper, holes_rad: holeHeadings(node.nozzle, iso.view), size: detail.fittings ? 1 : 0.7 });
    else if (detail.fittings && !node.fittings.some((fitting) => ['cap', 'plug', 'drain', 'union', 'coupling'].includes(fitting.kind))) disc(pen, at, 2.5, iso.zone === 'high' ? ink.warm : ink.cool);
  }
}

function drawPipeLine(pen: Pen, a: Px, b: Px, zone: Isometric['zone'], ink: Ink): void {
  if (zone === 'high') drawHighPressureLine(pen, [a, b], ink.warm, ink.paper, HIGH_px);
  else drawLowPressureLine(pen, [a, b], ink.cool, LOW_px);
}

function drawRun(pen: Pen, view: Viewport, run: IsometricRun, { zone }: Isometric, detail: IsometricDetail, ink: Ink): void {
  const { a, b } = runStretch(view, run);
  const length = gap_px(a, b);
  if (length === 0) return;
  const colour = zone === 'high' ? ink.warm : ink.cool;
  // What lies behind is parted where a nearer pipe runs over it.
  const bared = Math.min(BARED_px, length / 3) / length;
  setLine(pen, { colour: ink.paper, width: 10 });
  line(pen, between(a, b, bared), between(a, b, 1 - bared));
  drawPipeLine(pen, a, b, zone, ink);
  if (!detail.arrows || length < 30) return;
  const way = heading_rad(a, b);
  const tip = along(between(a, b, ARROW_AT), way, 5);
  fillRing(pen, [tip, along(tip, way + 2.7, 11), along(tip, way - 2.7, 11)], colour);
  if (run.isBroken && length >= 46) drawBreak(pen, between(a, b, BREAK_AT), way, ink);
}

/** A pipe that is drawn shorter than it is: a gap between two strokes aslant. */
function drawBreak(pen: Pen, at: Px, way_rad: number, ink: Ink): void {
  const ends = [along(at, way_rad, 3), along(at, way_rad, -3)] as const;
  setLine(pen, { colour: ink.paper, width: 9 });
  line(pen, ...ends);
  setLine(pen, { colour: ink.ink, width: 1.5 });
  for (const end of ends) line(pen, along(end, way_rad + Math.PI / 3, 7), along(end, way_rad + Math.PI / 3, -7));
}

function drawFittings(pen: Pen, view: Viewport, iso: Isometric, ink: Ink): void {
  const colour = iso.zone === 'high' ? ink.warm : ink.cool;
  for (const { fitting, place, legs_rad } of iso.fittings) {
    const [feed = 0, next = feed] = legs_rad;
    const at = toScreen(view, place);
    const isReducer = fitting.kind === 'reducer';
    drawFitting(pen, isReducer ? along(at, next, 12) : at, fitting.kind, {
      colour,
      paper: ink.paper,
      legs_rad: isReducer ? [next + Math.PI] : legs_rad,
      pipe_px: LOW_px,
      sign: fittingSign(iso.network, fitting),
    });
  }
}

function drawAssembly(pen: Pen, { line: { lines, spots, cylinders, flow_rad }, at }: PlacedAssembly, detail: IsometricDetail, ink: Ink): void {
  for (const { a, b, zone, isManifold } of lines) {
    if (isManifold) {
      setLine(pen, { colour: zone === 'high' ? ink.warm : ink.cool, width: 11, cap: 'round' });
      line(pen, at(a), at(b));
      setLine(pen, { colour: ink.paper, width: 6, cap: 'round' });
      line(pen, at(a), at(b));
    } else drawPipeLine(pen, at(a), at(b), zone, ink);
  }
  const isSmall = ({ kind }: { readonly kind: string }): boolean => !detail.assembly && (kind === 'hose' || kind === 'adapter');
  for (const { part, zone, ...place } of spots.filter((spot) => !isSmall(spot.part))) drawAssemblyPart(pen, at(place), flow_rad, part, { warm: zone === 'high' ? ink.warm : ink.cool, paper: ink.paper });
  for (const place of cylinders) {
    const back_rad = flow_rad + Math.PI;
    drawRail(pen, at(place), CYLINDER_px, back_rad, ink.quiet);
    drawCylinder(pen, at(place), { colour: ink.ink, paper: ink.paper, warm: ink.warm, radius_px: CYLINDER_px, back_rad });
  }
}

/** Marks things on the drawing: a wide pale line under a thin one, a ring around single places. */
export function drawIsometricMarks(pen: Pen, view: Viewport, shown: ShownIsometric, marks: IsometricMarks, ink: Ink, isHover: boolean): void {
  const assembly = marks.cylinders.size > 0 || marks.isWhole ? placedAssembly(view, shown) : undefined;
  const cylinders = (assembly?.cylinders ?? []).filter(({ ref }) => marks.cylinders.has(ref.id));
  const lines = [
    ...marks.stretches.map(({ a, b }) => [toScreen(view, a), toScreen(view, b)] as const),
    ...(marks.isWhole && assembly ? assembly.line.lines.map(({ a, b }) => [assembly.at(a), assembly.at(b)] as const) : []),
  ];
  const places = [...marks.places.map((place) => toScreen(view, place)), ...cylinders.map(({ at }) => at)];
  for (const [width, alpha] of isHover ? ([[11, 0.22]] as const) : ([[12, 0.3], [1.75, 1]] as const)) {
    pen.globalAlpha = alpha;
    setLine(pen, { colour: ink.selection, width, cap: 'round' });
    for (const [a, b] of lines) line(pen, a, b);
    for (const at of places) ring(pen, at, 15);
  }
  pen.globalAlpha = 1;
}
