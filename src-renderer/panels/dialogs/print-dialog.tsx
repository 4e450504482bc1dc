import { useState } from 'react';
import { Dialog } from './dialog.tsx';
import { FIRST_CHOICE, PrintForm } from './print-form.tsx';
import { useCloseDialog } from './use-close-dialog.ts';

/** Printing a set of sheets from anywhere. */
export function PrintDialog() {
  const close = useCloseDialog();
  const [choice, setChoice] = useState(FIRST_CHOICE);
  return (
    <Dialog name="print" title="Print sheets" onClose={close} size="small">
      <PrintForm choice={choice} onChoice={setChoice} />
    </Dialog>
  );
}
