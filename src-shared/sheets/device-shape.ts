import type { Device, DeviceKind } from '../model/plan.ts';

/** A line or an area of a sign about its place: x toward where it faces, y to the left of that [mm at factor 1]. */
export interface DevicePiece {
  readonly places: readonly number[];
  readonly isClosed?: boolean;
  readonly fill?: 'paper' | 'ink';
  readonly isHeavy?: boolean;
  readonly isDashed?: boolean;
}

/** Kinds that hang on a wall: they are drawn with their backs at their place and stand off into the room. */
export const WALL_DEVICES: ReadonlySet<DeviceKind> = new Set<DeviceKind>(['sounder', 'sign', 'manual-release', 'abort', 'disconnect', 'door-button', 'control-panel']);

/** Reach of the largest sign from its place [mm at factor 1], for picking and for texts. */
export const DEVICE_REACH_mm = 2.6;

const around = (x: number, y: number, radius: number, from = 0, to = 2 * Math.PI, steps = 24): number[] =>
  Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps).flatMap((angle) => [x + Math.cos(angle) * radius, y + Math.sin(angle) * radius]);
const disc = (x: number, y: number, radius: number, fill: 'paper' | 'ink', more: Partial<DevicePiece> = {}): DevicePiece => ({ places: around(x, y, radius), isClosed: true, fill, ...more });
const box = (halfX: number, halfY: number): DevicePiece => ({ places: [-halfX, -halfY, halfX, -halfY, halfX, halfY, -halfX, halfY], isClosed: true, fill: 'paper' });
const stroke = (...places: number[]): DevicePiece => ({ places });
const bar = (...places: number[]): DevicePiece => ({ places, isHeavy: true });
/** An arrow head with its tip at a place, pointing along x. */
const head = (x: number, sense: 1 | -1): DevicePiece => ({ places: [x, 0, x - 1.2 * sense, 0.55, x - 1.2 * sense, -0.55], isClosed: true, fill: 'ink' });

const SQUARE = 1.5;

/** What is drawn of a kind about its middle, and how deep it is from there to its back. */
function piecesOf(device: Device): { readonly pieces: readonly DevicePiece[]; readonly back: number } {
  switch (device.kind) {
    case 'detector':
      // In a void it is hidden behind tiles: a broken ring.
      return { pieces: [disc(0, 0, 1.7, 'paper', { isDashed: device.space !== 'room' }), disc(0, 0, 0.5, 'ink')], back: 1.7 };
    case 'sounder':
      return {
        pieces: [
          { places: [-1.4, -0.7, 0.5, -1.5, 0.5, 1.5, -1.4, 0.7], isClosed: true, fill: 'paper' },
          ...(device.isHeard ? [stroke(...around(-0.6, 0, 2.2, -0.6, 0.6, 8)), stroke(...around(-0.6, 0, 3.1, -0.6, 0.6, 8))] : []),
          ...(device.isSeen ? [stroke(-0.9, -0.5, 0.1, 0.5), stroke(-0.9, 0.5, 0.1, -0.5)] : []),
        ],
        back: 1.4,
      };
    case 'sign':
      return { pieces: [box(0.8, 2), bar(0, -1.2, 0, 1.2)], back: 0.8 };
    case 'manual-release':
      return { pieces: [box(SQUARE, SQUARE), stroke(-0.9, 0, 0.5, 0), bar(0.5, -0.9, 0.5, 0.9)], back: SQUARE };
    case 'abort':
      return { pieces: [box(SQUARE, SQUARE), disc(0, 0, 0.85, 'paper')], back: SQUARE };
    case 'disconnect':
      return { pieces: [box(SQUARE, SQUARE), disc(0.4, 0, 0.55, 'ink'), bar(-0.95, 0, 0.4, 0)], back: SQUARE };
    case 'lock-out-valve':
      return { pieces: [{ places: [-2, -1.1, 2, 1.1, 2, -1.1, -2, 1.1], isClosed: true, fill: 'paper' }, stroke(0, 0, 0, 1.9), bar(-1.1, 1.9, 1.1, 1.9)], back: 2 };
    case 'door-button':
      return { pieces: [disc(0, 0, 0.95, 'paper')], back: 0.95 };
    case 'control-panel':
      return { pieces: [box(1.1, 2.4), stroke(-1.1, -0.8, 1.1, -0.8), stroke(-1.1, 0.8, 1.1, 0.8)], back: 1.1 };
    case 'diffuser': {
      const isOutward = device.air === 'supply';
      return {
        pieces: [box(1.7, 1.7), stroke(-1.7, -1.7, 1.7, 1.7), stroke(-1.7, 1.7, 1.7, -1.7), stroke(1.7, 0, 3.6, 0), head(isOutward ? 3.7 : 1.7, isOutward ? 1 : -1)],
        back: 1.7,
      };
    }
    case 'air-intake':
      return { pieces: [{ ...box(SQUARE, SQUARE), isClosed: false, fill: undefined, places: [1.5, 1.5, -1.5, 1.5, -1.5, -1.5, 1.5, -1.5] }, stroke(-0.4, 0, 3, 0), head(-0.8, -1)], back: SQUARE };
  }
}

/**
 * The sign of a device about its place, as board, section and paper draw it: x to the right, y up.
 * One that faces nowhere looks up the paper; one that hangs on a wall and faces away from it has its back at its place.
 */
export function deviceShape(device: Device): DevicePiece[] {
  const { pieces, back } = piecesOf(device);
  const isOnWall = WALL_DEVICES.has(device.kind) && device.facing_rad !== null;
  const angle = device.facing_rad ?? (device.kind === 'lock-out-valve' || device.kind === 'diffuser' ? 0 : Math.PI / 2);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const shift = isOnWall ? back : 0;
  return pieces.map((piece) => ({
    ...piece,
    places: piece.places.map((_, i, all) => {
      const x = (all[i - (i % 2)] ?? 0) + shift;
      const y = all[i - (i % 2) + 1] ?? 0;
      return i % 2 === 0 ? x * cos - y * sin : x * sin + y * cos;
    }),
  }));
}

/** Where the middle of a device's sign lies from its place [mm at factor 1], x to the right and y up. */
export function deviceMiddle(device: Device): { readonly x: number; readonly y: number } {
  if (!WALL_DEVICES.has(device.kind) || device.facing_rad === null) return { x: 0, y: 0 };
  const { back } = piecesOf(device);
  return { x: Math.cos(device.facing_rad) * back, y: Math.sin(device.facing_rad) * back };
}
