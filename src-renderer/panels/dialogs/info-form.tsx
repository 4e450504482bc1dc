import { useState } from 'react';
import { addRevision } from '#shared/commands/add-revision';
import { editInfo } from '#shared/commands/edit-info';
import type { Info } from '#shared/model/plan';
import { Slip } from '../bench/slip.tsx';
import { useCommit, useShownPlan } from '../bench/use-plan.ts';
import { Choice } from '../fields/choice.tsx';
import { LongTextField, TextField } from '../fields/text-field.tsx';

type Texts = Exclude<keyof Info, 'revisions' | 'notes' | 'state'>;
const BLOCKS: readonly { readonly title: string; readonly fields: readonly { readonly key: Texts; readonly label: string }[] }[] = [
  {
    title: 'Project',
    fields: [
      { key: 'project', label: 'Project' },
      { key: 'site', label: 'Site' },
      { key: 'client', label: 'Client' },
      { key: 'sheetPrefix', label: 'Sheet numbers begin with' },
    ],
  },
  {
    title: 'Basis',
    fields: [
      { key: 'code', label: 'Adopted code' },
      { key: 'edition', label: 'Edition' },
    ],
  },
  {
    title: 'People',
    fields: [
      { key: 'drawnBy', label: 'Drawn by' },
      { key: 'checkedBy', label: 'Checked by' },
      { key: 'approvedBy', label: 'Approved by' },
    ],
  },
];

/** Next mark after the last revision: A, B … Z, then AA. */
export function nextMark(marks: readonly string[]): string {
  const last = marks.at(-1)?.trim().toUpperCase() ?? '';
  if (!/^[A-Z]+$/.test(last)) return /^\d+$/.test(last) ? String(Number(last) + 1) : 'A';
  const head = last.slice(0, -1);
  const tail = last.slice(-1);
  return tail === 'Z' ? `${head === '' ? 'A' : nextMark([head])}A` : head + String.fromCharCode(tail.charCodeAt(0) + 1);
}

const today = (): string => {
  const now = new Date();
  return `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, '0')}-${String(now.getDate()).padStart(2, '0')}`;
};

/** The list of revisions, and adding one. */
export function RevisionsSlip() {
  const { info } = useShownPlan();
  const commit = useCommit();
  const [text, setText] = useState('');
  const mark = nextMark(info.revisions.map((revision) => revision.mark));
  return (
    <Slip title="Revisions">
      {info.revisions.length === 0 ? <p className="quiet">Not issued yet. Enter what this issue is for, then add it: the sheets carry the table.</p> : null}
      {info.revisions.length > 0 ? (
        <table className="sum-table">
          <tbody>
            {info.revisions.map((revision) => (
              <tr key={`${revision.mark}-${revision.date}-${revision.text}`}>
                <th scope="row">{revision.mark}</th>
                <td>{revision.date}</td>
                <td className="is-text">{revision.text}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : null}
      <div className="do-with">
        <TextField label={`Revision ${mark}: what changed`} value={text} onCommit={setText} most={1000} wide />
        <button
          type="button"
          className="button"
          disabled={text === ''}
          onClick={() => {
            if (commit(addRevision({ mark, date: today(), text }))) setText('');
          }}
        >
          Add
        </button>
      </div>
    </Slip>
  );
}

/** What the title block says: project, basis, people. */
export function InfoForm() {
  const { info } = useShownPlan();
  const commit = useCommit();
  return (
    <>
      {BLOCKS.map(({ title, fields }) => (
        <Slip key={title} title={title}>
          <div className="fields">
            {fields.map(({ key, label }) => (
              <TextField key={key} label={label} value={info[key]} onCommit={(value) => commit(editInfo({ [key]: value }))} />
            ))}
          </div>
        </Slip>
      ))}
      <Slip title="How far the job is">
        <Choice
          label="The installation is"
          value={info.state}
          options={[
            { value: 'design', label: 'Being designed or built' },
            { value: 'built', label: 'Built: its site record must be complete' },
          ]}
          onCommit={(state) => commit(editInfo({ state }))}
          wide
        />
      </Slip>
      <Slip title="Notes on every set">
        <LongTextField label="Notes" value={info.notes} onCommit={(notes) => commit(editInfo({ notes }))} />
      </Slip>
    </>
  );
}
