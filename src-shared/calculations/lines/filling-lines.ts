import type { EnclosureDesign } from '../design/design.ts';
import { dischargeLimitBasis } from '../formulas/design-concentration.ts';
import { massShareTo95Basis } from '../formulas/agent-quantity.ts';
import { DESIGN_SET_WORDS, HAZARD_WORDS } from './basis-words.ts';
import type { Calculation } from './calculation.ts';
import { CHOSEN, Draft, type LineContext, PLAN, ownBasis } from './draft.ts';
import { amount, duration, durationsApart, figure, percent } from './line-text.ts';

const to95Basis = ownBasis('0.95·C', dischargeLimitBasis.source);

/** How fast the agent fills an enclosure. */
export function fillingLines({ basis, lengths }: LineContext, { ref, name, enclosure, filling, agent, supply }: EnclosureDesign): Calculation {
  const draft = new Draft('discharge', 'Filling of the room', ref, name);
  draft.given('Edition', DESIGN_SET_WORDS[basis.designSet], CHOSEN);
  draft.given('Hazard', HAZARD_WORDS[enclosure.hazardClass], PLAN);
  draft.with('time to fill the room', filling, (sums) => {
    if (sums.isStale) draft.stale();
    const { concentration_pct } = enclosure;
    if (concentration_pct !== null) draft.step('Concentration to be reached', to95Basis, `0.95·${figure(concentration_pct)}`, percent(concentration_pct * 0.95));
    if (concentration_pct !== null && agent.isKnown && supply.isKnown) {
      const c = figure(concentration_pct);
      const share = Math.log1p((-0.95 * concentration_pct) / 100) / Math.log1p(-concentration_pct / 100);
      draft.step('Share of the agent needed that must be in by then', massShareTo95Basis, `ln(100/(100 − 0.95·${c}))/ln(100/(100 − ${c}))`, figure(share, 4));
    }
    draft.given('Longest time', duration(sums.limit_s), sums.limitSource);
    for (const { space, mass_kg, timeTo95_s } of sums.spaces) {
      draft.given(space.name, `${amount(mass_kg, 'mass', lengths)} in all; ${timeTo95_s === undefined ? 'never reached' : `reached after ${durationsApart(timeTo95_s, sums.limit_s).value}`}`, 'discharge');
    }
    const time = sums.timeTo95_s === undefined ? 'never reached' : durationsApart(sums.timeTo95_s, sums.limit_s).value;
    const isLate = sums.timeTo95_s === undefined || sums.timeTo95_s > sums.limit_s * (1 + 1e-9);
    draft.main('Reached in the slowest space', dischargeLimitBasis, '', `${time}${isLate && sums.timeTo95_s !== undefined ? ': too late' : ''}`);
    draft.given('Highest pressure in the room, vents as drawn', amount(sums.peakOverpressure_Pa, 'pressureDifference', lengths), 'discharge');
  });
  return draft.done();
}
