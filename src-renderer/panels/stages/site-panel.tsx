import { faceName, findDatum, fromFace_m } from '#shared/derived/datum';
import { presentEvaluation } from '../../store/selectors.ts';
import type { State } from '../../store/state.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { Readings, Slip } from '../bench/slip.tsx';
import { useFigures } from '../bench/use-plan.ts';
import { RevisionsSlip } from '../dialogs/info-form.tsx';
import { FIRST_CHOICE, PrintForm } from '../dialogs/print-form.tsx';
import { ArmingSlip } from '../site/arming-slip.tsx';
import { ServiceSlip } from '../site/service-slip.tsx';
import { useState } from 'react';

const levelOf = (state: State) => state.session.level;

function PlannedSlip() {
  const { derived } = useStore(presentEvaluation);
  const level = useStore(levelOf);
  const store = useStoreItself();
  const { length } = useFigures();
  const spaces = derived.spaces.filter((space) => space.level.id === level);
  const shown = spaces.map((space) => ({ space, nozzles: derived.nozzles.filter((nozzle) => nozzle.space?.key === space.key) })).filter(({ nozzles }) => nozzles.length > 0);
  return (
    <Slip title="What the fitter measures" part="planned">
      {shown.length === 0 ? <p className="quiet">No nozzle hangs on this level yet: there is nothing to measure.</p> : <p className="quiet">From one datum corner, never from nozzle to nozzle.</p>}
      {shown.map(({ space, nozzles }) => {
        const datum = findDatum(space, nozzles);
        return (
          <div key={space.key}>
            <h4>{space.name}</h4>
            {nozzles.map(({ ref, nozzle, at, localCeiling_m }) => (
              <div key={ref.id} className="planned">
                <button type="button" className="link" onClick={() => store.session({ selection: [ref] })}>
                  {nozzle.name}
                </button>
                <Readings
                  rows={
                    at
                      ? [
                          ...(datum?.faces ?? []).map((face) => ({ label: `From the ${faceName(face)}`, value: length(fromFace_m(face, at)) })),
                          { label: 'Orifice above floor', value: length(at.z) },
                          ...(localCeiling_m === undefined ? [{ label: 'Below the ceiling', value: 'ceiling not known' }] : [{ label: 'Below the ceiling', value: length(localCeiling_m - at.z) }]),
                        ]
                      : [{ label: 'Place', value: 'its pipe end is lost' }]
                  }
                />
              </div>
            ))}
          </div>
        );
      })}
    </Slip>
  );
}

/** Site: what is measured there, the field sheet to write it on, and the revision that takes it back in. */
export function SitePanel() {
  const [choice, setChoice] = useState({ ...FIRST_CHOICE, set: 'field' as 'field' | 'submittal' });
  return (
    <>
      <PlannedSlip />
      <Slip title="Field sheet">
        <p className="quiet">The fitter writes the measured values on it. What differs is moved in the plan here, checked again at once, and noted as a revision.</p>
        <PrintForm choice={choice} onChoice={setChoice} />
      </Slip>
      <ArmingSlip />
      <ServiceSlip />
      <RevisionsSlip />
    </>
  );
}
