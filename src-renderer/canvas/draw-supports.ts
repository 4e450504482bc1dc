import { placedSupportsOf } from '#shared/derived/placed-supports';
import { refKey } from '#shared/model/plan';
import { supportLieOnPlan } from '#shared/sheets/support-shape';
import { detailAt, pipeWidth_px } from './level-of-detail.ts';
import type { Pen } from './pen.ts';
import { type Scene, networksOf } from './scene.ts';
import { drawSupport, drawSupportTick } from './symbols/support-symbol.ts';
import { type Viewport, toScreen, visibleBox } from './viewport.ts';

/** Pipe supports that can be seen: as signs, as ticks while the scale is small. */
export function drawSupports(pen: Pen, view: Viewport, scene: Scene): void {
  const { camera } = view;
  const detail = detailAt(camera.scale_px_m);
  if (!detail.symbols) return;
  const box = visibleBox(view, 24);
  const colour = scene.ink.ink;
  for (const network of networksOf(scene)) {
    for (const placed of placedSupportsOf(network)) {
      const { at, kind } = placed.support;
      if (at.x < box.minX || at.x > box.maxX || at.y < box.minY || at.y > box.maxY || !scene.shows(refKey(placed.ref))) continue;
      const lie = supportLieOnPlan(placed, network.nozzles, network.pipes);
      if (detail.fittings) drawSupport(pen, toScreen(view, at), { kind, lie, colour, pipe_px: pipeWidth_px(placed.pipe?.outside_m ?? 0, camera.scale_px_m) });
      else drawSupportTick(pen, toScreen(view, at), lie, colour);
    }
  }
}
