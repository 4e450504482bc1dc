import type { DischargeSource } from './calculations/discharge/discharge-source.ts';
import type { Calculation } from './calculations/lines/calculation.ts';
import { calculationsOf } from './calculations/lines/calculations-of.ts';
import { evaluate } from './evaluate.ts';
import type { BasisOfDesign } from './model/basis-of-design.ts';
import type { Plan } from './model/plan.ts';
import { type Finding, findingKey } from './rules/finding.ts';

/** A result and where it comes from, under one basis of design. */
export interface SourcedResult {
  readonly result: string;
  readonly source: string;
}

/** A line of a calculation that comes out differently; null where it is not worked out. */
export interface SumChange {
  readonly key: string;
  /** Title of its calculation. */
  readonly title: string;
  readonly subjectName: string;
  readonly label: string;
  readonly isMain: boolean;
  readonly before: SourcedResult | null;
  readonly now: SourcedResult | null;
}

/** A finding whose verdict, figures or limit come out differently; undefined where it is not made. */
export interface FindingChange {
  readonly key: string;
  readonly before: Finding | undefined;
  readonly now: Finding | undefined;
}

/** What another basis of design would change. */
export interface BasisComparison {
  /** Choices that differ. */
  readonly choices: readonly (keyof BasisOfDesign)[];
  readonly sums: readonly SumChange[];
  /** Changed verdicts first, then changed limits and figures. */
  readonly findings: readonly FindingChange[];
  /** A discharge is needed that nobody has run yet: what rests on it is not compared. */
  readonly waits: boolean;
}

interface LineOf {
  readonly title: string;
  readonly subjectName: string;
  readonly label: string;
  readonly isMain: boolean;
  readonly said: SourcedResult;
}

/** Lines by what they are about, their label and how often it came before in the same calculation. */
function linesByKey(calculations: readonly Calculation[]): Map<string, LineOf> {
  const found = new Map<string, LineOf>();
  for (const { topic, title, subjectName, lines, isStale } of calculations) {
    if (isStale) continue;
    for (const { label, result, source, isMain = false } of lines) {
      let key = `${topic}/${subjectName}/${label}`;
      while (found.has(key)) key = `${key}+`;
      found.set(key, { title, subjectName, label, isMain, said: { result, source } });
    }
  }
  return found;
}

function changedSums(before: Map<string, LineOf>, now: Map<string, LineOf>): SumChange[] {
  return [...new Set([...before.keys(), ...now.keys()])].flatMap((key): SumChange[] => {
    const [was, is] = [before.get(key), now.get(key)];
    const line = is ?? was;
    if (!line || was?.said.result === is?.said.result) return [];
    const { title, subjectName, label, isMain } = line;
    return [{ key, title, subjectName, label, isMain, before: was?.said ?? null, now: is?.said ?? null }];
  });
}

const isSame = (one: Finding | undefined, other: Finding | undefined): boolean =>
  one?.verdict === other?.verdict && one?.measured === other?.measured && one?.limit === other?.limit && one?.limitSource === other?.limitSource;

function changedFindings(before: readonly Finding[], now: readonly Finding[]): FindingChange[] {
  const was = new Map(before.map((finding) => [findingKey(finding), finding]));
  const is = new Map(now.map((finding) => [findingKey(finding), finding]));
  const changes = [...new Set([...is.keys(), ...was.keys()])].flatMap((key): FindingChange[] => (isSame(was.get(key), is.get(key)) ? [] : [{ key, before: was.get(key), now: is.get(key) }]));
  const isVerdict = ({ before: old, now: fresh }: FindingChange): boolean => old?.verdict !== fresh?.verdict;
  return [...changes.filter(isVerdict), ...changes.filter((change) => !isVerdict(change))];
}

/**
 * Works a plan out under another basis of design and lists what would differ: choice by choice, sum by sum, check by
 * check. Nothing is changed.
 * @param other        the whole basis to compare with
 * @param dischargeOf  where the transients come from
 */
export function compareBasis(plan: Plan, other: BasisOfDesign, dischargeOf: DischargeSource): BasisComparison {
  let waits = false;
  const asking: DischargeSource = (network, input) => {
    const answer = dischargeOf(network, input);
    if (answer === undefined || (typeof answer !== 'string' && answer.isStale)) waits = true;
    return answer;
  };
  const before = evaluate(plan, dischargeOf);
  const now = evaluate({ ...plan, basis: other }, asking);
  return {
    choices: (Object.keys(other) as (keyof BasisOfDesign)[]).filter((key) => plan.basis[key] !== other[key]),
    sums: changedSums(linesByKey(calculationsOf(before)), linesByKey(calculationsOf(now))),
    findings: changedFindings(before.findings, now.findings),
    waits,
  };
}
