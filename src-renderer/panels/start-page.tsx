import { DEMOS } from '../actions/plan-actions.ts';
import { startPlan } from '../actions/plan-file.ts';
import { useStore } from '../store/use-store.ts';
import { isBare } from './is-bare.ts';
import { FirstStepsList } from './first-steps-list.tsx';
import { useActionContext, useRun } from './window-context.ts';

/** Three ways to begin, on the empty board. */
export function StartPage() {
  const context = useActionContext();
  const bare = useStore(isBare);
  const run = useRun();
  if (!bare) return null;
  return (
    <section className="start-page" aria-label="Begin">
      <div className="start-ways">
        <h1>What do you have in hand?</h1>
        <button type="button" className="start-way" onClick={() => run('import')}>
          <strong>A floor plan</strong>
          <span>Draw over a DXF, PDF, SVG or picture. You can drop the file here.</span>
        </button>
        <button type="button" className="start-way" onClick={() => run('tool-enclosure')}>
          <strong>A tape measure</strong>
          <span>Start with an empty room and type its walls.</span>
        </button>
        <button type="button" className="start-way" onClick={() => run('open')}>
          <strong>A plan from before</strong>
          <span>Open one that was saved.</span>
        </button>
        <div className="start-demos">
          <span className="quiet">Or look at a finished demo:</span>
          <ul className="row">
            {DEMOS.map((demo) => (
              <li key={demo.name}>
                <button type="button" className="button is-slim" title={demo.does} data-demo={demo.name} onClick={() => void startPlan(context, demo.name)}>
                  {demo.title}
                </button>
              </li>
            ))}
          </ul>
        </div>
      </div>
      <div className="start-steps">
        <h2>Your first drawing, in five steps</h2>
        <FirstStepsList />
        <p className="caution">Nozzlewright helps to lay out and to check. It never replaces the manual and listing of the unit, the adopted code, or licensed practice.</p>
      </div>
    </section>
  );
}
