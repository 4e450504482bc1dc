import { AT_DOOR_m, type Doorway, type PlacedOf, placedOf } from '../../derived/device-place.ts';
import { type PlanPoint, midpoint } from '../../geometry/point.ts';
import { distanceToSegment_m, nearestOnSegment } from '../../geometry/segment.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { type Answer, type Asked, type CheckContext, atMost, defineRule, notChecked } from '../rule.ts';
import { perServedRoom } from '../served-rooms.ts';
import { together } from '../together.ts';
import { deviceName, doorName, roomDevices, roomDoorways } from './room-devices.ts';

type Release = PlacedOf<'manual-release'>;

/** Highest that its operable part may be [m]: 48 in. */
export const HIGHEST_m = 1.2192;
const HEIGHT_SOURCE = 'reach range of the ADA standards and ICC A117.1, 48 in (memory)';
const DOOR_SOURCE = 'NFPA 72, manual stations within 5 ft of an exit doorway (memory); common practice';

/** A door that wants a manual release, or a release that is there. */
type Asking =
  | { readonly kind: 'door'; readonly level: string; readonly doorway: Doorway; readonly releases: readonly { readonly at: PlanPoint; readonly name: string; readonly off_m: number }[] }
  | { readonly kind: 'release'; readonly level: string; readonly release: Release }
  | { readonly kind: 'no-door'; readonly level: string; readonly at: readonly PlanPoint[] };

function doorAnswer({ level, doorway, releases }: Extract<Asking, { kind: 'door' }>, say: CheckContext['say']): Answer {
  const [nearest] = releases;
  const middle = midpoint(doorway.face.a, doorway.face.b);
  const cure = { kind: 'advice', text: `Put a manual release within ${say.length(AT_DOOR_m)} of this door.` } as const;
  if (!nearest) return { kind: 'judged', isKept: false, text: 'No manual release stands at this door. Put one beside it.', place: { level, at: [middle] }, cure };
  const figures = atMost(nearest.off_m, { value: AT_DOOR_m, source: DOOR_SOURCE }, LENGTH_SLACK_m);
  const { value, limit } = say.against(nearest.off_m, AT_DOOR_m);
  const place = { level, at: [middle], dimension: { a: nearestOnSegment(nearest.at, doorway.face), b: nearest.at } };
  if (figures.isKept) return { ...figures, text: `Manual release “${nearest.name}” stands ${value} from this door.`, place };
  return { ...figures, text: `The nearest manual release, “${nearest.name}”, stands ${value} from this door; it may be ${limit} away. Put one beside the door.`, place, cure };
}

function releaseAnswer({ level, release: { device } }: Extract<Asking, { kind: 'release' }>, say: CheckContext['say']): Answer {
  const { height_m, isGuarded } = device;
  const place = { level, at: [device.at], heights: height_m === null ? undefined : [{ ...device.at, z: height_m }] };
  const figures = height_m === null ? undefined : atMost(height_m, { value: HIGHEST_m, source: HEIGHT_SOURCE }, LENGTH_SLACK_m);
  const printed = height_m === null ? undefined : say.against(height_m, HIGHEST_m);
  const height: Answer =
    figures && printed
      ? { ...figures, text: figures.isKept ? `Its handle is ${printed.value} above the floor; ${printed.limit} is allowed.` : `Its handle is ${printed.value} above the floor; ${printed.limit} at most is in everybody’s reach. Put it lower.` }
      : notChecked('its height above the floor is not entered.');
  const guard: Answer =
    isGuarded === null
      ? notChecked('nobody has said whether it is guarded against being worked by accident.')
      : { kind: 'judged', isKept: isGuarded, text: isGuarded ? 'It is guarded against being worked by accident.' : 'Nothing guards it against being worked by accident. Give it a cover.' };
  const answer = together([height, guard]);
  if (answer.kind === 'not-checked') return { ...answer, place };
  const inputs = [{ label: 'Guarded', value: isGuarded === null ? 'not known' : isGuarded ? 'yes' : 'no', source: 'plan' }];
  return { ...answer, inputs, place, cure: answer.isKept ? undefined : { kind: 'advice', text: figures?.isKept === false ? `Put it no higher than ${say.length(HIGHEST_m)} above the floor.` : 'Give it a cover that has to be lifted.' } };
}

/**
 * S5: a manual release stands at every door by which people leave, in everybody's reach, and cannot be worked by accident.
 * Measure: from the doorway to the nearest manual release of the enclosure [m]; height of each release [m].
 * Limit: 5 ft; 48 in.
 * Not checked: no door is drawn, or height or guard of a release has not been said. A fault of the other is reported even then.
 */
export const s05ManualRelease = defineRule<Asking>({
  id: 'S5',
  title: 'Manual release',
  severity: 'stop',
  measure: 'length',
  basis: {
    formula: 'doorway to manual release ≤ 5 ft; height of its handle ≤ 48 in; guarded',
    source: `NFPA 2001: a manual release that is in reach and cannot be worked by accident (memory); ${DOOR_SOURCE}; ${HEIGHT_SOURCE}`,
    caution: 'Every door is taken as a way out. The authority may ask for releases elsewhere, or for none at a door that is no exit.',
  },
  subjects: perServedRoom((room): Asked<Asking>[] => {
    const { level } = room.ref;
    const releases = placedOf(roomDevices(room), 'manual-release');
    const doors = roomDoorways(room).map((doorway) => ({
      subject: {
        kind: 'door' as const,
        level,
        doorway,
        releases: releases
          .map((release) => ({ at: release.device.at, name: deviceName(release, 'without a name'), off_m: distanceToSegment_m(release.device.at, doorway.face) }))
          .sort((a, b) => a.off_m - b.off_m)
          .slice(0, 1),
      },
      ref: doorway.ref,
      name: doorName(doorway, room),
    }));
    const none = doors.length === 0 ? [{ subject: { kind: 'no-door' as const, level, at: room.enclosure.outline }, ref: room.ref, name: room.name }] : [];
    return [...none, ...doors, ...releases.map((release) => ({ subject: { kind: 'release' as const, level, release }, ref: release.ref, name: deviceName(release, 'Manual release') }))];
  }),
  check(subject, { say }) {
    switch (subject.kind) {
      case 'door':
        return doorAnswer(subject, say);
      case 'release':
        return releaseAnswer(subject, say);
      case 'no-door':
        return notChecked('no door is drawn, so that nobody knows where people leave.', { level: subject.level, at: subject.at });
    }
  },
});
