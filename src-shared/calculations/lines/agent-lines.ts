import { celsius_K, toCelsius } from '../../units/convert.ts';
import type { AgentSums, EnclosureDesign, FillSums, SupplySums } from '../design/design.ts';
import { SUM_NOISE, cylindersNeededBasis, floodingMassBasis, referenceVolumeBasis } from '../formulas/agent-quantity.ts';
import { altitudeBasis } from '../formulas/altitude.ts';
import { fixedFillBasis } from '../formulas/fixed-fill.ts';
import { specificVolumeBasis, specificVolume_m3_kg } from '../formulas/specific-volume.ts';
import { ALTITUDE_WORDS, CONSTANTS_WORDS, DESIGN_SET_WORDS, HAZARD_WORDS, LOGARITHM_WORDS } from './basis-words.ts';
import type { Calculation } from './calculation.ts';
import { ARITHMETIC, CHOSEN, Draft, type LineContext, PLAN, ownBasis, partOf, withoutCaution } from './draft.ts';
import { altitude, amount, amountsApart, bracketed, counted, figure, percent, percentsApart, plainAmount } from './line-text.ts';
import { limitSource } from './profile-source.ts';
import { volumeLines } from './volume-lines.ts';

const AGENT = 'IG-100';
/** Its caution concerns other agents. */
export const nitrogenVolumeBasis = withoutCaution(specificVolumeBasis);
const altitudePart = partOf(altitudeBasis, 0);
const factorPart = partOf(altitudeBasis, 1);
const perVolumeBasis = ownBasis('m/V', ARITHMETIC);
const installedBasis = ownBasis('m_in = n_in·m_each', ARITHMETIC);
const reserveBasis = ownBasis('m_in − m_alt', ARITHMETIC);

/** How much agent an enclosure needs, what is there for it, and whether whole cylinders suit it. */
export function agentLines(context: LineContext, enclosure: EnclosureDesign): Calculation {
  const { lengths, basis } = context;
  const draft = new Draft('agent', 'Agent quantity', enclosure.ref, enclosure.name);
  const { temperature, altitude_m, concentration_pct, hazardClass } = enclosure.enclosure;
  volumeLines(draft, context, enclosure);
  if (temperature) {
    draft.given('Lowest temperature, T_cold', amount(temperature.least_K, 'temperature', lengths), PLAN);
    draft.given('Highest temperature, T_hot', amount(temperature.greatest_K, 'temperature', lengths), PLAN);
  }
  if (altitude_m !== null) draft.given('Altitude, h', altitude(altitude_m, lengths), PLAN);
  draft.given('Hazard', HAZARD_WORDS[hazardClass], PLAN);
  draft.given('Methods', [DESIGN_SET_WORDS[basis.designSet], CONSTANTS_WORDS[basis.constants], LOGARITHM_WORDS[basis.logarithm], ALTITUDE_WORDS[basis.altitudeMethod]].join('; '), CHOSEN);
  draft.with('minimum design concentration', enclosure.minimum, ({ concentration_pct: least_pct, source }) => {
    const shown = concentration_pct === null ? percent(least_pct) : percentsApart(least_pct, concentration_pct).value;
    draft.given('Minimum design concentration', shown, source);
  });
  if (concentration_pct !== null) {
    const least_pct = enclosure.minimum.isKnown ? enclosure.minimum.sums.concentration_pct : 0;
    draft.given('Design concentration, C', `${percentsApart(concentration_pct, least_pct).value}${concentration_pct < least_pct * (1 - SUM_NOISE) ? ': below the minimum' : ''}`, PLAN);
  }
  draft.with('mass of agent', enclosure.agent, (sums) => massLines(draft, context, sums));
  draft.with('agent installed', enclosure.supply, (supply) => supplyLines(draft, context, enclosure, supply));
  draft.with('volumes that full cylinders fit', enclosure.fill, (fill) => fillLines(draft, context, enclosure, fill));
  return draft.done();
}

/** k1 + k2·T with the constants of the agent. */
export function specificVolumeNumbers(temperature_K: number, constants: 'iso' | 'nfpa'): string {
  const k1 = specificVolume_m3_kg(AGENT, celsius_K(0), constants);
  const k2 = specificVolume_m3_kg(AGENT, celsius_K(1), constants) - k1;
  return `${figure(k1)} + ${figure(k2)}·${bracketed(toCelsius(temperature_K))}`;
}

/** The air changes of the flooding formula, with numbers. */
const logarithmNumbers = (concentration_pct: number, logarithm: 'exact' | '2.303'): string =>
  `${logarithm === 'exact' ? 'ln' : '2.303·log10'}(100/(100 − ${figure(concentration_pct)}))`;

function massLines(draft: Draft, { basis, lengths }: LineContext, sums: AgentSums): void {
  const { constants, logarithm, altitudeMethod } = basis;
  const { net_m3, concentration_pct, least_K, coldSpecificVolume_m3_kg, massSeaLevel_kg, massNeeded_kg, altitudeFactor, altitude_m } = sums;
  draft.step('Specific volume when coldest, s', nitrogenVolumeBasis, specificVolumeNumbers(least_K, constants), plainAmount(coldSpecificVolume_m3_kg, 'm³/kg'));
  draft.step('Mass at sea level, m', floodingMassBasis, `(${figure(net_m3)}/${figure(coldSpecificVolume_m3_kg)})·${logarithmNumbers(concentration_pct, logarithm)}`, amount(massSeaLevel_kg, 'mass', lengths));
  draft.step('Altitude factor, f', factorPart, altitudeMethod === 'isa' ? `(1 − 0.0000225577·${bracketed(altitude_m)})^5.25588` : '', plainAmount(altitudeFactor, ''));
  draft.main('Mass needed, m_alt', altitudePart, `${figure(massSeaLevel_kg)}·${figure(altitudeFactor)}`, amount(massNeeded_kg, 'mass', lengths));
  draft.step('Mass for each volume of room, at sea level', perVolumeBasis, `${figure(massSeaLevel_kg)}/${figure(net_m3)}`, plainAmount(sums.floodingFactor_kg_m3, 'kg/m³'));
  draft.step('Volume at 20 °C and 1.013 bar', partOf(referenceVolumeBasis, 0), `${figure(massNeeded_kg)}·${figure(sums.referenceVolume_m3 / massNeeded_kg)}`, amount(sums.referenceVolume_m3, 'volume', lengths));
}

function supplyLines(draft: Draft, context: LineContext, { agent, cylindersNeeded }: EnclosureDesign, supply: SupplySums): void {
  const { lengths } = context;
  const [first] = supply.networks;
  if (first) draft.given('Agent in one cylinder, m_each', amount(supply.massEach_kg, 'mass', lengths), limitSource(context, first.ref.id, 'agentMass_kg'));
  if (agent.isKnown && cylindersNeeded.isKnown) {
    draft.main('Cylinders needed, n', cylindersNeededBasis, `${figure(agent.sums.massNeeded_kg)}/${figure(supply.massEach_kg)}, rounded up`, counted(cylindersNeeded.sums, 'cylinder'));
  }
  for (const { name, cylinders, share } of supply.networks) {
    draft.given(name || 'Network', `${counted(cylinders, 'cylinder')}${share < 1 ? `, ${percent(share * 100)} of its agent comes here` : ''}`, PLAN);
  }
  const needed_kg = agent.isKnown ? agent.sums.massNeeded_kg : undefined;
  const shown = needed_kg === undefined ? amount(supply.installed_kg, 'mass', lengths) : amountsApart(supply.installed_kg, needed_kg, 'mass', lengths).value;
  draft.main('Agent installed, m_in', installedBasis, `${figure(supply.cylinders)}·${figure(supply.massEach_kg)}`, shown);
  if (needed_kg !== undefined) {
    const reserve_kg = supply.installed_kg - needed_kg;
    draft.step('Reserve', reserveBasis, `${figure(supply.installed_kg, 8)} − ${figure(needed_kg, 8)}`, `${amount(reserve_kg, 'mass', lengths)}${reserve_kg < 0 ? ': too little' : ''}`);
  }
}

function fillLines(draft: Draft, { basis, lengths }: LineContext, { agent, supply }: EnclosureDesign, fill: FillSums): void {
  const { least_m3, greatest_m3, net_m3, cylinders, oxygenLimit_pct, fitting } = fill;
  draft.given('Least oxygen for the stay that the design counts on, O2_limit', `${percent(oxygenLimit_pct)} as at sea level`, PLAN);
  const f = agent.isKnown ? figure(agent.sums.altitudeFactor) : '';
  const mass = supply.isKnown ? `${figure(cylinders)}·${figure(supply.sums.massEach_kg)}` : '';
  const hot = agent.isKnown && supply.isKnown ? `${mass}·${figure(agent.sums.hotSpecificVolume_m3_kg)}/(${f}·ln(${figure(basis.oxygenBase_pct)}·${f}/${figure(oxygenLimit_pct)}))` : '';
  const cold = agent.isKnown && supply.isKnown ? `${mass}·${figure(agent.sums.coldSpecificVolume_m3_kg)}/(${f}·${logarithmNumbers(agent.sums.concentration_pct, basis.logarithm)})` : '';
  draft.step('Least volume that they fit, V_least', partOf(fixedFillBasis, 0), hot, amountsApart(least_m3, net_m3, 'volume', lengths).value);
  draft.step('Greatest volume that they fit, V_greatest', partOf(fixedFillBasis, 1), cold, amountsApart(greatest_m3, net_m3, 'volume', lengths).value);
  const place = net_m3 < least_m3 * (1 - SUM_NOISE) ? 'too small' : net_m3 > greatest_m3 * (1 + SUM_NOISE) ? 'too large' : 'fits';
  const isNear = Math.abs(net_m3 - least_m3) < Math.abs(net_m3 - greatest_m3) ? least_m3 : greatest_m3;
  draft.main(`This enclosure with ${counted(cylinders, 'full cylinder')}`, ownBasis('V_least ≤ V ≤ V_greatest', fixedFillBasis.source), '', `${amountsApart(net_m3, isNear, 'volume', lengths).value}: ${place}`);
  draft.given('Numbers of full cylinders that fit it', fitting.length > 0 ? fitting.join(', ') : 'none', ARITHMETIC);
}
