import type { HeldSupport, NetworkDesign, SupportSums } from '../../calculations/design/design.ts';
import type { Fitting } from '../../derived/derived.ts';
import { FITTING_WORDS } from '../../derived/fitting-words.ts';
import { distance3_m } from '../../geometry/point.ts';
import { SAME_PLACE_m } from '../../geometry/tolerance.ts';
import { pipedNetworkSubjects, placeOn, supportSumsOf } from '../design-subjects.ts';
import { defineRule, notChecked } from '../rule.ts';

const isLoose = ({ support }: HeldSupport): boolean => support.kind === 'sling' || support.kind === 'hanger';

/**
 * The support that takes the thrust of a turn: the nearest one on the pipes that meet in it. One beyond the next turn
 * is that turn's own. Of two that are equally near the firmer one counts.
 */
function supportAtTurn({ at, pipes }: Fitting, { held }: SupportSums): HeldSupport | undefined {
  const near: { readonly each: HeldSupport; readonly away_m: number }[] = [];
  for (const each of held) if (each.pipe && pipes.includes(each.pipe.pipe.id)) near.push({ each, away_m: distance3_m(each.support.at, at) });
  const least_m = near.reduce((least, { away_m }) => Math.min(least, away_m), Infinity);
  const nearest = near.filter(({ away_m }) => away_m <= least_m + SAME_PLACE_m);
  return (nearest.find(({ each }) => !isLoose(each)) ?? nearest[0])?.each;
}

/**
 * P21: what holds the pipe where gas pushes at it is rigid.
 * Measure: nozzles and turns whose nearest support is a sling or a loose hanger.
 * Limit: none.
 * Not checked: no support is drawn, or a nozzle has none on its pipe.
 */
export const p21RigidAtThrust = defineRule<NetworkDesign>({
  id: 'P21',
  title: 'Rigid at thrust',
  severity: 'stop',
  measure: 'count',
  basis: { formula: 'no sling or hanger as the nearest support of a nozzle, an elbow or a tee', source: 'ISO 14520-1, memory' },
  subjects: pipedNetworkSubjects,
  check(network) {
    const supports = supportSumsOf(network);
    if (!supports.isKnown) return notChecked(supports.because);
    const { nozzles, turns } = supports.sums;
    const thrusts = [
      ...nozzles.map(({ name, support }) => ({ what: `nozzle ${name}`, support })),
      ...turns.map(({ fitting }) => ({ what: `a ${FITTING_WORDS[fitting.kind]}`, support: supportAtTurn(fitting, supports.sums) })),
    ];
    const loose = thrusts.flatMap(({ what, support }) => (support && isLoose(support) ? [{ what, support }] : []));
    const figures = { kind: 'judged', measured: loose.length, limit: 0, limitSource: 'ISO 14520-1, memory' } as const;
    const [first] = loose;
    if (first) {
      const more = loose.length > 1 ? ` (${loose.length - 1} more)` : '';
      return {
        ...figures,
        margin: -loose.length,
        isKept: false,
        text: `A ${first.support.support.kind} is all that holds the pipe at ${first.what}${more}, where gas pushes. Use a rigid support.`,
        place: placeOn(network, loose.map(({ support }) => support.support.at)),
        cure: { kind: 'make-rigid', text: loose.length > 1 ? 'Make them rigid supports' : 'Make it a rigid support', network: network.ref.id, supports: [...new Set(loose.map(({ support }) => support.ref.id))] },
      };
    }
    const bare = nozzles.find(({ support }) => !support);
    if (bare) return notChecked(`no support holds the pipe of nozzle ${bare.name}.`);
    return { ...figures, margin: 0, isKept: true, text: 'Is held by no sling or hanger where gas pushes.' };
  },
});
