import {
  ALTITUDE_WORDS,
  CONSTANTS_WORDS,
  DESIGN_SET_WORDS,
  HOLD_MODEL_WORDS,
  JUDGED_BY_WORDS,
  LAST_SUPPORT_WORDS,
  LOGARITHM_WORDS,
  LOSS_SET_WORDS,
  PROCESS_WORDS,
  SPECIFICATION_WORDS,
  STRESS_SET_WORDS,
  SUPPORT_TABLE_WORDS,
  VENT_FLOW_WORDS,
  VENT_TEMPERATURE_WORDS,
} from '../calculations/lines/basis-words.ts';
import { type BasisOfDesign, usualBasis } from '../model/basis-of-design.ts';
import type { Plan } from '../model/plan.ts';
import { formatQuantity } from '../units/quantity-text.ts';
import type { Assumption } from './assumption.ts';

type Lengths = Plan['settings']['lengths'];

interface UsualChoice {
  readonly key: keyof BasisOfDesign;
  say(basis: BasisOfDesign, lengths: Lengths): string;
}

interface ChoiceGroup {
  readonly id: string;
  readonly name: string;
  readonly affects: string;
  /** Label of the choice that the basis panel is opened at. */
  readonly label: string;
  readonly choices: readonly UsualChoice[];
}

/** Choices that stand at their usual value until somebody chooses, by the sum that they decide. */
const GROUPS: readonly ChoiceGroup[] = [
  {
    id: 'agent',
    name: 'Agent and people',
    affects: 'The agent needed, the least concentration, the discharge time, and how long people may stay.',
    label: 'Design concentrations and discharge time',
    choices: [
      { key: 'designSet', say: ({ designSet }) => DESIGN_SET_WORDS[designSet] },
      { key: 'constants', say: ({ constants }) => CONSTANTS_WORDS[constants] },
      { key: 'logarithm', say: ({ logarithm }) => LOGARITHM_WORDS[logarithm] },
      { key: 'altitudeMethod', say: ({ altitudeMethod }) => ALTITUDE_WORDS[altitudeMethod] },
      { key: 'oxygenBase_pct', say: ({ oxygenBase_pct }) => `${oxygenBase_pct} % oxygen in plain air` },
      { key: 'exposureBy', say: ({ exposureBy }) => `a stay judged by ${JUDGED_BY_WORDS[exposureBy]}` },
    ],
  },
  {
    id: 'vent',
    name: 'Relief vent',
    affects: 'The area of the relief vent and the pressure that the walls get.',
    label: 'Flow that it is sized for',
    choices: [
      { key: 'ventFlow', say: ({ ventFlow }) => VENT_FLOW_WORDS[ventFlow] },
      { key: 'ventTemperature', say: ({ ventTemperature }) => VENT_TEMPERATURE_WORDS[ventTemperature] },
      { key: 'ventCoefficient', say: ({ ventCoefficient }) => `a discharge coefficient of ${ventCoefficient}` },
      { key: 'ventCountsLeakage', say: ({ ventCountsLeakage }) => (ventCountsLeakage ? 'leaks counted as vent' : 'leaks not counted as vent') },
    ],
  },
  {
    id: 'hold',
    name: 'Holding the gas',
    affects: 'How long the room holds the gas, and the leaks that it may have.',
    label: 'How gas and air meet',
    choices: [
      { key: 'holdModel', say: ({ holdModel }) => HOLD_MODEL_WORDS[holdModel] },
      { key: 'holdTime_s', say: ({ holdTime_s }, lengths) => `${formatQuantity(holdTime_s, 'time', lengths)} to be held` },
      { key: 'holdEnd_pct', say: ({ holdEnd_pct }) => `${holdEnd_pct} % of the concentration left at the end` },
      { key: 'leakFraction', say: ({ leakFraction }) => `gas leaving through ${Math.round(leakFraction * 100)} % of the leaks` },
      { key: 'leakExponent', say: ({ leakExponent }) => `a leak exponent of ${leakExponent} where only an area is known` },
      { key: 'bias_Pa', say: ({ bias_Pa }, lengths) => `${formatQuantity(bias_Pa, 'pressureDifference', lengths)} of steady pressure from ventilation` },
    ],
  },
  {
    id: 'discharge',
    name: 'Discharge',
    affects: 'Flow, pressures, the time of the discharge, and the share of each nozzle.',
    label: 'Heat in the cylinder',
    choices: [
      { key: 'cylinderProcess', say: ({ cylinderProcess }) => PROCESS_WORDS[cylinderProcess] },
      { key: 'lossSet', say: ({ lossSet }) => LOSS_SET_WORDS[lossSet] },
      { key: 'pipeRoughness_m', say: ({ pipeRoughness_m }) => `a pipe roughness of ${Number((pipeRoughness_m * 1000).toPrecision(4))} mm` },
    ],
  },
  {
    id: 'strength',
    name: 'Strength and supports',
    affects: 'What pipe and fittings stand, how far apart supports are, and what anchors and wall carry.',
    label: 'Pipe',
    choices: [
      { key: 'stressSet', say: ({ stressSet }) => STRESS_SET_WORDS[stressSet] },
      { key: 'pipeSpecification', say: ({ pipeSpecification }) => `pipe of ${SPECIFICATION_WORDS[pipeSpecification]}` },
      { key: 'millFactor', say: ({ millFactor }) => `${Number((millFactor * 100).toPrecision(4))} % of the wall thickness counted on` },
      { key: 'yCoefficient', say: ({ yCoefficient }) => `coefficient y of ${yCoefficient}` },
      { key: 'hottestCylinder_K', say: ({ hottestCylinder_K }, lengths) => `a cylinder at ${formatQuantity(hottestCylinder_K, 'temperature', lengths)} at the hottest` },
      { key: 'supportTable', say: ({ supportTable }) => SUPPORT_TABLE_WORDS[supportTable] },
      { key: 'lastSupport', say: ({ lastSupport }) => LAST_SUPPORT_WORDS[lastSupport] },
      { key: 'wallLoadFactor', say: ({ wallLoadFactor }) => `${wallLoadFactor} times the filled weight on the wall` },
    ],
  },
  {
    id: 'sheets',
    name: 'Sheets',
    affects: 'Whether an authority takes the sheets as they are.',
    label: 'Smallest scale of a plan sheet',
    choices: [
      { key: 'smallestScale', say: ({ smallestScale }) => `a scale of 1:${smallestScale} at the smallest` },
      { key: 'leastText_m', say: ({ leastText_m }) => `letters of ${Number((leastText_m * 1000).toPrecision(3))} mm at the least` },
    ],
  },
];

/** Choices that are blank until somebody knows: nothing stands in for them, a check says that they are missing. */
export const NEVER_ASSUMED: ReadonlySet<keyof BasisOfDesign> = new Set(['greatestDelay_s', 'seismic', 'lockOutValve', 'batteryStandby_s', 'batteryAlarm_s', 'extract']);

/** Every choice that this list watches. */
export const ASSUMED_CHOICES: readonly (keyof BasisOfDesign)[] = GROUPS.flatMap(({ choices }) => choices.map(({ key }) => key));

/** Choices of the basis of design that stand as they do in every new plan. */
export function basisAssumptions({ basis, settings }: Plan): Assumption[] {
  const usual = usualBasis();
  return GROUPS.flatMap(({ id, name, affects, label, choices }): Assumption[] => {
    const standing = choices.filter(({ key }) => basis[key] === usual[key]);
    if (standing.length === 0) return [];
    return [
      {
        id: `basis/${id}`,
        topic: 'choice',
        name,
        taken: `The usual choices stand: ${standing.map(({ say }) => say(basis, settings.lengths)).join('; ')}.`,
        affects,
        change: 'Compare them with the adopted code in the basis of design.',
        at: { kind: 'basis', label },
      },
    ];
  });
}
