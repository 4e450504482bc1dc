import { selectEvaluation, shownPlan } from '../store/selectors.ts';
import type { State } from '../store/state.ts';
import { useStore } from '../store/use-store.ts';
import { firstSteps } from './first-steps.ts';
import { isBare } from './is-bare.ts';
import { VerdictMark } from './verdict-mark.tsx';
import { useRun } from './window-context.ts';

/** Whether nothing is left of the steps, or the board is bare and the start page shows them. */
export const isFirstDrawingDone = (state: State): boolean => isBare(state) || firstSteps(shownPlan(state), selectEvaluation(state)).every((step) => step.isDone);

/** The five steps of a first drawing, each ticked off as it is done. */
export function FirstStepsList({ onGo }: { onGo?(): void }) {
  const plan = useStore(shownPlan);
  const evaluation = useStore(selectEvaluation);
  const run = useRun();
  return (
    <ol className="first-steps">
      {firstSteps(plan, evaluation).map((step, i) => (
        <li key={step.title} className={step.isDone ? 'first-step is-done' : 'first-step'}>
          <button
            type="button"
            className="first-step-go"
            onClick={() => {
              onGo?.();
              run(step.action);
            }}
          >
            <span className="step-number">{step.isDone ? <VerdictMark verdict="ok" silent /> : i + 1}</span>
            <span className="first-step-text">
              <strong>
                {step.title}
                {step.isDone ? <span className="out-of-sight"> (done)</span> : null}
              </strong>
              <span className="quiet">{step.how}</span>
            </span>
          </button>
        </li>
      ))}
    </ol>
  );
}
