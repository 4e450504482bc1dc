import type { Elevation } from '#shared/elevation/elevation';
import { refKey } from '#shared/model/plan';
import type { ElevationLayout } from '#shared/sheets/elevation-frame';
import { cylinderShape } from '#shared/sheets/elevation-shape';
import type { ComposedElevation } from '#shared/sheets/elevation-view';
import { PRINT } from '#shared/sheets/print-ink';
import type { Ink } from '../../ink.ts';
import { paintMark } from '../paint-marks.ts';
import { type Pen, type Px, aside, disc, line, polyline, ring, setLine } from '../pen.ts';
import { type WallHandle, stripPx } from './wall-pick.ts';
import { PX_PER_mm, type WallView, paperScale, wallPx } from './wall-view.ts';

/** Where the wall's first end stands on the floor. */
const CORNER = { s: 0, z: 0 };

/** How a wall is painted. */
export interface WallLook {
  readonly ink: Ink;
  readonly selection: ReadonlySet<string>;
  /** What is dragged or lies under the pointer. */
  readonly handle: WallHandle | null;
}

/** Ink of the window in place of ink on paper. */
const inksOf = ({ ink, quiet, underlay, paper, panel, warm, cool, solid }: Ink): ReadonlyMap<string, string> =>
  new Map<string, string>([
    [PRINT.ink, ink],
    [PRINT.quiet, quiet],
    [PRINT.faint, underlay],
    [PRINT.paper, paper],
    [PRINT.warm, warm],
    [PRINT.cool, cool],
    [PRINT.solid, solid],
    [PRINT.solidFill, panel],
  ]);

/**
 * Paints a cylinder wall on its board, what is selected marked.
 * @param layout    of the wall at the scale of the view
 * @param composed  the drawing, for this scale or for the last one: then it is painted larger or smaller
 */
export function drawWall(pen: Pen, view: WallView, elevation: Elevation, layout: ElevationLayout, composed: ComposedElevation, board: { readonly width: number; readonly height: number }, { ink, selection, handle }: WallLook): void {
  pen.fillStyle = ink.paper;
  pen.fillRect(0, 0, board.width, board.height);
  const inks = inksOf(ink);
  aside(pen, () => {
    const larger = composed.scale / paperScale(view);
    const corner = wallPx(view, layout, CORNER);
    pen.translate(corner.x - composed.layout.frame.x(0) * PX_PER_mm * larger, corner.y - composed.layout.frame.y(0) * PX_PER_mm * larger);
    pen.scale(PX_PER_mm * larger, PX_PER_mm * larger);
    pen.lineCap = 'round';
    pen.lineJoin = 'round';
    for (const mark of composed.marks) paintMark(pen, mark, { inkOf: (colour) => inks.get(colour) ?? colour, paper: ink.paper });
  });
  aside(pen, () => markSelected(pen, view, elevation, layout, { ink, selection }));
  if (handle) aside(pen, () => markHandle(pen, view, layout, handle, ink));
}

/** What is selected gets a wide soft line along its outline. */
function markSelected(pen: Pen, view: WallView, elevation: Elevation, layout: ElevationLayout, { ink, selection }: Pick<WallLook, 'ink' | 'selection'>): void {
  const px = (s: number, z: number): Px => wallPx(view, layout, { s, z });
  const box = (from_m: number, to_m: number, bottom_m: number, top_m: number): void => polyline(pen, [px(from_m, bottom_m), px(to_m, bottom_m), px(to_m, top_m), px(from_m, top_m)], true);
  setLine(pen, { colour: ink.selection, width: 2.5, join: 'round', cap: 'round' });
  for (const each of elevation.cylinders) {
    if (!selection.has(refKey(each.ref))) continue;
    const { body } = cylinderShape(each);
    polyline(pen, Array.from({ length: body.length / 2 }, (_, i) => px(each.at.s + (body[2 * i] ?? 0), body[2 * i + 1] ?? 0)), true);
    ring(pen, stripPx(view, layout, each.at), each.radius_m * view.scale_px_m);
  }
  for (const { ref, from_m, to_m, bottom_m, top_m } of elevation.openings) if (selection.has(refKey(ref))) box(from_m, to_m, bottom_m, top_m);
  for (const { solid, from_m, to_m } of elevation.solids) if (selection.has(refKey(solid.ref))) box(Math.max(from_m, elevation.shown.from_m), Math.min(to_m, elevation.shown.to_m), Math.max(0, solid.bottom_m), Math.min(elevation.top_m, solid.top_m));
  pen.globalAlpha = 0.4;
  for (const { support, at } of elevation.supports) if (selection.has(refKey(support.ref))) disc(pen, px(at.s, at.z), 11, ink.selection);
  setLine(pen, { colour: ink.selection, width: 9, cap: 'round', join: 'round' });
  const isWhole = selection.has(refKey(elevation.network.ref));
  for (const { pipe, from, to } of elevation.pipes) if (isWhole || selection.has(refKey(pipe.ref))) polyline(pen, [px(from.s, from.z), px(to.s, to.z)]);
  if (isWhole) for (const { places } of elevation.pieces) polyline(pen, places.map(({ s, z }) => px(s, z)));
}

/** The line along which a height is dragged, with its two strokes. */
function markHandle(pen: Pen, view: WallView, layout: ElevationLayout, { kind, z_m, from_m, to_m }: WallHandle, ink: Ink): void {
  const [a, b] = [wallPx(view, layout, { s: from_m, z: z_m }), wallPx(view, layout, { s: to_m, z: z_m })];
  setLine(pen, { colour: ink.selection, width: 2 });
  if (kind === 'gauge') {
    ring(pen, a, 10);
    return;
  }
  line(pen, a, b);
  for (const x of [a.x, b.x]) line(pen, { x, y: a.y - 6 }, { x, y: a.y + 6 });
}
