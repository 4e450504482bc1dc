import { useState } from 'react';
import { moveThings } from '#shared/commands/move-things';
import type { Ref, RefOf } from '#shared/model/plan';
import { kindWord, thingName, thingsInSentence } from '#shared/model/thing-name';
import { alignSelection, mirrorSelection, turnSelection, wallOfSelection } from '../../actions/arrange-actions.ts';
import { countOf } from '../../plan-words.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { DoWithAngle, DoWithLength } from '../fields/action-fields.tsx';
import { Choice } from '../fields/choice.tsx';
import { useActionContext, useRun } from '../window-context.ts';
import { PipeForm } from './pipe-form.tsx';
import { SeveralDevices } from './several-devices.tsx';
import { Slip } from './slip.tsx';
import { useCommit, useShownPlan } from './use-plan.ts';
import { wallSide } from './wall-words.ts';

/** Sets the selection at a typed distance from a wall. */
export function AlignSlip({ level }: { readonly level: string }) {
  const plan = useShownPlan();
  const context = useActionContext();
  const picked = useStore(wallOfSelection);
  const walls = Object.values(plan.levels[level]?.enclosures ?? {}).flatMap((enclosure) =>
    enclosure.outline.map((corner): RefOf<'wall'> => ({ kind: 'wall', level, enclosure: enclosure.id, id: corner.id })),
  );
  const [chosen, setChosen] = useState('');
  const wall = picked ?? walls.find((each) => `${each.enclosure}/${each.id}` === chosen) ?? walls[0];
  if (!wall) return null;
  const optionOf = (each: RefOf<'wall'>) => {
    const enclosure = plan.levels[level]?.enclosures[each.enclosure];
    const side = enclosure && wallSide(enclosure, each.id);
    return { value: `${each.enclosure}/${each.id}`, label: `${thingName(plan, each)}${side ? ` (${side})` : ''}` };
  };
  return (
    <Slip title="Distance from a wall" part="align">
      <div className="fields">
        {picked ? null : (
          <Choice label="Wall" value={`${wall.enclosure}/${wall.id}`} options={walls.map(optionOf)} onCommit={setChosen} wide help="Or select the wall together with the things: hold Shift and click it." />
        )}
      </div>
      <DoWithLength label={`From ${thingsInSentence(plan, [wall])}`} action="Set" run={(distance_m) => alignSelection(context, wall, distance_m)} />
    </Slip>
  );
}

/** Moving, turning and mirroring what is selected. */
export function ArrangeSlip({ selection }: { readonly selection: readonly Ref[] }) {
  const commit = useCommit();
  const context = useActionContext();
  const run = useRun();
  return (
    <Slip title="Move, turn, mirror">
      <DoWithLength label="East by" action="Move" run={(dx_m) => commit(moveThings(selection, dx_m, 0))} />
      <DoWithLength label="North by" action="Move" run={(dy_m) => commit(moveThings(selection, 0, dy_m))} />
      <DoWithAngle label="Turn to the left by" action="Turn" run={(angle_rad) => turnSelection(context, angle_rad)} />
      <div className="row">
        <button type="button" className="button" onClick={() => mirrorSelection(context, 'north-south')}>
          Mirror east to west
        </button>
        <button type="button" className="button" onClick={() => mirrorSelection(context, 'east-west')}>
          Mirror north to south
        </button>
        <button type="button" className="button" onClick={() => run('duplicate')}>
          Duplicate
        </button>
        <button type="button" className="button" onClick={() => run('delete')}>
          Delete
        </button>
      </div>
    </Slip>
  );
}

/** Form of several things at once. */
export function SeveralForm({ selection }: { readonly selection: readonly Ref[] }) {
  const store = useStoreItself();
  const kinds = [...new Set(selection.map((ref) => ref.kind))];
  const pipes = selection.filter((ref): ref is RefOf<'pipe'> => ref.kind === 'pipe');
  const devices = selection.filter((ref): ref is RefOf<'device'> => ref.kind === 'device');
  return (
    <>
      <Slip title={countOf(selection.length, 'thing')}>
        <ul className="pick-list">
          {kinds.map((kind) => {
            const same = selection.filter((ref) => ref.kind === kind);
            const [first] = same;
            return first ? (
              <li key={kind}>
                <button type="button" title={`Keep only these selected`} onClick={() => store.session({ selection: same })}>
                  <span>{kindWord(first)}</span>
                  <span className="quiet">{same.length}</span>
                </button>
              </li>
            ) : null;
          })}
        </ul>
      </Slip>
      {pipes.length > 1 ? <PipeForm refs={pipes} /> : null}
      {devices.length > 1 ? <SeveralDevices refs={devices} /> : null}
    </>
  );
}
