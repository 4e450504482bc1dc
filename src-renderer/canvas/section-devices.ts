import type { Space } from '#shared/derived/derived';
import { isInside } from '#shared/geometry/outline';
import type { Device, Level, RefOf } from '#shared/model/plan';
import type { SectionPath } from './section-path.ts';
import { type Piece, onLine } from './section-piece.ts';
import type { SectionPoint } from './section-things.ts';

/** A detector, alarm, sign, switch or air outlet as the section shows it. */
export interface SectionDevice {
  readonly ref: RefOf<'device'>;
  /** Turned as it is seen: to the right, to the left, or square to the section. */
  readonly device: Device;
  readonly at: SectionPoint;
}

/** An unfolded run shows what hangs within this distance of it, and a cut line nothing behind it [m]. */
const BESIDE_RUN_m = 0.6;
const ON_CUT_m = 0.15;

/** Where a device looks when it is seen square to a way [rad]. */
function seenFacing_rad({ facing_rad }: Device, { a, b }: Piece): number | null {
  if (facing_rad === null) return null;
  const along = Math.cos(facing_rad - Math.atan2(b.y - a.y, b.x - a.x));
  return along > 0.5 ? 0 : along < -0.5 ? Math.PI : null;
}

/** The devices of the rooms that a way goes through, where their heights are known. */
export function devicesAlong(level: Level | undefined, pieces: readonly Piece[], path: SectionPath, rooms: readonly Space[]): SectionDevice[] {
  return Object.values(level?.devices ?? {}).flatMap((device): SectionDevice[] => {
    const { height_m, at, id } = device;
    if (height_m === null || !level || !rooms.some((room) => isInside(at, room.outline))) return [];
    for (const piece of pieces) {
      const { s, left_m } = onLine(piece, at);
      if (s < -1e-6 || s > piece.length_m + 1e-6) continue;
      if (path.kind === 'run' && Math.abs(left_m) > BESIDE_RUN_m) continue;
      if (path.kind === 'line' && left_m < -ON_CUT_m) continue;
      return [{ ref: { kind: 'device', level: level.id, id }, device: { ...device, facing_rad: seenFacing_rad(device, piece) }, at: { s: piece.start_m + s, z: height_m } }];
    }
    return [];
  });
}
