import type { Solid } from '#shared/derived/derived';
import { findPanelSpace, panelZone } from '#shared/derived/panel-space';
import { refKey } from '#shared/model/plan';
import { detailAt } from './level-of-detail.ts';
import { type Pen, along, fillRing, polyline, setLine } from './pen.ts';
import { type Scene, solidsOf } from './scene.ts';
import { hatchRings } from './symbols/hatch.ts';
import { zigzagRing } from './symbols/zigzag.ts';
import { drawWorkPlace } from './symbols/work-place.ts';
import { type Viewport, toScreen, visibleBox } from './viewport.ts';

/** A floor plan is cut at this height: what begins above it is drawn as overhead [m]. Source: common practice. */
const PLAN_CUT_m = 1.2;

/** A thing smaller than this is a speck [px]. */
const SPECK_px = 3;

/** Whether a thing hangs above the height at which the plan is cut. */
export const isOverhead = ({ bottom_m }: Pick<Solid, 'bottom_m'>): boolean => bottom_m >= PLAN_CUT_m;

/** Things in the way: hatched where the plan cuts them or looks down on them, dashed outlines where they hang overhead. */
export function drawObstructions(pen: Pen, view: Viewport, scene: Scene): void {
  const box = visibleBox(view, 10);
  const { solid: colour, paper } = scene.ink;
  const { fine } = detailAt(view.camera.scale_px_m);
  for (const each of solidsOf(scene)) {
    const { bounds } = each;
    if (bounds.maxX < box.minX || bounds.minX > box.maxX || bounds.maxY < box.minY || bounds.minY > box.maxY) continue;
    if (!scene.shows(refKey(each.ref))) continue;
    const size_px = Math.max(bounds.maxX - bounds.minX, bounds.maxY - bounds.minY) * view.camera.scale_px_m;
    if (size_px < SPECK_px) {
      const p = toScreen(view, { x: bounds.minX, y: bounds.maxY });
      pen.fillStyle = colour;
      pen.fillRect(p.x, p.y, Math.max(1, size_px), Math.max(1, size_px));
      continue;
    }
    const ring = each.footprint.map((p) => toScreen(view, p));
    const { kind } = each.obstruction;
    if (kind === 'work-place') {
      drawWorkPlace(pen, ring, colour);
      continue;
    }
    if (isOverhead(each)) {
      if (kind === 'live-part' && fine) zigzagRing(pen, ring, toScreen(view, { x: 0, y: 0 }), view, colour);
      setLine(pen, { colour, width: 1.5, dash: [9, 4] });
      polyline(pen, ring, true);
      continue;
    }
    pen.globalAlpha = 0.5;
    fillRing(pen, ring, paper);
    pen.globalAlpha = 1;
    if (kind === 'live-part') {
      if (fine) zigzagRing(pen, ring, toScreen(view, { x: 0, y: 0 }), view, colour);
    } else if (fine) {
      pen.globalAlpha = 0.6;
      hatchRings(pen, [ring], toScreen(view, { x: 0, y: 0 }), view, {
        colour,
        spacing_px: each.obstruction.isPermeable ? 14 : 9,
        slant_rad: Math.PI / 4,
        ...(each.obstruction.isPermeable ? { dash: [4, 4] } : {}),
      });
      pen.globalAlpha = 1;
    }
    setLine(pen, { colour, width: 1.75 });
    polyline(pen, ring, true);
    if (kind === 'panel') drawPanelSpace(pen, view, each, scene);
  }
}

/** The working space before an electrical panel, where its front is known: a dotted outline with an arrow out of the front. */
function drawPanelSpace(pen: Pen, view: Viewport, { obstruction }: Solid, { ink }: Scene): void {
  const space = findPanelSpace(obstruction);
  if (!space) return;
  setLine(pen, { colour: ink.solid, width: 1.5, dash: [2, 4] });
  polyline(pen, panelZone(space).map((p) => toScreen(view, p)), true);
  setLine(pen, { colour: ink.solid, width: 1.5 });
  const from = toScreen(view, space.at);
  const tip = along(from, space.front_rad, Math.min(0.3, space.depth_m) * view.camera.scale_px_m);
  polyline(pen, [from, tip]);
  polyline(pen, [along(tip, space.front_rad + 2.6, 6), tip, along(tip, space.front_rad - 2.6, 6)]);
}
