import type { Derived } from '#shared/derived/derived';
import type { Plan } from '#shared/model/plan';
import { type BillOfMaterials, USUAL_BILL, billOfMaterials } from '#shared/take-off/bill-of-materials';
import { takeOffXlsx } from '#shared/workbook/take-off-xlsx';
import { presentEvaluation } from '../store/selectors.ts';
import type { State } from '../store/state.ts';
import type { ActionContext } from './action.ts';
import { keepBytes, planName } from './plan-file.ts';

/** Lengths that pipe is bought in, and widths of a saw cut, that make sense [m]. */
export const STOCK_m = { least: 0.5, most: 30 } as const;
export const KERF_m = { least: 0, most: 0.02 } as const;

const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

/** Networks that are taken off: one, or all. */
export const networksOf = ({ networks }: Pick<Derived, 'networks'>, network: string | null): Derived['networks'] => (network === null ? networks : networks.filter(({ ref }) => ref.id === network));

/** The take-off of a plan, or of one network, with the stock and saw of the session. */
export const billOf = (derived: Pick<Derived, 'networks'>, network: string | null, { stock_m, kerf_m }: State['session']['takeOff']): BillOfMaterials =>
  billOfMaterials({ networks: networksOf(derived, network) }, { ...USUAL_BILL, stockLength_m: stock_m, kerf_m });

/** Name of the spreadsheet of a take-off. */
export const takeOffFileName = (plan: Plan, name: string, network: string | null): string => `${[name, network === null ? '' : (plan.networks[network]?.name ?? ''), 'take-off'].filter(Boolean).join(' ')}.xlsx`;

/** Writes the take-off as a spreadsheet where the user says, or downloads it. Answers the place when the host wrote it. */
export async function saveTakeOff(context: ActionContext, network: string | null): Promise<string | null> {
  const state = context.store.get();
  const { derived } = presentEvaluation(state);
  const bytes = takeOffXlsx(derived.plan, { networks: networksOf(derived, network) }, billOf(derived, network, state.session.takeOff));
  return keepBytes(context, takeOffFileName(derived.plan, planName(state), network), bytes, XLSX);
}
