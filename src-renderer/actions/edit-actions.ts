import { sequence } from '#shared/commands/command';
import { copyThings } from '#shared/commands/copy-things';
import { deleteThings } from '#shared/commands/delete-things';
import { moveThings } from '#shared/commands/move-things';
import { boundsOf } from '#shared/geometry/outline';
import { type PlanPoint, midpoint } from '#shared/geometry/point';
import type { Plan, Ref } from '#shared/model/plan';
import type { State } from '../store/state.ts';
import type { Action, ActionContext } from './action.ts';
import type { DeskState } from './desk.ts';
import { placesOfThing } from './fit-view.ts';

/** The label of a step inside a sentence: "Move nozzle N2" → "move nozzle N2". */
const inSentence = (label: string): string => label.charAt(0).toLowerCase() + label.slice(1);

export const nothingSelected = (state: State): string | null => (state.session.selection.length === 0 ? 'Select something first.' : null);

/** Parts of a larger thing are deleted or copied with it, not on their own. */
const COPIED: readonly Ref['kind'][] = ['enclosure', 'obstruction', 'device', 'adjoining', 'dimension', 'note', 'network', 'cylinder', 'pipe', 'nozzle', 'node'];

const nothingToCopy = (state: State): string | null =>
  state.session.selection.some((ref) => COPIED.includes(ref.kind)) ? null : 'Select something that can be copied first.';

/** Middle of the things, where copying takes hold of them. */
export function middleOf(state: State, refs: readonly Ref[]): PlanPoint {
  const places = refs.flatMap((ref) => placesOfThing(state.history.present, ref));
  if (places.length === 0) return { x: 0, y: 0 };
  const box = boundsOf(places);
  return midpoint({ x: box.minX, y: box.minY }, { x: box.maxX, y: box.maxY });
}

/** A copy stands a few grid steps aside, so that it does not hide the first. */
const asideOf_m = (state: State): number => state.history.present.settings.grid_m * 4;

function take({ store, desk }: ActionContext, cut: boolean): void {
  const state = store.get();
  desk.set({ clipboard: { refs: state.session.selection, cut, from: middleOf(state, state.session.selection) } });
}

/** Level that a thing is on; undefined when it has gone. */
const levelOf = ({ networks }: Plan, ref: Ref): string | undefined => ('level' in ref ? ref.level : networks[ref.kind === 'network' ? ref.id : ref.network]?.level);

/** Onto another floor things come straight above or below, as shafts and typical rooms lie; from there they go on. */
function pasteOnLevel({ store, desk }: Pick<ActionContext, 'store' | 'desk'>, clipboard: NonNullable<DeskState['clipboard']>): void {
  const { level } = store.get().session;
  const copy = copyThings(clipboard.refs, 0, 0, level);
  const done = store.commit(clipboard.cut ? sequence('Move to another level', [copy, deleteThings(clipboard.refs)]) : copy);
  if (done) desk.set({ clipboard: { ...clipboard, cut: false, refs: store.get().session.selection } });
}

function paste({ store, desk }: ActionContext): void {
  const { clipboard } = desk.get();
  if (!clipboard) return;
  const state = store.get();
  const aside_m = asideOf_m(state);
  const { pointer } = state.session;
  const { from } = clipboard;
  if (clipboard.refs.every((ref) => levelOf(state.history.present, ref) !== state.session.level)) {
    pasteOnLevel({ store, desk }, clipboard);
    return;
  }
  // A copy that would lie on what it was made from is laid aside, where it can be seen.
  const isOnItself = !pointer || Math.hypot(pointer.x - from.x, pointer.y - from.y) < state.history.present.settings.grid_m;
  const to = isOnItself ? { x: from.x + aside_m, y: from.y - aside_m } : pointer;
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  if (!clipboard.cut) store.commit(copyThings(clipboard.refs, dx, dy));
  else if (store.commit(moveThings(clipboard.refs, dx, dy))) desk.set({ clipboard: { ...clipboard, cut: false, from: to } });
}

/** Everything that can be selected on the present level. */
export function thingsOfLevel(state: State): Ref[] {
  const plan = state.history.present;
  const { level, layers } = state.session;
  const shown = plan.levels[level];
  if (!shown) return [];
  const free = (name: keyof typeof layers): boolean => layers[name].visible && !layers[name].locked;
  const networks = Object.values(plan.networks).filter((network) => network.level === level);
  return [
    ...(free('enclosures') ? Object.keys(shown.enclosures).map((id): Ref => ({ kind: 'enclosure', level, id })) : []),
    ...(free('obstructions') ? Object.keys(shown.obstructions).map((id): Ref => ({ kind: 'obstruction', level, id })) : []),
    ...(free('devices') ? Object.keys(shown.devices).map((id): Ref => ({ kind: 'device', level, id })) : []),
    ...(free('adjoining') ? Object.keys(shown.adjoining).map((id): Ref => ({ kind: 'adjoining', level, id })) : []),
    ...(free('dimensions') ? Object.keys(shown.dimensions).map((id): Ref => ({ kind: 'dimension', level, id })) : []),
    ...(free('notes') ? Object.keys(shown.notes).map((id): Ref => ({ kind: 'note', level, id })) : []),
    ...networks.flatMap((network): Ref[] => [
      ...(free('pipes')
        ? [
            ...Object.keys(network.cylinders).map((id): Ref => ({ kind: 'cylinder', network: network.id, id })),
            ...Object.keys(network.pipes).map((id): Ref => ({ kind: 'pipe', network: network.id, id })),
            ...Object.keys(network.supports).map((id): Ref => ({ kind: 'support', network: network.id, id })),
          ]
        : []),
      ...(free('nozzles') ? Object.keys(network.nozzles).map((id): Ref => ({ kind: 'nozzle', network: network.id, id })) : []),
    ]),
  ];
}

/** Actions on the history and the selection. */
export const EDIT_ACTIONS: readonly Action[] = [
  {
    id: 'undo',
    name: 'Undo',
    group: 'Edit',
    keys: ['Mod+Z'],
    nameNow: ({ history }) => {
      const step = history.past.at(-1);
      return step ? `Undo ${inSentence(step.label)}` : 'Undo';
    },
    unavailable: ({ history }) => (history.past.length === 0 ? 'Nothing was done yet.' : null),
    run: ({ store }) => store.undo(),
  },
  {
    id: 'redo',
    name: 'Redo',
    group: 'Edit',
    keys: ['Mod+Shift+Z', 'Mod+Y'],
    nameNow: ({ history }) => {
      const step = history.future[0];
      return step ? `Redo ${inSentence(step.label)}` : 'Redo';
    },
    unavailable: ({ history }) => (history.future.length === 0 ? 'Nothing was undone.' : null),
    run: ({ store }) => store.redo(),
  },
  { id: 'cut', name: 'Cut', group: 'Edit', keys: ['Mod+X'], also: 'move paste', unavailable: nothingToCopy, run: (context) => take(context, true) },
  { id: 'copy', name: 'Copy', group: 'Edit', keys: ['Mod+C'], unavailable: nothingToCopy, run: (context) => take(context, false) },
  {
    id: 'paste',
    name: 'Paste at the pointer',
    group: 'Edit',
    keys: ['Mod+V'],
    unavailable: (_, { clipboard }) => (clipboard ? null : 'Nothing was copied yet.'),
    run: paste,
  },
  {
    id: 'duplicate',
    name: 'Duplicate',
    group: 'Edit',
    keys: ['Mod+D'],
    unavailable: nothingToCopy,
    run: ({ store }) => {
      const aside_m = asideOf_m(store.get());
      store.commit(copyThings(store.get().session.selection, aside_m, -aside_m));
    },
  },
  {
    id: 'delete',
    name: 'Delete',
    group: 'Edit',
    keys: ['Delete', 'Backspace'],
    also: 'remove erase',
    unavailable: nothingSelected,
    run: ({ store }) => {
      if (store.commit(deleteThings(store.get().session.selection))) store.session({ selection: [] });
    },
  },
  {
    id: 'select-all',
    name: 'Select everything on this level',
    group: 'Edit',
    keys: ['Mod+A'],
    run: ({ store }) => store.session({ selection: thingsOfLevel(store.get()), tool: 'select' }),
  },
  {
    id: 'select-same',
    name: 'Select everything of the same kind',
    group: 'Edit',
    keys: ['Shift+S'],
    also: 'similar',
    unavailable: nothingSelected,
    run: ({ store }) => {
      const state = store.get();
      const kinds = new Set(state.session.selection.map((ref) => ref.kind));
      store.session({ selection: thingsOfLevel(state).filter((ref) => kinds.has(ref.kind)) });
    },
  },
  {
    id: 'select-nothing',
    name: 'Select nothing',
    group: 'Edit',
    keys: ['Mod+Shift+A'],
    unavailable: nothingSelected,
    run: ({ store }) => store.session({ selection: [] }),
  },
];

