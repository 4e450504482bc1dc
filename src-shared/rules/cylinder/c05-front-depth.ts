import type { Space } from '../../derived/derived.ts';
import { frontZone, inFrontOf } from '../../derived/front-depth.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { atLeast, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { type NetworkCylinder, cylindersOf, placeOfCylinder, roomAround } from './cylinders.ts';
import { type RoomCylinder, isMeasured, perNetworkAmongCylinders } from './room-cylinders.ts';

interface CylinderInRoom extends NetworkCylinder {
  readonly room: Space | undefined;
  /** Cylinders of other networks in the same room. */
  readonly others: readonly RoomCylinder[];
}

/**
 * C5: the floor in front of every cylinder is free, for work on its valve and for taking it out.
 * Measure: outside of the cylinder to the first wall, thing below 2 m or cylinder of another network, straight ahead in its own width [m].
 * Limit: clear depth in front, from the unit profile (common practice: 36 in).
 * Not checked: a figure is blank, or the cylinder stands in no drawn room.
 */
export const c05FrontDepth = defineRule<CylinderInRoom>({
  id: 'C5',
  title: 'Clear depth in front',
  severity: 'warn',
  measure: 'length',
  basis: { formula: 'outside of cylinder to the first thing in front of it, in its own width ≥ limit', source: 'unit profile; common practice 36 in (914 mm)' },
  limitKeys: ['frontDepth_m', 'cylinderDiameter_m'],
  subjects: perNetworkAmongCylinders((network, { spaces }, rooms) =>
    cylindersOf(network, ({ at }) => {
      const room = roomAround(spaces, network.level.id, at);
      return { room, others: (rooms.get(room?.key ?? '') ?? []).filter((other) => other.network !== network.ref.id) };
    }),
  ),
  check(subject, { say }) {
    const { cylinder, profile, room, others } = subject;
    const wanted = limitOrBlank(profile, 'frontDepth_m');
    const diameter = limitOrBlank(profile, 'cylinderDiameter_m');
    if ('blank' in wanted) return wanted.blank;
    if ('blank' in diameter) return diameter.blank;
    if (!room) return notChecked('it stands in no drawn room, so that what stands in front of it is not known.', placeOfCylinder(subject));
    const front = { at: cylinder.at, front_rad: cylinder.back_rad + Math.PI, radius_m: diameter.limit.value / 2 };
    const first = inFrontOf(front, room, others.filter(isMeasured));
    const place = placeOfCylinder(subject, { areas: [[frontZone(front, wanted.limit.value)]] });
    if (!first) return notChecked('it faces out of its room. Turn its back to its wall.', place);
    const figures = atLeast(first.depth_m, wanted.limit, LENGTH_SLACK_m);
    if (figures.isKept && !others.every(isMeasured)) return notChecked('the diameter of a cylinder of another network in its room is not known.', place);
    const { value: free, limit: least } = say.against(first.depth_m, wanted.limit.value);
    return {
      ...figures,
      text: figures.isKept ? `Has ${free} free in front of it, to ${first.name}.` : `Has only ${free} free in front of it, to ${first.name}; ${least} is wanted. Move one of them.`,
      place,
      cure: figures.isKept ? undefined : { kind: 'advice', text: 'Move the cylinder, or what stands in front of it.' },
    };
  },
});
