import type { Answer } from './rule.ts';

type Judged = Extract<Answer, { kind: 'judged' }>;

const inputsOf = (answers: readonly Answer[]) => answers.flatMap((answer) => (answer.kind === 'judged' ? (answer.inputs ?? []) : []));

/**
 * One answer of several about one subject. A fault hides nothing and is hidden by nothing: every fault is said, the first
 * one leads with its figures; without a fault the first thing that could not be checked is the answer; else all is kept,
 * and the first leads.
 */
export function together(answers: readonly [Answer, ...Answer[]]): Answer {
  const judged = answers.filter((answer): answer is Judged => answer.kind === 'judged');
  const faults = judged.filter(({ isKept }) => !isKept);
  const open = answers.find(({ kind }) => kind === 'not-checked');
  const told = faults.length > 0 ? faults : judged;
  const [leading] = told;
  if ((open && faults.length === 0) || !leading) return open ?? answers[0];
  const inputs = inputsOf(answers);
  return { ...leading, text: told.map(({ text }) => text).join(' '), inputs: inputs.length > 0 ? inputs : undefined };
}
