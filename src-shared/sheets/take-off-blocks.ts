import type { Derived } from '../derived/derived.ts';
import { USUAL_BILL, billOfMaterials } from '../take-off/bill-of-materials.ts';
import { cuttingPlanTable } from './cutting-plan-table.ts';
import type { FlowBlock } from './flow.ts';
import type { SheetLayout } from './frame.ts';
import type { SheetOptions } from './sheet.ts';
import { type TakeOffFacts, cutListTable, fittingTable, partTable, pipeOrderTable } from './take-off-tables.ts';

/** What a plan is built of and how its pipe is cut; nothing where no pipe is drawn. */
export function takeOffBlocks(derived: Derived, { area, sizes }: SheetLayout, takeOff?: SheetOptions['takeOff']): FlowBlock[] {
  const { plan } = derived;
  const { lengths } = plan.settings;
  const bill = billOfMaterials(derived, takeOff ? { ...USUAL_BILL, stockLength_m: takeOff.stock_m, kerf_m: takeOff.kerf_m } : USUAL_BILL);
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
