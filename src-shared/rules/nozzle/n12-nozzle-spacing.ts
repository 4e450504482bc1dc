import { bringsNoStop, movedTo } from '../../derived/nozzle-changes.ts';
import { findLeastTurn } from '../../derived/least-turn.ts';
import { type NozzlePair, apart_m, findOpposed, nozzlePairs, spreadTo } from '../../derived/nozzle-pairs.ts';
import { planPoint, polar } from '../../geometry/point.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import type { SourcedLimit } from '../../profile/unit-profile.ts';
import type { Cure, FindingInput, Place } from '../finding.ts';
import { type Answer, type CheckContext, atLeast, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { type NozzleSubject, askedNozzle, perServedSpace } from '../subjects.ts';
import { turnBy } from './turn-by.ts';

/** Two nozzles of a space, with all that serve it. */
interface Asked extends NozzlePair<NozzleSubject> {
  readonly nozzles: readonly NozzleSubject[];
}

const spacing_m = ({ profile }: NozzleSubject): number => profile?.limits.nozzleSpacing_m?.value ?? 0;
const free_m = ({ profile }: NozzleSubject): number => profile?.limits.freeJet_m?.value ?? 0;

/** How far apart two nozzles have nothing to do with each other [m]. */
const within_m = ({ one, other }: NozzlePair<NozzleSubject>): number => Math.max(spacing_m(one), spacing_m(other), free_m(one) + free_m(other));

/** The pair and its mirror image: which of the two moves. */
const bothWays = ({ one, other, nozzles }: Asked): readonly Asked[] => [
  { one: other, other: one, nozzles },
  { one, other, nozzles },
];

/** Moves one of the two straight away from the other, the later one first. */
function spreadCure(asked: Asked, wanted_m: number, say: CheckContext['say']): Cure {
  for (const pair of bothWays(asked)) {
    const to = spreadTo(pair, wanted_m);
    if (!to || !pair.one.at) continue;
    const moved = movedTo(pair.one, to);
    const clashes = asked.nozzles.some((each) => each !== pair.one && apart_m({ one: moved, other: each }) < Math.min(wanted_m, apart_m({ one: pair.one, other: each })) - LENGTH_SLACK_m);
    if (clashes || !bringsNoStop(pair.one, moved, asked.nozzles)) continue;
    return { kind: 'move-nozzle', text: `Move ${pair.one.nozzle.name} ${say.off(wanted_m - apart_m(pair))} away from ${pair.other.nozzle.name}`, nozzle: { network: pair.one.ref.network, id: pair.one.ref.id }, to };
  }
  return { kind: 'advice', text: 'Spread them by hand, or do with one nozzle less: no straight move of either brings no new stop.' };
}

/** Turns one of the two, the later one first, until they no longer blow at each other. */
function turnApart(asked: Asked, say: CheckContext['say']): Cure {
  for (const pair of bothWays(asked)) {
    const turn_rad = findLeastTurn(pair.one, asked.nozzles, (turned) => asked.nozzles.every((each) => each === pair.one || !findOpposed({ one: turned, other: each })));
    const cure = turn_rad === undefined ? undefined : turnBy(pair.one, turn_rad, say);
    if (cure) return { ...cure, text: cure.text.replace('it', pair.one.nozzle.name) };
  }
  return { kind: 'advice', text: 'Move one of them: no turn of either brings no new stop.' };
}

/** The greater of the distances that the two profiles ask for, or the answer to give while one is blank. */
function spacingOf({ one, other }: Asked): { limit: SourcedLimit } | { limit: undefined; blank: Answer } {
  const [mine, theirs] = [limitOrBlank(one.profile, 'nozzleSpacing_m'), limitOrBlank(other.profile, 'nozzleSpacing_m')];
  if (!mine.limit) return mine;
  return !theirs.limit || theirs.limit.value > mine.limit.value ? theirs : mine;
}

/** What else must be known before two nozzles this near each other can be cleared. */
function blankOfJets({ one, other }: Asked): Answer | undefined {
  for (const { profile } of [one, other]) {
    for (const key of ['freeJet_m', 'jetSpread_rad'] as const) {
      const found = limitOrBlank(profile, key);
      if (!found.limit) return found.blank;
    }
  }
  return undefined;
}

/**
 * N12: nozzles of one space keep their distance, and none blows at another.
 * Measure: distance between two orifices in space [m].
 * Limit: least distance from the unit profile, the greater of two; where each has the other within the spread of a jet
 * and nothing stands between them, their two least free jets together.
 * One finding for each pair that is near, and for each nozzle with its nearest. One nozzle alone is not asked.
 * Not checked: a limit is blank. A distance that is short is reported whatever is blank of the jets.
 */
export const n12NozzleSpacing = defineRule<Asked>({
  id: 'N12',
  title: 'Nozzle spacing and opposed jets',
  severity: 'warn',
  measure: 'length',
  basis: {
    formula: 'distance between two nozzles of a space ≥ limit; ≥ the sum of their least free jets where each blows at the other within the spread of a jet',
    source: 'unit profile; distance of opposed jets common practice',
  },
  limitKeys: ['nozzleSpacing_m', 'freeJet_m', 'jetSpread_rad'],
  isHeavy: true,
  subjects: perServedSpace((_, serving) => {
    const nozzles = serving.map((each) => askedNozzle(each).subject);
    return nozzlePairs(nozzles, within_m).map(({ one, other }) => ({ subject: { one, other, nozzles }, ref: one.ref, name: `${one.nozzle.name} and ${other.nozzle.name}` }));
  }),
  check(asked, { say }) {
    const { one, other } = asked;
    if (!one.at || !other.at) return notChecked('one of them has lost its pipe end.');
    const far_m = apart_m(asked);
    const [a, b] = [planPoint(one.at.x, one.at.y), planPoint(other.at.x, other.at.y)];
    const place: Place = { level: one.level, at: [a, b], dimension: { a, b }, heights: [one.at, other.at] };
    const spacing = spacingOf(asked);
    if (spacing.limit && far_m < spacing.limit.value - LENGTH_SLACK_m) {
      const { value: far, limit: wanted } = say.against(far_m, spacing.limit.value);
      const figures = atLeast(far_m, spacing.limit, LENGTH_SLACK_m);
      return { ...figures, text: `Are ${far} apart; ${wanted} is wanted. Spread them.`, place, cure: spreadCure(asked, spacing.limit.value, say) };
    }
    const opposed = findOpposed(asked);
    if (opposed) {
      const wanted_m = free_m(one) + free_m(other);
      const { value: far, limit: wanted } = say.against(far_m, wanted_m);
      const inputs: FindingInput[] = [one, other].map(({ nozzle, profile }) => ({
        label: `Least free jet of ${nozzle.name}`,
        value: say.length(profile?.limits.freeJet_m?.value ?? 0),
        source: profile?.limits.freeJet_m?.source,
      }));
      return {
        ...atLeast(far_m, { value: wanted_m, source: 'the two least free jets together' }, LENGTH_SLACK_m),
        isKept: false,
        text: `Blow at each other ${far} apart; their jets meet before they open out, which takes ${wanted}. Turn one of them.`,
        inputs,
        place: { ...place, rays: [{ from: a, to: polar(a, opposed.one_rad, far_m / 2) }, { from: b, to: polar(b, opposed.other_rad, far_m / 2) }] },
        cure: turnApart(asked, say),
      };
    }
    if (!spacing.limit) return spacing.blank;
    const blank = blankOfJets(asked);
    if (blank) return blank;
    const { value: far, limit: wanted } = say.against(far_m, spacing.limit.value);
    return { ...atLeast(far_m, spacing.limit, LENGTH_SLACK_m), text: `Are ${far} apart; ${wanted} is enough, and they do not blow at each other.`, place };
  },
});
