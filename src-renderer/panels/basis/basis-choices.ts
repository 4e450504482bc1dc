import {
  ALTITUDE_WORDS,
  CONSTANTS_WORDS,
  DESIGN_SET_WORDS,
  EXTRACT_WORDS,
  HOLD_MODEL_WORDS,
  JUDGED_BY_WORDS,
  LAST_SUPPORT_WORDS,
  LOCK_OUT_WORDS,
  SEISMIC_WORDS,
  LOGARITHM_WORDS,
  LOSS_SET_WORDS,
  PROCESS_WORDS,
  SPECIFICATION_WORDS,
  STRESS_SET_WORDS,
  SUPPORT_TABLE_WORDS,
  VENT_FLOW_WORDS,
  VENT_TEMPERATURE_WORDS,
} from '#shared/calculations/lines/basis-words';
import type { BasisOfDesign } from '#shared/model/basis-of-design';
import type { QuantityKind } from '#shared/units/quantity-text';

/** Keys of the basis whose value is of a type. */
type KeysOf<T> = { [K in keyof BasisOfDesign]: BasisOfDesign[K] extends T ? K : never }[keyof BasisOfDesign];
export type WordKey = Exclude<KeysOf<string>, never>;
export type NumberKey = Exclude<KeysOf<number | null>, never>;
export type FlagKey = KeysOf<boolean>;

interface Told {
  readonly label: string;
  /** What it decides, and where the choice comes from. */
  readonly help: string;
}

/** One choice as the form shows it. */
export type BasisField =
  | (Told & { readonly kind: 'words'; readonly key: WordKey; readonly words: Readonly<Record<string, string>> })
  | (Told & { readonly kind: 'number'; readonly key: NumberKey; readonly quantity: QuantityKind | 'number'; /** What is stored for 1 of what is shown: 100 for a share that is stored as a percentage. */ readonly scale?: number; readonly least: number; readonly most: number; readonly blank?: string })
  | (Told & { readonly kind: 'flag'; readonly key: FlagKey; readonly yes: string; readonly no: string });

export interface BasisGroup {
  readonly title: string;
  readonly fields: readonly BasisField[];
}

/** Every choice of the basis of design, by the sum that it decides. */
export const BASIS_GROUPS: readonly BasisGroup[] = [
  {
    title: 'Agent and people',
    fields: [
      { kind: 'words', key: 'designSet', words: DESIGN_SET_WORDS, label: 'Design concentrations and discharge time', help: 'Least concentration for what can burn, and how fast it must be reached.' },
      { kind: 'words', key: 'constants', words: CONSTANTS_WORDS, label: 'Volume of the gas', help: 'How much room a kilogram takes; the two agree for nitrogen.' },
      { kind: 'words', key: 'logarithm', words: LOGARITHM_WORDS, label: 'Logarithm of the flooding formula', help: 'ISO 14520-1 and EN 15004-1 use the exact one; older tables were made with 2.303.' },
      { kind: 'words', key: 'altitudeMethod', words: ALTITUDE_WORDS, label: 'Height above the sea', help: 'How thinner air changes the agent needed.' },
      { kind: 'number', key: 'oxygenBase_pct', quantity: 'number', least: 20, most: 21, label: 'Oxygen in plain air, % by volume', help: '20.95 % is dry air; some standards count with 20.9 or 21 %.' },
      { kind: 'words', key: 'exposureBy', words: JUDGED_BY_WORDS, label: 'Stay in the gas is judged by', help: 'Concentration and oxygen can allow different stays; the stricter is the safer.' },
      { kind: 'number', key: 'greatestDelay_s', quantity: 'time', least: 0, most: 3600, blank: 'not known', label: 'Longest delay the authority allows', help: 'Blank: the delay is not checked against it.' },
    ],
  },
  {
    title: 'Relief vent',
    fields: [
      { kind: 'words', key: 'ventFlow', words: VENT_FLOW_WORDS, label: 'Flow that it is sized for', help: 'The manual’s figure holds for the listed unit; the calculated one follows this pipe.' },
      { kind: 'words', key: 'ventTemperature', words: VENT_TEMPERATURE_WORDS, label: 'Temperature of the gas', help: 'Warmer gas takes more room and asks for a larger vent.' },
      { kind: 'number', key: 'ventCoefficient', quantity: 'number', least: 0.05, most: 1, label: 'Discharge coefficient of the vent', help: '0.61 is a sharp-edged opening; take the maker’s figure where there is one.' },
      { kind: 'flag', key: 'ventCountsLeakage', yes: 'Count as vent', no: 'Do not count', label: 'Leaks of the room', help: 'Leaks can be sealed later; not counting them is the safer.' },
    ],
  },
  {
    title: 'Holding the gas',
    fields: [
      { kind: 'words', key: 'holdModel', words: HOLD_MODEL_WORDS, label: 'How gas and air meet', help: 'ISO 14520-1 and NFPA 2001, annexes on door-fan tests.' },
      { kind: 'number', key: 'holdTime_s', quantity: 'time', least: 1, most: 86_400, label: 'Must be held for', help: '10 min in ISO 14520-1 and NFPA 2001.' },
      { kind: 'number', key: 'holdEnd_pct', quantity: 'ratio', scale: 100, least: 1, most: 100, label: 'Share left at the end', help: 'Of the design concentration: 85 % in ISO 14520-1 and NFPA 2001.' },
      { kind: 'number', key: 'leakFraction', quantity: 'ratio', least: 0.01, most: 0.99, label: 'Share of leaks that gas leaves by', help: '50 % is the worst case while nothing else is measured.' },
      { kind: 'number', key: 'leakExponent', quantity: 'number', least: 0.5, most: 0.999, label: 'Exponent of the leaks', help: 'Used while only their area is known: 0.5 is an opening, 1 a fine crack (common practice 0.6).' },
      { kind: 'number', key: 'bias_Pa', quantity: 'pressureDifference', least: 0, most: 1000, label: 'Steady pressure of ventilation', help: 'What fans still running add while the gas is held.' },
    ],
  },
  {
    title: 'Discharge',
    fields: [
      { kind: 'words', key: 'cylinderProcess', words: PROCESS_WORDS, label: 'Heat in the cylinder', help: 'Gas that expands turns cold; the steel gives some heat back.' },
      { kind: 'words', key: 'lossSet', words: LOSS_SET_WORDS, label: 'Losses of fittings', help: 'The sets differ by up to a third; the listed unit’s own program governs.' },
      { kind: 'number', key: 'pipeRoughness_m', quantity: 'number', scale: 0.001, least: 0, most: 0.005, label: 'Roughness of the pipe, mm', help: '0.0457 mm (0.0018 in) is commercial steel.' },
    ],
  },
  {
    title: 'Strength and supports',
    fields: [
      { kind: 'words', key: 'pipeSpecification', words: SPECIFICATION_WORDS, label: 'Pipe', help: 'What it is made of and how decides the stress it bears.' },
      { kind: 'words', key: 'stressSet', words: STRESS_SET_WORDS, label: 'Allowable stress', help: 'ASME B31.1 raised it in 1999; the older is the safer.' },
      { kind: 'number', key: 'millFactor', quantity: 'ratio', least: 0.5, most: 1, label: 'Wall thickness to count on', help: '87.5 %: pipe may be 12.5 % thinner than named.' },
      { kind: 'number', key: 'yCoefficient', quantity: 'number', least: 0, most: 0.7, label: 'Coefficient y', help: '0.4 for steel below 482 °C (ASME B31.1).' },
      { kind: 'number', key: 'hottestCylinder_K', quantity: 'temperature', least: 273, most: 373, label: 'Hottest place of a cylinder', help: 'Sets the highest pressure before the regulator. 130 °F in NFPA 2001.' },
      { kind: 'words', key: 'supportTable', words: SUPPORT_TABLE_WORDS, label: 'Distance between supports', help: 'The tables differ; take the one that the adopted code names.' },
      { kind: 'words', key: 'lastSupport', words: LAST_SUPPORT_WORDS, label: 'Support next to a nozzle', help: 'The last pipe must not swing when the nozzle blows.' },
      { kind: 'words', key: 'seismic', words: SEISMIC_WORDS, label: 'Earthquake bracing', help: 'Whether the pipe must be braced: the authority or the structural engineer says.' },
      { kind: 'number', key: 'wallLoadFactor', quantity: 'number', least: 1, most: 10, label: 'Cylinder load on its wall, times', help: 'Safety on the filled weight; the structural engineer may ask for more.' },
    ],
  },
  {
    title: 'Release and after a discharge',
    fields: [
      { kind: 'words', key: 'lockOutValve', words: LOCK_OUT_WORDS, label: 'Lock-out valve', help: 'Whether the authority asks for a valve that keeps the agent out while people work inside.' },
      { kind: 'number', key: 'batteryStandby_s', quantity: 'number', scale: 3600, least: 0, most: 1e6, blank: 'not known', label: 'Battery stands by for, hours', help: 'Without mains, before an alarm: 24 h is common; the authority says.' },
      { kind: 'number', key: 'batteryAlarm_s', quantity: 'number', scale: 60, least: 0, most: 1e5, blank: 'not known', label: 'Then sounds the alarm for, minutes', help: '5 min is common; releasing must still work at the end of it.' },
      { kind: 'words', key: 'extract', words: EXTRACT_WORDS, label: 'Extract after a discharge', help: 'Whether the authority asks that the gas can be drawn out of the room.' },
    ],
  },
  {
    title: 'Sheets',
    fields: [
      { kind: 'number', key: 'smallestScale', quantity: 'number', least: 1, most: 10_000, label: 'Smallest scale of a plan, 1 to', help: '96 is 1/8 in to a foot; the authority’s list of what it takes says.' },
      { kind: 'number', key: 'leastText_m', quantity: 'number', scale: 0.001, least: 0.0005, most: 0.05, label: 'Least height of letters, mm', help: 'Capitals on paper: 2.4 mm (3/32 in) can still be read at half size.' },
    ],
  },
];
