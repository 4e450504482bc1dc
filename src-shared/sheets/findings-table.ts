import type { Assumption } from '../assumptions/assumption.ts';
import { type FindingCounts, countFindings } from '../rules/count-findings.ts';
import type { Finding } from '../rules/finding.ts';
import type { LapsedWaiver } from '../rules/waive.ts';
import { placeName } from './place-name.ts';
import type { Cell, Table } from './tables.ts';

/** A finding that is not kept, with the number it has on plan and in the table. */
export interface NumberedFinding {
  readonly number: number;
  readonly finding: Finding;
}

/** Numbers all findings but kept ones, in the order of their tables: open ones, gravest first, then those not checked, then those that somebody accepted. */
export function numberFindings(findings: readonly Finding[]): NumberedFinding[] {
  const told = findings.filter(({ verdict }) => verdict !== 'ok');
  const tableOf = ({ verdict, waiver }: Finding): number => (waiver ? 2 : verdict === 'not-checked' ? 1 : 0);
  return [0, 1, 2].flatMap((table) => told.filter((finding) => tableOf(finding) === table)).map((finding, i) => ({ number: i + 1, finding }));
}

const COUNTED: readonly (readonly [keyof FindingCounts, string, string])[] = [
  ['stop', 'stop', 'stops'],
  ['warn', 'warning', 'warnings'],
  ['not-checked', 'not checked', 'not checked'],
  ['note', 'note', 'notes'],
  ['ok', 'kept', 'kept'],
  ['accepted', 'accepted', 'accepted'],
];

/** How many findings there are of each verdict, in words; those that somebody accepted are named by themselves. */
export function findingCounts(findings: readonly Finding[]): string {
  const counts = countFindings(findings);
  return COUNTED.filter(([key]) => key !== 'accepted' || counts.accepted > 0)
    .map(([key, one, many]) => `${counts[key]} ${counts[key] === 1 ? one : many}`)
    .join(', ');
}

/** A sentence with its full stop. */
const ended = (words: string): string => (/[.!?]$/.test(words.trim()) ? words.trim() : `${words.trim()}.`);

const rowOf = ({ number, finding }: NumberedFinding): Cell[] => [
  { kind: 'verdict', verdict: finding.verdict },
  String(number),
  `${finding.title}: ${finding.name}`,
  [finding.text, ...(finding.cure ? [finding.cure.text] : [])].map(ended).join(' '),
  finding.basis.source,
];

/** The row of a finding leads to its mark, wherever on the sheets it stands, and its mark back. */
const linkOf = ({ number }: NumberedFinding) => ({ goesTo: placeName('finding', number), place: placeName('finding-row', number) });

const COLUMNS = [{ head: '' }, { head: 'No.', align: 'right' }, { head: 'Check' }, { head: 'What it says', isWide: true }, { head: 'Rests on' }] as const;

/** Every finding that is open: stops, warnings and notes, in sentences with what they rest on. */
export function findingsTable(numbered: readonly NumberedFinding[], all: readonly Finding[]): Table {
  const told = numbered.filter(({ finding }) => !finding.waiver && finding.verdict !== 'not-checked');
  const open = told.map(rowOf);
  return {
    title: 'Findings',
    note: `${findingCounts(all)}. Filled square: stop. Open triangle: warning. Dashed ring: not checked, data is missing. Dot: note.`,
    columns: COLUMNS,
    rows: open.length > 0 || all.length === 0 ? open : [['', '', '', 'Nothing is open.', '']],
    links: told.map(linkOf),
  };
}

/** What nobody could judge, and what is missing for it. */
export const notCheckedTable = (numbered: readonly NumberedFinding[]): Table => ({
  title: 'Not checked',
  note: 'Data is missing. What is not checked is not known to be right.',
  columns: COLUMNS,
  rows: numbered.filter(({ finding }) => !finding.waiver && finding.verdict === 'not-checked').map(rowOf),
});

/** What somebody accepted as it is, with reason, name and date. */
export const acceptedTable = (numbered: readonly NumberedFinding[]): Table => ({
  title: 'Accepted findings',
  note: 'Accepted as they are. Each opens again when its figures or its place change.',
  columns: [{ head: '' }, { head: 'No.', align: 'right' }, { head: 'Check' }, { head: 'What it says', isWide: true }, { head: 'Why it is accepted', least_mm: 34, most_mm: 80 }, { head: 'By' }, { head: 'Date' }],
  rows: numbered.flatMap(({ number, finding }) =>
    finding.waiver ? [[{ kind: 'verdict', verdict: finding.verdict }, String(number), `${finding.title}: ${finding.name}`, ended(finding.text), ended(finding.waiver.reason), finding.waiver.by, finding.waiver.date] satisfies Cell[]] : [],
  ),
});

const LAPSED_WORDS: Readonly<Record<LapsedWaiver['because'], string>> = {
  gone: 'What it was about is no longer found.',
  kept: 'The limit is kept by now.',
  changed: 'What it rested on has changed: the finding is open again.',
};

/** Acceptances that no longer hold. */
export const lapsedTable = (lapsed: readonly LapsedWaiver[]): Table => ({
  title: 'Acceptances that have lapsed',
  columns: [{ head: 'Check' }, { head: 'Why it was accepted', isWide: true }, { head: 'By' }, { head: 'Date' }, { head: 'Why it has lapsed', least_mm: 34 }],
  rows: lapsed.map(({ waiver, because, finding }) => [`${finding?.title ?? waiver.rule}: ${waiver.name}`, ended(waiver.reason), waiver.by, waiver.date, LAPSED_WORDS[because]]),
});

/** What was taken for granted because nobody said otherwise. */
export const assumptionsTable = (assumptions: readonly Assumption[]): Table => ({
  title: 'Taken for granted',
  note: 'Nobody said otherwise. What is missing altogether is not here: it is not checked.',
  columns: [{ head: 'About', most_mm: 40 }, { head: 'What was taken for granted', isWide: true }, { head: 'What it affects', least_mm: 40, most_mm: 90 }, { head: 'Where it is changed', least_mm: 34, most_mm: 66 }],
  rows: assumptions.map(({ name, taken, affects, change }) => [name, taken, affects, change]),
});
