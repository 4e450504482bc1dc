import type { Settings } from '../model/plan.ts';
import type { DraftView } from './draft-view.ts';
import { printable, textWidth_mm } from './font-widths.ts';
import type { SheetLayout } from './frame.ts';
import { line, pen, text } from './marks.ts';
import { WEIGHT } from './print-ink.ts';
import { viewBar } from './scale-bars.ts';
import { scaleName } from '../paper/scales.ts';
import type { Mark, SheetField } from './sheet.ts';
import { shortened } from './text-box.ts';
import type { SymbolName } from './symbol-names.ts';

/** A sheet before its number and the count of the set are known. */
export interface SheetDraft {
  readonly title: string;
  /** Its title before tables joined it; the title when missing. */
  readonly home?: string;
  /** Tables on it, by what the sheet's title calls them. */
  readonly tables?: readonly string[];
  /** Scale as the title block names it. */
  readonly scale: string;
  /** All on it but its views. */
  readonly marks: readonly Mark[];
  /** Views that the user can place; painted before all else. */
  readonly views?: readonly DraftView[];
  /** To be filled in on a screen. */
  readonly fields?: readonly SheetField[];
  readonly hasViews: boolean;
  readonly hasPlan: boolean;
  readonly used: ReadonlySet<SymbolName>;
  /** What must be known before reading it: framed in the title column. */
  readonly remarks: readonly string[];
  /** What became of the user's own places: told in the window, not printed. */
  readonly placing?: readonly string[];
}

/** The name by which the user's views and notes find a sheet: what is drawn on it, whatever tables stand there too. */
export const homeOf = ({ title, home }: SheetDraft): string => (home ?? title).slice(0, LONGEST_HOME);
const LONGEST_HOME = 200;

/** Says that labels found no room, so that nobody takes a bare pipe for a finished one. */
export const missingLabels = (count: number): string[] =>
  count === 0 ? [] : [`${count} ${count === 1 ? 'label' : 'labels'} had no room at this scale: see the schedules, or print larger`];

/** Paper that a view's title takes below it [mm at factor 1]. */
export const VIEW_TITLE_mm = 12.5;

/** From the rule under a view's title to the lower edge of its bar [mm at factor 1]. */
const BAR_BELOW_mm = 3.3;

/** Title below a view: its name and its scale, and under them the bar that is checked with a ruler. */
export function viewTitle(x: number, y: number, words: string, scale: number, lengths: Settings['lengths'], { sizes, area }: SheetLayout): { readonly marks: Mark[]; readonly width_mm: number } {
  const { factor, heading_mm, text_mm } = sizes;
  const base = y + heading_mm + 2 * factor;
  const name = scaleName(scale, lengths);
  const scaleWidth = textWidth_mm(name, text_mm, 'plain');
  const longest = area.right - Math.max(x, area.left) - scaleWidth - 6 * factor;
  const title = shortened(printable(words), longest, heading_mm, 'bold');
  const nameWidth = textWidth_mm(title, heading_mm, 'bold');
  const ruleY = base + 1.6 * factor;
  const right = x + nameWidth + 5 * factor + scaleWidth;
  const bar = viewBar(x, ruleY + BAR_BELOW_mm * factor, scale, lengths, sizes);
  return {
    marks: [
      text(x, base, title, { height_mm: heading_mm, font: 'bold' }),
      text(x + nameWidth + 5 * factor, base, name, { height_mm: text_mm }),
      line(pen(WEIGHT.wide), x, ruleY, right, ruleY),
      ...bar.marks,
    ],
    width_mm: Math.max(right - x, bar.width_mm) + factor,
  };
}
