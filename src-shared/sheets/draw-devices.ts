import type { Device } from '../model/plan.ts';
import { DEVICE_REACH_mm, deviceMiddle } from './device-shape.ts';
import { addLabelWays } from './labels.ts';
import { heightText } from './sheet-text.ts';
import type { SymbolName } from './symbol-names.ts';
import { deviceSymbol } from './symbols.ts';
import { type ViewDraft, uprightBox } from './view-draft.ts';

/** The legend's name of a device's sign: a detector in a void has another one. */
export const deviceSign = (device: Device): SymbolName => (device.kind === 'detector' && device.space !== 'room' ? 'detector-void' : device.kind);

/** Middle of a device's sign on paper [mm]. */
const middleOf = ({ frame, sizes }: ViewDraft, device: Device): readonly [number, number] => {
  const { x, y } = deviceMiddle(device);
  return [frame.x(device.at.x) + x * sizes.factor, frame.y(device.at.y) - y * sizes.factor];
};

/** Draws the signs of devices and keeps their paper free. */
export function drawDevices(view: ViewDraft, devices: readonly Device[]): void {
  const { frame, sizes, placer } = view;
  for (const device of devices) {
    view.used.add(deviceSign(device));
    view.lines.push(...deviceSymbol(frame.x(device.at.x), frame.y(device.at.y), device, sizes.factor));
    const [x, y] = middleOf(view, device);
    const half = (DEVICE_REACH_mm - 0.6) * sizes.factor;
    placer.block(uprightBox(x, y, half, half), device.id);
  }
}

/** Names devices, with the zone of a detector and their heights where there is room. */
export function labelDevices(view: ViewDraft, devices: readonly Device[]): void {
  const { lengths, sizes } = view;
  for (const device of devices) {
    const [x, y] = middleOf(view, device);
    const zone = device.kind === 'detector' && device.zone !== '' ? ` zone ${device.zone}` : '';
    const name = { text: `${device.name}${zone}`, font: 'bold' as const };
    const height = { text: device.height_m === null ? 'height not known' : heightText(device.height_m, lengths) };
    const wish = { x, y, clearance_mm: (DEVICE_REACH_mm - 0.4) * sizes.factor, owner: device.id, toward_rad: device.facing_rad ?? Math.PI / 4 };
    addLabelWays(view, [{ lines: [name, height], wish }, { lines: [name], wish }], device.name);
  }
}
