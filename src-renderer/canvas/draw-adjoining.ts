import { boundsOf } from '#shared/geometry/outline';
import { refKey } from '#shared/model/plan';
import { detailAt } from './level-of-detail.ts';
import { type Pen, polyline, setLine } from './pen.ts';
import { type Scene, shownLevelOf } from './scene.ts';
import { hatchRings } from './symbols/hatch.ts';
import { type Viewport, toScreen, visibleBox } from './viewport.ts';

/** Sparse enough to be read as "beside", never as a thing that stands there [px]. */
const SPACING_px = 26;

/** Spaces beside, under and over the enclosures: a thin outline with a sparse hatch. */
export function drawAdjoining(pen: Pen, view: Viewport, scene: Scene): void {
  const box = visibleBox(view, 10);
  const { quiet } = scene.ink;
  const { fine } = detailAt(view.camera.scale_px_m);
  for (const { id, outline } of Object.values(shownLevelOf(scene)?.adjoining ?? {})) {
    const bounds = boundsOf(outline);
    if (bounds.maxX < box.minX || bounds.minX > box.maxX || bounds.maxY < box.minY || bounds.minY > box.maxY) continue;
    if (!scene.shows(refKey({ kind: 'adjoining', level: scene.level, id }))) continue;
    const ring = outline.map((p) => toScreen(view, p));
    if (fine) {
      pen.globalAlpha = 0.35;
      hatchRings(pen, [ring], toScreen(view, { x: 0, y: 0 }), view, { colour: quiet, spacing_px: SPACING_px, slant_rad: Math.PI / 3 });
      pen.globalAlpha = 1;
    }
    setLine(pen, { colour: quiet, width: 1.25, dash: [10, 3, 2, 3] });
    polyline(pen, ring, true);
  }
}
