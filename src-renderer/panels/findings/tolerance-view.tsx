import { editSettings } from '#shared/commands/edit-settings';
import { toleranceStack } from '#shared/margins/tolerance-stack';
import { findingKey } from '#shared/rules/finding';
import { useMemo } from 'react';
import { countOf } from '../../plan-words.ts';
import { presentEvaluation } from '../../store/selectors.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { LengthField } from '../fields/quantity-field.tsx';
import { useFigures } from '../bench/use-plan.ts';

/** Findings listed at once. */
const MOST = 60;

/** What is kept as drawn and could fail as built, when every dimension is off by the site tolerance. */
export function ToleranceView() {
  const evaluation = useStore(presentEvaluation);
  const store = useStoreItself();
  const { length } = useFigures();
  const { tolerance_m, couldFlip, safe, untold } = useMemo(() => toleranceStack(evaluation.derived, evaluation.findings), [evaluation]);
  return (
    <div data-part="tolerance">
      <div className="fields">
        <LengthField label="Every dimension on site, plus or minus" value={tolerance_m} least={0} most={1} onCommit={(siteTolerance_m) => store.commit(editSettings({ siteTolerance_m }))} />
      </div>
      <p className="field-help">
        {couldFlip.length === 0
          ? `${countOf(safe.length, 'kept check')} stay kept even when all dimensions are off at their worst.`
          : `${countOf(couldFlip.length, 'check is', 'checks are')} kept as drawn and could fail when all dimensions are off at their worst. Give them more room, or measure them first on site.`}
      </p>
      <ul className="tolerance-list">
        {couldFlip.slice(0, MOST).map(({ finding, margin_m, worst_m }) => (
          <li key={findingKey(finding)}>
            <button type="button" className="room" onClick={() => store.session({ selection: 'kind' in finding.subject && finding.subject.kind !== 'plan' && finding.subject.kind !== 'profile' ? [finding.subject] : [], finding: findingKey(finding) })}>
              <strong>
                {finding.name}: {finding.title.toLowerCase()}
              </strong>
              <span className="quiet">
                {length(margin_m)} left as drawn, {Number.isFinite(worst_m) ? `could fail by ${length(-worst_m)}` : 'could come under another part of the ceiling'}
              </span>
            </button>
          </li>
        ))}
      </ul>
      {couldFlip.length > MOST ? <p className="quiet">And {couldFlip.length - MOST} more.</p> : null}
      <p className="quiet">
        Told of distances to walls, drops below the ceiling, free jets, pipe lengths and rail heights ({couldFlip.length + safe.length} kept checks). The other {untold} kept checks are not told here.
      </p>
    </div>
  );
}
