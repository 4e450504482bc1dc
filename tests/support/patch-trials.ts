import { designOf } from '#shared/calculations/design/design-of';
import type { Design } from '#shared/calculations/design/design';
import type { Derived } from '#shared/derived/derived';
import { derivePlan } from '#shared/derived/derive-plan';
import { evaluate } from '#shared/evaluate';
import { boundsOf, distanceToOutline_m, isInside } from '#shared/geometry/outline';
import { type PlanPoint, type PlanPoint3, distance_m, planPoint } from '#shared/geometry/point';
import { isInRegion } from '#shared/margins/allowed-patch';
import { type ProvenPatch, provenPatch } from '#shared/margins/proven-patch';
import { moveNozzle } from '#shared/commands/move-nozzle';
import type { Region } from '#shared/derived/polygon-sums';
import type { Plan, RefOf } from '#shared/model/plan';
import { SLIVER_m2 } from '#shared/geometry/tolerance';
import { type Finding, findingKey } from '#shared/rules/finding';
import { RULES } from '#shared/rules/index';
import type { RuleFindings } from '#shared/rules/rule-findings';

/** A row of numbers 0 … 1 that is the same in every run. */
export function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

/** Floor that nothing covers: where some is uncovered as drawn, a patch lets it grow nowhere. */
export const uncovered_m2 = (findings: readonly Finding[]): number => findings.reduce((sum, { rule, measured }) => sum + (rule === 'N9' ? (measured ?? 0) : 0), 0);

/** Rules that a patch keeps whether they are kept as drawn or not. */
const OF_PLACE = ['N1', 'N2', 'N3', 'N5', 'N6', 'N7'];
/** Rules that share the border of another. */
const BESIDE: Readonly<Record<string, readonly string[]>> = { N2: ['N3'], P2: ['P3'] };

/** Supports bound no patch: whoever shifts a nozzle sees to them. */
const OF_SUPPORTS = ['P12', 'P18', 'P19', 'P20', 'P21'];

/** Whether a finding is one that a patch has to keep out: a stop, a warning, or what can no longer be checked. */
export const isFault = ({ rule, verdict }: Finding): boolean => !OF_SUPPORTS.includes(rule) && (verdict === 'stop' || verdict === 'warn' || verdict === 'not-checked');

/** From what stops to what nobody can check: what is found worse than before is news. */
const GRAVEST = ['stop', 'warn', 'not-checked'] as const;

const newsKey = (finding: Finding): string => `${finding.verdict} ${findingKey(finding)}`;

/** What is found as drawn and would be no news elsewhere. */
export const stopKeys = (findings: readonly Finding[], nozzle: string): ReadonlySet<string> =>
  new Set(
    findings
      .filter((each) => isFault(each) && !(OF_PLACE.includes(each.rule) && each.subject.id === nozzle))
      .flatMap((each) => GRAVEST.slice((GRAVEST as readonly string[]).indexOf(each.verdict)).map((verdict) => `${verdict} ${findingKey(each)}`)),
  );

/** Whether a finding breaks something that was not broken before. */
export const isNews = (finding: Finding, before: ReadonlySet<string>): boolean => isFault(finding) && !before.has(newsKey(finding));

/** Rules of some findings that are broken and were not before. */
const brokenIn = (findings: readonly Finding[], before: ReadonlySet<string>, gap_m2: number): string[] => {
  const grown = uncovered_m2(findings) > gap_m2 + SLIVER_m2 ? ['N9'] : [];
  return [...new Set([...grown, ...findings.filter((each) => isNews(each, before)).map(({ rule }) => rule)])];
};

/** Rules that are broken after the nozzle was really moved there and that were not before, of the whole catalogue and from nothing. */
export function stoppedAt(plan: Plan, ref: RefOf<'nozzle'>, before: ReadonlySet<string>, gap_m2: number, to: PlanPoint, height_m: number): string[] {
  const outcome = moveNozzle(ref, { x: to.x, y: to.y, z: height_m })(plan);
  return outcome.ok ? brokenIn(evaluate(outcome.next).findings, before, gap_m2) : ['refused'];
}

/** Rules that look at the nozzle alone and are quick to ask, and those that look farther: all that a nozzle or pipe without a discharge can break. */
const QUICK = ['N1', 'N2', 'N3', 'N5', 'N6', 'N7', 'N8', 'N15', 'N14', 'N12', 'N18'];
const FARTHER = ['P1', 'P2', 'P3', 'P4', 'P5', 'P6', 'P8', 'P10', 'P11', 'N9', 'N10', 'N11', 'N13', 'N16', 'N17', 'N19', 'N24', 'E11', 'P7', 'P16', 'P23', 'P24', 'P25', 'P27', 'P28', 'P29', 'P30'];

/** Asks rules about one plan after another, redoing only what changed. */
function asking(ids: readonly string[]): (derived: Derived, design: Design) => Finding[] {
  const rules = RULES.filter(({ id }) => ids.includes(id));
  const found: RuleFindings[] = [];
  return (derived, design) =>
    rules.flatMap((rule, i) => {
      const now = rule.ask(derived, design, found[i]);
      found[i] = now;
      return [...now.of('stop'), ...now.of('warn'), ...now.of('not-checked')];
    });
}

/** Faults of a plan by some rules, one changed plan after another. */
export function quickAnswers(plan: Plan, ids: readonly string[]): (plan: Plan) => Finding[] {
  const ask = asking(ids);
  const asDrawn = designOf(derivePlan(plan), () => undefined);
  return (changed) => ask(derivePlan(changed), asDrawn);
}

/** Tells what a move breaks, as `stoppedAt` does, but stops looking at the first rule when one is enough. */
function quickStops(plan: Plan, ref: RefOf<'nozzle'>, before: ReadonlySet<string>, gap_m2: number): (to: PlanPoint3, isOneEnough: boolean) => string[] {
  const [quick, farther] = [asking(QUICK), asking(FARTHER)];
  const asDrawn = designOf(derivePlan(plan), () => undefined);
  return (to, isOneEnough) => {
    const outcome = moveNozzle(ref, to)(plan);
    if (!outcome.ok) return ['refused'];
    const derived = derivePlan(outcome.next);
    // None of all these looks at a sum that a place changes.
    const soon = brokenIn(quick(derived, asDrawn), before, Infinity);
    if (isOneEnough && soon.length > 0) return soon;
    return [...soon, ...brokenIn(farther(derived, asDrawn), before, gap_m2)];
  };
}

export interface PatchTrials {
  readonly asked: number;
  readonly inside: number;
  /** Places in the patch at which something breaks. */
  readonly tooLarge: readonly string[];
  /** Places more than `slack_m` outside at which nothing breaks. */
  readonly tooSmall: readonly string[];
  /** Rules whose border alone keeps out a place at which the check agrees. */
  readonly bounding: ReadonlySet<string>;
  /** Places at which the whole catalogue, asked from nothing, says otherwise. */
  readonly doubtful: readonly string[];
}

/** Every so many placements the whole catalogue is asked from nothing. */
const WHOLE_EACH = 90;

/** Whether a place lies in a region, in an odd number of its rings. */
const isCutOut = (p: PlanPoint, region: Region): boolean => region.filter((ring) => isInside(p, ring)).length % 2 === 1;

/**
 * Puts a nozzle at random places: a third anywhere in its room, a third at the border of its patch within a few millimetres,
 * a third around it; and holds the patch to what the whole check says there.
 */
export function tryPatch(plan: Plan, ref: RefOf<'nozzle'>, count: number, next: () => number, slack_m = 0.002): PatchTrials {
  const { derived, findings } = evaluate(plan);
  const before = stopKeys(findings, ref.id);
  const gap_m2 = uncovered_m2(findings);
  const patch: ProvenPatch | undefined = ((answer) => (answer.isKnown ? answer : undefined))(provenPatch(derived, ref));
  const nozzle = derived.nozzles.find(({ ref: { id, network } }) => id === ref.id && network === ref.network);
  const { minX, minY, maxX, maxY } = boundsOf(nozzle?.space?.outline ?? []);
  const rings = patch?.parts.flat() ?? [];
  const tooLarge: string[] = [];
  const tooSmall: string[] = [];
  const doubtful: string[] = [];
  const bounding = new Set<string>();
  const stops = quickStops(plan, ref, before, gap_m2);
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
    const isIn = patch.parts.some((part) => isInRegion(at, part));
    if (!isIn && rings.some((each) => distanceToOutline_m(at, each) <= slack_m)) continue;
    asked += 1;
    if (isIn) inside += 1;
    const broken = stops({ ...at, z: patch.at.z }, !isIn);
    if (asked % WHOLE_EACH === 1 && (stoppedAt(plan, ref, before, gap_m2, at, patch.at.z).length > 0) !== broken.length > 0) doubtful.push(`(${at.x}, ${at.y})`);
    const borders = isIn ? [] : patch.forbidden.filter(({ region }) => isCutOut(at, region));
    if (borders.length === 1 && borders[0] && [borders[0].rule, ...(BESIDE[borders[0].rule] ?? [])].some((rule) => broken.includes(rule))) bounding.add(borders[0].rule);
    const told = `(${at.x.toFixed(5)}, ${at.y.toFixed(5)})`;
    if (isIn && broken.length > 0) tooLarge.push(`${told}: ${broken.join(', ')}`);
    // Floor that only this nozzle covers stays covered: where other floor lies bare, covering that instead is no amends.
    if (!isIn && broken.length === 0 && gap_m2 === 0) tooSmall.push(`${told}: ${borders.map(({ rule }) => rule).join(', ')}`);
  }
  return { asked, inside, tooLarge, tooSmall, bounding, doubtful };
}
