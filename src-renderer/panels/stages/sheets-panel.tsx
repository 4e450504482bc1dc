import { useState } from 'react';
import { Slip } from '../bench/slip.tsx';
import { FIRST_CHOICE, PrintForm } from '../dialogs/print-form.tsx';
import { IssuedSetsSlip } from '../revisions/issued-sets-slip.tsx';
import { useRun } from '../window-context.ts';
import { SheetList } from './sheet-list.tsx';

/** Sheets: what will be printed, on which paper, and what it is issued as. */
export function SheetsPanel() {
  const [choice, setChoice] = useState(FIRST_CHOICE);
  const run = useRun();
  return (
    <>
      <Slip title="Print">
        <PrintForm choice={choice} onChoice={setChoice} />
      </Slip>
      <IssuedSetsSlip />
      <SheetList choice={choice} />
      <Slip title="Title block">
        <p className="quiet">Project, adopted code and edition, who drew and checked it.</p>
        <button type="button" className="button" onClick={() => run('info')}>
          Project, basis and revisions…
        </button>
      </Slip>
    </>
  );
}
