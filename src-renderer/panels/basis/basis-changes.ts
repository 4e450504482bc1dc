import type { Calculation } from '#shared/calculations/lines/calculation';

/** A main result that is not what it was. */
export interface BasisChange {
  readonly key: string;
  readonly label: string;
  readonly of: string;
  readonly before: string;
  readonly now: string;
}

/** A label without the symbol that formulas call it by. */
const bare = (label: string): string => label.replace(/, \p{L}[\p{L}\d]{0,3}(_[\p{L}\d]+)?$/u, '');

const mainResults = (calculations: readonly Calculation[]) =>
  calculations.filter(({ isStale }) => !isStale).flatMap(({ topic, subjectName, lines }) => lines.filter(({ isMain }) => isMain).map(({ label, result }) => ({ key: `${topic}/${subjectName}/${label}`, label: bare(label), of: subjectName, result })));

/** The main results that differ between two states of the sums; what is still being worked out is left aside. */
export function changedResults(before: readonly Calculation[], now: readonly Calculation[]): BasisChange[] {
  const was = new Map(mainResults(before).map(({ key, result }) => [key, result]));
  return mainResults(now).flatMap(({ key, label, of, result }) => {
    const old = was.get(key);
    return old === undefined || old === result ? [] : [{ key, label, of, before: old, now: result }];
  });
}
