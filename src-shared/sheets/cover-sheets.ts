import type { Info } from '../model/plan.ts';
import { printable } from './font-widths.ts';
import type { SheetLayout } from './frame.ts';
import { columnWidth_mm } from './flow.ts';
import { legendTable } from './legend.ts';
import { text } from './marks.ts';
import { PRINT } from './print-ink.ts';
import { seriesSheets } from './series.ts';
import { type TableFacts, coverBlocks, scopeBlocks } from './set-blocks.ts';
import { type IndexedSheet, sheetIndex } from './sheet-index.ts';
import type { Mark } from './sheet.ts';
import type { SheetDraft } from './sheet-draft.ts';
import type { SymbolName } from './symbol-names.ts';
import { STAMP_TITLE, stampTable } from './stamp-box.ts';
import { wrapText } from './text-box.ts';

/** A sheet with its number, before the count of the set is known. */
export interface NumberedDraft {
  readonly draft: SheetDraft;
  readonly series: number;
  readonly number: string;
}

/** The cover, and the sheet of it that holds the legend of views whose own column had no room for it. */
export interface Cover {
  readonly sheets: readonly NumberedDraft[];
  readonly legendAt: string | undefined;
  /** The sheet of it that holds the full box for a stamp, where title columns are too small for it. */
  readonly stampAt: string | undefined;
}

const HEAD_PITCH = 1.5;
const SMALL_PITCH = 1.75;

const SETS = { submittal: 'Nitrogen fire suppression: drawings and calculations', field: 'Nitrogen fire suppression: field set' } as const;

/** Job, place and kind of the set in large letters, and how much paper they take. */
function banner({ project, site, client }: Info, set: keyof typeof SETS, { area, sizes }: SheetLayout): { readonly marks: Mark[]; readonly height_mm: number } {
  const width = area.right - area.left;
  const large = sizes.title_mm * 1.5;
  const heads = wrapText(printable(project.trim() || 'Project not entered'), width, large, 'bold').slice(0, 2);
  const small = [SETS[set], [site, client].map((words) => printable(words.trim())).filter(Boolean).join(' · ')].filter(Boolean).flatMap((words) => wrapText(words, width, sizes.heading_mm, 'plain').slice(0, 2));
  const headsHeight_mm = heads.length * large * HEAD_PITCH;
  const smallAt = area.top + headsHeight_mm + large * 0.35;
  return {
    marks: [
      ...heads.map((words, i) => text(area.left, area.top + large * (1 + i * HEAD_PITCH), words, { height_mm: large, font: 'bold' })),
      ...small.map((words, i) => text(area.left, smallAt + sizes.heading_mm * (1 + i * SMALL_PITCH), words, { height_mm: sizes.heading_mm, colour: PRINT.quiet })),
    ],
    height_mm: smallAt - area.top + sizes.heading_mm * small.length * SMALL_PITCH + 4 * sizes.factor,
  };
}

/** How often the index is written anew with the sheets that itself takes. */
const ROUNDS = 4;

/**
 * The cover of a set: scope, index of sheets, codes and basis, symbols, abbreviations, responsibility, cautions.
 * @param homeless  symbols of views whose own title column has no room for a legend
 * @param needsStamp  title columns are too small for the full box for a stamp
 * @param others    all other sheets of the set
 */
export function coverSheets(facts: TableFacts, { homeless, needsStamp, others, numberOf }: { readonly homeless: ReadonlySet<SymbolName>; readonly needsStamp: boolean; readonly others: readonly NumberedDraft[]; readonly numberOf: (index: number) => string }): Cover {
  const { layout, options, evaluation } = facts;
  const { marks, height_mm } = banner(evaluation.derived.plan.info, options.set, layout);
  const first: SheetDraft = { title: 'Cover', scale: 'no scale', marks, hasViews: false, hasPlan: false, used: new Set(), remarks: [] };
  const legend = homeless.size > 0 ? [{ table: legendTable(homeless, layout.sizes), span: 'column' as const }] : [];
  const stamp = needsStamp ? stampTable({ ...layout.area, right: layout.area.left + columnWidth_mm(layout.area, layout.tableColumns, layout.sizes) }, layout.sizes) : undefined;
  let drafts: SheetDraft[] = [first];
  for (let round = 0; round < ROUNDS; round += 1) {
    const own = drafts.map((draft, i): IndexedSheet => ({ series: 0, number: numberOf(i), title: draft.title, scale: draft.scale }));
    const index = sheetIndex([...own, ...others.map(({ draft, series, number }) => ({ series, number, title: draft.title, scale: draft.scale }))]);
    const blocks = [...scopeBlocks(facts), { table: index, span: 'column' as const }, ...legend, ...coverBlocks(facts, stamp)];
    const next = seriesSheets({ number: 0, drafts: [first], left: { ...layout.area, top: layout.area.top + height_mm }, blocks }, layout);
    const isSettled = next.length === drafts.length && next.every(({ title }, i) => title === drafts[i]?.title);
    drafts = next;
    if (isSettled) break;
  }
  const sheets = drafts.map((draft, i): NumberedDraft => ({ draft, series: 0, number: numberOf(i) }));
  const sheetOf = (table: string): string | undefined => sheets.find(({ draft }) => draft.tables?.includes(table))?.number;
  return { sheets, legendAt: sheetOf('Legend'), stampAt: sheetOf(STAMP_TITLE) };
}
