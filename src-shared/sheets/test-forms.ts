import type { Evaluation } from '../evaluate.ts';
import { armingLogTable } from './arming-log-table.ts';
import type { FlowBlock } from './flow.ts';
import { functionalTestTable } from './functional-test-table.ts';
import { readingTables } from './reading-tables.ts';
import { serviceTables } from './service-tables.ts';
import type { Table } from './tables.ts';

/** Forms to sign besides the hold points: tests, readings before arming, functional test, log as recorded, service. */
export function testForms(evaluation: Pick<Evaluation, 'derived' | 'design'>, printedAt: string): FlowBlock[] {
  const { derived } = evaluation;
  const tables: Table[] = [...readingTables(evaluation), functionalTestTable(derived), armingLogTable(derived.plan), ...serviceTables(evaluation, printedAt)];
  return tables.filter(({ rows }) => rows.length > 0).map((table) => ({ table, span: 'full' }));
}
