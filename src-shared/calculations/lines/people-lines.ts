import { EXPOSURES } from '../../model/basis-of-design.ts';
import type { Atmosphere, EnclosureDesign, Exposure, PeopleSums } from '../design/design.ts';
import { concentrationBasis } from '../formulas/agent-quantity.ts';
import { exposureBasis, exposureConditionsBasis } from '../formulas/exposure.ts';
import { residualOxygenBasis, seaLevelOxygenBasis } from '../formulas/oxygen.ts';
import { specificVolume_m3_kg } from '../formulas/specific-volume.ts';
import { ALTITUDE_WORDS, EXPOSURE_WORDS, JUDGED_BY_WORDS, OCCUPANCY_WORDS } from './basis-words.ts';
import { nitrogenVolumeBasis, specificVolumeNumbers } from './agent-lines.ts';
import type { Calculation } from './calculation.ts';
import { ARITHMETIC, CHOSEN, Draft, type LineContext, PLAN, ownBasis } from './draft.ts';
import { amount, duration, figure, percent, plainAmount } from './line-text.ts';

const spareBasis = ownBasis('delay − time to leave', ARITHMETIC);

/** Whether people can be in the room when all the installed agent is in it. */
export function peopleLines(context: LineContext, enclosure: EnclosureDesign): Calculation {
  const { basis, lengths } = context;
  const draft = new Draft('people', 'People and oxygen', enclosure.ref, enclosure.name);
  const { people, occupancy } = enclosure.enclosure;
  draft.with('net volume', enclosure.volume, ({ net_m3 }) => draft.given('Net volume, V', amount(net_m3, 'volume', lengths), 'agent quantity'));
  draft.with('agent installed', enclosure.supply, ({ installed_kg }) => draft.given('Agent installed, m', amount(installed_kg, 'mass', lengths), 'agent quantity'));
  draft.given('Use of the room', OCCUPANCY_WORDS[occupancy], PLAN);
  draft.given('Stay that the design counts on', EXPOSURE_WORDS[people.exposure], PLAN);
  draft.given('Oxygen of plain air, O2_air', percent(basis.oxygenBase_pct), CHOSEN);
  draft.given('Methods', `judged by ${JUDGED_BY_WORDS[basis.exposureBy]}; ${ALTITUDE_WORDS[basis.altitudeMethod]}`, CHOSEN);
  draft.with('oxygen and stay', enclosure.people, (sums) => {
    atmosphereLines(draft, context, enclosure, sums.hot, 'hottest');
    bandLines(draft, context, sums, people.exposure);
    atmosphereLines(draft, context, enclosure, sums.cold, 'coldest');
  });
  const times = [
    ['Time that everybody needs to leave', people.egress_s],
    ['Delay from the alarm to the discharge', people.delay_s],
    ['Longest delay that the authority allows', basis.greatestDelay_s],
  ] as const;
  for (const [label, time_s] of times) {
    if (time_s === null) draft.lacks(label.charAt(0).toLowerCase() + label.slice(1), 'it is not entered');
    else draft.given(label, duration(time_s), time_s === basis.greatestDelay_s && label.startsWith('Longest') ? CHOSEN : PLAN);
  }
  const { egress_s, delay_s } = people;
  if (egress_s !== null && delay_s !== null) {
    const spare_s = delay_s - egress_s;
    draft.main('Time to spare when the gas comes', spareBasis, `${figure(delay_s)} − ${figure(egress_s)}`, `${duration(spare_s)}${spare_s < 0 ? ': people are still inside' : ''}`);
  }
  if (delay_s !== null && basis.greatestDelay_s !== null && delay_s > basis.greatestDelay_s) draft.caution('The delay is longer than the authority allows.');
  return draft.done();
}

function atmosphereLines(draft: Draft, { basis, lengths }: LineContext, { volume, supply }: EnclosureDesign, at: Atmosphere, when: 'hottest' | 'coldest'): void {
  // What oxygen is worth at sea level carries the factor.
  const factor = at.oxygen_pct > 0 ? at.oxygenSeaLevel_pct / at.oxygen_pct : 1;
  const s = specificVolume_m3_kg('IG-100', at.temperature_K, basis.constants);
  const inRoom = Math.abs(factor - 1) < 1e-12 ? figure(s) : `(${figure(s)}/${figure(factor)})`;
  const numbers = volume.isKnown && supply.isKnown ? `100·(1 − exp(−${figure(supply.sums.installed_kg)}·${inRoom}/${figure(volume.sums.net_m3)}))` : '';
  draft.given(`Temperature when ${when}`, amount(at.temperature_K, 'temperature', lengths), PLAN);
  draft.step(`Specific volume when ${when}, at sea level`, nitrogenVolumeBasis, specificVolumeNumbers(at.temperature_K, basis.constants), plainAmount(s, 'm³/kg'));
  draft.step(`Concentration when ${when}, C`, concentrationBasis, numbers, percent(at.concentration_pct));
  draft.step(`Oxygen when ${when}, O2`, residualOxygenBasis, `${figure(basis.oxygenBase_pct)}·(1 − ${figure(at.concentration_pct)}/100)`, percent(at.oxygen_pct));
  draft.main(`Oxygen when ${when} as at sea level, O2_sea`, seaLevelOxygenBasis, `${figure(at.oxygen_pct)}·${figure(factor)}`, percent(at.oxygenSeaLevel_pct));
}

function bandLines(draft: Draft, { basis }: LineContext, { hot, doBandsAgree, exposure, longest_s }: PeopleSums, wanted: Exposure): void {
  const isShort = EXPOSURES.indexOf(exposure) > EXPOSURES.indexOf(wanted);
  draft.given('Stay by concentration, when hottest', EXPOSURE_WORDS[hot.byConcentration], exposureBasis.source);
  draft.given('Stay by oxygen, when hottest', `${EXPOSURE_WORDS[hot.byOxygen]}${doBandsAgree ? '' : ': the two ways differ'}`, exposureBasis.source);
  const stay = longest_s > 0 ? `${EXPOSURE_WORDS[exposure]}, by ${JUDGED_BY_WORDS[basis.exposureBy]}` : EXPOSURE_WORDS[exposure];
  draft.main('Longest stay', exposureBasis, '', `${stay}${isShort ? ': shorter than the design counts on' : ''}`);
  if (exposureConditionsBasis.caution) draft.caution(exposureConditionsBasis.caution);
}
