import type { Derived, DerivedNozzle, Space } from '../derived/derived.ts';
import { type PlanPoint, planPoint } from '../geometry/point.ts';
import { findDatum } from '../derived/datum.ts';

/** A vertical cut through an enclosure, along its fullest row of nozzles. */
export interface SectionCut {
  readonly letter: string;
  readonly room: Space;
  /** Direction of the cut as seen from left to right [rad]; the viewer looks a quarter turn to its left. */
  readonly along_rad: number;
  /** Any place on the cut. */
  readonly through: PlanPoint;
  /** Least and greatest way of the room along the cut from `through` [m]. */
  readonly from_m: number;
  readonly to_m: number;
  /** Nozzles of the room and of its voids. */
  readonly nozzles: readonly DerivedNozzle[];
}

/** Way of a place along a cut from `through`, left to right [m]. */
export const alongCut_m = ({ through, along_rad }: Pick<SectionCut, 'through' | 'along_rad'>, at: PlanPoint | { readonly x: number; readonly y: number }): number =>
  (at.x - through.x) * Math.cos(along_rad) + (at.y - through.y) * Math.sin(along_rad);

/** Distance of a place behind a cut, away from the viewer positive [m]. */
export const behindCut_m = ({ through, along_rad }: Pick<SectionCut, 'through' | 'along_rad'>, at: PlanPoint | { readonly x: number; readonly y: number }): number =>
  -(at.x - through.x) * Math.sin(along_rad) + (at.y - through.y) * Math.cos(along_rad);

/** Nozzles this near to a cut are in it [m]. */
export const IN_CUT_m = 0.05;

/** A, B … Z, AA, AB …: `I` and `O` are left out, for they read as figures. */
export function letterOf(index: number): string {
  const letters = 'ABCDEFGHJKLMNPQRSTUVWXYZ';
  const rest = Math.floor(index / letters.length);
  return (rest > 0 ? letterOf(rest - 1) : '') + (letters[index % letters.length] ?? 'A');
}

/** One cut for each enclosure that has nozzles, in the order of the levels. */
export function planCuts(derived: Derived): SectionCut[] {
  const byEnclosure = new Map<string, DerivedNozzle[]>();
  for (const nozzle of derived.nozzles) {
    const id = nozzle.space?.enclosure.id;
    if (id !== undefined && nozzle.at) byEnclosure.set(id, [...(byEnclosure.get(id) ?? []), nozzle]);
  }
  const rooms = derived.spaces.filter(({ kind, enclosure }) => kind === 'room' && byEnclosure.has(enclosure.id));
  return rooms.map((room, index): SectionCut => {
    const nozzles = byEnclosure.get(room.enclosure.id) ?? [];
    const datum = findDatum(room, nozzles);
    const first_rad = datum ? eastward(datum.faces[0].inward_rad) : 0;
    const rows = [first_rad, first_rad + Math.PI / 2].flatMap((along_rad) =>
      nozzles.map(({ at, space }) => {
        const through = planPoint(at?.x ?? 0, at?.y ?? 0);
        const row = nozzles.filter((other) => other.at && Math.abs(behindCut_m({ through, along_rad }, other.at)) <= IN_CUT_m);
        const ways = room.outline.map((p) => alongCut_m({ through, along_rad }, p));
        return { along_rad, through, count: row.length, isRoom: space?.kind === 'room', from_m: Math.min(...ways), to_m: Math.max(...ways) };
      }),
    );
    rows.sort((a, b) => b.count - a.count || Number(b.isRoom) - Number(a.isRoom) || Math.round((b.to_m - b.from_m - a.to_m + a.from_m) * 100));
    const best = rows[0] ?? { along_rad: 0, through: room.outline[0] ?? planPoint(0, 0), from_m: 0, to_m: 1 };
    return { letter: letterOf(index), room, nozzles, along_rad: best.along_rad, through: best.through, from_m: best.from_m, to_m: best.to_m };
  });
}

/** The same axis pointing east rather than west, north rather than south. */
const eastward = (angle_rad: number): number => (Math.cos(angle_rad) < -1e-9 || (Math.abs(Math.cos(angle_rad)) <= 1e-9 && Math.sin(angle_rad) < 0) ? angle_rad + Math.PI : angle_rad);
