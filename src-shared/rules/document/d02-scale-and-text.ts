import { PAPERS, ordinaryPapers } from '../../paper/papers.ts';
import { scaleName } from '../../paper/scales.ts';
import { typeSizesOf } from '../../paper/type-sizes.ts';
import type { Settings } from '../../model/plan.ts';
import { defineRule } from '../rule.ts';
import { perPlan } from '../subjects.ts';
import { planSubject } from './plan-subject.ts';

/**
 * D2: plan sheets are printed at a scale and with letters that the authority takes.
 * Measure: chosen scale, as site length over paper length; smallest letters on the chosen paper [m].
 * Limit: the basis of design's smallest scale and least letters. A scale that is left to the program is never smaller.
 */
export const d02ScaleAndText = defineRule<Settings>({
  id: 'D2',
  title: 'Scale and letters',
  severity: 'warn',
  measure: 'count',
  basis: {
    formula: 'scale ≤ smallest scale that is taken, and letters ≥ least height',
    source: 'basis of design; 1/8 in to the foot and legible at half size are common practice',
  },
  subjects: perPlan(({ plan }) => [planSubject(plan, plan.settings)]),
  check({ sheets, lengths }, { basis, say }) {
    const papers = sheets.paper ? [PAPERS[sheets.paper]] : ordinaryPapers(lengths);
    const letters_m = Math.min(...papers.map((paper) => typeSizesOf(paper).note_mm)) / 1000;
    const isTooSmall = letters_m < basis.leastText_m - 1e-9;
    const isTooFar = sheets.scale !== null && sheets.scale > basis.smallestScale + 1e-9;
    const chosen = sheets.scale === null ? 'chosen by the program, never smaller than the limit' : scaleName(sheets.scale, lengths);
    return {
      kind: 'judged',
      isKept: !isTooSmall && !isTooFar,
      measured: sheets.scale ?? undefined,
      limit: basis.smallestScale,
      limitSource: 'basis of design',
      margin: sheets.scale === null ? undefined : basis.smallestScale - sheets.scale,
      inputs: [
        { label: 'Scale of the plans', value: chosen },
        { label: 'Paper', value: sheets.paper ? PAPERS[sheets.paper].name : 'chosen by the program' },
        { label: 'Smallest letters', value: say.length(letters_m) },
        { label: 'Least letters', value: say.length(basis.leastText_m), source: 'basis of design' },
      ],
      text: isTooFar
        ? `Plans are to be printed at ${scaleName(sheets.scale ?? 0, lengths)}; ${scaleName(basis.smallestScale, lengths)} or larger is asked for. Choose a larger scale or paper.`
        : isTooSmall
          ? `The smallest letters are ${say.length(letters_m)} high; ${say.length(basis.leastText_m)} is asked for. Choose a larger paper.`
          : 'Plans are printed at a scale and with letters that are taken.',
    };
  },
});
