import { editLevel } from '#shared/commands/edit-level';
import type { Level, Ref } from '#shared/model/plan';
import { thingName } from '#shared/model/thing-name';
import { levelsInOrder, showLevel } from '../../actions/view-actions.ts';
import type { State } from '../../store/state.ts';
import { countOf } from '../../plan-words.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { Slip } from '../bench/slip.tsx';
import { useCommit, useFigures } from '../bench/use-plan.ts';
import { LengthField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { useActionContext, useRun } from '../window-context.ts';
import { unknownsOf } from './unknowns.ts';

const presentPlan = (state: State) => state.history.present;
const levelOf = (state: State) => state.session.level;

function LevelsSlip() {
  const plan = useStore(presentPlan);
  const current = useStore(levelOf);
  const context = useActionContext();
  const { store } = context;
  const commit = useCommit();
  const levels = levelsInOrder(store.get()).reverse();
  const run = useRun();
  const change = (level: Level, part: Partial<Level>): void => {
    commit(editLevel(level.id, part));
  };
  const shown = plan.levels[current];
  return (
    <Slip
      title="Levels"
      aside={
        <button type="button" className="button is-slim" onClick={() => run('add-level')}>
          Add a level
        </button>
      }
    >
      {levels.length > 1 ? (
        <ul className="pick-list">
          {levels.map((level) => (
            <li key={level.id}>
              <button type="button" aria-current={level.id === current} onClick={() => showLevel(context, level.id)}>
                <span>{level.name}</span>
                <span className="quiet">{countOf(Object.keys(level.enclosures).length, 'enclosure')}</span>
              </button>
            </li>
          ))}
        </ul>
      ) : null}
      {shown ? (
        <div className="fields">
          <TextField label="Name of this level" value={shown.name} required="A level needs a name." onCommit={(name) => change(shown, { name })} />
          <LengthField label="Finished floor" value={shown.floorElevation_m} onCommit={(floorElevation_m) => change(shown, { floorElevation_m })} />
        </div>
      ) : null}
    </Slip>
  );
}

function FloorPlansSlip() {
  const plan = useStore(presentPlan);
  const level = useStore(levelOf);
  const store = useStoreItself();
  const run = useRun();
  const underlays = Object.values(plan.levels[level]?.underlays ?? {});
  return (
    <Slip
      title="Floor plans"
      aside={
        <button type="button" className="button is-slim" onClick={() => run('import')}>
          Import…
        </button>
      }
    >
      {underlays.length === 0 ? <p className="quiet">None on this level. Import a DXF, PDF, SVG, PNG or JPEG, or drop the file onto the board.</p> : null}
      <ul className="pick-list">
        {underlays.map((underlay) => (
          <li key={underlay.id}>
            <button type="button" onClick={() => store.session({ selection: [{ kind: 'underlay', level, id: underlay.id }] })}>
              <span>{underlay.name}</span>
              <span className={underlay.metresPerUnit === null ? 'is-open' : 'quiet'}>{underlay.metresPerUnit === null ? 'scale not set' : underlay.calibration === 'file-units' ? 'scale from the file' : 'scale measured'}</span>
            </button>
          </li>
        ))}
      </ul>
    </Slip>
  );
}

function EnclosuresSlip() {
  const plan = useStore(presentPlan);
  const level = useStore(levelOf);
  const store = useStoreItself();
  const run = useRun();
  const { length } = useFigures();
  const enclosures = Object.values(plan.levels[level]?.enclosures ?? {});
  return (
    <Slip
      title="Enclosures"
      aside={
        <button type="button" className="button is-slim" onClick={() => run('tool-enclosure')}>
          Draw one
        </button>
      }
    >
      {enclosures.length === 0 ? <p className="quiet">None on this level yet.</p> : null}
      <ul className="pick-list">
        {enclosures.map((enclosure) => (
          <li key={enclosure.id}>
            <button type="button" onClick={() => store.session({ selection: [{ kind: 'enclosure', level, id: enclosure.id }] })}>
              <span>{enclosure.name}</span>
              <span className={enclosure.height_m === null ? 'is-open' : 'quiet'}>{enclosure.height_m === null ? 'height unknown' : `${length(enclosure.height_m)} high`}</span>
            </button>
          </li>
        ))}
      </ul>
    </Slip>
  );
}

function UnknownsSlip() {
  const plan = useStore(presentPlan);
  const store = useStoreItself();
  const unknowns = unknownsOf(plan);
  const isBare = Object.values(plan.levels).every((level) => Object.keys(level.enclosures).length + Object.keys(level.underlays).length === 0);
  const go = (ref: Ref): void => store.session({ selection: [ref], level: 'level' in ref ? ref.level : store.get().session.level });
  if (isBare) return null;
  return (
    <Slip title={`Not yet known: ${unknowns.length}`} part="unknowns">
      {unknowns.length === 0 ? <p className="quiet">Nothing that the checks need is missing.</p> : <p className="quiet">What needs one of these is not checked. Press a line to enter it.</p>}
      <ul className="pick-list">
        {unknowns.map(({ ref, what }) => (
          <li key={`${ref.kind}-${ref.id}-${what}`}>
            <button type="button" onClick={() => go(ref)}>
              <span>{thingName(plan, ref)}</span>
              <span className="is-open">{what}</span>
            </button>
          </li>
        ))}
      </ul>
    </Slip>
  );
}

/** Survey: levels, floor plans, rooms, and what nobody knows yet. */
export const SurveyPanel = () => (
  <>
    <FloorPlansSlip />
    <EnclosuresSlip />
    <UnknownsSlip />
    <LevelsSlip />
  </>
);
