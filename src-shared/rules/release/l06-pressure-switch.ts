import type { NetworkDesign, SupervisionSums } from '../../calculations/design/design.ts';
import { type Worked, notWorked, workOut, worked } from '../../calculations/design/worked.ts';
import { expectedPressureBasis, expectedPressure_Pa } from '../../calculations/formulas/cylinder-gas.ts';
import type { DerivedLevel } from '../../derived/derived.ts';
import { spaceIndexOf } from '../../derived/space-index.ts';
import type { SourcedLimit } from '../../profile/unit-profile.ts';
import { bar_Pa, gaugeOf_Pa } from '../../units/convert.ts';
import { placeOn } from '../design-subjects.ts';
import { type Answer, type CheckContext, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { slackOf } from '../slack.ts';
import { perNetworkWithSumsOnLevel } from '../subjects.ts';
import type { ReleasingCircuit } from './releasing-circuits.ts';

/** The drawn set point may be this far off the manual's [Pa]. */
const TOLERANCE_Pa = bar_Pa(1);
/** Height at which a cylinder's room is looked up [m]. */
const IN_ROOM_m = 1;

interface Asked extends ReleasingCircuit {
  /** Coldest of the rooms that its cylinders stand in [K]; undefined while it is not known. */
  readonly coldest_K: number | undefined;
}

/**
 * L6: the low-pressure switch turns over where the unit's manual says, and not because a full cylinder is cold.
 * Measure: its set point, gauge [Pa].
 * Limit: set point of the unit profile, within 1 bar; gauge reading of a full cylinder where it is coldest.
 * Not checked: switch or limit is missing, or the coldest temperature of the cylinders matters and is not known.
 */
export const l06PressureSwitch = defineRule<Asked>({
  id: 'L6',
  title: 'Low-pressure switch',
  severity: 'stop',
  measure: 'gaugePressure',
  basis: {
    formula: `set point = that of the manual ± 1 bar, and below the reading of a full cylinder at its coldest; ${expectedPressureBasis.formula}`,
    source: `unit profile; tolerance: common practice; ${expectedPressureBasis.source}`,
    caution: 'Contacts are drawn for the charged cylinder. A switch on the shelf, or on an empty one, is in the other state: a contact that is drawn for it supervises nothing.',
  },
  limitKeys: ['lowPressureSwitch_Pa', 'fillPressure_Pa'],
  subjects: perNetworkWithSumsOnLevel((_, network, level) => {
    const { release } = network.network;
    return release ? [{ subject: { network, release, coldest_K: coldest_K(network, level) }, ref: network.ref, name: network.name }] : [];
  }),
  check({ network, release, coldest_K: known_K }, { say }) {
    const { pressureSwitch } = release;
    if (!pressureSwitch) return notChecked('no low-pressure switch is drawn up.');
    const setPoint_Pa = gaugeOf_Pa(pressureSwitch.setPoint_Pa);
    const { limit, ...missing } = limitOrBlank(network.profile, 'lowPressureSwitch_Pa');
    const place = placeOn(network, Object.values(network.network.cylinders).map(({ at }) => at));
    const contact = `Its contact is drawn ${pressureSwitch.isClosedWhenCharged ? 'closed' : 'open'} for the charged cylinder: compare it with the switch.`;
    const cold = coldFault(setPoint_Pa, network.supervision, known_K, say);
    if (cold.isKnown && cold.sums) return { ...cold.sums, place };
    if (!limit) return 'blank' in missing ? missing.blank : notChecked('the set point of the unit is not known.');
    const figures = asInManual(setPoint_Pa, limit);
    const { value: set, limit: wanted } = say.quantityAgainst(setPoint_Pa, figures.limit, 'gaugePressure');
    if (!figures.isKept) {
      return { ...figures, text: `Is set to ${set}; the unit’s is ${wanted}. Correct it.`, place, cure: { kind: 'advice', text: 'Set it as the unit’s manual says.' } };
    }
    if (!cold.isKnown) return notChecked(cold.because, place);
    return { ...figures, text: `Is set to ${set}; the unit’s is ${wanted}. ${contact}`, place };
  },
});

function asInManual(setPoint_Pa: number, { value, source }: SourcedLimit) {
  const limit = gaugeOf_Pa(value);
  const margin = TOLERANCE_Pa - Math.abs(setPoint_Pa - limit);
  return { kind: 'judged' as const, measured: setPoint_Pa, limit, limitSource: source, margin, isKept: margin >= -slackOf(limit) };
}

/** Coldest of the rooms that a network's cylinders stand in [K]; undefined when one of them is not known. */
function coldest_K(network: NetworkDesign, level: DerivedLevel | undefined): number | undefined {
  const index = level && spaceIndexOf(level.spaces);
  const all = Object.values(network.network.cylinders).map(({ at }) => index?.findAt({ ...at, z: IN_ROOM_m })?.enclosure.temperature?.least_K);
  const known = all.filter((least_K) => least_K !== undefined);
  return known.length > 0 && known.length === all.length ? Math.min(...known) : undefined;
}

type Fault = Extract<Answer, { kind: 'judged' }>;

/**
 * Whether the switch turns over on a full cylinder. Without a known coldest temperature it is asked about the coldest
 * of the chart: kept there, it is kept anywhere.
 */
function coldFault(setPoint_Pa: number, supervision: Worked<SupervisionSums>, known_K: number | undefined, say: CheckContext['say']): Worked<Fault | undefined> {
  if (!supervision.isKnown) return supervision;
  const { chart, fillPressure_Pa, fillTemperature_K } = supervision.sums;
  const anywhere_K = Math.min(fillTemperature_K, ...chart.map(({ temperature_K }) => temperature_K));
  return workOut(() => {
    const full_Pa = (temperature_K: number): number => gaugeOf_Pa(expectedPressure_Pa(fillPressure_Pa, fillTemperature_K, temperature_K));
    if (setPoint_Pa < full_Pa(known_K ?? anywhere_K)) return worked(undefined);
    const at_K = known_K ?? fillTemperature_K;
    const reads_Pa = full_Pa(at_K);
    const { value: set, limit: reads } = say.quantityAgainst(setPoint_Pa, reads_Pa, 'gaugePressure');
    if (setPoint_Pa < reads_Pa) {
      const cold = say.quantity(anywhere_K, 'temperature');
      return notWorked(`how cold it gets where the cylinders stand is not known. Set to ${set}, the switch would signal a loss at ${cold} though nothing is lost.`);
    }
    const text = `Is set to ${set}, but a full cylinder at ${say.quantity(at_K, 'temperature')} reads ${reads}: it would signal a loss though nothing is lost. Set it lower.`;
    return worked({
      kind: 'judged',
      isKept: false,
      measured: setPoint_Pa,
      limit: reads_Pa,
      limitSource: `full cylinder at ${say.quantity(at_K, 'temperature')}, calculated`,
      margin: reads_Pa - setPoint_Pa,
      text,
      cure: { kind: 'advice', text: 'Set it lower, as the unit’s manual says.' },
    });
  });
}
