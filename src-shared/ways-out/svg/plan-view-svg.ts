import { datumsOf } from '../../derived/datum.ts';
import type { Evaluation } from '../../evaluate.ts';
import { PAPERS } from '../../paper/papers.ts';
import { ordinaryScales, scaleName, takenScales } from '../../paper/scales.ts';
import { typeSizesOf } from '../../paper/type-sizes.ts';
import { numberFindings } from '../../sheets/findings-table.ts';
import { printable, textWidth_mm } from '../../sheets/font-widths.ts';
import { SAMPLE_STAMP } from '../../sheets/frame.ts';
import { profilesInUse } from '../../sheets/limits-table.ts';
import { shiftMarks, text } from '../../sheets/marks.ts';
import { type PlanContent, contentBounds } from '../../sheets/plan-content.ts';
import { type ComposedView, composePlanView, fitsPaper } from '../../sheets/plan-view.ts';
import { groundBar } from '../../sheets/scale-bars.ts';
import { planCuts } from '../../sheets/section-cuts.ts';
import type { UnderlayDrawing } from '../../underlay/drawing.ts';
import type { SvgDrawing } from './write-svg.ts';

/** Paper around a view, and paper for the title below it [mm]. */
const MARGIN_mm = 10;
const TITLE_mm = 27;
/** The view is read at hand's length, whatever its size. */
const SIZES = typeSizesOf(PAPERS.A3);
/** Room that a view is composed in at most [mm]: the longest roll that is ordinary. */
const LARGEST = { left: 0, top: 0, right: 1189 - 2 * MARGIN_mm, bottom: 841 - 2 * MARGIN_mm - TITLE_mm };

/**
 * One plan view by itself, in its true size on paper that is as large as it needs.
 * @param scale  paper : site; the plan's own, else the first at which every label finds room, when missing
 * @returns undefined when nothing is drawn on the level
 */
export function planViewDrawing({ derived, findings }: Pick<Evaluation, 'derived' | 'findings'>, content: PlanContent, drawings: ReadonlyMap<string, UnderlayDrawing>, scale?: number): SvgDrawing | undefined {
  const { plan } = derived;
  const { lengths, sheets } = plan.settings;
  const bounds = contentBounds(content);
  if (!bounds) return undefined;
  const wished = scale ?? sheets.scale;
  const scales = wished === null ? takenScales(lengths, plan.basis.smallestScale) : [wished];
  const fitting = scales.filter((ratio) => fitsPaper(bounds, ratio, LARGEST, SIZES.factor));
  const shared = { sizes: SIZES, lengths, drawings, cuts: planCuts(derived), findings: numberFindings(findings), issue: plan.lastIssue, datums: datumsOf(derived) };
  let best: ComposedView | undefined;
  for (const ratio of fitting.length > 0 ? fitting : [wished ?? ordinaryScales(lengths).at(-1) ?? 100]) {
    const view = composePlanView(content, { ...shared, scale: ratio, room: LARGEST });
    if (view && (!best || view.unplaced.length < best.unplaced.length)) best = view;
    if (best?.unplaced.length === 0) break;
  }
  return best && framed(derived, content, best);
}

function framed(derived: Evaluation['derived'], content: PlanContent, { marks, box, scale, unplaced }: ComposedView): SvgDrawing {
  const { info, settings } = derived.plan;
  const { text_mm, heading_mm, factor } = SIZES;
  const title = printable([info.project, content.title].filter((words) => words.trim() !== '').join(': '));
  const own = profilesInUse(derived);
  const isSample = (own.length > 0 ? own : Object.values(derived.plan.profiles)).some((profile) => profile.isSample);
  const remarks = [
    ...(isSample ? [SAMPLE_STAMP] : []),
    ...(unplaced.length > 0 ? [`${unplaced.length} ${unplaced.length === 1 ? 'label' : 'labels'} had no room at this scale.`] : []),
    'A copy for reference: the issued sheets come first.',
  ].join('  ');
  const top = MARGIN_mm + (box.bottom - box.top) + 4;
  const scaleWords = scaleName(scale, settings.lengths);
  const bar = groundBar(MARGIN_mm + textWidth_mm(scaleWords, text_mm, 'plain') + 6 * factor, top + heading_mm + text_mm * 2.4, scale, settings.lengths, SIZES);
  const width_mm = Math.max(box.right - box.left, textWidth_mm(title, heading_mm, 'bold'), textWidth_mm(remarks, text_mm, 'plain'), bar.width_mm + 60) + 2 * MARGIN_mm;
  return {
    title,
    width_mm,
    height_mm: top + TITLE_mm,
    marks: [
      ...shiftMarks(marks, MARGIN_mm - box.left, MARGIN_mm - box.top),
      text(MARGIN_mm, top + heading_mm, title, { height_mm: heading_mm, font: 'bold' }),
      text(MARGIN_mm, top + heading_mm + text_mm * 2.4, scaleWords, { height_mm: text_mm }),
      ...bar.marks,
      text(MARGIN_mm, top + heading_mm + text_mm * 6.2, remarks, { height_mm: text_mm, font: isSample ? 'bold' : 'plain' }),
    ],
  };
}
