import type { Finding, Verdict } from '../rules/finding.ts';
import type { Table } from './tables.ts';

/** A finding that is not kept, with the number it has on plan and in the table. */
export interface NumberedFinding {
  readonly number: number;
  readonly finding: Finding;
}

/** Numbers all findings but kept ones, gravest first. */
export const numberFindings = (findings: readonly Finding[]): NumberedFinding[] =>
  findings.filter(({ verdict }) => verdict !== 'ok').map((finding, i) => ({ number: i + 1, finding }));

const COUNTED: readonly (readonly [Verdict, string, string])[] = [
  ['stop', 'stop', 'stops'],
  ['warn', 'warning', 'warnings'],
  ['not-checked', 'not checked', 'not checked'],
  ['note', 'note', 'notes'],
  ['ok', 'kept', 'kept'],
];

/** How many findings there are of each verdict, in words. */
export const findingCounts = (findings: readonly Finding[]): string =>
  COUNTED.map(([verdict, one, many]) => {
    const count = findings.filter((finding) => finding.verdict === verdict).length;
    return `${count} ${count === 1 ? one : many}`;
  }).join(', ');

/** A sentence with its full stop. */
const ended = (words: string): string => (/[.!?]$/.test(words.trim()) ? words.trim() : `${words.trim()}.`);

/** Every finding that is not kept, in sentences with what they rest on. */
export function findingsTable(numbered: readonly NumberedFinding[], all: readonly Finding[]): Table {
  return {
    title: 'Findings',
    note: `${findingCounts(all)}. Filled square: stop. Open triangle: warning. Dashed ring: not checked, data is missing. Dot: note.`,
    columns: [{ head: '' }, { head: 'No.', align: 'right' }, { head: 'Check' }, { head: 'What it says', isWide: true }, { head: 'Rests on' }],
    rows: numbered.map(({ number, finding }) => [
      { kind: 'verdict', verdict: finding.verdict },
      String(number),
      `${finding.title}: ${finding.name}`,
      [finding.text, ...(finding.cure ? [finding.cure.text] : [])].map(ended).join(' '),
      finding.basis.source,
    ]),
  };
}
