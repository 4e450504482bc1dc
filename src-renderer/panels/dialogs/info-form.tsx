import { editInfo } from '#shared/commands/edit-info';
import type { Info } from '#shared/model/plan';
import { Slip } from '../bench/slip.tsx';
import { useCommit, useShownPlan } from '../bench/use-plan.ts';
import { Choice } from '../fields/choice.tsx';
import { LongTextField, TextField } from '../fields/text-field.tsx';
import { useRun } from '../window-context.ts';

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

/** The list of revisions; the next one comes with the next issued set. */
export function RevisionsSlip() {
  const { info } = useShownPlan();
  const run = useRun();
  return (
    <Slip title="Revisions">
      {info.revisions.length === 0 ? <p className="quiet">Not issued yet. Issuing a set enters its revision: the sheets carry the table.</p> : null}
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
      <div className="row">
        <button type="button" className="button" onClick={() => run('issue-set')}>
          Issue a set…
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
