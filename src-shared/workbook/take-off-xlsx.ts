import type { Derived } from '../derived/derived.ts';
import type { Plan } from '../model/plan.ts';
import type { BillOfMaterials } from '../take-off/bill-of-materials.ts';
import { takeOffWorkbook } from './take-off-workbook.ts';
import { writeXlsx } from './write-xlsx.ts';

/** A plan's take-off as the bytes of a spreadsheet file (.xlsx). The bill may be that of one network. */
export function takeOffXlsx(plan: Plan, { networks }: Pick<Derived, 'networks'>, bill: BillOfMaterials): Uint8Array {
  return writeXlsx(
    takeOffWorkbook(bill, {
      project: plan.info.project,
      lengths: plan.settings.lengths,
      isSample: networks.some(({ profile }) => profile?.isSample ?? false),
      networkName: (id) => plan.networks[id]?.name || id,
    }),
  );
}
