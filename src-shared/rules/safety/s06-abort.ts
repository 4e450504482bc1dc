import { AT_DOOR_m, type PlacedOf, placedOf } from '../../derived/device-place.ts';
import { nearestOnSegment } from '../../geometry/segment.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { type Answer, type Asked, type CheckContext, atMost, defineRule, notChecked } from '../rule.ts';
import { type ServedRoom, perServedRoom, placeOfRoom } from '../served-rooms.ts';
import { together } from '../together.ts';
import { deviceName, roomDevices } from './room-devices.ts';

type Abort = PlacedOf<'abort'>;
const SOURCE = 'common practice for “near the way out”';

/** An enclosure without an abort switch, or a switch that it has. */
type Asking = { readonly kind: 'none'; readonly room: Pick<ServedRoom, 'ref' | 'enclosure'> } | { readonly kind: 'abort'; readonly level: string; readonly abort: Abort };

function whereAnswer({ where, doorway, fromDoor_m }: Abort, say: CheckContext['say']): Answer {
  if (where === 'at-door') return { kind: 'judged', isKept: false, text: 'It stands outside: who holds it cannot see who is still inside. Put it inside, beside the door.' };
  if (!doorway) return notChecked('no door is drawn, so that nobody knows where people leave.');
  const figures = atMost(fromDoor_m, { value: AT_DOOR_m, source: SOURCE }, LENGTH_SLACK_m);
  const { value, limit } = say.against(fromDoor_m, AT_DOOR_m);
  return { ...figures, text: figures.isKept ? `It stands inside, ${value} from the nearest door.` : `It stands ${value} from the nearest door; within ${limit} whoever holds it can still leave. Put it beside the door.` };
}

const said = (known: boolean | null, open: string, kept: string, fault: string): Answer => (known === null ? notChecked(open) : { kind: 'judged', isKept: known, text: known ? kept : fault });
const yesNo = (known: boolean | null): string => (known === null ? 'not known' : known ? 'yes' : 'no');

/**
 * S6: where there is an abort switch it stands inside by the way out, works only while it is held, and yields to the manual
 * release. NFPA 2001 as it is remembered asks for none, and says how it has to be where there is one: none is no fault.
 * Measure: from the nearest doorway [m]. Limit: 5 ft.
 * Not checked: nobody has said how it works, or no door is drawn. A fault of the other is reported even then.
 */
export const s06Abort = defineRule<Asking>({
  id: 'S6',
  title: 'Abort switch',
  severity: 'stop',
  measure: 'length',
  basis: {
    formula: 'inside; doorway to switch ≤ 5 ft; works only while held; manual release goes before it',
    source: 'NFPA 2001:2025, abort switches where they are provided (memory); 5 ft: common practice',
    caution: 'Some authorities ask for an abort switch, others allow none. It must never stop the alarm.',
  },
  subjects: perServedRoom((room): Asked<Asking>[] => {
    const aborts = placedOf(roomDevices(room), 'abort');
    if (aborts.length === 0) return [{ subject: { kind: 'none' as const, room: { ref: room.ref, enclosure: room.enclosure } }, ref: room.ref, name: room.name }];
    return aborts.map((abort) => ({ subject: { kind: 'abort' as const, level: room.ref.level, abort }, ref: abort.ref, name: deviceName(abort, 'Abort switch') }));
  }),
  check(subject, { say }): Answer {
    if (subject.kind === 'none') {
      return { kind: 'judged', isKept: true, text: 'No abort switch stands in it or at its doors. None is needed where the authority does not ask for one: ask it.', place: placeOfRoom(subject.room) };
    }
    const { device, doorway } = subject.abort;
    const answer = together([
      whereAnswer(subject.abort, say),
      said(device.isHeld, 'nobody has said whether it works only while it is held.', 'It works only while it is held.', 'It goes on working when it is let go: a fire would burn on with nobody there. Take one that has to be held.'),
      said(
        device.yieldsToRelease,
        'nobody has said whether the manual release goes before it.',
        'The manual release goes before it.',
        'It holds back the manual release as well. Wire it so that the manual release goes before it.',
      ),
    ]);
    const dimension = doorway ? { a: nearestOnSegment(device.at, doorway.face), b: device.at } : undefined;
    const place = { level: subject.level, at: [device.at], dimension };
    if (answer.kind === 'not-checked') return { ...answer, place };
    return {
      ...answer,
      inputs: [
        { label: 'Works only while held', value: yesNo(device.isHeld), source: 'plan' },
        { label: 'Manual release goes before it', value: yesNo(device.yieldsToRelease), source: 'plan' },
      ],
      place,
      cure: answer.isKept ? undefined : { kind: 'advice', text: 'Put an abort switch that has to be held inside, beside the door, and let the manual release go before it.' },
    };
  },
});
