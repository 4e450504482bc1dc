import { turnSupportBasis } from '../../calculations/formulas/support-spans.ts';
import { FITTING_WORDS } from '../../derived/fitting-words.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { placeOn, supportSumsOf } from '../design-subjects.ts';
import { atMost, defineRule, notChecked } from '../rule.ts';
import { type ShapedNetwork, shapedNetworkSubjects } from './shaped-networks.ts';
import { supportsBeside } from './support-cures.ts';

const NOWHERE_m = Number.POSITIVE_INFINITY;

/**
 * P20: every elbow and tee has a support near it.
 * Measure: along the pipe from the turn that is worst off to its nearest support [m].
 * Limit: 1 ft (0.305 m).
 * Not checked: no support is drawn.
 */
export const p20TurnSupport = defineRule<ShapedNetwork>({
  id: 'P20',
  title: 'Support at turn',
  severity: 'warn',
  measure: 'length',
  basis: { formula: `along the pipe, turn to nearest support; ${turnSupportBasis.formula}`, source: turnSupportBasis.source },
  subjects: shapedNetworkSubjects,
  check({ network, shape }, { say }) {
    const supports = supportSumsOf(network);
    if (!supports.isKnown) return notChecked(supports.because);
    const turns = supports.sums.turns.map((turn) => ({ ...turn, far_m: turn.distance_m ?? NOWHERE_m }));
    const [worst] = [...turns].sort((a, b) => b.far_m - b.allowed_m - (a.far_m - a.allowed_m) || 0);
    if (!worst) return { kind: 'judged', isKept: true, text: 'Has no elbow or tee.' };
    const bare = turns.filter(({ far_m, allowed_m }) => !(allowed_m - far_m >= -LENGTH_SLACK_m));
    const place = placeOn(network, (bare.length > 0 ? bare : [worst]).map(({ fitting }) => fitting.at));
    const word = FITTING_WORDS[worst.fitting.kind];
    const toAdd = 'Add a rigid support beside each of them';
    const spots = bare.map(({ fitting, allowed_m }) => ({ pipe: fitting.pipes[0] ?? '', node: fitting.node, within_m: allowed_m }));
    const cure = bare.length === 0 ? undefined : (supportsBeside(shape, spots, toAdd) ?? ({ kind: 'advice', text: `${toAdd}.` } as const));
    const many = `${bare.length} of ${turns.length} turns ${bare.length === 1 ? 'lacks' : 'lack'} a near support`;
    if (worst.distance_m === undefined) {
      const text = `${many}: a ${word} has none on its pipe, and one is wanted within ${say.length(worst.allowed_m)}. Add one.`;
      return { kind: 'judged', isKept: false, limit: worst.allowed_m, limitSource: turnSupportBasis.source, text, place, cure };
    }
    const figures = { ...atMost(worst.distance_m, { value: worst.allowed_m, source: turnSupportBasis.source }, LENGTH_SLACK_m), isKept: bare.length === 0 };
    const { value: far, limit: allowed } = say.against(worst.distance_m, worst.allowed_m);
    return {
      ...figures,
      text: figures.isKept
        ? `Every turn has a support within ${far}; ${allowed} is allowed.`
        : `${many}: at a ${word} it is ${far} away, and ${allowed} is allowed. Add one.`,
      place,
      cure,
    };
  },
});
