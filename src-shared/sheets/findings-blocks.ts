import { assumptionsOf } from '../assumptions/assumptions-of.ts';
import type { Evaluation } from '../evaluate.ts';
import { type NumberedFinding, acceptedTable, assumptionsTable, findingsTable, lapsedTable, notCheckedTable } from './findings-table.ts';
import type { FlowBlock } from './flow.ts';

/** What the checks say, in the order in which a reviewer asks: open, not checked, accepted, lapsed, taken for granted. */
export function findingsBlocks(evaluation: Evaluation, numbered: readonly NumberedFinding[]): FlowBlock[] {
  const { findings, lapsed } = evaluation;
  return [findingsTable(numbered, findings), notCheckedTable(numbered), acceptedTable(numbered), lapsedTable(lapsed), assumptionsTable(assumptionsOf(evaluation))].map((table) => ({ table, span: 'full' }));
}
