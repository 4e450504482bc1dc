import type { Derived } from '../derived/derived.ts';
import { type Paper, ordinaryPapers } from '../paper/papers.ts';
import { takenScales } from '../paper/scales.ts';
import { sheetLayout } from './frame.ts';
import { type PlanContent, contentBounds } from './plan-content.ts';
import { fitsPaper } from './plan-view.ts';
import type { SheetOptions } from './sheet.ts';
import { viewArea } from './view-set.ts';

/** The smallest ordinary paper on which every level can be read easily; else the one that comes nearest. */
export function bestPaper(derived: Derived, contents: readonly PlanContent[], options: SheetOptions): Paper {
  const { lengths } = derived.plan.settings;
  const papers = ordinaryPapers(lengths);
  /** Coarsest ratio, text size counted in, at which labels still find room. */
  const readable = 70;
  const rated = papers.map((paper) => {
    const layout = sheetLayout(paper);
    const scales = options.scale === 'auto' ? takenScales(lengths, derived.plan.basis.smallestScale) : [options.scale];
    const need = contents.map((content) => {
      const bounds = contentBounds(content);
      const scale = bounds ? scales.find((ratio) => fitsPaper(bounds, ratio, viewArea(layout), layout.sizes.factor)) : 1;
      return (scale ?? 10_000) * layout.sizes.factor;
    });
    return { paper, effective: Math.max(0, ...need) };
  });
  const found = rated.find(({ effective }) => effective <= readable) ?? rated.reduce((best, one) => (one.effective < best.effective ? one : best));
  return found.paper;
}
