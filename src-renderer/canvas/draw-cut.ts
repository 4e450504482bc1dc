import type { PlanPoint } from '#shared/geometry/point';
import type { Ink } from '../ink.ts';
import { type Pen, along, gap_px, heading_rad, line, polyline, setLine } from './pen.ts';
import { type Viewport, toScreen } from './viewport.ts';

const ARROW_px = 16;

/** The line along which the section strip cuts: long dashes, with an arrow at both ends the way the strip looks. */
export function drawCut(pen: Pen, view: Viewport, cut: { readonly a: PlanPoint; readonly b: PlanPoint }, ink: Ink): void {
  const a = toScreen(view, cut.a);
  const b = toScreen(view, cut.b);
  if (gap_px(a, b) < 2) return;
  const heading = heading_rad(a, b);
  const looks = heading + Math.PI / 2;
  for (const [colour, width] of [
    [ink.paper, 5],
    [ink.quiet, 1.75],
  ] as const) {
    setLine(pen, { colour, width, dash: [16, 4, 3, 4] });
    line(pen, a, b);
    setLine(pen, { colour, width: width + 0.75, cap: 'round', join: 'round' });
    for (const end of [a, b]) {
      const tip = along(end, looks, ARROW_px);
      line(pen, end, tip);
      polyline(pen, [along(tip, looks + 2.6, 7), tip, along(tip, looks - 2.6, 7)]);
    }
  }
}
