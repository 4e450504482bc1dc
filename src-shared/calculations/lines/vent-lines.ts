import type { EnclosureDesign, VentSums } from '../design/design.ts';
import { AIR_kg_m3 } from '../formulas/door-fan.ts';
import { enclosurePressureBasis, reliefVentBasis } from '../formulas/relief-vent.ts';
import { VENT_FLOW_WORDS, VENT_TEMPERATURE_WORDS } from './basis-words.ts';
import type { Calculation } from './calculation.ts';
import { ARITHMETIC, CHOSEN, Draft, type LineContext, PLAN, ownBasis } from './draft.ts';
import { amount, amountsApart, figure, plainAmount } from './line-text.ts';

const LEADS_TO: Readonly<Record<string, string>> = { unknown: 'way out not known', outdoors: 'outdoors', corridor: 'into a corridor', room: 'into a room', exit: 'into a way of escape' };

/** How much relief vent an enclosure needs at what it bears, and what it has. */
export function ventLines(context: LineContext, enclosure: EnclosureDesign): Calculation {
  const { basis, lengths } = context;
  const draft = new Draft('vent', 'Relief vent', enclosure.ref, enclosure.name);
  draft.given('Methods', `${VENT_FLOW_WORDS[basis.ventFlow]}; ${VENT_TEMPERATURE_WORDS[basis.ventTemperature]}; leaks of the room ${basis.ventCountsLeakage ? 'count' : 'do not count'} as vent`, CHOSEN);
  draft.with('what the enclosure bears', enclosure.weakest, ({ pressure_Pa, wallName }) =>
    draft.given(`What the weakest part bears, Δp: ${wallName}`, amount(pressure_Pa, 'pressureDifference', lengths), PLAN),
  );
  draft.with('free area of the vents', enclosure.vent, (sums) => areaLines(draft, context, sums, enclosure.agent.isKnown ? enclosure.agent.sums.altitudeFactor : 1));
  draft.with('peak pressure during the discharge', enclosure.filling, ({ peakOverpressure_Pa, isStale }) => {
    if (isStale) draft.stale();
    draft.given('Highest pressure in the discharge, vents as drawn', amount(peakOverpressure_Pa, 'pressureDifference', lengths), 'discharge');
  });
  return draft.done();
}

function areaLines(draft: Draft, { basis, lengths }: LineContext, sums: VentSums, altitudeFactor: number): void {
  const leaving_kg_m3 = AIR_kg_m3 * altitudeFactor;
  const flow = `${figure(sums.flow_kg_s)}·${figure(sums.specificVolume_m3_kg)}`;
  draft.given('Flow of agent, ṁ', amount(sums.flow_kg_s, 'massFlow', lengths), sums.flowSource);
  draft.given('Temperature of the agent in the room', amount(sums.temperature_K, 'temperature', lengths), CHOSEN);
  draft.given("Specific volume at the room's pressure, s", plainAmount(sums.specificVolume_m3_kg, 'm³/kg'), 'agent quantity');
  draft.given('Coefficient of the vent, C_d', figure(basis.ventCoefficient), CHOSEN);
  draft.given('Density of what leaves, ρ', plainAmount(leaving_kg_m3, 'kg/m³'), `air at 20 °C${altitudeFactor === 1 ? '' : ' and the altitude'}`);
  const needed = `${flow}/(${figure(basis.ventCoefficient)}·√(2·${figure(sums.allowable_Pa)}/${figure(leaving_kg_m3)}))`;
  const apart = amountsApart(sums.needed_m2, sums.provided_m2, 'area', lengths);
  draft.main('Free area needed, A', reliefVentBasis, needed, apart.value);
  for (const { name, freeArea_m2, leadsTo } of sums.vents) draft.given(`${/vent/i.test(name) ? name : `Vent ${name}`}, ${LEADS_TO[leadsTo] ?? leadsTo}`, amount(freeArea_m2, 'area', lengths), PLAN);
  if (sums.countedLeakage_m2 > 0) draft.given('Leaks that count as vent', amount(sums.countedLeakage_m2, 'area', lengths), 'hold time');
  const parts = [...sums.vents.map(({ freeArea_m2 }) => freeArea_m2), ...(sums.countedLeakage_m2 > 0 ? [sums.countedLeakage_m2] : [])];
  draft.main('Free area provided', ownBasis('Σ A of the vents and counted leaks', ARITHMETIC), parts.map((area_m2) => figure(area_m2)).join(' + '), `${apart.limit}${sums.provided_m2 < sums.needed_m2 * (1 - 1e-9) ? ': too little' : ''}`);
  if (sums.pressureWithVents_Pa !== undefined) {
    const numbers = `${figure(leaving_kg_m3)}/2·(${flow}/(${figure(basis.ventCoefficient)}·${figure(sums.provided_m2)}))^2`;
    draft.step('Pressure at that flow with what is provided', enclosurePressureBasis, numbers, amountsApart(sums.pressureWithVents_Pa, sums.allowable_Pa, 'pressureDifference', lengths).value);
  }
}
