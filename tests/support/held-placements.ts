import type { RefOf } from '#shared/model/plan';
import { patchPlan } from './patch-plans.ts';
import { numbers, tryPatch } from './patch-trials.ts';

const N1: RefOf<'nozzle'> = { kind: 'nozzle', network: 'net', id: 'n1' };
/** More with PATCH_TRIALS=4: as many placements in every plan. */
const EACH = 176 * Number(process.env.PATCH_TRIALS ?? 1);

/** Rules that the random plans exercise: each of them alone keeps a nozzle out of some place. */
const MET = ['N1', 'N2', 'N5', 'N6', 'N7', 'N9', 'N12', 'N14', 'N15', 'P2'];

/** Random placements in a row of random plans, held to the check. */
export function heldPlacements(first: number, last: number) {
  const [tooLarge, tooSmall, doubtful]: [string[], string[], string[]] = [[], [], []];
  const met = new Set<string>();
  let [asked, inside] = [0, 0];
  for (let seed = first; seed <= last; seed += 1) {
    const next = numbers(seed * 7919);
    const trials = tryPatch(patchPlan(next), N1, EACH, next);
    asked += trials.asked;
    inside += trials.inside;
    tooLarge.push(...trials.tooLarge.map((each) => `plan ${seed} at ${each}`));
    tooSmall.push(...trials.tooSmall.map((each) => `plan ${seed} at ${each}`));
    doubtful.push(...trials.doubtful.map((each) => `plan ${seed} at ${each}`));
    for (const rule of trials.bounding) met.add(rule);
  }
  return { asked, inside, tooLarge, tooSmall, doubtful, notMet: MET.filter((rule) => !met.has(rule)) };
}
