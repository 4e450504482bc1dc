import type { Device } from '#shared/model/plan';
import { deviceShape } from '#shared/sheets/device-shape';
import { type Pen, type Px, fillRing, polyline, setLine } from '../pen.ts';

export interface DeviceLook {
  readonly colour: string;
  readonly paper: string;
}

/** Size of a sheet's millimetre here [px]. */
export const DEVICE_PX_PER_MM = 4;

/** A detector, alarm, sign, switch, panel or air outlet as it is printed. */
export function drawDevice(pen: Pen, at: Px, device: Device, { colour, paper }: DeviceLook): void {
  for (const { places, isClosed = false, fill, isHeavy, isDashed } of deviceShape(device)) {
    const run: Px[] = [];
    for (let i = 0; i + 1 < places.length; i += 2) run.push({ x: at.x + (places[i] ?? 0) * DEVICE_PX_PER_MM, y: at.y - (places[i + 1] ?? 0) * DEVICE_PX_PER_MM });
    if (fill) fillRing(pen, run, fill === 'ink' ? colour : paper);
    setLine(pen, { colour, width: isHeavy ? 2.5 : 1.5, dash: isDashed ? [3, 2] : [], join: 'round' });
    polyline(pen, run, isClosed);
  }
}
