import { pipeRatingBasis } from '../../calculations/formulas/pipe-rating.ts';
import { placeOn } from '../design-subjects.ts';
import { atLeast, defineRule, notChecked } from '../rule.ts';
import { slackOf } from '../slack.ts';
import { type ZoneMember, someAre, weakestOf, zoneSubjects } from './zone-strength.ts';

/**
 * P13: all pipe on a side of the regulator bears the greatest pressure that can come there.
 * Measure: rating of the weakest pipe, gauge [Pa].
 * Limit: greatest pressure of that side, gauge.
 * Not checked: no pipe is drawn, or a rating or the pressure is not known.
 */
export const p13PipeRating = defineRule<ZoneMember>({
  id: 'P13',
  title: 'Pipe rating',
  severity: 'stop',
  measure: 'gaugePressure',
  basis: {
    formula: `rating of every pipe ≥ greatest pressure on its side of the regulator; ${pipeRatingBasis.formula}`,
    source: pipeRatingBasis.source,
    caution: 'The unit’s listing names the pipe that it allows; it governs.',
  },
  limitKeys: ['fillPressure_Pa'],
  subjects: zoneSubjects(({ pipes }) => pipes.length > 0),
  check({ network, member }, { say }) {
    if (!member.isKnown) return notChecked(member.because);
    const { pipes, greatest_Pa, greatestSource } = member.sums;
    const weakest = weakestOf(pipes);
    if (!weakest) return notChecked('no pipe is drawn yet.');
    const slack_Pa = slackOf(greatest_Pa);
    const tooWeak = pipes.filter(({ rating_Pa }) => !(rating_Pa - greatest_Pa >= -slack_Pa));
    const figures = { ...atLeast(weakest.rating_Pa, { value: greatest_Pa, source: greatestSource }, slack_Pa), isKept: tooWeak.length === 0 };
    const shown = figures.isKept ? [weakest] : tooWeak;
    const { size, schedule, joint } = weakest.pipe.pipe;
    const { value: bears, limit: comes } = say.quantityAgainst(weakest.rating_Pa, greatest_Pa, 'gaugePressure');
    const part = `${size} in Schedule ${schedule} ${joint} pipe bears ${bears}`;
    return {
      ...figures,
      text: figures.isKept
        ? `The weakest, ${part}; no more than ${comes} comes there (${greatestSource}).`
        : `${someAre(tooWeak.length, pipes.length, 'pipe')} too weak: ${part}, and ${comes} may come there (${greatestSource}). Use a heavier schedule.`,
      place: placeOn(network, shown.flatMap(({ pipe }) => [pipe.from, pipe.to])),
      cure: figures.isKept ? undefined : { kind: 'advice', text: 'Use pipe of a heavier schedule, or a stronger joint.' },
    };
  },
});
