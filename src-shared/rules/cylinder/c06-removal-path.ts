import type { Space } from '../../derived/derived.ts';
import { type Door, doorsByLevel } from '../../derived/door-swing.ts';
import { frontZone, inFrontOf } from '../../derived/front-depth.ts';
import { canTakeOut, doorsOfRoom, narrowestOf } from '../../derived/removal-way.ts';
import { defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { type NetworkCylinder, cylindersOf, placeOfCylinder, roomAround } from './cylinders.ts';
import { type RoomCylinder, isMeasured, perNetworkAmongCylinders } from './room-cylinders.ts';

interface CylinderToTakeOut extends NetworkCylinder {
  readonly room: Space | undefined;
  readonly doors: readonly Door[];
  readonly others: readonly RoomCylinder[];
}

const NO_DOORS: readonly Door[] = [];

/**
 * C6: a cylinder on its trolley gets from where it stands to a door of its enclosure, and through it.
 * Measure: widest round thing that gets from the free floor in front of it to a door [m]; the limit's own width while that one does.
 * Limit: removal width of the unit profile (common practice: 24 in).
 * Not checked: a figure is blank, it stands in no drawn room, or no door of its room is drawn.
 */
export const c06RemovalPath = defineRule<CylinderToTakeOut>({
  id: 'C6',
  title: 'Way out for the cylinder',
  severity: 'warn',
  measure: 'length',
  basis: {
    formula: 'floor between walls, things below 2 m and other cylinders, shrunk by half the width, joins the front of the cylinder with a door as wide',
    source: 'unit profile; common practice 24 in (610 mm)',
    caution: 'Doors count as taken off: an open leaf, a step, a ramp and the height needed to tilt the cylinder are not judged, nor the way beyond the door.',
  },
  limitKeys: ['removalWidth_m', 'cylinderDiameter_m'],
  isHeavy: true,
  subjects: perNetworkAmongCylinders((network, { level, spaces }, rooms) => {
    const doors = doorsByLevel(spaces).get(level.id) ?? NO_DOORS;
    return cylindersOf(network, ({ id, at }) => {
      const room = roomAround(spaces, level.id, at);
      return { room, doors: room ? doorsOfRoom(room, doors) : NO_DOORS, others: (rooms.get(room?.key ?? '') ?? []).filter((other) => other.id !== id || other.network !== network.ref.id) };
    });
  }),
  check(subject, { say }) {
    const { cylinder, profile, room, doors, others } = subject;
    const wanted = limitOrBlank(profile, 'removalWidth_m');
    const diameter = limitOrBlank(profile, 'cylinderDiameter_m');
    if ('blank' in wanted) return wanted.blank;
    if ('blank' in diameter) return diameter.blank;
    if (!room) return notChecked('it stands in no drawn room, so that the way out is not known.', placeOfCylinder(subject));
    if (doors.length === 0) return notChecked('no door of its room is drawn.', placeOfCylinder(subject));
    const measured = others.filter(isMeasured);
    const width_m = wanted.limit.value;
    const front = { at: cylinder.at, front_rad: cylinder.back_rad + Math.PI, radius_m: diameter.limit.value / 2 };
    const depth_m = Math.min(inFrontOf(front, room, measured)?.depth_m ?? 0, Math.max(width_m, profile?.limits.frontDepth_m?.value ?? 0));
    const removal = { front: frontZone(front, depth_m), room, doors, others: measured };
    const figures = { kind: 'judged' as const, limit: width_m, limitSource: wanted.limit.source };
    if (canTakeOut(removal, width_m)) {
      if (measured.length < others.length) return notChecked('the diameter of a cylinder of another network in its room is not known.', placeOfCylinder(subject));
      return { ...figures, isKept: true, text: `A way ${say.length(width_m)} wide leads from it to a door.`, place: placeOfCylinder(subject) };
    }
    const narrow = narrowestOf(removal, width_m);
    const { value, limit } = say.against(narrow.width_m, width_m);
    const text = narrow.width_m > 0 ? `The way from it to a door is only ${value} wide where it is narrowest; ${limit} is wanted.` : `No free floor leads from it to a door; a way ${say.length(width_m)} wide is wanted.`;
    const place = narrow.at ? { level: subject.level, at: [narrow.at, { x: cylinder.at.x, y: cylinder.at.y }] } : placeOfCylinder(subject);
    return { ...figures, isKept: false, measured: narrow.width_m, margin: narrow.width_m - width_m, text: `${text} Clear it, or move the cylinder.`, place, cure: { kind: 'advice', text: 'Clear the narrowest place, or stand the cylinder nearer to a door.' } };
  },
});
