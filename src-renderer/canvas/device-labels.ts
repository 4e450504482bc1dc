import { boundsOf } from '#shared/geometry/outline';
import { type Device, refKey } from '#shared/model/plan';
import { ADJOINING_WORDS } from '#shared/model/surroundings-words';
import { DEVICE_REACH_mm, deviceMiddle } from '#shared/sheets/device-shape';
import { formatLength } from '#shared/units/length-text';
import { spotsAround } from './label-placer.ts';
import { type Label, type LabelContext, type LabelLine, fixedPx, isInBox, sizedLabel } from './label-wishes.ts';
import type { Px } from './pen.ts';
import { levelOf } from './scene.ts';
import { DEVICE_PX_PER_MM } from './symbols/device-symbol.ts';
import type { Viewport } from './viewport.ts';

/** Half the room that a device's sign takes on the board [px]. */
export const DEVICE_REACH_px = DEVICE_REACH_mm * DEVICE_PX_PER_MM;

/** Middle of a device's sign, in pixels from the plan's origin. */
export function deviceMiddle_px(view: Viewport, device: Device): Px {
  const at = fixedPx(view, device.at);
  const { x, y } = deviceMiddle(device);
  return { x: at.x + x * DEVICE_PX_PER_MM, y: at.y - y * DEVICE_PX_PER_MM };
}

/** Names of devices, with the zone of a detector; close up their heights too. */
export function deviceNames({ scene, view, detail, measure, region }: LabelContext): Label[] {
  const { ink, lengths } = scene;
  return Object.values(levelOf(scene)?.devices ?? {}).flatMap((device) => {
    const key = refKey({ kind: 'device', level: scene.level, id: device.id });
    if (!isInBox(device.at, region) || !scene.shows(key)) return [];
    const zone = device.kind === 'detector' && device.zone !== '' ? ` zone ${device.zone}` : '';
    const lines: LabelLine[] = [{ text: `${device.name}${zone}`, colour: ink.ink }];
    if (detail.heights) lines.push({ text: device.height_m === null ? 'height not known' : `at ${formatLength(device.height_m, lengths)}`, colour: ink.quiet });
    const box = sizedLabel(measure, lines);
    return [{ key, ...box, spots: spotsAround(deviceMiddle_px(view, device), DEVICE_REACH_px + 1, box.width, box.height) }];
  });
}

/** Names of adjoining spaces, and what they are. */
export function adjoiningNames({ scene, view, measure, region }: LabelContext): Label[] {
  return Object.values(levelOf(scene)?.adjoining ?? {}).flatMap((space) => {
    const key = refKey({ kind: 'adjoining', level: scene.level, id: space.id });
    const [first] = space.outline;
    if (!first || !scene.shows(key)) return [];
    const bounds = boundsOf(space.outline);
    if (bounds.maxX < region.minX || bounds.minX > region.maxX || bounds.maxY < region.minY || bounds.minY > region.maxY) return [];
    const word = space.kind === 'unknown' ? 'kind not known' : ADJOINING_WORDS[space.kind].toLowerCase();
    const isSaid = space.name.toLowerCase().includes(word);
    const lines: LabelLine[] = [{ text: space.name, bold: true, colour: scene.ink.quiet }, ...(isSaid ? [] : [{ text: word, colour: scene.ink.quiet }])];
    const box = sizedLabel(measure, lines);
    const px = boundsOf(space.outline.map((p) => fixedPx(view, p)));
    const centre = { x: (px.minX + px.maxX) / 2 - box.width / 2, y: (px.minY + px.maxY) / 2 - box.height / 2 };
    const spots = [0, 0.25, -0.25, 0.38, -0.38].flatMap((dx) => [0, 0.3, -0.3].map((dy) => ({ x: centre.x + dx * (px.maxX - px.minX), y: centre.y + dy * (px.maxY - px.minY) })));
    return [{ key, ...box, spots }];
  });
}
