import { fieldDimensionsOf } from '../derived/field-dimensions.ts';
import type { Evaluation } from '../evaluate.ts';
import { armingOrder } from '../site/arming-order.ts';
import { formIdentityOf } from '../site/form-identity.ts';
import { armingLogTable } from './arming-log-table.ts';
import { holdPointsTable } from './cautions.ts';
import { identityCell } from './field-form.ts';
import type { FlowBlock } from './flow.ts';
import { functionalTestTable } from './functional-test-table.ts';
import { holdPointCriteriaTable, lostTicksFoot } from './hold-point-criteria-table.ts';
import { readingTables } from './reading-tables.ts';
import { serviceTables } from './service-tables.ts';
import type { Table } from './tables.ts';

/** Forms to sign: hold points, tests, readings before arming, functional test, log as recorded, service. */
export function testForms(evaluation: Pick<Evaluation, 'derived' | 'design'>, printedAt: string): FlowBlock[] {
  const { derived } = evaluation;
  const { plan } = derived;
  const order = armingOrder(evaluation);
  const tables: Table[] = [
    { ...holdPointsTable(plan.siteRecord.checks), identity: identityCell(formIdentityOf(derived, fieldDimensionsOf(derived))), foot: lostTicksFoot(order) },
    holdPointCriteriaTable(order),
    ...readingTables(order, plan.settings.lengths),
    functionalTestTable(derived),
    armingLogTable(plan),
    ...serviceTables(evaluation, printedAt),
  ];
  return tables.filter(({ rows }) => rows.length > 0).map((table) => ({ table, span: 'full' }));
}
