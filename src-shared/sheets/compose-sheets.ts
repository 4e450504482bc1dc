import type { Derived } from '../derived/derived.ts';
import type { Evaluation } from '../evaluate.ts';
import type { UnderlayDrawing } from '../underlay/drawing.ts';
import { calculationBlocks } from './calculation-tables.ts';
import { cautionsTable, holdPointsTable } from './cautions.ts';
import { type BlockSheets, packBlocks, roomBlocks, sectionBlocks } from './block-sheets.ts';
import { datumsOf } from '../derived/datum.ts';
import { detailSheets } from './details/detail-sheets.ts';
import { elevationBlocks } from './elevation-blocks.ts';
import { fieldTable } from './field-tables.ts';
import { findingsBlocks } from './findings-blocks.ts';
import { type NumberedFinding, numberFindings } from './findings-table.ts';
import { printable } from './font-widths.ts';
import { type FlowBlock, flowTables } from './flow.ts';
import { type SheetLayout, drawFrame, sampleStamp, sheetLayout } from './frame.ts';
import { isometricSheets } from './isometric-view.ts';
import { jobTable, notesTable, revisionTable } from './job-tables.ts';
import { legendTable } from './legend.ts';
import { roomTable } from './room-table.ts';
import { limitsTable, profilesInUse } from './limits-table.ts';
import { text } from './marks.ts';
import { type Paper, ordinaryPapers, PAPERS } from '../paper/papers.ts';
import { pathSchedule } from './pipe-schedules.ts';
import { supportSchedule } from './support-schedule.ts';
import { type PlanContent, contentBounds, planContents } from './plan-content.ts';
import { planSheets } from './plan-sheets.ts';
import { fitsPaper } from './plan-view.ts';
import { printStrip } from './scale-bars.ts';
import { takenScales } from '../paper/scales.ts';
import { releaseMatrix } from './release-matrix.ts';
import { releasingTable } from './releasing-table.ts';
import { cylinderSchedule, nozzleSchedule, spaceSchedule } from './schedules.ts';
import { planCuts } from './section-cuts.ts';
import { surroundingsSheets } from './surroundings-sheets.ts';
import { takeOffBlocks } from './take-off-blocks.ts';

import type { Mark, Sheet, SheetOptions } from './sheet.ts';
import type { SheetDraft } from './sheet-draft.ts';
import type { SymbolName } from './symbol-names.ts';
import { type Table, drawTable, layTable, tableHeight_mm } from './tables.ts';
import { titleColumn } from './title-block.ts';
import { type ViewSet, viewArea } from './view-set.ts';

/**
 * Composes the sheets of a plan: for each level its hazard and site plan, its nozzle and pipe plan and its ceiling, then sections, isometrics, electrical plans, schedules, findings and calculations.
 * @param evaluation  the plan with all that follows from it
 * What the user leaves open is as the plan says, else what fits.
 * @param drawings    imported floor plans by underlay id; one that is missing is said on the sheet
 */
export function composeSheets(evaluation: Evaluation, drawings: ReadonlyMap<string, UnderlayDrawing>, asked: SheetOptions): Sheet[] {
  const { derived, findings } = evaluation;
  const contents = planContents(derived);
  const { sheets } = derived.plan.settings;
  const options: SheetOptions = { ...asked, paper: asked.paper === 'auto' ? (sheets.paper ?? 'auto') : asked.paper, scale: asked.scale === 'auto' ? (sheets.scale ?? 'auto') : asked.scale };
  const layout = sheetLayout(options.paper === 'auto' ? bestPaper(derived, contents, options) : PAPERS[options.paper]);
  const isField = options.set === 'field';
  const numbered = isField ? [] : numberFindings(findings);
  const cuts = planCuts(derived);
  const set: ViewSet = { derived, layout, drawings, cuts, findings: numbered, datums: datumsOf(derived), rooms: options.rooms ?? new Map(), issue: derived.plan.lastIssue, scale: options.scale };

  const plans = contents.map((content) => planSheets(set, content));
  const placed = new Set(plans.flatMap(({ placedCuts }) => [...placedCuts]));
  const rooms = plans.map((plan) => roomBlocks(set, plan.rooms));
  const sections = cuts.filter((cut) => !placed.has(cut) && !rooms.some(({ placedCuts }) => placedCuts.has(cut)));
  const packed = packBlocks(set, [...rooms.flatMap(({ blocks }) => blocks), ...(sections.length > 0 ? sectionBlocks(set, sections) : []), ...elevationBlocks(set)]);
  const site = isField ? { drafts: [], tables: [] } : surroundingsSheets(set, contents, 'site');
  const ceiling = surroundingsSheets(set, contents, 'ceiling');
  const electrical = surroundingsSheets(set, contents, 'electrical');
  const views = [...site.drafts, ...plans.flatMap(({ drafts }) => drafts), ...ceiling.drafts, ...packed.drafts];
  const listed = new Set(
    contents.flatMap((content, i) => (plans[i]?.hasSchedule ? content.networks.flatMap(({ nozzles }) => nozzles.map(({ ref }) => `${ref.network}/${ref.id}`)) : [])),
  );
  const facts = sheetFacts(derived, drawings);
  const hasRoom = (draft: SheetDraft): boolean => legendFits(layout, facts, draft, derived, options);
  const isometrics = isometricSheets(set);
  const blocks = [...(isField ? fieldBlocks(evaluation, layout, options.takeOff, options.rooms) : submittalBlocks(evaluation, layout, options.takeOff, numbered, listed)), ...isometrics.tables.map(layout.tableColumns > 1 ? narrow : full), ...[...site.tables, ...electrical.tables].map(full)];
  const homeless = new Set<SymbolName>([...views, ...isometrics.drafts, ...electrical.drafts].filter((draft) => !hasRoom(draft)).flatMap(({ used }) => [...used]));
  if (homeless.size > 0) blocks.push({ table: legendTable(homeless, layout.sizes), span: 'column' });
  const details: BlockSheets = isField ? { drafts: [], left: undefined } : detailSheets(derived, layout);
  const drawn = [...views, ...isometrics.drafts, ...electrical.drafts, ...details.drafts];
  // The last sections and the last details leave paper where the tables begin.
  const begins = [
    { left: packed.left, at: views.length - 1 },
    { left: details.left, at: drawn.length - 1 },
  ].flatMap(({ left, at }) => (left ? [{ left, at }] : []));
  const pages = flowTables(blocks.filter(({ table }) => table.rows.length > 0), layout.area, layout.tableColumns, layout.sizes, begins.map(({ left }) => left));
  const shared = begins.map(({ at }) => ({ at, page: pages.shift() }));
  for (const { at, page } of shared) {
    const draft = drawn[at];
    if (draft && page && page.titles.length > 0) drawn[at] = { ...draft, title: sheetTitle([draft.title, ...page.titles]), marks: [...draft.marks, ...page.marks], fields: [...(draft.fields ?? []), ...page.fields] };
  }
  // Calculations begin a sheet of their own, so that they can be handed over by themselves.
  const calculations = isField ? [] : flowTables(calculationBlocks(evaluation, layout), layout.area, layout.tableColumns, layout.sizes);
  const tables = [...pages, ...calculations]
    .filter(({ marks }) => marks.length > 0)
    .map(({ marks, fields, titles }): SheetDraft => ({ title: sheetTitle(titles), scale: 'no scale', marks, fields, hasViews: false, hasPlan: false, used: new Set(), remarks: [] }));
  const drafts = [...drawn, ...tables];
  const legendPage = pages.findIndex(({ titles }) => titles.includes('Legend'));
  const numberOf = (index: number): string => [printable(derived.plan.info.sheetPrefix.trim()).slice(0, LONGEST_PREFIX), String(index + 1)].filter(Boolean).join('-');
  const legendBeside = shared.find(({ page }) => page?.titles.includes('Legend'));
  const legendAt = legendBeside ? numberOf(legendBeside.at) : legendPage < 0 ? undefined : numberOf(drawn.length + legendPage);
  return drafts.map((draft, index) => finishSheet(layout, facts, draft, { index, count: drafts.length, number: numberOf(index), legendAt }, derived, options));
}

/** Longer prefixes are cut, so that the number itself is always read. */
const LONGEST_PREFIX = 12;

/** A sheet named after what is on it: the first three in words. */
function sheetTitle(parts: readonly string[]): string {
  const [first = '', ...others] = parts.slice(0, 3);
  const words = [first, ...others.map((part) => part.charAt(0).toLowerCase() + part.slice(1))].join(', ');
  return parts.length > 3 ? `${words} and more` : words;
}

/** What every sheet of the set says of the plan it rests on. */
interface SetFacts {
  readonly isSample: boolean;
  readonly warnings: readonly string[];
}

function sheetFacts(derived: Derived, drawings: ReadonlyMap<string, UnderlayDrawing>): SetFacts {
  const inUse = profilesInUse(derived);
  const profiles = inUse.length > 0 ? inUse : Object.values(derived.plan.profiles);
  const lost = derived.networks.filter(({ profile }) => !profile);
  const missing = Object.values(derived.plan.levels).flatMap(({ underlays }) => Object.values(underlays).filter(({ id, visible }) => visible && !drawings.has(id)));
  return {
    isSample: profiles.some(({ isSample }) => isSample),
    warnings: [
      ...(lost.length > 0 ? ['UNIT PROFILE MISSING: LIMITS NOT CHECKED'] : []),
      ...(missing.length > 0 ? ['IMPORTED FLOOR PLAN NOT PRINTED'] : []),
    ],
  };
}

/** The smallest ordinary paper on which every level can be read easily; else the one that comes nearest. */
function bestPaper(derived: Derived, contents: readonly PlanContent[], options: SheetOptions): Paper {
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

const full = (table: Table): FlowBlock => ({ table, span: 'full' });
const narrow = (table: Table): FlowBlock => ({ table, span: 'column' });

/** The supports, where any is drawn. */
function supportBlock(derived: Derived): FlowBlock[] {
  const table = supportSchedule(derived);
  return table.rows.length > 0 ? [narrow(table)] : [];
}

function submittalBlocks(evaluation: Evaluation, layout: SheetLayout, takeOff: SheetOptions['takeOff'], numbered: readonly NumberedFinding[], listed: ReadonlySet<string>): FlowBlock[] {
  const { derived } = evaluation;
  const { plan } = derived;
  return [
    full(nozzleSchedule(derived, ({ ref }) => !listed.has(`${ref.network}/${ref.id}`))),
    ...findingsBlocks(evaluation, numbered),
    full(spaceSchedule(derived)),
    full(cylinderSchedule(derived)),
    full(releaseMatrix(derived)),
    full(releasingTable(evaluation.design, plan.settings.lengths)),
    ...takeOffBlocks(derived, layout, takeOff),
    ...supportBlock(derived),
    narrow(pathSchedule(derived)),
    ...profilesInUse(derived).map((profile) => narrow(limitsTable(profile, plan.settings.lengths))),
    narrow(cautionsTable()),
    narrow(notesTable(plan)),
    narrow(jobTable(plan)),
    narrow(revisionTable(plan)),
  ];
}

function fieldBlocks({ derived, design }: Evaluation, layout: SheetLayout, takeOff: SheetOptions['takeOff'], rooms: SheetOptions['rooms']): FlowBlock[] {
  const { plan } = derived;
  return [
    full(fieldTable(derived, rooms)),
    ...(rooms ? [full(roomTable(derived, rooms))] : []),
    full(holdPointsTable(plan.siteRecord.checks)),
    full(cylinderSchedule(derived)),
    full(releaseMatrix(derived)),
    full(releasingTable(design, plan.settings.lengths)),
    ...takeOffBlocks(derived, layout, takeOff),
    ...supportBlock(derived),
    narrow(cautionsTable()),
    narrow(notesTable(plan)),
  ];
}

interface SheetPlace {
  readonly index: number;
  readonly count: number;
  readonly number: string;
  /** Sheet that holds the legend of views whose own column had no room for it. */
  readonly legendAt: string | undefined;
}

const columnOf = (layout: SheetLayout, facts: SetFacts, draft: SheetDraft, { index, count, number }: SheetPlace, derived: Derived, options: SheetOptions) =>
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
    },
    draft.used.size > 0 ? tableHeight_mm(laidLegend(layout, draft.used)) + 3 * layout.sizes.factor : 0,
  );

const laidLegend = ({ column, sizes }: SheetLayout, used: ReadonlySet<SymbolName>) => layTable(legendTable(used, sizes), column.right - column.left - 4 * sizes.factor, sizes);

/** Whether the legend of a view sheet has room in its own title column. */
function legendFits(layout: SheetLayout, facts: SetFacts, draft: SheetDraft, derived: Derived, options: SheetOptions): boolean {
  const { free } = columnOf(layout, facts, draft, { index: 98, count: 99, number: 'XX-99', legendAt: undefined }, derived, options);
  return tableHeight_mm(laidLegend(layout, draft.used)) + 3 * layout.sizes.factor <= free.bottom - free.top;
}

function finishSheet(layout: SheetLayout, facts: SetFacts, draft: SheetDraft, place: SheetPlace, derived: Derived, options: SheetOptions): Sheet {
  const { area, column, sizes } = layout;
  const { marks, free } = columnOf(layout, facts, draft, place, derived, options);
  const legend: Mark[] = [];
  if (draft.used.size > 0) {
    const left = column.left + 2 * sizes.factor;
    if (legendFits(layout, facts, draft, derived, options)) legend.push(...drawTable(laidLegend(layout, draft.used), left, column.top + 2 * sizes.factor));
    else if (place.legendAt && free.bottom - free.top > sizes.text_mm * 3) {
      legend.push(text(left, column.top + 2 * sizes.factor + sizes.text_mm, `Legend: see sheet ${place.legendAt}`, { height_mm: sizes.text_mm }));
    }
  }
  return {
    number: place.number,
    title: draft.title,
    paper: layout.paper,
    ...(draft.fields && draft.fields.length > 0 ? { fields: draft.fields } : {}),
    marks: [
      ...(facts.isSample ? sampleStamp(layout) : []),
      ...draft.marks,
      ...drawFrame(layout),
      ...(draft.hasViews ? printStrip(area.left, area.right, area.bottom, draft.hasPlan, sizes) : []),
      ...marks,
      ...legend,
    ],
  };
}
