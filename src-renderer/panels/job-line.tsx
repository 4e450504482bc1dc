import { useMemo } from 'react';
import { findAction } from '../actions/actions.ts';
import { planName } from '../actions/plan-file.ts';
import { isChanged } from '../actions/unsaved.ts';
import { STAGE_WORDS } from '../plan-words.ts';
import { presentEvaluation } from '../store/selectors.ts';
import { STAGES, type State } from '../store/state.ts';
import { useStore } from '../store/use-store.ts';
import { MainMenu } from './main-menu.tsx';
import { openInStages } from './stage-open.ts';
import { useRun } from './window-context.ts';

const stageOf = (state: State) => state.session.stage;
const hostOf = (state: State) => state.session.host;
const fileOf = (state: State) => state.session.file;
const undoName = (state: State) => findAction('undo')?.nameNow?.(state) ?? 'Undo';
const redoName = (state: State) => findAction('redo')?.nameNow?.(state) ?? 'Redo';
const canUndo = (state: State) => state.history.past.length > 0;
const canRedo = (state: State) => state.history.future.length > 0;

function PlanName() {
  const name = useStore(planName);
  const changed = useStore(isChanged);
  const file = useStore(fileOf);
  const folder = useStore(hostOf)?.plansFolder;
  const run = useRun();
  const state = changed ? 'not saved' : file?.ref ? 'saved' : 'not yet saved';
  return (
    <button
      type="button"
      className="plan-name"
      onClick={() => run(changed || !file?.ref ? 'save' : 'info')}
      title={changed || !file?.ref ? `Save this plan${folder ? ` (plans are kept in ${folder})` : ''}` : 'Project, basis and revisions'}
    >
      <strong>{name}</strong>
      <span className={changed ? 'plan-state is-changed' : 'plan-state'}>{state}</span>
    </button>
  );
}

function Stages() {
  const stage = useStore(stageOf);
  const evaluation = useStore(presentEvaluation);
  const run = useRun();
  const open = useMemo(() => openInStages(evaluation.derived.plan, evaluation), [evaluation]);
  return (
    <nav className="stages" aria-label="Where the job stands">
      {STAGES.map((id) => (
        <button
          key={id}
          type="button"
          className="stage"
          data-stage={id}
          aria-current={id === stage ? 'step' : undefined}
          title={STAGE_WORDS[id].does}
          onClick={() => run(`stage-${id}`)}
        >
          <span className="stage-name">{STAGE_WORDS[id].name}</span>
          <span className={open[id].isGrave ? 'stage-open is-grave' : open[id].isDone ? 'stage-open is-done' : 'stage-open'}>{open[id].text}</span>
        </button>
      ))}
    </nav>
  );
}

function UndoRedo() {
  const run = useRun();
  const names = [useStore(undoName), useStore(redoName)];
  const can = [useStore(canUndo), useStore(canRedo)];
  return (
    <div className="undo-redo">
      {(['undo', 'redo'] as const).map((id, i) => (
        <button key={id} type="button" className="button is-plain is-slim" disabled={!can[i]} title={names[i]} aria-label={names[i]} onClick={() => run(id)}>
          <svg viewBox="0 0 20 20" width="18" height="18" aria-hidden="true" className={id === 'redo' ? 'line-icon is-flipped' : 'line-icon'}>
            <path d="M4 8h8a4 4 0 0 1 0 8H8M8 4 4 8l4 4" />
          </svg>
        </button>
      ))}
    </div>
  );
}

/** The line on top: the plan, how far the job is, and the way to every action. */
export function JobLine() {
  const run = useRun();
  return (
    <header className="job-line">
      <MainMenu />
      <PlanName />
      <UndoRedo />
      <Stages />
      <button type="button" className="button find-action" aria-label="Find an action" onClick={() => run('actions')} title="Type what you want to do (F2 or Ctrl+K)">
        <span className="find-words">Find an action</span> <span className="key">F2</span>
      </button>
    </header>
  );
}
