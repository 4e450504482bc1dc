import { useState } from 'react';
import { editBasis } from '#shared/commands/edit-basis';
import { type BasisOfDesign, usualBasis } from '#shared/model/basis-of-design';
import { countOf } from '../../plan-words.ts';
import { selectCalculations } from '../../store/selectors.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { Slip } from '../bench/slip.tsx';
import { useCommit, useFigures, useShownPlan } from '../bench/use-plan.ts';
import { useRun } from '../window-context.ts';
import { BASIS_GROUPS } from './basis-choices.ts';
import { changedResults } from './basis-changes.ts';
import { BasisCompare } from './basis-compare.tsx';
import { BasisField, fieldText } from './basis-field.tsx';

const MOST_SHOWN = 5;

/** What the choices made since the panel was opened have changed. */
function BasisEffects() {
  const store = useStoreItself();
  const now = useStore(selectCalculations);
  const [before] = useState(() => selectCalculations(store.get()));
  const changes = changedResults(before, now);
  const rooms = new Set(now.filter(({ subject }) => subject.kind === 'enclosure').map(({ subjectName }) => subjectName));
  return (
    <div className="basis-effects" aria-live="polite" data-part="effects">
      {changes.length === 0 ? (
        <p className="quiet">Change a choice: what it does to the sums shows here.</p>
      ) : (
        <dl className="readings">
          {changes.slice(0, MOST_SHOWN).map((change) => (
            <div key={change.key}>
              <dt>
                {change.label}
                {rooms.size > 1 ? `, ${change.of}` : ''}
              </dt>
              <dd>
                {change.before} → <strong>{change.now}</strong>
              </dd>
            </div>
          ))}
        </dl>
      )}
      {changes.length > MOST_SHOWN ? <p className="quiet">and {countOf(changes.length - MOST_SHOWN, 'more result')}</p> : null}
    </div>
  );
}

/** Basis of design: which edition, method and allowance every sum follows. */
export function BasisPanel() {
  const { basis } = useShownPlan();
  const commit = useCommit();
  const run = useRun();
  const figures = useFigures();
  const usual = usualBasis();
  const change = (part: Partial<BasisOfDesign>): void => {
    commit(editBasis(part));
  };
  const [isComparing, compare] = useState(false);
  if (isComparing) return <BasisCompare onClose={() => compare(false)} />;
  const isUsual = (Object.keys(usual) as (keyof BasisOfDesign)[]).every((key) => basis[key] === usual[key]);
  return (
    <div className="basis">
      <p>Where editions or methods differ, this plan follows the choices below. They are printed on the calculation sheets; the adopted code decides.</p>
      <button type="button" className="button" data-action="compare" onClick={() => compare(true)}>
        Compare with another edition or method…
      </button>
      <BasisEffects />
      {BASIS_GROUPS.map(({ title, fields }) => (
        <Slip key={title} title={title}>
          <div className="fields is-single">
            {fields.map((field) => (
              <div key={field.key} className="basis-choice">
                <BasisField field={field} basis={basis} change={change} />
                {basis[field.key] === usual[field.key] ? null : (
                  <p className="field-help">
                    Usually: {fieldText(field, usual, figures)}.{' '}
                    <button type="button" className="link" onClick={() => change({ [field.key]: usual[field.key] })}>
                      Take the usual
                    </button>
                  </p>
                )}
              </div>
            ))}
          </div>
        </Slip>
      ))}
      <div className="row">
        <button type="button" className="button" onClick={() => run('sums')}>
          Show the sums
        </button>
        <button type="button" className="button" disabled={isUsual} onClick={() => change(usual)}>
          Take the usual everywhere
        </button>
      </div>
    </div>
  );
}
