import type { Calculation } from './calculations/lines/calculation.ts';
import { calculationsOf } from './calculations/lines/calculations-of.ts';
import type { Evaluation } from './evaluation.ts';
import type { BasisOfDesign } from './model/basis-of-design.ts';
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

/** What differs between two states of a plan. */
export interface BasisComparison {
  /** Choices that differ. */
  readonly choices: readonly (keyof BasisOfDesign)[];
  readonly sums: readonly SumChange[];
  /** Changed verdicts first, then changed limits and figures. */
  readonly findings: readonly FindingChange[];
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

/** Lists what differs between a plan and the same plan under another basis of design: choice by choice, sum by sum, check by check. */
export function compareEvaluations(before: Evaluation, now: Evaluation): BasisComparison {
  const [was, is] = [before.derived.plan.basis, now.derived.plan.basis];
  return {
    choices: (Object.keys(is) as (keyof BasisOfDesign)[]).filter((key) => was[key] !== is[key]),
    sums: changedSums(linesByKey(calculationsOf(before)), linesByKey(calculationsOf(now))),
    findings: changedFindings(before.findings, now.findings),
  };
}
