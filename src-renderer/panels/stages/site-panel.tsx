import { useState } from 'react';
import { Slip } from '../bench/slip.tsx';
import { RevisionsSlip } from '../dialogs/info-form.tsx';
import { FIRST_CHOICE, PrintForm } from '../dialogs/print-form.tsx';
import { ArmingSlip } from '../site/arming-slip.tsx';
import { MeasuredSlip } from '../site/measured-slip.tsx';
import { ServiceSlip } from '../site/service-slip.tsx';

/** Site: what is measured there, the field sheet to write it on, and the revision that takes it back in. */
export function SitePanel() {
  const [choice, setChoice] = useState({ ...FIRST_CHOICE, set: 'field' as 'field' | 'submittal' });
  return (
    <>
      <MeasuredSlip />
      <Slip title="Field sheet">
        <p className="quiet">The fitter writes the measured values on it. They are brought back above, typed or as a file, and checked at once; what was approved stays as it is.</p>
        <PrintForm choice={choice} onChoice={setChoice} />
      </Slip>
      <ArmingSlip />
      <ServiceSlip />
      <RevisionsSlip />
    </>
  );
}
