import type { Evaluation } from '../evaluate.ts';
import { datumsOf } from '../derived/datum.ts';
import { PAPERS } from '../paper/papers.ts';
import type { UnderlayDrawing } from '../underlay/drawing.ts';
import { bestPaper } from './best-paper.ts';
import { packBlocks, roomBlocks, sectionBlocks } from './block-sheets.ts';
import { coverSheets } from './cover-sheets.ts';
import { detailSheets } from './details/detail-sheets.ts';
import { wallSheets } from './elevation-blocks.ts';
import { numberFindings } from './findings-table.ts';
import { finishSheet, legendFits, sheetFacts, stampFits } from './finish-sheet.ts';
import type { FlowBlock } from './flow.ts';
import { printable } from './font-widths.ts';
import { sheetLayout } from './frame.ts';
import { asBuiltTable } from './as-built-table.ts';
import { asBuiltDrawing, fieldDrawing } from './room-drawings.ts';
import { roomSheets } from './room-sheets.ts';
import { isometricSheets } from './isometric-view.ts';
import { photoTable } from './photo-table.ts';
import { planContents } from './plan-content.ts';
import { placeViews } from './place-views.ts';
import { planSheets } from './plan-sheets.ts';
import { planCuts } from './section-cuts.ts';
import { type Series, seriesSheets } from './series.ts';
import { type TableFacts, electricalBlocks, fieldBlocks, reviewBlocks, scheduleBlocks, sumBlocks, testBlocks } from './set-blocks.ts';
import type { Sheet, SheetOptions } from './sheet.ts';
import { surroundingsSheets } from './surroundings-sheets.ts';
import type { SymbolName } from './symbol-names.ts';
import type { Table } from './tables.ts';
import type { ViewSet } from './view-set.ts';

/**
 * Composes the sheets of a plan in their series: cover, hazard and site, nozzle and pipe plans, ceiling, sections,
 * isometrics, details, electrical, schedules, calculations, findings, tests, field verification. What the user leaves
 * open is as the plan says, else what fits.
 * @param evaluation  the plan with all that follows from it
 * @param drawings    imported floor plans by underlay id; one that is missing is said on the sheet
 */
export function composeSheets(evaluation: Evaluation, drawings: ReadonlyMap<string, UnderlayDrawing>, asked: SheetOptions): Sheet[] {
  const { derived, findings } = evaluation;
  const contents = planContents(derived);
  const { sheets } = derived.plan.settings;
  const options: SheetOptions = { ...asked, paper: asked.paper === 'auto' ? (sheets.paper ?? 'auto') : asked.paper, scale: asked.scale === 'auto' ? (sheets.scale ?? 'auto') : asked.scale };
  const layout = sheetLayout(options.paper === 'auto' ? bestPaper(derived, contents, options) : PAPERS[options.paper]);
  const numbered = options.set === 'field' ? [] : numberFindings(findings);
  const set: ViewSet = { derived, layout, drawings, cuts: planCuts(derived), findings: numbered, datums: datumsOf(derived), rooms: options.rooms ?? new Map(), issue: derived.plan.lastIssue, scale: options.scale, dimensions: sheets.dimensions };
  const facts = sheetFacts(derived, drawings, options.logo);

  const drafts = placeViews(set, seriesOf(set, evaluation, options), options.set).flatMap((series) => {
    const pages = seriesSheets(series, layout);
    return pages.map((draft, i) => ({ draft, series: series.number, number: numberOf(derived.plan.info.sheetPrefix, options, series.number, i) }));
  });
  const homeless = new Set<SymbolName>(drafts.filter(({ draft, number }) => !legendFits(layout, facts, draft, number, derived, options)).flatMap(({ draft }) => [...draft.used]));
  const cover = coverSheets({ evaluation, layout, options, findings: numbered, listed: new Set() }, { homeless, needsStamp: drafts.some(({ draft, number }) => !stampFits(layout, facts, draft, number, derived, options)), others: drafts, numberOf: (i) => numberOf(derived.plan.info.sheetPrefix, options, 0, i) });
  const all = [...cover.sheets, ...drafts];
  return all.map(({ draft, number }, index) => finishSheet(layout, facts, draft, { index, count: all.length, number, legendAt: cover.legendAt, stampAt: cover.stampAt }, derived, options));
}

/** Longer prefixes are cut, so that the number itself is always read. */
const LONGEST_PREFIX = 12;

/** "NW-02.1": series and sheet in it; a field set has an F before it, so that no two papers bear one number. */
function numberOf(prefix: string, { set }: SheetOptions, series: number, index: number): string {
  const name = printable(prefix.trim()).slice(0, LONGEST_PREFIX);
  return [name, `${set === 'field' ? 'F' : ''}${String(series).padStart(2, '0')}.${index + 1}`].filter(Boolean).join('-');
}

/** All series but the cover, which names them. */
function seriesOf(set: ViewSet, evaluation: Evaluation, options: SheetOptions): Series[] {
  const { derived, layout, cuts } = set;
  const isField = options.set === 'field';
  const contents = planContents(derived);
  const plans = contents.map((content) => planSheets(set, content));
  const placed = new Set(plans.flatMap(({ placedCuts }) => [...placedCuts]));
  const rooms = plans.map((plan) => roomBlocks(set, plan.rooms));
  const roomPlans = packBlocks(set, rooms.flatMap(({ blocks }) => blocks));
  const sections = cuts.filter((cut) => !placed.has(cut) && !rooms.some(({ placedCuts }) => placedCuts.has(cut)));
  const walls = wallSheets(set, sections.length > 0 ? sectionBlocks(set, sections) : []);
  const listed = new Set(contents.flatMap((content, i) => (plans[i]?.hasSchedule ? content.networks.flatMap(({ nozzles }) => nozzles.map(({ ref }) => `${ref.network}/${ref.id}`)) : [])));
  const facts: TableFacts = { evaluation, layout, options, findings: set.findings, listed };
  const site = isField ? { drafts: [], tables: [] } : surroundingsSheets(set, contents, 'site');
  const electrical = surroundingsSheets(set, contents, 'electrical');
  const isometrics = isometricSheets(set);
  const nodes = isometrics.tables.map((table): FlowBlock => ({ table, span: layout.tableColumns > 1 ? 'column' : 'full' }));
  const field = roomSheets(set, fieldDrawing(set));
  return [
    { number: 1, drafts: site.drafts, blocks: site.tables.map(full) },
    { number: 2, drafts: [...plans.flatMap(({ drafts }) => drafts), ...roomPlans.drafts], blocks: [] },
    { number: 3, drafts: surroundingsSheets(set, contents, 'ceiling').drafts, blocks: [] },
    { number: 4, drafts: walls.drafts, blocks: [] },
    { number: 5, drafts: isometrics.drafts, blocks: nodes },
    ...(isField ? [] : [{ number: 6, ...detailSheets(derived, layout), blocks: [] }]),
    { number: 7, drafts: electrical.drafts, blocks: [...electrical.tables.map(full), ...electricalBlocks(facts)] },
    { number: 8, drafts: [], blocks: scheduleBlocks(facts) },
    ...(isField ? [] : [{ number: 9, drafts: [], blocks: sumBlocks(facts) }, { number: 10, drafts: [], blocks: reviewBlocks(facts) }]),
    { number: 11, drafts: [], blocks: testBlocks(facts) },
    { number: 12, ...field, blocks: fieldBlocks(facts, field.drafts.length > 0) },
    { number: 13, ...roomSheets(set, asBuiltDrawing(set)), blocks: [full(asBuiltTable(derived, options.rooms, options.answers)), full(photoTable(derived, options.photos ?? new Map(), layout.sizes))] },
  ];
}

const full = (table: Table): FlowBlock => ({ table, span: 'full' });
