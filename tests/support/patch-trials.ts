import { evaluate } from '#shared/evaluate';
import { boundsOf, distanceToOutline_m } from '#shared/geometry/outline';
import { type PlanPoint, distance_m, planPoint } from '#shared/geometry/point';
import { type AllowedPatch, allowedPatch, isInRegion } from '#shared/margins/allowed-patch';
import { moveNozzle } from '#shared/commands/move-nozzle';
import type { Plan, RefOf } from '#shared/model/plan';
import { SLIVER_m2 } from '#shared/geometry/tolerance';
import { type Finding, findingKey } from '#shared/rules/finding';

/** A row of numbers 0 … 1 that is the same in every run. */
export function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

/** Rules that stop something after the nozzle was really moved there and that did not before. */
export function stoppedAt(plan: Plan, ref: RefOf<'nozzle'>, before: ReadonlySet<string>, gap_m2: number, to: PlanPoint, height_m: number): string[] {
  const outcome = moveNozzle(ref, { x: to.x, y: to.y, z: height_m })(plan);
  if (!outcome.ok) return ['refused'];
  const { findings } = evaluate(outcome.next);
  const grown = uncovered_m2(findings) > gap_m2 + SLIVER_m2 ? ['N9'] : [];
  return [...new Set([...grown, ...findings.filter((each) => each.verdict === 'stop' && !before.has(findingKey(each))).map(({ rule }) => rule)])];
}

/** Floor that nothing covers: where some is uncovered as drawn, a patch lets it grow nowhere. */
export const uncovered_m2 = (findings: readonly Finding[]): number => findings.reduce((sum, { rule, measured }) => sum + (rule === 'N9' ? (measured ?? 0) : 0), 0);

/** Rules that a patch keeps whether they are kept as drawn or not. */
const OF_PLACE = ['N1', 'N2', 'N3', 'N5', 'N6', 'N7'];

/** What is stopped as drawn and would be no news elsewhere. */
export const stopKeys = (findings: readonly Finding[], nozzle: string): ReadonlySet<string> =>
  new Set(findings.filter(({ verdict, rule, subject }) => verdict === 'stop' && !(OF_PLACE.includes(rule) && subject.id === nozzle)).map(findingKey));

export interface PatchTrials {
  readonly asked: number;
  readonly inside: number;
  /** Places in the patch at which something breaks. */
  readonly tooLarge: readonly string[];
  /** Places more than `slack_m` outside at which nothing breaks. */
  readonly tooSmall: readonly string[];
}

/**
 * Puts a nozzle at random places: a third anywhere in its room, a third at the border of its patch within a few millimetres,
 * a third around it; and holds the patch to what the whole check says there.
 */
export function tryPatch(plan: Plan, ref: RefOf<'nozzle'>, count: number, next: () => number, slack_m = 0.002): PatchTrials {
  const { derived, findings } = evaluate(plan);
  const before = stopKeys(findings, ref.id);
  const gap_m2 = uncovered_m2(findings);
  const patch: AllowedPatch | undefined = ((answer) => (answer.isKnown ? answer : undefined))(allowedPatch(derived, ref));
  const nozzle = derived.nozzles.find(({ ref: { id, network } }) => id === ref.id && network === ref.network);
  const { minX, minY, maxX, maxY } = boundsOf(nozzle?.space?.outline ?? []);
  const rings = patch?.parts.flat() ?? [];
  const tooLarge: string[] = [];
  const tooSmall: string[] = [];
  let asked = 0;
  let inside = 0;
  for (let i = 0; patch && i < count; i += 1) {
    let at = planPoint(minX + next() * (maxX - minX), minY + next() * (maxY - minY));
    const ring = rings[Math.floor(next() * rings.length)];
    if (i % 3 > 0 && ring) {
      const k = Math.floor(next() * ring.length);
      const [a, b] = [ring[k] ?? at, ring[(k + 1) % ring.length] ?? at];
      const along = next();
      const off_m = (next() - 0.5) * (i % 3 === 1 ? 0.012 : 0.4);
      const long_m = distance_m(a, b) || 1;
      at = planPoint(a.x + (b.x - a.x) * along - ((b.y - a.y) / long_m) * off_m, a.y + (b.y - a.y) * along + ((b.x - a.x) / long_m) * off_m);
    }
    const isInside = patch.parts.some((part) => isInRegion(at, part));
    if (!isInside && rings.some((each) => distanceToOutline_m(at, each) <= slack_m)) continue;
    asked += 1;
    if (isInside) inside += 1;
    const broken = stoppedAt(plan, ref, before, gap_m2, at, patch.at.z);
    const told = `(${at.x.toFixed(5)}, ${at.y.toFixed(5)})`;
    if (isInside && broken.length > 0) tooLarge.push(`${told}: ${broken.join(', ')}`);
    // Floor that only this nozzle covers stays covered: where other floor lies bare, covering that instead is no amends.
    if (!isInside && broken.length === 0 && gap_m2 === 0) tooSmall.push(told);
  }
  return { asked, inside, tooLarge, tooSmall };
}
