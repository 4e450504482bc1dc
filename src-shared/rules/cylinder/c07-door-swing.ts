import { type Door, distanceToDoor_m, doorsByLevel, sweepOutline } from '../../derived/door-swing.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { atLeast, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { perNetworkOnLevel } from '../subjects.ts';
import { type NetworkCylinder, cylindersOf, placeOfCylinder, roomAround } from './cylinders.ts';

interface CylinderByDoors extends NetworkCylinder {
  readonly doors: readonly Door[];
  /** Whether the room that it stands in is drawn, and has a door. */
  readonly hasRoom: boolean;
  readonly hasDoor: boolean;
}

const NO_DOORS: readonly Door[] = [];

/**
 * C7: no cylinder stands where a door leaf sweeps, nor in a doorway.
 * Measure: outside of the cylinder to the nearest sweep or doorway on the plan [m], negative when they overlap; exact against the arc.
 * Limit: 0.
 * Not checked: the diameter is blank, the cylinder stands in no drawn room, or no door of its room is drawn.
 */
export const c07DoorSwing = defineRule<CylinderByDoors>({
  id: 'C7',
  title: 'Door swing',
  severity: 'stop',
  measure: 'length',
  basis: {
    formula: 'outside of cylinder to the sweep of every door leaf (a quarter turn) and to every doorway ≥ 0',
    source: 'doors and exits are kept clear: the adopted building and fire code',
    caution: 'The code also asks for a clear width of the way to the exit, which is not judged here.',
  },
  limitKeys: ['cylinderDiameter_m'],
  subjects: perNetworkOnLevel((network, { level, spaces }) => {
    const doors = doorsByLevel(spaces).get(level.id) ?? NO_DOORS;
    return cylindersOf(network, ({ at }) => {
      const room = roomAround(spaces, level.id, at);
      const hasDoor = Object.values(room?.enclosure.openings ?? {}).some(({ kind }) => kind === 'door');
      return { doors, hasRoom: room !== undefined, hasDoor };
    });
  }),
  check(subject, { say }) {
    const { cylinder, profile, doors, hasRoom, hasDoor } = subject;
    const { limit, ...missing } = limitOrBlank(profile, 'cylinderDiameter_m');
    if ('blank' in missing) return missing.blank;
    if (!limit) return notChecked('the diameter of the cylinder is not known.');
    const [nearest] = doors
      .map((door) => ({ door, clear_m: distanceToDoor_m(cylinder.at, door) - limit.value / 2 }))
      .sort((a, b) => a.clear_m - b.clear_m);
    const place = placeOfCylinder(subject, nearest?.door.sweep && { areas: [[sweepOutline(nearest.door.sweep)]] });
    const figures = nearest && atLeast(nearest.clear_m, { value: 0, source: 'geometry' }, LENGTH_SLACK_m);
    const named = nearest && `${nearest.door.name || 'a door'} of ${nearest.door.room}`;
    if (figures && !figures.isKept) {
      const text = `Stands ${say.off(-nearest.clear_m)} inside the swing or the doorway of ${named}. Move it, or hang the door another way.`;
      return { ...figures, text, place, cure: { kind: 'advice', text: 'Move the cylinder out of the swing, or let the door open the other way.' } };
    }
    if (!hasRoom) return notChecked('it stands in no drawn room, so that the doors around it are not known.', placeOfCylinder(subject));
    if (!hasDoor || !figures) return notChecked('no door of its room is drawn.', placeOfCylinder(subject));
    return { ...figures, text: `Stands ${say.length(nearest.clear_m)} clear of the swing and the doorway of ${named}, the nearest.`, place };
  },
});
