import type { Plan } from '../model/plan.ts';
import type { Table } from './tables.ts';

/** The job's own data in full, whatever the title block had room for. */
export const jobTable = ({ info }: Plan): Table => ({
  title: 'Job',
  columns: [{ head: '' }, { head: '', isWide: true }],
  rows: (
    [
      ['Client', info.client],
      ['Project', info.project],
      ['Site', info.site],
      ['Code', [info.code, info.edition].filter(Boolean).join(', edition ')],
      ['Drawn', info.drawnBy],
      ['Checked', info.checkedBy],
      ['Approved', info.approvedBy],
    ] as const
  ).map(([name, words]) => [name, words.trim() === '' ? 'not entered' : words]),
  isPlain: true,
});

/** All revisions, oldest first. */
export const revisionTable = ({ info }: Plan): Table => ({
  title: 'Revisions',
  columns: [{ head: 'Mark', font: 'bold' }, { head: 'Date' }, { head: 'What changed', isWide: true }],
  rows: info.revisions.map(({ mark, date, text }) => [mark, date, text]),
});

/** The plan's own notes, one row a line. */
export const notesTable = ({ info }: Plan): Table => ({
  title: 'Notes',
  columns: [{ head: '', isWide: true }],
  rows: info.notes
    .split(/\r?\n/)
    .filter((words) => words.trim() !== '')
    .map((words) => [words]),
  isPlain: true,
});
