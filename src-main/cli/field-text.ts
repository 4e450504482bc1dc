import type { FieldReading, FieldRowAnswer, FieldRowKind } from '#shared/site/field-entries';
import { type LengthSystem, formatLength } from '#shared/units/length-text';
import { wrapped } from './console-out.ts';

/** Answers in the order in which they matter, with what they are called. */
const KINDS: readonly (readonly [kind: FieldRowKind, words: string])[] = [
  ['twice', 'twice, with different values'],
  ['not-understood', 'not understood'],
  ['implausible', 'hardly believed'],
  ['other-plan', 'of another plan'],
  ['other-revision', 'planned otherwise now'],
  ['unknown', 'not in this plan'],
  ['missing', 'not in the file'],
  ['taken', 'can be taken'],
  ['unchanged', 'in the plan already'],
  ['empty', 'nothing written'],
];
/** Kinds of which each row is told with its reason. */
const ASKED: readonly FieldRowKind[] = ['twice', 'not-understood', 'implausible', 'other-plan', 'other-revision', 'unknown'];
/** Rows of a kind that are only counted from this many on, where nothing is asked. */
const MANY = 12;

/** Whether a row needs somebody to decide. */
export const isAsked = ({ kind }: { readonly kind: FieldRowKind }): boolean => ASKED.includes(kind);

function line({ name, where, written, value_m, planned_m }: FieldRowAnswer, lengths: LengthSystem): string {
  const cells = [name.slice(0, 24).padEnd(24), (written.slice(0, 16) || '-').padEnd(16), (value_m === null ? '-' : formatLength(value_m, lengths)).padEnd(14), (planned_m === null ? '-' : formatLength(planned_m, lengths)).padEnd(14), where.slice(0, 24)];
  return `  ${cells.join(' ').trimEnd()}`;
}

/** The answers to a form or table as lines of a table, grouped by what they are. */
export function fieldLines({ remarks, rows, checks }: FieldReading, lengths: LengthSystem, width: number): string[] {
  const lines = remarks.flatMap((remark) => wrapped(remark, width));
  for (const [kind, words] of KINDS) {
    const found = rows.filter((row) => row.kind === kind);
    if (found.length === 0) continue;
    lines.push('', `${words.charAt(0).toUpperCase()}${words.slice(1)} (${found.length})`);
    if (!ASKED.includes(kind) && kind !== 'taken' && found.length > MANY) {
      lines.push(...wrapped(`${found.slice(0, MANY).map(({ name }) => name).join(', ')} and ${found.length - MANY} more`, width, '  '));
      continue;
    }
    if (kind === 'missing' || kind === 'empty') lines.push(...wrapped(found.map(({ name }) => name).join(', '), width, '  '));
    else {
      lines.push(`  ${'dimension'.padEnd(24)} ${'written'.padEnd(16)} ${'read as'.padEnd(14)} ${'planned'.padEnd(14)} where`);
      for (const row of found) lines.push(line(row, lengths), ...(ASKED.includes(kind) ? wrapped(row.words, width, '      ') : []));
    }
  }
  const told = checks.filter(({ kind }) => kind !== 'empty' && kind !== 'missing');
  if (told.length > 0) lines.push('', `Hold points (${told.length})`, ...told.flatMap(({ words }) => wrapped(words, width, '  ')));
  return lines;
}

/** How many rows there are of each kind, in words. */
export const fieldCounts = ({ rows }: FieldReading): string =>
  KINDS.flatMap(([kind, words]) => {
    const count = rows.filter((row) => row.kind === kind).length;
    return count > 0 ? [`${count} ${words}`] : [];
  }).join(', ');
