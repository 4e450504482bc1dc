import { type AlarmSums, type Sounder, alarmOf } from '../../calculations/design/alarm.ts';
import { alarmLightBasis } from '../../calculations/formulas/alarm-light.ts';
import { soundFallBasis, soundSumBasis } from '../../calculations/formulas/sound-level.ts';
import type { Space } from '../../derived/derived.ts';
import { placedOf } from '../../derived/device-place.ts';
import { spacesOfEnclosure } from '../../derived/spaces-of-enclosure.ts';
import { partsOf } from '../../derived/polygon-sums.ts';
import type { Cure, FindingInput, Place } from '../finding.ts';
import { type Answer, type CheckContext, atLeast, atMost, defineRule, notChecked } from '../rule.ts';
import { perServedRoom } from '../served-rooms.ts';
import { together } from '../together.ts';
import { roomDevices } from './room-devices.ts';

/** What the alarm must be over the usual noise, and what noise and alarm together may be [dB A]. */
export const OVER_NOISE_dB = 15;
export const LOUDEST_dBA = 110;
const SOUND_SOURCE = 'NFPA 72, public mode: 15 dB over the usual noise, and no more than 110 dB A in all (memory)';
/** Float noise of a sum of logarithms [dB]. */
const SLACK_dB = 1e-6;

interface Warned {
  readonly room: Space;
  readonly sounders: readonly Sounder[];
  readonly ambient_dBA: number | null;
}

const placeIn = ({ room }: Warned, more: Partial<Place> = {}): Place => ({ level: room.level.id, at: room.outline, ...more });
const soundCure: Cure = { kind: 'advice', text: 'Add a sounder near the marked place, or take a louder one.' };

function heardAnswer(subject: Warned, sums: AlarmSums, say: CheckContext['say']): Answer {
  const { sounders, ambient_dBA } = subject;
  const heard = sounders.filter(({ isHeard }) => isHeard);
  if (heard.length === 0) return { kind: 'judged', isKept: false, text: 'No sounder in it can be heard. Add one.', place: placeIn(subject), cure: soundCure };
  if (ambient_dBA === null) return notChecked('how loud it usually is in there is not entered, so that nobody can tell whether the alarm is heard.', placeIn(subject));
  const unknown = heard.filter(({ sound_dBA, height_m }) => sound_dBA === null || height_m === null);
  const needed = { value: ambient_dBA + OVER_NOISE_dB, source: SOUND_SOURCE };
  const { faintest, loudest } = sums;
  const upper = loudest && atMost(loudest.level_dBA, { value: LOUDEST_dBA, source: SOUND_SOURCE }, SLACK_dB);
  if (upper && !upper.isKept) {
    const { value, limit } = say.quantityAgainst(upper.measured, upper.limit, 'sound');
    const text = `Noise and alarm together come to ${value} (A) where they are loudest; more than ${limit} harms the ear. Take quieter sounders, and more of them.`;
    return { ...upper, text, place: placeIn(subject, { at: [loudest.at] }), cure: { kind: 'advice', text: 'Take quieter sounders, and more of them.' } };
  }
  if (unknown.length > 0) {
    const what = unknown.some(({ sound_dBA }) => sound_dBA === null) ? 'how loud' : 'how high up';
    return notChecked(`${what} ${unknown.map(({ name }) => `“${name || 'a sounder'}”`).join(', ')} ${unknown.length === 1 ? 'is' : 'are'} is not entered.`.replace(' is is ', ' is ').replace(' are is ', ' are '), {
      level: subject.room.level.id,
      at: unknown.map(({ at }) => at),
    });
  }
  if (!faintest) return notChecked('the place where the alarm is faintest was not found.', placeIn(subject));
  const lower = atLeast(faintest.level_dBA, needed, SLACK_dB);
  const noWay = faintest.level_dBA === -Infinity;
  const { value, limit } = say.quantityAgainst(noWay ? 0 : faintest.level_dBA, needed.value, 'sound');
  const place = placeIn(subject, { at: [faintest.at], areas: lower.isKept ? undefined : partsOf(sums.unheard) });
  if (lower.isKept) return { ...lower, text: `The alarm comes to ${value} (A) where it is faintest; ${limit} is enough.`, place };
  if (noWay) return { kind: 'judged', isKept: false, text: 'A part of it is walled off from every sounder: nobody there hears the alarm. Add a sounder there.', place, cure: soundCure };
  const tooNoisy = needed.value > LOUDEST_dBA ? ` More than ${say.quantity(LOUDEST_dBA, 'sound')} is not allowed: it must become quieter in there, or the authority must agree to lights.` : '';
  return { ...lower, text: `The alarm comes to only ${value} (A) where it is faintest; it needs ${limit}, ${OVER_NOISE_dB} dB over the usual noise.${tooNoisy || ' Add a sounder near the marked place.'}`, place, cure: soundCure };
}

function seenAnswer(subject: Warned, { unlit }: AlarmSums, say: CheckContext['say']): Answer {
  const seen = subject.sounders.filter(({ isSeen }) => isSeen);
  const lightCure: Cure = { kind: 'advice', text: 'Add an alarm light near the marked place, or take a stronger one.' };
  if (seen.length === 0) return { kind: 'judged', isKept: false, text: 'It has no alarm light: who does not hear the alarm is not warned. Add one.', place: placeIn(subject), cure: lightCure };
  const dark_m2 = unlit.reduce((sum, { area_m2 }) => sum + area_m2, 0);
  const figures = { kind: 'judged', measured: dark_m2, limit: 0, limitSource: alarmLightBasis.source, margin: -dark_m2, measure: 'area' } as const;
  if (unlit.length === 0) return { ...figures, margin: 0, isKept: true, text: 'Its alarm lights reach all of its floor.', place: placeIn(subject) };
  const unknown = seen.filter(({ light_cd }) => light_cd === null);
  if (unknown.length > 0) return notChecked(`how strong the light of ${unknown.map(({ name }) => `“${name || 'a sounder'}”`).join(', ')} is, is not entered.`, { level: subject.room.level.id, at: unknown.map(({ at }) => at) });
  const worst = unlit.reduce((most, each) => (each.area_m2 > most.area_m2 ? each : most)).worst;
  return {
    ...figures,
    isKept: false,
    text: `No alarm light reaches ${say.area(dark_m2)} of its floor. Add a light near the marked place, or take a stronger one.`,
    place: placeIn(subject, { at: [worst], areas: unlit.map(({ rings }) => rings) }),
    cure: lightCure,
  };
}

const inputsOf = ({ sounders, ambient_dBA }: Warned, say: CheckContext['say']): FindingInput[] => [
  { label: 'Usual noise', value: ambient_dBA === null ? 'not known' : `${say.quantity(ambient_dBA, 'sound')} (A)`, source: 'enclosure' },
  ...sounders.map(({ name, isHeard, isSeen, sound_dBA, light_cd }) => ({
    label: name || 'Sounder',
    value: [isHeard ? (sound_dBA === null ? 'loudness not known' : `${say.quantity(sound_dBA, 'sound')} (A) at 3 m`) : 'not heard', isSeen ? (light_cd === null ? 'light not known' : `${light_cd} cd`) : 'not seen'].join(', '),
    source: 'plan',
  })),
];

/**
 * S3: everybody in a protected room hears and sees the alarm before the discharge, wherever they are.
 * Measure: loudness at the faintest place of the floor, an ear 1.524 m above it [dB A]; floor that no alarm light reaches [m²].
 * Limit: 15 dB over the usual noise; with it no more than 110 dB A where it is loudest; no floor unlit.
 * Not asked where nobody can be inside.
 * Not checked: usual noise, or loudness, height or light of a sounder is not entered. A fault of the other is reported even then.
 */
export const s03AlarmReach = defineRule<Warned>({
  id: 'S3',
  title: 'Alarm heard and seen',
  severity: 'stop',
  measure: 'sound',
  isHeavy: true,
  basis: {
    formula: `${soundFallBasis.formula} along the shortest way round walls, ${soundSumBasis.formula}; usual noise + 15 dB ≤ L, and L with the noise ≤ 110 dB A; light: ${alarmLightBasis.formula}`,
    source: `OSHA 29 CFR 1910.160: an alarm before the discharge that everybody perceives (memory); ${SOUND_SOURCE}; ${alarmLightBasis.source}`,
    caution: `${soundFallBasis.caution} ${alarmLightBasis.caution} Sounders outside the enclosure are not counted.`,
  },
  subjects: perServedRoom((served) => {
    const room = spacesOfEnclosure(served.on.spaces, served.ref.id).find(({ kind }) => kind === 'room');
    if (!room || served.enclosure.occupancy === 'unoccupiable') return [];
    const sounders = placedOf(roomDevices(served), 'sounder')
      .filter(({ where }) => where === 'inside')
      .map(({ device }) => device);
    return [{ subject: { room, sounders, ambient_dBA: served.enclosure.ambientSound_dBA }, ref: served.ref, name: served.name }];
  }),
  check(subject, { say }) {
    const { room, sounders, ambient_dBA } = subject;
    const inputs = inputsOf(subject, say);
    if (sounders.length === 0) {
      const text = 'No sounder stands in it: nobody inside is warned before the discharge. Add sounders that are heard and seen.';
      return { kind: 'judged', isKept: false, text, inputs, place: placeIn(subject), cure: { kind: 'advice', text: 'Add sounders that are heard and seen.' } };
    }
    const noise_dBA = ambient_dBA ?? 0;
    const sums = alarmOf(room, sounders, noise_dBA, noise_dBA + OVER_NOISE_dB);
    const [heard, seen] = [heardAnswer(subject, sums, say), seenAnswer(subject, sums, say)];
    const answer = together([heard, seen]);
    if (answer.kind !== 'judged') return answer;
    const unreached = [heard, seen].flatMap((each) => (each.kind === 'judged' && !each.isKept ? (each.place?.areas ?? []) : []));
    return { ...answer, inputs, place: placeIn(subject, { at: answer.place?.at ?? room.outline, areas: unreached.length > 0 ? unreached : undefined }) };
  },
});
