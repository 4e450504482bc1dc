import { type Elevation, RAIL_PROFILE_m, type Rail, type WallCylinder } from '../elevation/elevation.ts';
import { SYMBOL_OUTLET_m } from '../elevation/elevations-of.ts';
import type { ElevationLayout } from './elevation-frame.ts';
import { type CylinderShape, cylinderShape } from './elevation-shape.ts';
import { addLabel } from './labels.ts';
import { box, circle, line, pen, ring } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import type { Mark } from './sheet.ts';
import { arcPlaces } from './symbols.ts';
import { type ViewDraft, addLine, uprightBox } from './view-draft.ts';

/** Sizes of what holds a cylinder, as it is drawn [m]. */
const CLAMP_WIDTH_m = 0.045;
const CLAMP_HEIGHT_m = 0.07;
const BAND_m = 0.03;
const EYE_m = 0.1;
/** Radius of a gauge's dial [m]; on paper at least this [mm at factor 1]. */
const DIAL_m = 0.04;
const LEAST_DIAL_mm = 1.1;

/** Rails with their anchors, behind the cylinders. */
export function drawRails(view: ViewDraft, { rails, racks, frame: wall }: Elevation): void {
  const { frame, sizes } = view;
  for (const { from_m, to_m, height_m } of rails) {
    const height = Math.max(frame.mm(RAIL_PROFILE_m), 0.9 * sizes.factor);
    const y = frame.y(height_m);
    view.lines.push(box(pen(WEIGHT.medium * sizes.factor), frame.x(from_m), y - height / 2, frame.mm(to_m - from_m), height, PRINT.paper));
    addLine(view, [frame.x(from_m), y, frame.x(to_m), y], [], 8);
  }
  for (const { from_m, to_m, height_m } of racks) {
    const [left, right, foot, top] = [frame.x(Math.max(0, from_m)), frame.x(Math.min(wall.length_m, to_m)), frame.y(0), frame.y(height_m)];
    const wide = frame.mm(RAIL_PROFILE_m);
    const stroke = pen(WEIGHT.medium * sizes.factor);
    for (const x of [left, right - wide]) view.lines.push(box(stroke, x, top, wide, foot - top, PRINT.paper));
    for (const y of [top, foot - 2 * wide]) view.lines.push(box(stroke, left, y, right - left, wide, PRINT.paper));
    addLine(view, [left, top, right, top, right, foot, left, foot], [], 6, true);
  }
}

const placedShape = ({ frame }: ViewDraft, s: number, places: readonly number[]): number[] => places.map((value, i) => (i % 2 === 0 ? frame.x(s + value) : frame.y(value)));

/** A cylinder from the side with its valve and the notch of its outlet. */
function drawWallCylinder(view: ViewDraft, { at, outlet, isMeasured, outlet_m, cylinder, radius_m }: WallCylinder, shape: CylinderShape, isNamed: boolean): void {
  const { frame, sizes } = view;
  const isSymbol = !isMeasured || outlet_m === undefined;
  const stroke = pen(WEIGHT.wide * sizes.factor, PRINT.ink, isSymbol ? [1.4 * sizes.factor, 0.9 * sizes.factor] : undefined);
  view.used.add('cylinder');
  const body = placedShape(view, at.s, shape.body);
  addLine(view, body, ring(stroke, body, PRINT.paper), 4, true);
  for (const part of [shape.neck, shape.valve]) view.lines.push(ring(pen(WEIGHT.medium * sizes.factor), placedShape(view, at.s, part), PRINT.paper));
  const z = outlet_m ?? SYMBOL_OUTLET_m;
  const [x, y] = [frame.x(at.s), frame.y(z)];
  const side = outlet ? outlet.right : 0;
  const stub = Math.max(frame.mm(0.05), 1.2 * sizes.factor);
  if (outlet && Math.abs(side) > 0.3) addLine(view, [x, y, x + side * stub, y], line(pen(WEIGHT.heavy * sizes.factor, PRINT.warm), x, y, x + side * stub, y), 4);
  else view.lines.push(circle(pen(WEIGHT.medium * sizes.factor, PRINT.warm), x, y, Math.max(frame.mm(0.018), 0.5 * sizes.factor), outlet && outlet.toward < 0 ? undefined : PRINT.paper));
  view.placer.block(uprightBox(x, frame.y(shape.top_m) + frame.mm(0.05), frame.mm(0.05), frame.mm(0.07)), cylinder.id);
  if (!isNamed) return;
  const middle = frame.y(shape.shoulder_m * 0.5);
  const foot = frame.y(shape.shoulder_m * 0.22);
  addLabel(
    view,
    [{ text: cylinder.name, font: 'bold' }],
    { x, y: middle, clearance_mm: frame.mm(radius_m), spots: [x, middle, x, foot, x, frame.y(shape.shoulder_m * 0.8)], owner: cylinder.id, toward_rad: -Math.PI / 2 },
    `cylinder ${cylinder.name}`,
  );
}

/** What holds a cylinder at a level: a band across it, a clamp on either side; a restraint's eyes sit in the wall. */
function drawHold(view: ViewDraft, { at, radius_m }: WallCylinder, z_m: number, isRestraint: boolean): void {
  const { frame, sizes } = view;
  const [x, y] = [frame.x(at.s), frame.y(z_m)];
  const radius = frame.mm(radius_m);
  const band = Math.max(frame.mm(BAND_m), 0.7 * sizes.factor);
  view.lines.push(box(pen(WEIGHT.thin * sizes.factor), x - radius, y - band / 2, 2 * radius, band, PRINT.paper));
  for (const side of [-1, 1]) {
    const out = x + side * radius;
    if (isRestraint) {
      const eye = out + side * Math.max(frame.mm(EYE_m) * 0.6, 1.2 * sizes.factor);
      view.lines.push(line(pen(WEIGHT.medium * sizes.factor), out, y, eye, y), circle(pen(WEIGHT.medium * sizes.factor), eye, y, 0.45 * sizes.factor, PRINT.ink));
    }
    const [wide, tall] = [Math.max(frame.mm(CLAMP_WIDTH_m), 0.8 * sizes.factor), Math.max(frame.mm(CLAMP_HEIGHT_m), 1.6 * sizes.factor)];
    view.lines.push(box(pen(WEIGHT.medium * sizes.factor), side < 0 ? out - wide * 0.7 : out - wide * 0.3, y - tall / 2, wide, tall, PRINT.quiet));
  }
  addLine(view, [x - radius, y, x + radius, y], [], 5);
}

/** Anchors of the rail: crossed rings. */
function drawAnchors(view: ViewDraft, { anchors, height_m }: Rail): void {
  const { frame, sizes } = view;
  const radius = 0.75 * sizes.factor;
  for (const { s } of anchors) {
    const [x, y] = [frame.x(s), frame.y(height_m)];
    const stroke = pen(WEIGHT.thin * sizes.factor);
    view.lines.push(circle(stroke, x, y, radius, PRINT.paper), line(stroke, x - radius, y, x + radius, y), line(stroke, x, y - radius, x, y + radius));
  }
}

/** A gauge's dial as it is seen: its face and needle, its edge, or its broken rim from behind. */
function drawGauge(view: ViewDraft, { at, gauge }: WallCylinder): void {
  if (!gauge) return;
  const { frame, sizes } = view;
  const [x, y] = [frame.x(at.s), frame.y(gauge.height_m)];
  const radius = Math.max(frame.mm(DIAL_m), LEAST_DIAL_mm * sizes.factor);
  const stroke = pen(WEIGHT.medium * sizes.factor);
  const marks: Mark[] = [];
  if (gauge.look === 'room') {
    marks.push(circle(stroke, x, y, radius, PRINT.paper), line(pen(WEIGHT.wide * sizes.factor), x, y, x + radius * 0.55, y - radius * 0.55), circle(undefined, x, y, radius * 0.2, PRINT.ink));
  } else if (gauge.look === 'wall') {
    marks.push(circle(undefined, x, y, radius, PRINT.paper));
    for (let i = 0; i < 4; i += 1) marks.push(line(stroke, ...arcPlaces(x, y, radius, (i * Math.PI) / 2 + 0.2, (i * Math.PI) / 2 + 1.2, 6)));
  } else {
    const side = gauge.look === 'right' ? 1 : -1;
    marks.push(box(stroke, x + (side > 0 ? 0 : -radius * 0.7), y - radius, radius * 0.7, 2 * radius, PRINT.paper), line(pen(WEIGHT.wide * sizes.factor), x + side * radius * 0.7, y - radius, x + side * radius * 0.7, y + radius));
  }
  view.lines.push(...marks);
  view.placer.block(uprightBox(x, y, radius, radius), 'gauge');
}

/** Cylinders with all that holds them, and their gauges. */
export function drawMountedCylinders(view: ViewDraft, { cylinders, rails }: Elevation, { hasNamesInside }: ElevationLayout): void {
  for (const each of cylinders) {
    drawWallCylinder(view, each, cylinderShape(each), hasNamesInside);
    const { cylinder } = each;
    if (cylinder.mounting === 'wall' && cylinder.railHeight_m !== null) drawHold(view, each, cylinder.railHeight_m, false);
    for (const z_m of cylinder.restraints_m) drawHold(view, each, z_m, cylinder.mounting === 'wall');
  }
  for (const rail of rails) drawAnchors(view, rail);
  for (const each of cylinders) drawGauge(view, each);
}
