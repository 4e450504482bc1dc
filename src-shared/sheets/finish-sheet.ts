import type { Derived } from '../derived/derived.ts';
import type { UnderlayDrawing } from '../underlay/drawing.ts';
import { type SheetLayout, drawFrame, sampleStamp } from './frame.ts';
import { legendTable } from './legend.ts';
import { profilesInUse } from './limits-table.ts';
import { text } from './marks.ts';
import { coveringNotes, notesOnSheet } from './sheet-notes.ts';
import { printStrip } from './scale-bars.ts';
import type { Mark, Sheet, SheetOptions } from './sheet.ts';
import { type SheetDraft, homeOf } from './sheet-draft.ts';
import { supersededStamp } from './superseded-stamp.ts';
import { sheetDimensions, sheetViews } from './sheet-views.ts';
import type { SymbolName } from './symbol-names.ts';
import { drawTable, layTable, tableHeight_mm } from './tables.ts';
import { titleColumn } from './title-block.ts';

/** What every sheet of the set says of the plan it rests on. */
export interface SetFacts {
  readonly isSample: boolean;
  readonly warnings: readonly string[];
}

/** Whether the set rests on sample figures, and what it lacks. */
export function sheetFacts(derived: Derived, drawings: ReadonlyMap<string, UnderlayDrawing>, logo: SheetOptions['logo']): SetFacts {
  const inUse = profilesInUse(derived);
  const profiles = inUse.length > 0 ? inUse : Object.values(derived.plan.profiles);
  const lost = derived.networks.filter(({ profile }) => !profile);
  const missing = Object.values(derived.plan.levels).flatMap(({ underlays }) => Object.values(underlays).filter(({ id, visible }) => visible && !drawings.has(id)));
  return {
    isSample: profiles.some(({ isSample }) => isSample),
    warnings: [
      ...(lost.length > 0 ? ['UNIT PROFILE MISSING: LIMITS NOT CHECKED'] : []),
      ...(derived.plan.settings.sheets.titleBlock.logo !== null && !logo ? ['LOGO NOT PRINTED: ITS FILE IS MISSING OR DAMAGED'] : []),
      ...(missing.length > 0 ? ['IMPORTED FLOOR PLAN NOT PRINTED'] : []),
    ],
  };
}

/** Where a sheet stands in its set. */
export interface SheetPlace {
  readonly index: number;
  readonly count: number;
  readonly number: string;
  /** Sheet that holds the legend of views whose own column had no room for it. */
  readonly legendAt: string | undefined;
  /** Sheet that holds the full box for a stamp, for columns with a smaller one. */
  readonly stampAt: string | undefined;
}

const columnOf = (layout: SheetLayout, facts: SetFacts, draft: SheetDraft, { index, count, number, stampAt }: SheetPlace, derived: Derived, options: SheetOptions) =>
  titleColumn(
    layout,
    {
    info: derived.plan.info,
    title: draft.title,
    number,
    index: index + 1,
    count,
    scale: draft.scale,
    paper: layout.paper.name,
    printedAt: options.printedAt,
    ...facts,
    warnings: [...facts.warnings, ...draft.remarks],
    titleBlock: derived.plan.settings.sheets.titleBlock,
    logo: options.logo,
    hasStampBox: derived.plan.settings.sheets.hasStampBox,
    stampAt,
    },
    draft.used.size > 0 ? tableHeight_mm(laidLegend(layout, draft.used)) + 3 * layout.sizes.factor : 0,
  );

const laidLegend = ({ column, sizes }: SheetLayout, used: ReadonlySet<SymbolName>) => layTable(legendTable(used, sizes), column.right - column.left - 4 * sizes.factor, sizes);

/** Whether the legend of a view sheet has room in its own title column. */
export function legendFits(layout: SheetLayout, facts: SetFacts, draft: SheetDraft, number: string, derived: Derived, options: SheetOptions): boolean {
  const { free } = columnOf(layout, facts, draft, { index: 98, count: 99, number, legendAt: undefined, stampAt: undefined }, derived, options);
  return tableHeight_mm(laidLegend(layout, draft.used)) + 3 * layout.sizes.factor <= free.bottom - free.top;
}

/** Whether the title column of a sheet holds the full box for a stamp, or none is wished. */
export const stampFits = (layout: SheetLayout, facts: SetFacts, draft: SheetDraft, number: string, derived: Derived, options: SheetOptions): boolean =>
  columnOf(layout, facts, draft, { index: 98, count: 99, number, legendAt: undefined, stampAt: undefined }, derived, options).isStampFull;

/** Puts frame, title column, legend and check bar around what a sheet shows. */
export function finishSheet(layout: SheetLayout, facts: SetFacts, draft: SheetDraft, place: SheetPlace, derived: Derived, options: SheetOptions): Sheet {
  const { area, column, sizes } = layout;
  const { marks, free } = columnOf(layout, facts, draft, place, derived, options);
  const legend: Mark[] = [];
  if (draft.used.size > 0) {
    const left = column.left + 2 * sizes.factor;
    if (legendFits(layout, facts, draft, place.number, derived, options)) legend.push(...drawTable(laidLegend(layout, draft.used), left, free.top + 2 * sizes.factor));
    else if (place.legendAt && free.bottom - free.top > sizes.text_mm * 3) {
      legend.push(text(left, free.top + 2 * sizes.factor + sizes.text_mm, `Legend: see sheet ${place.legendAt}`, { height_mm: sizes.text_mm }));
    }
  }
  const home = homeOf(draft);
  const dimensions = (draft.views ?? []).flatMap((view) => sheetDimensions(view.marks));
  const own = derived.plan.settings.sheets.notes;
  const notes = notesOnSheet(own, home, sizes);
  const drawn = [...(draft.views ?? []).flatMap((view) => view.marks), ...draft.marks];
  const around = [...drawFrame(layout), ...(draft.hasViews ? printStrip(area.left, area.right, area.bottom, draft.hasPlan, sizes) : []), ...marks, ...legend];
  return {
    number: place.number,
    title: draft.title,
    home,
    views: sheetViews(draft.views ?? []),
    dimensions,
    notes: notes.places,
    placing: [...(draft.placing ?? []), ...dimensions.filter(({ isOver }) => isOver).map(({ words }) => `The dimension text “${words}” lies over a symbol or another text. Move it.`), ...coveringNotes(own, home, sizes, [...drawn, ...around])],
    paper: layout.paper,
    ...(draft.fields && draft.fields.length > 0 ? { fields: draft.fields } : {}),
    marks: [
      ...(facts.isSample ? sampleStamp(layout) : []),
      ...(options.supersededBy ? supersededStamp(layout, options.supersededBy) : []),
      ...drawn,
      ...notes.marks,
      ...around,
    ],
  };
}
