import { HARD_ROOM_ABSORPTION, NEAREST_SOURCE_m, roomConstant_m2, soundLevel_dB, soundLevelBasis } from '../../calculations/formulas/discharge-noise.ts';
import type { Solid, Space } from '../../derived/derived.ts';
import { nearestInPrism } from '../../derived/nearest-place.ts';
import { roomSurface_m2 } from '../../derived/room-surface.ts';
import { planPoint } from '../../geometry/point.ts';
import { segmentToPrism_m } from '../../geometry/prism.ts';
import type { FindingInput, Place } from '../finding.ts';
import { type Answer, type Asked, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { type NozzleSubject, askedNozzle, perServedSpace } from '../subjects.ts';

/** Running drives with the nozzles that they hear, or the shelves of a space of which nobody has said whether they hold any. */
interface Listening {
  readonly space: Space;
  readonly nozzles: readonly NozzleSubject[];
  readonly drives: Solid | undefined;
  readonly unknown: readonly Solid[];
}

/** Level that running drives should stay below [dB]. */
const LOUDEST_dB = 110;
/** Float noise of a level. */
const NOISE_dB = 1e-9;
/** What drives are kept in. */
const HOLDERS: ReadonlySet<string> = new Set(['rack', 'cabinet']);

function listening(space: Space, nozzles: readonly NozzleSubject[]): Asked<Listening>[] {
  if (space.kind !== 'room' || nozzles.length === 0) return [];
  const drives = space.solids.filter(({ obstruction }) => obstruction.hasDrives === true);
  const unknown = space.solids.filter(({ obstruction: { kind, hasDrives } }) => hasDrives === null && HOLDERS.has(kind));
  const [first] = unknown;
  return [
    ...drives.map((each) => ({ subject: { space, nozzles, drives: each, unknown: [] }, ref: each.ref, name: each.obstruction.name })),
    ...(first ? [{ subject: { space, nozzles, drives: undefined, unknown }, ref: first.ref, name: space.name }] : []),
  ];
}

/** Names in a sentence: "Rack 1", "Rack 1 and Rack 2", "Rack 1, Rack 2 and 7 others". */
function namesOf(solids: readonly Solid[]): string {
  const names = solids.map(({ obstruction }) => obstruction.name);
  const [first = '', second = ''] = names;
  if (names.length <= 2) return names.join(' and ');
  return `${first}, ${second} and ${names.length - 2 === 1 ? 'another' : `${names.length - 2} others`}`;
}

/**
 * N24: the discharge is not so loud at running disk drives that it harms them.
 * Measure: sound pressure level at the drives from all nozzles of their space [dB]: straight from each, and what a hard
 * room throws back. Limit: below 110 dB (common practice).
 * Not checked: the sound power of a nozzle or the height of the room is not known, or nobody has said whether a rack or
 * cabinet holds drives: one finding a room for all of those. A level that is too loud even in the open is reported
 * whatever the room.
 */
export const n24DriveNoise = defineRule<Listening>({
  id: 'N24',
  title: 'Noise at disk drives',
  severity: 'warn',
  measure: 'sound',
  basis: { formula: `${soundLevelBasis.formula};  Lp < 110 dB`, source: `limit common practice; ${soundLevelBasis.source}`, caution: soundLevelBasis.caution },
  limitKeys: ['soundPower_dB'],
  subjects: perServedSpace((space, serving) => listening(space, serving.map((nozzle) => askedNozzle(nozzle).subject))),
  check({ space, nozzles, drives, unknown }, { say }): Answer {
    const level = space.level.id;
    if (!drives) {
      const footprints = unknown.map(({ footprint }) => footprint);
      return notChecked(`nobody has said whether ${namesOf(unknown)} ${unknown.length === 1 ? 'holds' : 'hold'} running disk drives.`, { level, at: footprints.flat(), areas: footprints.map((ring) => [ring]) });
    }
    const heard = nozzles.flatMap((nozzle) => (nozzle.at ? [{ nozzle, at: nozzle.at, far_m: Math.max(NEAREST_SOURCE_m, segmentToPrism_m({ a: nozzle.at, b: nozzle.at }, drives)) }] : [])).sort((a, b) => a.far_m - b.far_m);
    const [loudest] = heard;
    if (!loudest) return notChecked('no nozzle of its room has a place.', { level, at: drives.footprint });
    const ear = nearestInPrism(loudest.at, drives);
    const [a, b] = [planPoint(loudest.at.x, loudest.at.y), planPoint(ear.x, ear.y)];
    const place: Place = { level, at: [b, a], dimension: { a, b }, areas: [[drives.footprint]], heights: [loudest.at, ear] };
    const powers = heard.map(({ nozzle }) => limitOrBlank(nozzle.profile, 'soundPower_dB'));
    const blank = powers.find((power) => !power.limit);
    if (blank && !blank.limit) return blank.blank;
    const powers_dB = powers.flatMap(({ limit }) => limit?.value ?? []);
    const distances_m = heard.map(({ far_m }) => far_m);
    const surface_m2 = roomSurface_m2(space);
    const level_dB = soundLevel_dB(powers_dB, distances_m, surface_m2 === undefined ? Infinity : roomConstant_m2(surface_m2, HARD_ROOM_ABSORPTION));
    const margin = LOUDEST_dB - level_dB;
    const isKept = margin > NOISE_dB;
    if (isKept && surface_m2 === undefined) return notChecked(`how much the room adds is not known while its height is not. Enter the height of ${space.name}.`, place);
    const inputs: FindingInput[] = [
      ...heard.map(({ nozzle, far_m }, i) => ({ label: `${nozzle.nozzle.name}, ${say.length(far_m)} away`, value: say.quantity(powers_dB[i] ?? 0, 'sound'), source: powers[i]?.limit?.source })),
      ...(surface_m2 === undefined ? [] : [{ label: 'Floor, ceiling and walls', value: say.area(surface_m2) }, { label: 'Absorption', value: `${HARD_ROOM_ABSORPTION}, a bare hard room`, source: 'common practice' }]),
    ];
    const printed = say.quantityAgainst(level_dB, LOUDEST_dB, 'sound');
    return {
      kind: 'judged',
      isKept,
      measured: level_dB,
      limit: LOUDEST_dB,
      limitSource: 'common practice',
      margin,
      text: isKept ? `Hears ${printed.value} while the agent is discharged; less than ${printed.limit} is wanted.` : `Hears ${printed.value} while the agent is discharged; less than ${printed.limit} is wanted for running disk drives.`,
      inputs,
      place,
      cure: isKept ? undefined : { kind: 'advice', text: `Take nozzles that are ${Math.ceil(-margin * 10 + 1e-6) / 10} dB quieter, with a silencer of the same unit, or move the drives away from them.` },
    };
  },
});
