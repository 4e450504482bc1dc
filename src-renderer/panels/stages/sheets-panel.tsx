import { useState } from 'react';
import { Slip } from '../bench/slip.tsx';
import { FIRST_CHOICE, PrintForm } from '../dialogs/print-form.tsx';
import { IssuedSetsSlip } from '../revisions/issued-sets-slip.tsx';
import { SheetList } from './sheet-list.tsx';
import { TitleBlockSlip } from './title-block-slip.tsx';

/** Sheets: what will be printed, on which paper, and what it is issued as. */
export function SheetsPanel() {
  const [choice, setChoice] = useState(FIRST_CHOICE);
  return (
    <>
      <Slip title="Print">
        <PrintForm choice={choice} onChoice={setChoice} />
      </Slip>
      <IssuedSetsSlip />
      <TitleBlockSlip />
      <SheetList choice={choice} />
    </>
  );
}
