import type { Space } from '../../derived/derived.ts';
import { sightEndOf } from '../../derived/gauge-sight.ts';
import { polar } from '../../geometry/point.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { defineRule, notChecked } from '../rule.ts';
import { type NetworkCylinder, cylindersOf, placeOfCylinder, roomAround } from './cylinders.ts';
import { type RoomCylinder, isMeasured, perNetworkAmongCylinders } from './room-cylinders.ts';

interface GaugedCylinder extends NetworkCylinder {
  readonly room: Space | undefined;
  readonly others: readonly RoomCylinder[];
}

/** A gauge between these heights is read upright [m]: 3 to 5.5 ft, common practice. */
const LEAST_m = 0.9144;
const MOST_m = 1.6764;
/** A person who reads it stands this far off [m]: 3 ft, common practice. */
const SIGHT_m = 0.9144;

/**
 * C8: the pressure gauge of a cylinder can be read by a person who stands before it.
 * Measure: height of the gauge above the finished floor; clear line of sight in the direction that it faces, from the axis of the cylinder [m].
 * Limit: 3 to 5.5 ft; 3 ft (both common practice).
 * Not checked: the gauge is not known, or it stands in no drawn room and its height is kept.
 */
export const c08GaugeVisible = defineRule<GaugedCylinder>({
  id: 'C8',
  title: 'Gauge can be read',
  severity: 'warn',
  measure: 'length',
  basis: { formula: '3 ft ≤ height of gauge ≤ 5.5 ft; clear line of sight in front of it ≥ 3 ft', source: 'common practice', caution: 'The line of sight is judged at the height of the gauge, square to its face.' },
  subjects: perNetworkAmongCylinders((network, { spaces }, rooms) =>
    cylindersOf(network, ({ id, at }) => {
      const room = roomAround(spaces, network.level.id, at);
      return { room, others: (rooms.get(room?.key ?? '') ?? []).filter((other) => other.id !== id || other.network !== network.ref.id) };
    }),
  ),
  check(subject, { say }) {
    const { cylinder, profile, room, others } = subject;
    const { gauge, at } = cylinder;
    if (!gauge) return notChecked('where its gauge is and which way it faces is not known.', placeOfCylinder(subject));
    const { height_m, facing_rad } = gauge;
    const margin = Math.min(height_m - LEAST_m, MOST_m - height_m);
    const from = { x: at.x, y: at.y };
    const place = placeOfCylinder(subject, { rays: [{ from, to: polar(from, facing_rad, SIGHT_m) }] });
    const common = { kind: 'judged' as const, limitSource: 'common practice', place };
    if (margin < -LENGTH_SLACK_m) {
      const limit = height_m < LEAST_m ? LEAST_m : MOST_m;
      const { value, limit: bound } = say.against(height_m, limit);
      return { ...common, isKept: false, measured: height_m, limit, margin, text: `Its gauge is ${value} above the floor; between ${height_m < LEAST_m ? bound : say.length(LEAST_m)} and ${height_m < LEAST_m ? say.length(MOST_m) : bound} it is read upright. Turn or move the gauge.` };
    }
    if (!room) return notChecked('it stands in no drawn room, so that what stands before its gauge is not known.', placeOfCylinder(subject));
    const outlet_m = profile?.limits.outletHeight_m?.value;
    // A cylinder that is lower than the gauge does not hide it.
    const hiding = outlet_m !== undefined && outlet_m < height_m ? [] : others;
    const end = sightEndOf({ at: from, height_m, facing_rad }, room, hiding.filter(isMeasured));
    const sight_m = end?.away_m ?? Infinity;
    if (sight_m < SIGHT_m - LENGTH_SLACK_m) {
      const { value, limit } = say.against(sight_m, SIGHT_m);
      return { ...common, isKept: false, measured: sight_m, limit: SIGHT_m, margin: sight_m - SIGHT_m, text: `Its gauge looks at ${end?.name ?? 'something'} ${value} away; ${limit} of clear sight is wanted to read it. Turn the gauge.`, cure: { kind: 'advice', text: 'Turn the gauge to where a person can stand.' } };
    }
    if (hiding.some((other) => !isMeasured(other))) return notChecked('the diameter of a cylinder of another network in its room is not known.', placeOfCylinder(subject));
    return { ...common, isKept: true, measured: height_m, limit: height_m - LEAST_m < MOST_m - height_m ? LEAST_m : MOST_m, margin, text: `Its gauge is ${say.length(height_m)} above the floor, with ${say.length(SIGHT_m)} or more of clear sight in front of it.` };
  },
});
