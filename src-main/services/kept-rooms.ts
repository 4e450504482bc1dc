import { createHash } from 'node:crypto';
import type { FieldRoomAnswer } from '#shared/margins/field-room';
import type { Plan } from '#shared/model/plan';

/** How far each nozzle of a plan may be moved, by its key. */
export type FieldRooms = ReadonlyMap<string, FieldRoomAnswer>;

/** The rooms of this many layouts are kept: of what is being printed, and of issues before it. */
const MOST = 4;
const kept = new Map<string, FieldRooms>();

/** Digest of all of a plan that its nozzles may be moved by: not of its log, its sheets, or what was measured. */
export const layoutDigest = ({ levels, networks, profiles, basis, waivers, settings: { sheets: _, ...settings } }: Plan): string =>
  createHash('sha256').update(JSON.stringify([levels, networks, profiles, basis, waivers, settings])).digest('hex');

/** What was worked out for a layout before; it takes seconds, and a set and its field sheet are printed one after the other. */
export const keptRooms = (digest: string): FieldRooms | undefined => kept.get(digest);

/** Keeps what was worked out for a layout; the one that was kept longest goes. */
export function keepRooms(digest: string, rooms: FieldRooms): void {
  kept.delete(digest);
  kept.set(digest, rooms);
  const [oldest] = kept.keys();
  if (kept.size > MOST && oldest !== undefined) kept.delete(oldest);
}
