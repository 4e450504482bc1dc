import { useMemo } from 'react';
import { type CuredAll, cureAll } from '#shared/commands/cure-all';
import { makeLive } from '#shared/live';
import type { Findings } from '#shared/rules/findings';
import { type Finding, findingKey } from '#shared/rules/finding';
import { goToFinding } from '../../actions/check-actions.ts';
import { countOf } from '../../plan-words.ts';
import { isWorkingOut } from '../../store/selectors.ts';
import { useStore } from '../../store/use-store.ts';
import { Slip } from '../bench/slip.tsx';
import { useActionContext } from '../window-context.ts';
import { VerdictMark } from '../verdict-mark.tsx';

/** More of what was left than this is in the list below anyway. */
const MOST_LEFT = 40;

/** Of longer lists it is not counted what can be cured: every cure would have to be looked for. */
const MOST_COUNTED = 1000;

/** Whether a finding has a cure that one press carries out. */
export const isCurable = ({ verdict, cure, waiver }: Finding): boolean => verdict !== 'ok' && !waiver && cure !== undefined && cure.kind !== 'advice';

/** What was cured, and which stops there were before. */
export interface CureReport extends CuredAll {
  readonly stopsBefore: ReadonlySet<string>;
}

interface CureAllProps {
  readonly found: Findings;
  readonly result: CureReport | null;
  onResult(result: CureReport | null): void;
}

const isOpenNow = (finding: Finding | undefined): boolean => finding !== undefined && finding.verdict !== 'ok' && !finding.waiver;

/** Carries out every ready cure as one step, and tells what it did and what it left. */
export function CureAllSlip({ found, result, onResult }: CureAllProps) {
  const { store } = useActionContext();
  const ready = useMemo(() => (found.open.length > MOST_COUNTED ? undefined : found.open.filter(isCurable).length), [found]);
  const cure = (): void => {
    const { history, discharges } = store.get();
    const live = makeLive();
    const done = cureAll(history.present, (plan) => live.check(plan, discharges).findings);
    const { outcome } = done;
    if (outcome) store.commit(() => outcome);
    onResult({ ...done, stopsBefore: new Set(found.of('stop').map(findingKey)) });
  };
  return (
    <>
      {ready === undefined || ready > 0 ? (
        <div className="cure-all">
          <button type="button" className="button" onClick={cure}>
            Cure all that can be cured{ready === undefined ? '' : ` (${ready})`}
          </button>
          <p className="field-help">One step for undo. A cure that would bring another stop is left out.</p>
        </div>
      ) : null}
      {result ? <CuredReport result={result} found={found} onClose={() => onResult(null)} /> : null}
    </>
  );
}

function CuredReport({ result: { cured, left: told, stopsBefore }, found, onClose }: { readonly result: CureReport; readonly found: Findings; onClose(): void }) {
  const { store } = useActionContext();
  const isBusy = useStore(isWorkingOut);
  // What rests on a discharge was not known while the cures were tried: only what is open now is told.
  const left = told.filter(({ finding }) => isOpenNow(found.withKey(findingKey(finding))));
  const added = found.of('stop').filter((finding) => !finding.waiver && !stopsBefore.has(findingKey(finding)));
  return (
    <Slip
      title={cured.length === 0 ? 'Nothing could be cured' : `Cured: ${countOf(cured.length, 'finding')}`}
      part="cured"
      aside={
        <button type="button" className="button is-slim" onClick={onClose}>
          Put away
        </button>
      }
    >
      {cured.length > 0 ? (
        <ul className="cured-list">
          {cured.map(({ finding, cure }) => (
            <li key={findingKey(finding)}>
              <VerdictMark verdict="ok" silent />
              <span>
                <strong>{finding.name}</strong> {finding.title}: <span className="quiet">{cure.text}</span>
              </span>
            </li>
          ))}
        </ul>
      ) : null}
      {isBusy ? <p className="doubt">The discharge is being worked out again: look at what it brings.</p> : null}
      {added.length > 0 ? (
        <p className="doubt">
          The discharge, worked out again, brings {countOf(added.length, 'stop')} that {added.length === 1 ? 'was' : 'were'} not there: {added.map(({ name, title }) => `${title.toLowerCase()} of ${name}`).join(', ')}. Undo takes all cures back.
        </p>
      ) : null}
      {left.length > 0 ? <h4>Left as they are: {left.length}</h4> : null}
      <ul className="cured-list">
        {left.slice(0, MOST_LEFT).map(({ finding, because }) => (
          <li key={findingKey(finding)}>
            <VerdictMark verdict={finding.verdict} />
            <span>
              <button type="button" className="link" onClick={() => goToFinding(store, finding)}>
                <strong>{finding.name}</strong> {finding.title}
              </button>
              : <span className="quiet">{because}</span>
            </span>
          </li>
        ))}
      </ul>
      {left.length > MOST_LEFT ? <p className="quiet">and {left.length - MOST_LEFT} more in the list below</p> : null}
    </Slip>
  );
}
