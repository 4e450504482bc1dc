import type { SpanSums } from '../../calculations/design/design.ts';
import { supportSpanBasis } from '../../calculations/formulas/support-spans.ts';
import { SUPPORT_TABLE_WORDS } from '../../calculations/lines/basis-words.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { placeOn, supportSumsOf } from '../design-subjects.ts';
import { atMost, defineRule, notChecked } from '../rule.ts';
import { type ShapedNetwork, shapedNetworkSubjects } from './shaped-networks.ts';
import { supportsByTable } from './support-cures.ts';

interface TabledSpan extends SpanSums {
  readonly allowed_m: number;
}
const isTabled = (span: SpanSums): span is TabledSpan => span.allowed_m !== undefined;
const isTooLong = ({ length_m, allowed_m }: TabledSpan): boolean => !(allowed_m - length_m >= -LENGTH_SLACK_m);
const share = ({ length_m, allowed_m }: TabledSpan): number => length_m / allowed_m;
const placesOf = (spans: readonly SpanSums[]) => spans.flatMap(({ at }) => at);

/**
 * P18: no stretch of pipe between supports is longer than the table allows for its size.
 * Measure: the stretch that is longest for its size [m].
 * Limit: span of the table that the basis of design names.
 * Not checked: no support is drawn, or the table has no span for so small a pipe.
 */
export const p18SupportSpan = defineRule<ShapedNetwork>({
  id: 'P18',
  title: 'Support span',
  severity: 'warn',
  measure: 'length',
  basis: { formula: `pipe between neighbouring supports, or from one to an end ≤ span of the table; ${supportSpanBasis.formula}`, source: supportSpanBasis.source, caution: supportSpanBasis.caution },
  subjects: shapedNetworkSubjects,
  check({ network, shape }, { basis, say }) {
    const supports = supportSumsOf(network);
    if (!supports.isKnown) return notChecked(supports.because, undefined, () => supportsByTable(shape, basis));
    const { spans } = supports.sums;
    const table = SUPPORT_TABLE_WORDS[basis.supportTable];
    const tabled = spans.filter(isTabled);
    const untabled = spans.filter((span) => !isTabled(span));
    const [worst] = [...tabled].sort((a, b) => share(b) - share(a));
    const sizes = [...new Set(untabled.map(({ pipe }) => `${pipe.pipe.size} in`))].join(', ');
    const without = `the chosen table (${table}) has none for ${sizes} pipe.`;
    if (!worst) return notChecked(untabled.length > 0 ? without : 'no stretch of pipe is held.', placeOn(network, placesOf(untabled)));
    const tooLong = tabled.filter(isTooLong);
    if (tooLong.length === 0 && untabled.length > 0) return notChecked(without, placeOn(network, placesOf(untabled)));
    const { value: free, limit: allowed } = say.against(worst.length_m, worst.allowed_m);
    const size = `${worst.pipe.pipe.size} in pipe`;
    const [a, b] = worst.at;
    const rest = untabled.length > 0 ? ` Besides, ${without}` : '';
    return {
      ...atMost(worst.length_m, { value: worst.allowed_m, source: table }, LENGTH_SLACK_m),
      isKept: tooLong.length === 0,
      text:
        tooLong.length === 0
          ? `No more than ${free} of ${size} hangs free; ${allowed} is allowed.`
          : `${tooLong.length === 1 ? 'A stretch hangs' : `${tooLong.length} stretches hang`} free too far: ${free} of ${size}, where ${allowed} is allowed. Add a support.${rest}`,
      place: placeOn(network, placesOf(tooLong.length > 0 ? tooLong : [worst]), { dimension: { a, b } }),
      cure: tooLong.length === 0 ? undefined : () => (supportsByTable(shape, basis) ?? { kind: 'advice', text: 'Add a support, or place all of them by the table.' }),
    };
  },
});
