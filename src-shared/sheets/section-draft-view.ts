import type { DraftView } from './draft-view.ts';
import type { ComposedView } from './plan-view.ts';
import type { SectionCut } from './section-cuts.ts';
import { composeSection, sectionKey, sectionSize, sectionTitle } from './section-view.ts';
import type { Mark } from './sheet.ts';
import { viewTitle } from './sheet-draft.ts';
import type { ViewSet } from './view-set.ts';

/** A section that was composed, as a view that can be placed. @param marks its drawing and its title, where they are now */
export const sectionDraftView = (set: ViewSet, cut: SectionCut, { scale, used }: ComposedView, marks: readonly Mark[]): DraftView => ({
  key: sectionKey(cut),
  title: sectionTitle(cut),
  marks,
  scale,
  used,
  ground: null,
  again: (wish) => redrawn(set, cut, wish.scale),
});

/** The same section at another scale, on paper of its own. */
function redrawn(set: ViewSet, cut: SectionCut, scale: number): DraftView {
  const { layout, derived } = set;
  const { lengths } = derived.plan.settings;
  const { width_mm, height_mm } = sectionSize(cut, scale, layout.sizes);
  const section = composeSection(derived, cut, scale, layout.sizes, lengths, { left: 0, top: 0, right: width_mm, bottom: height_mm });
  const title = viewTitle(section.box.left, section.box.bottom, sectionTitle(cut), scale, lengths, layout);
  return sectionDraftView(set, cut, section, [...section.marks, ...title.marks]);
}
