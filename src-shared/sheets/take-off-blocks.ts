import type { Derived } from '../derived/derived.ts';
import { billOfMaterials } from '../take-off/bill-of-materials.ts';
import { cuttingPlanTable } from './cutting-plan-table.ts';
import type { FlowBlock } from './flow.ts';
import type { SheetLayout } from './frame.ts';
import { type TakeOffFacts, cutListTable, fittingTable, partTable, pipeOrderTable } from './take-off-tables.ts';

/** What a plan is built of and how its pipe is cut; nothing where no pipe is drawn. */
export function takeOffBlocks(derived: Derived, { area, sizes }: SheetLayout): FlowBlock[] {
  const { plan } = derived;
  const { lengths } = plan.settings;
  const bill = billOfMaterials(derived);
  if (bill.pieces.length === 0) return [];
  const facts: TakeOffFacts = { lengths, networkName: (id) => plan.networks[id]?.name || id };
  return [
    { table: cutListTable(bill, facts), span: 'full' },
    { table: cuttingPlanTable(bill, facts, area.right - area.left, sizes), span: 'full' },
    { table: pipeOrderTable(bill, lengths), span: 'column' },
    { table: fittingTable(bill, lengths), span: 'column' },
    { table: partTable(bill, lengths), span: 'column' },
  ];
}
