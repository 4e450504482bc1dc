import { calculationsOf } from '../calculations/lines/calculations-of.ts';
import type { CalculationTopic } from '../calculations/lines/calculation.ts';
import type { Evaluation } from '../evaluate.ts';
import { calculationBlocks } from './calculation-tables.ts';
import { cautionsTable } from './cautions.ts';
import { changesTable } from './changes-table.ts';
import { abbreviationTable, basisTable, responsibilityTable, resultsTable, scopeTable } from './cover-tables.ts';
import { fieldTable } from './field-tables.ts';
import { findingsBlocks } from './findings-blocks.ts';
import type { NumberedFinding } from './findings-table.ts';
import type { FlowBlock } from './flow.ts';
import type { SheetLayout } from './frame.ts';
import { jobTable, notesTable, revisionTable } from './job-tables.ts';
import { limitsTable, profilesInUse } from './limits-table.ts';
import { openingSchedule } from './opening-schedule.ts';
import { pathSchedule } from './pipe-schedules.ts';
import { releaseMatrix } from './release-matrix.ts';
import { releasingTable } from './releasing-table.ts';
import { riserBlocks } from './riser/riser-blocks.ts';
import { roomTable } from './room-table.ts';
import { cylinderSchedule, nozzleSchedule, spaceSchedule } from './schedules.ts';
import type { SheetOptions } from './sheet.ts';
import { supportSchedule } from './support-schedule.ts';
import type { Table } from './tables.ts';
import { takeOffBlocks } from './take-off-blocks.ts';
import { testForms } from './test-forms.ts';

const full = (table: Table): FlowBlock => ({ table, span: 'full' });
const narrow = (table: Table): FlowBlock => ({ table, span: 'column' });

/** Sums that an electrician looks for stand with the electrical plans, all others with the calculations. */
const ELECTRICAL: readonly CalculationTopic[] = ['wiring', 'battery'];

/** What the tables of a set are made of. */
export interface TableFacts {
  readonly evaluation: Evaluation;
  readonly layout: SheetLayout;
  readonly options: SheetOptions;
  readonly findings: readonly NumberedFinding[];
  /** Nozzles, by network and id, whose table stands on their plan. */
  readonly listed: ReadonlySet<string>;
}

/** The supports, where any is drawn. */
function supportBlock({ evaluation: { derived } }: TableFacts): FlowBlock[] {
  const table = supportSchedule(derived);
  return table.rows.length > 0 ? [narrow(table)] : [];
}

/** What stands on the cover below its index. @param stamp  the full box for a stamp, where title columns are too small for it */
export function coverBlocks({ evaluation, options }: TableFacts, stamp?: Table): FlowBlock[] {
  const boxes = stamp ? [narrow(stamp)] : [];
  const { plan } = evaluation.derived;
  if (options.set === 'field') return [narrow(cautionsTable()), narrow(notesTable(plan)), narrow(abbreviationTable()), ...boxes];
  return [
    narrow(basisTable(plan)),
    narrow(resultsTable(calculationsOf(evaluation))),
    narrow(responsibilityTable(plan)),
    ...boxes,
    narrow(cautionsTable()),
    narrow(notesTable(plan)),
    narrow(jobTable(plan)),
    narrow(revisionTable(plan)),
    ...(options.changes ? [narrow(changesTable(options.changes, plan.settings.lengths))] : []),
    narrow(abbreviationTable()),
  ];
}

/** The scope, above the index. */
export const scopeBlocks = ({ evaluation, options }: TableFacts): FlowBlock[] => (options.set === 'field' ? [] : [narrow(scopeTable(evaluation.derived))]);

/** Riser, matrix, terminals, voltage drop and battery: what an electrician works from besides the plans. */
export const electricalBlocks = ({ evaluation, layout, options }: TableFacts): FlowBlock[] => [
  ...riserBlocks(evaluation, layout),
  full(releaseMatrix(evaluation.derived)),
  full(releasingTable(evaluation.design, evaluation.derived.plan.settings.lengths)),
  ...(options.set === 'field' ? [] : calculationBlocks(evaluation, layout, (topic) => ELECTRICAL.includes(topic))),
];

/** Rooms, cylinders, nozzles, openings, and all that is bought and cut. */
export function scheduleBlocks(facts: TableFacts): FlowBlock[] {
  const { evaluation, layout, options, listed } = facts;
  const { derived } = evaluation;
  if (options.set === 'field') return [full(cylinderSchedule(derived)), ...takeOffBlocks(derived, layout, options.takeOff), ...supportBlock(facts)];
  return [
    full(spaceSchedule(derived)),
    full(cylinderSchedule(derived)),
    full(nozzleSchedule(derived, ({ ref }) => !listed.has(`${ref.network}/${ref.id}`))),
    full(openingSchedule(derived)),
    ...takeOffBlocks(derived, layout, options.takeOff),
    ...supportBlock(facts),
    narrow(pathSchedule(derived)),
  ];
}

/** The sums, and the limits of the unit that they and the checks rest on. */
export const sumBlocks = ({ evaluation, layout }: TableFacts): FlowBlock[] => [
  ...calculationBlocks(evaluation, layout, (topic) => !ELECTRICAL.includes(topic)),
  ...profilesInUse(evaluation.derived).map((profile) => narrow(limitsTable(profile, evaluation.derived.plan.settings.lengths))),
];

/** Findings, what is not checked, what was accepted, what is taken for granted. */
export const reviewBlocks = ({ evaluation, findings }: TableFacts): FlowBlock[] => findingsBlocks(evaluation, findings);

/** Hold points and tests to be signed, with what was read already, and the service that follows. */
export const testBlocks = ({ evaluation, options }: TableFacts): FlowBlock[] => testForms(evaluation, options.printedAt);

/** How far a nozzle may be moved without a call, below the rooms as they are measured; every dimension where no room could be drawn. */
export const fieldBlocks = ({ evaluation: { derived }, options: { rooms } }: TableFacts, hasRooms: boolean): FlowBlock[] => [...(hasRooms ? [] : [full(fieldTable(derived, rooms))]), ...(rooms ? [full(roomTable(derived, rooms))] : [])];
