import { refKey } from '#shared/model/plan';
import { detailAt } from './level-of-detail.ts';
import { type Pen, disc } from './pen.ts';
import { type Scene, shownLevelOf } from './scene.ts';
import { drawDevice } from './symbols/device-symbol.ts';
import { type Viewport, toScreen, visibleBox } from './viewport.ts';

/** Detectors, alarms, signs, switches and air outlets that can be seen: as signs, as dots while the scale is small. */
export function drawDevices(pen: Pen, view: Viewport, scene: Scene): void {
  const box = visibleBox(view, 24);
  const { symbols } = detailAt(view.camera.scale_px_m);
  const { ink: colour, paper } = scene.ink;
  for (const device of Object.values(shownLevelOf(scene)?.devices ?? {})) {
    const { at } = device;
    if (at.x < box.minX || at.x > box.maxX || at.y < box.minY || at.y > box.maxY) continue;
    if (!scene.shows(refKey({ kind: 'device', level: scene.level, id: device.id }))) continue;
    if (symbols) drawDevice(pen, toScreen(view, at), device, { colour, paper });
    else disc(pen, toScreen(view, at), 1.5, colour);
  }
}
