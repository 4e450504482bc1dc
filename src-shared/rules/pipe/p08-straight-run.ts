import type { DerivedNetwork } from '../../derived/derived.ts';
import { flowOrderOf } from '../../derived/flow-order.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { atLeast, defineRule, notChecked } from '../rule.ts';
import { networkSubjects } from '../subjects.ts';

/** Straight pipe before a tee, in inside diameters: common practice. */
const DIAMETERS = 10;

/**
 * P8: straight pipe leads to every tee, so that the agent parts as the tee is made for.
 * Measure: straight pipe before the tee that has least of it for its size [m], from the last fitting or the source.
 * A tee that only holds a dirt trap or drain parts nothing and is not asked.
 * Limit: 10 inside diameters of the pipe at the tee.
 * Not checked: no pipe is drawn yet.
 */
export const p08StraightRun = defineRule<DerivedNetwork>({
  id: 'P8',
  title: 'Straight run at tee',
  severity: 'warn',
  measure: 'length',
  basis: {
    formula: 'straight pipe before every tee ≥ 10 × its inside diameter, fitting to fitting along the centre line',
    source: 'common practice',
    caution: 'Where the manual of the unit says more, that governs.',
  },
  subjects: networkSubjects,
  check(network, { say }) {
    if (network.pipes.length === 0) return notChecked('no pipe is drawn yet.');
    const runs = flowOrderOf(network).teeRuns.filter(({ tee }) => !tee.isTrap).map((run) => ({ ...run, least_m: DIAMETERS * run.bore_m }));
    const [worst] = runs.toSorted((a, b) => a.straight_m / a.least_m - b.straight_m / b.least_m);
    if (!worst) return { kind: 'judged', isKept: true, text: 'Has no tee.' };
    const short = runs.filter(({ straight_m, least_m }) => !(straight_m - least_m >= -LENGTH_SLACK_m));
    const figures = atLeast(worst.straight_m, { value: worst.least_m, source: 'common practice' }, LENGTH_SLACK_m);
    const { value: straight, limit: least } = say.against(worst.straight_m, worst.least_m);
    const at = (short.length > 0 ? short : [worst]).map(({ tee }) => tee.at);
    return {
      ...figures,
      text: figures.isKept
        ? `Every tee has straight pipe before it, ${straight} at least where ${least} is wanted.`
        : `${short.length} of ${runs.length} tees ${short.length === 1 ? 'has' : 'have'} too little straight pipe before ${short.length === 1 ? 'it' : 'them'}: ${straight}, where ${least} is wanted. Lengthen it.`,
      place: { level: network.level.id, at, heights: at },
      cure: figures.isKept ? undefined : { kind: 'advice', text: 'Move the tee, or the fitting before it.' },
    };
  },
});
