import type { HoldPoint } from '../model/hold-points.ts';
import type { SiteRecord } from '../model/plan.ts';
import { cellText, quoted } from './entry-texts.ts';
import type { FieldCheckAnswer, FieldEntry, FieldMatch } from './field-entries.ts';

const YES = ['yes', 'y', 'x', '1', 'true', 'done', 'ok', 'on', '✓', '☑'];
const NO = ['', 'no', 'n', '0', 'false', 'off', '-', '☐'];

const CELLS = ['done', 'by', 'witness', 'when'] as const;

const doneText = (entry: FieldEntry): string => (cellText(entry, 'done') || cellText(entry, 'measured')).toLowerCase();

/** Judges the rows of one hold point. Whether it may be ticked yet is for whoever applies it. */
export function answerCheck({ id }: Pick<HoldPoint, 'id'>, entries: readonly FieldEntry[], kept: SiteRecord['checks'][string] | undefined, match: FieldMatch): FieldCheckAnswer {
  const where = [...new Set(entries.map((each) => each.where))].join(' and ');
  const bare = { id, where, done: false, by: '', witness: '', at: '' };
  const filled = entries.filter((entry) => CELLS.some((cell) => !NO.includes(cellText(entry, cell).toLowerCase())) || !NO.includes(doneText(entry)));
  const [entry] = filled;
  if (entries.length === 0) return { ...bare, kind: 'missing', words: `The file has no row for hold point ${id}.` };
  if (!entry) return { ...bare, kind: 'empty', words: kept?.done ? `Hold point ${id} is ticked in the plan and not in the file. It stays ticked.` : `Hold point ${id} is not ticked.` };
  const said = { id, where, done: YES.includes(doneText(entry)), by: cellText(entry, 'by'), witness: cellText(entry, 'witness'), at: cellText(entry, 'when') };
  if (filled.some((other) => doneText(other) !== doneText(entry) || CELLS.slice(1).some((cell) => cellText(other, cell) !== cellText(entry, cell)))) {
    return { ...said, done: false, kind: 'twice', words: `Hold point ${id} stands in the file more than once and says different things. Find out which one is right.` };
  }
  if (!said.done && !NO.includes(doneText(entry))) return { ...said, kind: 'not-understood', words: `${quoted(doneText(entry))} does not say whether hold point ${id} is done. Write yes or no.` };
  if (match === 'other-plan') return { ...said, kind: 'other-plan', words: `Hold point ${id} was signed for another plan. Nothing of it is taken.` };
  if (match === 'other-revision') return { ...said, kind: 'other-revision', words: `Hold point ${id} was signed for another state of the plan. Take it only if what it covers has stayed the same.` };
  if (kept && kept.done === said.done && kept.by === said.by && kept.witness === said.witness && kept.at === said.at) return { ...said, kind: 'unchanged', words: `Hold point ${id} stands in the plan already.` };
  // A form that was printed before the tick says nothing against it.
  if (kept?.done && !said.done) return { ...said, kind: 'unchanged', words: `Hold point ${id} is ticked in the plan and not in the file. It stays as it is.` };
  return { ...said, kind: 'taken', words: said.done ? `Hold point ${id} is done${said.by ? `, by ${said.by}` : ''}${said.witness ? `, seen by ${said.witness}` : ''}.` : `Hold point ${id} has words beside it but is not ticked.` };
}
