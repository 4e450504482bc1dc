import type { DerivedNetwork, Fitting } from '../../derived/derived.ts';
import { placeOn, staleDischarge } from '../design-subjects.ts';
import { atLeast, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { slackOf } from '../slack.ts';
import { type ShapedNetwork, shapedNetworkSubjects } from './shaped-networks.ts';

/** A tee with the nozzles behind each leg that leads to some. */
interface Parting {
  readonly tee: Fitting;
  readonly legs: readonly (readonly string[])[];
}

/** Tees and crosses at which the agent parts: what only leads to a dirt trap, drain or cap takes none of it. */
function partingsOf({ fittings, paths }: DerivedNetwork): Parting[] {
  return fittings.flatMap((tee): Parting[] => {
    if (tee.kind !== 'tee' && tee.kind !== 'cross') return [];
    const leaving = tee.pipes.map((): string[] => []);
    for (const { nozzle, nodes, pipes } of paths) {
      const outlet = pipes[nodes.indexOf(tee.node)];
      const leg = outlet === undefined ? -1 : tee.pipes.indexOf(outlet);
      leaving[leg]?.push(nozzle);
    }
    const legs = leaving.filter((nozzles) => nozzles.length > 0);
    return legs.length > 1 ? [{ tee, legs }] : [];
  });
}

/**
 * P6: every tee parts the agent within the range that the manual allows.
 * Measure: share of the agent that goes into the lesser leg of the worst tee, by the calculated discharge.
 * Limit: least share of a tee's lesser leg, from the unit profile. A tee with a dirt trap or drain parts nothing.
 * Not checked: the limit is blank, or the discharge is not worked out. Without any tee it is kept.
 */
export const p06TeeSplit = defineRule<ShapedNetwork>({
  id: 'P6',
  title: 'Tee split',
  severity: 'stop',
  measure: 'ratio',
  basis: {
    formula: 'agent through the lesser leg of a tee ÷ agent that comes to it ≥ limit; agent as the calculated discharge gives it to each nozzle',
    source: 'unit profile',
    caution: 'The listing may allow other shares for tees that are turned otherwise; it governs.',
  },
  limitKeys: ['teeSplitLeast'],
  subjects: shapedNetworkSubjects,
  check({ network, shape }, { say }) {
    const { limit, ...missing } = limitOrBlank(network.profile, 'teeSplitLeast');
    const partings = partingsOf(shape);
    if (partings.length === 0 && shape.faults.length === 0) return { kind: 'judged', isKept: true, text: 'Has no tee that parts the agent.' };
    if ('blank' in missing) return missing.blank;
    if (!limit) return notChecked('the limit is not known.');
    const { discharge } = network;
    if (!discharge.isKnown) return notChecked(discharge.because, placeOn(network, partings.map(({ tee }) => tee.at)));
    const mass_kg = new Map(discharge.sums.result.nozzles.map(({ id, mass_kg: each }) => [id, each]));
    const split = partings.map(({ tee, legs }) => {
      const each = legs.map((nozzles) => nozzles.reduce((sum, id) => sum + (mass_kg.get(id) ?? Number.NaN), 0));
      const all = each.reduce((sum, leg) => sum + leg, 0);
      return { tee, share: Math.min(...each) / all };
    });
    const [worst] = [...split].sort((a, b) => a.share - b.share);
    const unknown = split.some(({ share }) => !Number.isFinite(share));
    if (!worst || unknown) return notChecked('what each nozzle gets is not worked out.');
    const slack = slackOf(limit.value);
    const tooLittle = split.filter(({ share }) => !(share - limit.value >= -slack));
    const { value, limit: least } = say.quantityAgainst(worst.share, limit.value, 'ratio');
    const stale = staleDischarge(discharge.sums.isStale);
    return {
      ...atLeast(worst.share, limit, slack),
      text:
        tooLittle.length === 0
          ? `The lesser leg of every tee gets ${value} of the agent or more; ${least} is the least.${stale}`
          : `${tooLittle.length} of ${split.length} ${split.length === 1 ? 'tee' : 'tees'} ${tooLittle.length === 1 ? 'gives' : 'give'} the lesser leg too little: ${value} of the agent where ${least} is the least. Branch the pipe another way.${stale}`,
      place: placeOn(network, (tooLittle.length > 0 ? tooLittle : [worst]).map(({ tee }) => tee.at)),
      cure: tooLittle.length === 0 ? undefined : { kind: 'advice', text: 'Let the tee part the nozzles more evenly, or choose larger orifices behind the lesser leg.' },
    };
  },
});
