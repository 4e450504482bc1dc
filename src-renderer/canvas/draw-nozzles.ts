import { jetsOf } from '#shared/derived/jets';
import type { DerivedNozzle } from '#shared/derived/derived';
import { refKey } from '#shared/model/plan';
import { jetsKey } from './changed-things.ts';
import { detailAt } from './level-of-detail.ts';
import { type Pen, pieces, setLine } from './pen.ts';
import type { Px } from './pen.ts';
import { type Scene, networksOf } from './scene.ts';
import { drawNozzle } from './symbols/nozzle-symbol.ts';
import { type Viewport, toScreen, visibleBox } from './viewport.ts';

/** Nozzles of a scene's level that can be seen. */
function nozzlesInSight(view: Viewport, scene: Scene, margin_px: number, keyOf: (nozzle: DerivedNozzle) => string): DerivedNozzle[] {
  const box = visibleBox(view, margin_px);
  const isNear = (at: DerivedNozzle['at']): boolean => at !== undefined && at.x >= box.minX && at.x <= box.maxX && at.y >= box.minY && at.y <= box.maxY;
  return networksOf(scene)
    .flatMap((network) => network.nozzles)
    .filter((nozzle) => isNear(nozzle.at) && scene.shows(keyOf(nozzle)));
}

/** Nozzles as rings with a stroke per hole; as small squares while the scale is small. */
export function drawNozzles(pen: Pen, view: Viewport, scene: Scene): void {
  const { symbols } = detailAt(view.camera.scale_px_m);
  const { cool, ink, paper } = scene.ink;
  pen.fillStyle = cool;
  for (const { at, holes_rad } of nozzlesInSight(view, scene, 24, ({ ref }) => refKey(ref))) {
    if (!at) continue;
    const p = toScreen(view, at);
    if (symbols) drawNozzle(pen, p, { colour: ink, paper, holes_rad });
    else pen.fillRect(p.x - 2, p.y - 2, 4, 4);
  }
}

/** Thin rays from every hole to the first thing that it blows at, with a short foot there. */
export function drawJets(pen: Pen, view: Viewport, scene: Scene): void {
  if (!detailAt(view.camera.scale_px_m).fine) return;
  const rays: [Px, Px][] = [];
  const feet: [Px, Px][] = [];
  for (const nozzle of nozzlesInSight(view, scene, 800, jetsKey)) {
    for (const jet of jetsOf(nozzle)) {
      const a = toScreen(view, jet.from);
      const b = toScreen(view, jet.to);
      rays.push([a, b]);
      if (jet.hit === null) continue;
      const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
      const nx = -(b.y - a.y) / length;
      const ny = (b.x - a.x) / length;
      feet.push([
        { x: b.x - nx * 5, y: b.y - ny * 5 },
        { x: b.x + nx * 5, y: b.y + ny * 5 },
      ]);
    }
  }
  setLine(pen, { colour: scene.ink.cool, width: 1, dash: [2, 4] });
  pieces(pen, rays);
  setLine(pen, { colour: scene.ink.cool, width: 2 });
  pieces(pen, feet);
}
