import type { Evaluation } from '../../evaluate.ts';
import type { FieldRoomAnswer } from '../../margins/field-room.ts';
import { type BillOfMaterials, billOfMaterials, USUAL_BILL } from '../../take-off/bill-of-materials.ts';
import { takeOffWorkbook } from '../../workbook/take-off-workbook.ts';
import type { Workbook, WorkbookSheet } from '../../workbook/workbook.ts';
import type { ScheduleContent } from './cells.ts';
import { cylinderRows, nozzleRows, pathRows, stretchRows, supportRows } from './network-schedules.ts';
import { deviceRows, fieldRows, findingRows, releaseRows } from './safety-schedules.ts';
import { openingRows, spaceRows } from './space-schedules.ts';

export interface SchedulesOptions {
  /** Of the user's stock and saw; that of the usual ones when missing. */
  readonly bill?: BillOfMaterials;
  /** Where each nozzle may be put, by its key: the tolerances of the field dimensions; blank without it. */
  readonly rooms?: ReadonlyMap<string, FieldRoomAnswer>;
}

const SAMPLE = 'SAMPLE PROFILE: NOT FOR CONSTRUCTION. The unit is invented; enter the figures of your unit’s manual before anything is bought, cut or built.';
const NOTE = 'A copy for reference: the issued sheets, the listing and the manual of the unit, and local codes come first. An empty cell is not known.';

/** Every schedule of a plan as a workbook, one table a sheet; those that have no row are left out. */
export function schedulesWorkbook({ derived, findings }: Pick<Evaluation, 'derived' | 'findings'>, { bill, rooms }: SchedulesOptions = {}): Workbook {
  const { plan, networks } = derived;
  const { lengths } = plan.settings;
  const used = networks.flatMap(({ profile }) => profile ?? []);
  const isSample = (used.length > 0 ? used : Object.values(plan.profiles)).some((profile) => profile.isSample);
  const contents: readonly (readonly [name: string, content: ScheduleContent])[] = [
    ['Spaces', spaceRows(derived)],
    ['Openings', openingRows(derived)],
    ['Cylinders', cylinderRows(derived)],
    ['Nozzles', nozzleRows(derived)],
    ['Pipe by stretches', stretchRows(derived)],
    ['Paths', pathRows(derived)],
    ['Supports', supportRows(derived)],
    ['Devices', deviceRows(derived)],
    ['Release matrix', releaseRows(derived)],
    ['Findings', findingRows(findings)],
    ['Field dimensions', fieldRows(derived, rooms)],
  ];
  const sheets = contents
    .filter(([, { rows }]) => rows.length > 0)
    .map(([name, content]): WorkbookSheet => ({ name, title: `${name}: ${plan.info.project || 'plan without a name'}`, warnings: isSample ? [SAMPLE] : [], notes: [NOTE], ...content }));
  const takeOff = takeOffWorkbook(bill ?? billOfMaterials(derived, USUAL_BILL), { project: plan.info.project, lengths, isSample, networkName: (id) => plan.networks[id]?.name || id });
  const all = [...sheets, ...takeOff.sheets.filter(({ rows }) => rows.length > 0)];
  return { sheets: all.length > 0 ? all : takeOff.sheets };
}
