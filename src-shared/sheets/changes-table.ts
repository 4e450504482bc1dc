import { CHANGE_WORDS, changeDetails } from '../revisions/change-words.ts';
import type { PlanChange } from '../revisions/plan-change.ts';
import type { LengthSystem } from '../units/length-text.ts';
import type { Table } from './tables.ts';

/** What one revision changed against the one before it. */
export interface RevisedSince {
  /** Mark of the earlier revision. */
  readonly since: string;
  readonly mark: string;
  readonly list: readonly PlanChange[];
  /** Why nothing could be compared, a sentence; it stands in place of the list. */
  readonly unread?: string | undefined;
}

/** More rows would be read by nobody: the rest is counted. */
const MOST_ROWS = 300;

/** What a revised set changed, thing by thing. Only the newest revision is listed, as only its changes are clouded. */
export function changesTable({ since, mark, list, unread }: RevisedSince, lengths: LengthSystem): Table {
  const title = `What revision ${mark} changed since ${since}`;
  if (unread !== undefined) return { title, shortTitle: 'Changes', columns: [{ head: '', isWide: true }], rows: [[{ kind: 'bold', words: unread }]] };
  const left = list.length - MOST_ROWS;
  return {
    title,
    shortTitle: 'Changes',
    columns: [{ head: '', font: 'bold' }, { head: 'What' }, { head: 'Where' }, { head: 'How', isWide: true }],
    rows: list.slice(0, MOST_ROWS).map((change) => [CHANGE_WORDS[change.kind], change.name, change.where, changeDetails(change, lengths, 6).join('; ')]),
    ...(left > 0 ? { foot: [{ kind: 'words' as const, words: `${left} further changes are not listed here.` }] } : {}),
  };
}
