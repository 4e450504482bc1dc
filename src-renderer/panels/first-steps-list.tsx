import { useMemo } from 'react';
import { presentEvaluation } from '../store/selectors.ts';
import { useStore } from '../store/use-store.ts';
import { firstSteps } from './first-steps.ts';
import { isBare } from './is-bare.ts';
import { VerdictMark } from './verdict-mark.tsx';
import { useRun } from './window-context.ts';

/** Whether nothing is left of the steps, or the board is bare and the start page shows them. */
export function useFirstDrawingDone(): boolean {
  const bare = useStore(isBare);
  const evaluation = useStore(presentEvaluation);
  return useMemo(() => bare || firstSteps(evaluation.derived.plan, evaluation).every((step) => step.isDone), [bare, evaluation]);
}

/** The five steps of a first drawing, each ticked off as it is done. */
export function FirstStepsList({ onGo }: { onGo?(): void }) {
  const evaluation = useStore(presentEvaluation);
  const run = useRun();
  return (
    <ol className="first-steps">
      {firstSteps(evaluation.derived.plan, evaluation).map((step, i) => (
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
