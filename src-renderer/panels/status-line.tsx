import { formatLength } from '#shared/units/length-text';
import { lengthSystem } from '../plan-words.ts';
import type { State } from '../store/state.ts';
import { useStore } from '../store/use-store.ts';
import { SNAP_WORDS } from '../tools/snap.ts';
import { levelsInOrder, showLevel } from '../actions/view-actions.ts';
import { useToolLook } from '../input/use-tool-look.ts';
import { useActionContext, useRun } from './window-context.ts';

/** A CSS pixel is 1/96 in, so that a metre at full size is this many [px]. */
const FULL_SIZE_px_m = 96 / 0.0254;

const refusalOf = (state: State) => state.session.refusal;
const pointerOf = (state: State) => state.session.pointer;
const scaleOf = (state: State) => state.session.camera.scale_px_m;
const optionsOf = (state: State) => state.session.toolOptions;
const gridOf = (state: State) => state.history.present.settings.grid_m;
const messageOf = (state: State) => state.session.message;
const levelIdOf = (state: State) => state.session.level;
const levelsOf = (state: State) => state.history.present.levels;

function Pointer() {
  const at = useStore(pointerOf);
  const system = useStore(lengthSystem);
  const { snap } = useToolLook();
  return (
    <span className="status-pointer" data-part="pointer">
      {at ? (
        <>
          <span className="status-place">x {formatLength(at.x, system)}</span>
          <span className="status-place">y {formatLength(at.y, system)}</span>
          <span className="quiet">{snap ? SNAP_WORDS[snap.kind] || 'free place' : ''}</span>
        </>
      ) : null}
    </span>
  );
}

const TOGGLES = [
  { action: 'square', option: 'orthogonal', label: 'Square', title: 'Square lines: new lines run straight up or across (Q). Hold Shift for the opposite.' },
  { action: 'snap-grid', option: 'snapGrid', label: 'Grid', title: 'Catch the grid (G). Hold Alt to catch nothing.' },
  { action: 'snap-plan', option: 'snapPlan', label: 'Drawn', title: 'Catch corners, walls and pipe that are drawn (Shift+G)' },
  { action: 'snap-underlay', option: 'snapUnderlay', label: 'Floor plan', title: 'Catch lines of the imported floor plan (Shift+K)' },
] as const;

function Levels() {
  const levels = useStore(levelsOf);
  const level = useStore(levelIdOf);
  const context = useActionContext();
  const { store } = context;
  if (Object.keys(levels).length < 2) return <span className="quiet">{levels[level]?.name}</span>;
  return (
    <select className="level-choice" aria-label="Level" value={level} onChange={(event) => showLevel(context, event.target.value)}>
      {levelsInOrder(store.get())
        .reverse()
        .map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
    </select>
  );
}

/** Last line of the window: what the tool expects, where the pointer is, what it catches, how large the view is. */
export function StatusLine() {
  const refusal = useStore(refusalOf);
  const message = useStore(messageOf);
  const options = useStore(optionsOf);
  const scale_px_m = useStore(scaleOf);
  const grid_m = useStore(gridOf);
  const system = useStore(lengthSystem);
  const run = useRun();
  const { hint } = useToolLook();
  return (
    <div className="status-line">
      <span className="status-hint" role="status" title={refusal ?? hint}>
        {refusal ? (
          <span className="status-refusal">
            <span aria-hidden="true">!</span> {refusal}
          </span>
        ) : message?.kind === 'done' ? (
          <span>
            {message.text} <span className="quiet">{hint}</span>
          </span>
        ) : (
          hint
        )}
      </span>
      <Pointer />
      <fieldset className="status-toggles">
        <legend className="out-of-sight">Catch</legend>
        {TOGGLES.map(({ action, option, label, title }) => (
          <button key={action} type="button" className="toggle" aria-pressed={options[option]} title={title} onClick={() => run(action)}>
            {label}
            {option === 'snapGrid' ? ` ${formatLength(grid_m, system)}` : ''}
          </button>
        ))}
      </fieldset>
      <span className="quiet status-scale" title="Size of the plan on a usual screen">
        1 : {Math.max(1, Math.round(FULL_SIZE_px_m / scale_px_m))}
      </span>
      <button type="button" className="toggle is-plain" title="Change between feet and metric (U)" onClick={() => run('units')} data-part="units">
        {system === 'feet' ? 'Feet' : 'Metric'}
      </button>
      <Levels />
    </div>
  );
}
