import { looksLikePlanFile } from '#shared/model/pack-plan';
import { sha256Of } from './asset-store.ts';
import { embeddedFiles } from './embedded-files.ts';
import { HostProblem } from './host-problem.ts';

/** Name of the plan among the files attached to a sheet PDF. */
export const PLAN_ATTACHMENT = 'plan.nzw';

/** Largest plan that is taken out of sheets [bytes]: the largest that a plan file holds. */
const LARGEST_PLAN_bytes = 400 * 1024 * 1024;

/**
 * Takes the plan out of printed sheets: the bytes of the plan file that every set carries.
 * @param where  file name for the user
 * @throws {HostProblem} no plan is in it, or several that differ
 */
export function planInSheets(pdf: Uint8Array, where: string): Uint8Array {
  const plans = new Map<string, Uint8Array>();
  let left_bytes = LARGEST_PLAN_bytes;
  for (const file of embeddedFiles(pdf)) {
    if (!looksLikePlanFile(file.head)) continue;
    let plan: Uint8Array;
    try {
      plan = file.unpack(left_bytes);
    } catch (error) {
      if (error instanceof RangeError) throw new HostProblem('too-large', 'The plan in these sheets is larger than any plan.', where, 'Open the plan file itself.');
      throw new HostProblem('unreadable', 'The plan in these sheets is damaged.', where, 'Copy or download the sheets again, or open the plan file itself.');
    }
    left_bytes = Math.max(1, left_bytes - plan.length);
    plans.set(sha256Of(plan), plan);
  }
  const [plan, ...others] = plans.values();
  if (others.length > 0) throw new HostProblem('refused', `These sheets hold ${plans.size} different plans.`, where, 'Open the sheets as they were printed, not joined with those of another plan.');
  if (plan) return plan;
  if (Buffer.from(pdf.buffer, pdf.byteOffset, pdf.byteLength).includes('/Encrypt')) {
    throw new HostProblem('unsupported', 'This PDF is protected by a password, so that no plan can be taken out of it.', where, 'Open the sheets as they were printed, or the plan file itself.');
  }
  throw new HostProblem('unsupported', 'This PDF holds no plan.', where, 'Open sheets that this program printed, as they were printed: printing or scanning them anew loses the plan. A floor plan is imported from within the window.');
}
