import { editCeilingZone } from '../commands/edit-ceiling-zone.ts';
import { editEnclosure } from '../commands/edit-enclosure.ts';
import { placeCorners } from '../commands/place-corners.ts';
import type { FieldDimension } from '../derived/field-dimensions.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { RefOf } from '../model/plan.ts';
import type { Building, MeasuredThing } from './building.ts';
import { carryDevices } from './carry-devices.ts';
import type { RoomClosure } from './room-closure.ts';

/** Puts the corners of rooms that close where their measured lengths say; a room that does not stays as drawn. */
export function buildRooms(building: Building, closures: readonly RoomClosure[]): void {
  for (const { room, name, answer, corners, lengths } of closures) {
    const notDone = (because: string): void => {
      for (const { dimension } of lengths) building.remark('not-applied', dimension, `${dimension.name} could not be taken into the plan: ${because}`);
    };
    if (answer === 'does-not-close' || answer === 'not-fitted') notDone(`${name} does not close, and stays as drawn until it is measured again.`);
    if (answer !== 'closes' && answer !== 'not-proven') continue;
    const outline = building.plan.levels[room.level]?.enclosures[room.id]?.outline ?? [];
    const moved = new Map(
      outline.flatMap(({ id, x, y }) => {
        const to = corners.get(id);
        return to && Math.hypot(to.x - x, to.y - y) > SAME_PLACE_m ? [[id, to] as const] : [];
      }),
    );
    const refused = moved.size === 0 ? undefined : building.try(placeCorners(room, moved));
    if (refused) notDone(`${refused} ${name} stays as drawn.`);
    else if (moved.size > 0) carryDevices(building, room, outline);
  }
}

const meanOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Brings the ceiling of a room, or the part of it that was measured, to the mean of its measured heights. */
export function buildCeiling(building: Building, { about, parts }: MeasuredThing): void {
  if (about.kind !== 'enclosure') return;
  const enclosure = building.plan.levels[about.level]?.enclosures[about.id];
  if (!enclosure) return;
  const byPart = new Map<string | null, { dimension: FieldDimension; off_m: number }[]>();
  for (const { dimension, value_m } of parts.values()) {
    const zone = Object.values(enclosure.ceilingZones).find(({ height_m }) => Math.abs(height_m - dimension.planned_m) <= SAME_PLACE_m)?.id ?? null;
    byPart.set(zone, [...(byPart.get(zone) ?? []), { dimension, off_m: value_m - dimension.planned_m }]);
  }
  for (const [zone, measured] of byPart) {
    const offs = measured.map(({ off_m }) => off_m);
    const off_m = meanOf(offs);
    const apart_m = Math.max(...offs) - Math.min(...offs);
    const first = measured[0];
    if (apart_m > building.tolerance_m && first) {
      building.remark('not-level', first.dimension, `The ceiling of ${enclosure.name} is not as level as drawn: its measured heights are ${building.length(apart_m)} apart. Their mean is taken; look at the nozzles under the lowest part.`);
    }
    if (Math.abs(off_m) <= SAME_PLACE_m) continue;
    const ref: RefOf<'enclosure'> = { kind: 'enclosure', level: about.level, id: about.id };
    const height_m = zone === null ? enclosure.height_m : (enclosure.ceilingZones[zone]?.height_m ?? null);
    const command = zone === null ? editEnclosure(ref, { height_m: (height_m ?? 0) + off_m }) : editCeilingZone({ kind: 'ceiling-zone', level: about.level, enclosure: about.id, id: zone }, { height_m: (height_m ?? 0) + off_m });
    const refused = height_m === null ? 'its height is not known on the plan.' : building.try(command);
    if (refused) for (const { dimension } of measured) building.remark('not-applied', dimension, `${dimension.name} could not be taken into the plan: ${refused}`);
  }
}
