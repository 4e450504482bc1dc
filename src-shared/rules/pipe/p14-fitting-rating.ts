import { fittingRatingBasis } from '../../calculations/formulas/fitting-rating.ts';
import { FITTING_WORDS } from '../../derived/fitting-words.ts';
import { placeOn } from '../design-subjects.ts';
import { atLeast, defineRule, notChecked } from '../rule.ts';
import { slackOf } from '../slack.ts';
import { type ZoneMember, someAre, weakestOf, zoneSubjects } from './zone-strength.ts';

/**
 * P14: all fittings on a side of the regulator bear the greatest pressure that can come there, and none is of Class 150.
 * Measure: rating of the weakest fitting, gauge [Pa].
 * Limit: greatest pressure of that side, gauge.
 * Not checked: a rating or the pressure is not known.
 */
export const p14FittingRating = defineRule<ZoneMember>({
  id: 'P14',
  title: 'Fitting rating',
  severity: 'stop',
  measure: 'gaugePressure',
  basis: {
    formula: 'rating of every fitting ≥ greatest pressure on its side of the regulator; never Class 150',
    source: fittingRatingBasis.source,
    caution: fittingRatingBasis.caution,
  },
  limitKeys: ['fillPressure_Pa'],
  subjects: zoneSubjects(({ fittings }) => fittings.length > 0),
  check({ network, member }, { say }) {
    if (!member.isKnown) return notChecked(member.because);
    const { fittings, greatest_Pa, greatestSource } = member.sums;
    const weakest = weakestOf(fittings);
    if (!weakest) return notChecked('no fitting is drawn yet.');
    const slack_Pa = slackOf(greatest_Pa);
    const rated = atLeast(weakest.rating_Pa, { value: greatest_Pa, source: greatestSource }, slack_Pa);
    const tooWeak = fittings.filter(({ rating_Pa }) => !(rating_Pa - greatest_Pa >= -slack_Pa));
    const banned = fittings.filter(({ isEverAllowed }) => !isEverAllowed);
    const isKept = tooWeak.length === 0 && banned.length === 0;
    const { value: bears, limit: comes } = say.quantityAgainst(weakest.rating_Pa, greatest_Pa, 'gaugePressure');
    const part = `${weakest.size} in ${FITTING_WORDS[weakest.fitting.kind]} bears ${bears}`;
    const faults = [
      banned.length > 0 && `${someAre(banned.length, fittings.length, 'fitting')} of Class 150, which is never allowed here, whatever the pressure.`,
      tooWeak.length > 0 && `${someAre(tooWeak.length, fittings.length, 'fitting')} too weak: ${part}, and ${comes} may come there (${greatestSource}).`,
    ].filter((fault) => fault !== false);
    const shown = isKept ? [weakest] : [...new Set([...banned, ...tooWeak])];
    return {
      ...rated,
      isKept,
      text: isKept ? `The weakest, ${part}; no more than ${comes} comes there (${greatestSource}).` : `${faults.join(' ')} Use a stronger class.`,
      place: placeOn(network, shown.map(({ fitting }) => fitting.at)),
      cure: isKept ? undefined : { kind: 'advice', text: 'Use fittings of a stronger class.' },
    };
  },
});
