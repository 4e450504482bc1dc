import type { Device } from '../../model/plan.ts';
import { DEVICE_REACH_mm } from '../../sheets/device-shape.ts';
import { deviceSymbol } from '../../sheets/symbols.ts';
import { type DrawingDraft, M_PER_MM, addSymbol, symbolLines } from './drawing-draft.ts';

/** Detectors, alarms, signs, buttons, panels and air outlets, each with its own symbol, name and height. */
export function drawDevices(draft: DrawingDraft, devices: readonly Device[]): void {
  for (const device of devices) {
    const { kind, facing_rad, name, at, height_m } = device;
    const shown = facing_rad === null ? device : { ...device, facing_rad: 0 };
    const block = `Device ${kind === 'detector' && device.space !== 'room' ? 'detector in a void' : kind.replaceAll('-', ' ')}`;
    addSymbol(draft, 'devices', block, symbolLines(deviceSymbol(0, 0, shown, 1)), at, facing_rad ?? 0, { name, height_m, nameOff_m: DEVICE_REACH_mm * 1.3 * M_PER_MM });
  }
}
