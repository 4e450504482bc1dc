import { alignToWall } from '#shared/commands/align-to-wall';
import { mirrorThings } from '#shared/commands/mirror-things';
import { moveThings } from '#shared/commands/move-things';
import { rotateThings } from '#shared/commands/rotate-things';
import { turnNozzle } from '#shared/commands/turn-nozzle';
import type { RefOf } from '#shared/model/plan';
import type { State } from '../store/state.ts';
import { slideSupports } from '../tools/support-place.ts';
import type { Action, ActionContext } from './action.ts';
import { middleOf, nothingSelected } from './edit-actions.ts';

/** Finest nudge of a plan in metric units and in feet [m]. */
const FINE_m = { metric: 0.001, feet: 0.0254 / 16 } as const;

/** One nudge of the selection in grid steps, or of the view when nothing is selected. */
function nudge({ store }: ActionContext, x: number, y: number, size: 'grid' | 'ten' | 'fine'): void {
  const { history, session } = store.get();
  const { grid_m, lengths } = history.present.settings;
  const step_m = size === 'grid' ? grid_m : size === 'ten' ? 10 * grid_m : FINE_m[lengths];
  const supports = session.selection.filter((ref): ref is RefOf<'support'> => ref.kind === 'support');
  if (supports.length > 0 && supports.length === session.selection.length) {
    store.commit(slideSupports(history.present, supports, x * step_m, y * step_m));
    return;
  }
  if (session.selection.length > 0) {
    store.commit(moveThings(session.selection, x * step_m, y * step_m));
    return;
  }
  const shift_m = 80 / session.camera.scale_px_m;
  store.session({ camera: { ...session.camera, at: { x: session.camera.at.x + x * shift_m, y: session.camera.at.y + y * shift_m } } });
}

const DIRECTIONS = [
  ['Left', 'west', -1, 0],
  ['Right', 'east', 1, 0],
  ['Up', 'north', 0, 1],
  ['Down', 'south', 0, -1],
] as const;

/** Turns the selection about its middle; one nozzle alone turns about its own axis. */
export function turnSelection({ store }: Pick<ActionContext, 'store'>, angle_rad: number): void {
  const state = store.get();
  const { selection } = state.session;
  const [only] = selection;
  if (selection.length === 1 && only?.kind === 'nozzle') {
    const nozzle = state.history.present.networks[only.network]?.nozzles[only.id];
    if (nozzle) store.commit(turnNozzle(only, nozzle.rotation_rad + angle_rad));
  } else store.commit(rotateThings(selection, middleOf(state, selection), angle_rad));
}

/** Mirrors the selection about a line through its middle. */
export function mirrorSelection({ store }: Pick<ActionContext, 'store'>, line: 'north-south' | 'east-west'): void {
  const state = store.get();
  const middle = middleOf(state, state.session.selection);
  const other = line === 'north-south' ? { x: middle.x, y: middle.y + 1 } : { x: middle.x + 1, y: middle.y };
  store.commit(mirrorThings(state.session.selection, middle, other));
}

/** Puts the things at a distance from a wall. */
export const alignSelection = ({ store }: Pick<ActionContext, 'store'>, wall: RefOf<'wall'>, distance_m: number): boolean =>
  store.commit(alignToWall(store.get().session.selection.filter((ref) => ref.kind !== 'wall'), wall, distance_m));

/** The one wall in the selection that the others can be aligned to. */
export const wallOfSelection = (state: State): RefOf<'wall'> | undefined => {
  const walls = state.session.selection.filter((ref): ref is RefOf<'wall'> => ref.kind === 'wall');
  return walls.length === 1 && state.session.selection.length > 1 ? walls[0] : undefined;
};

/** Actions that move the selection about. */
export const ARRANGE_ACTIONS: readonly Action[] = [
  { id: 'turn-left', name: 'Turn a quarter to the left', group: 'Arrange', keys: ['R'], also: 'rotate 90 counter-clockwise', unavailable: nothingSelected, run: (context) => turnSelection(context, Math.PI / 2) },
  { id: 'turn-right', name: 'Turn a quarter to the right', group: 'Arrange', keys: ['Shift+R'], also: 'rotate 90 clockwise', unavailable: nothingSelected, run: (context) => turnSelection(context, -Math.PI / 2) },
  { id: 'mirror-across', name: 'Mirror east to west', group: 'Arrange', keys: ['Shift+M'], also: 'flip east west', unavailable: nothingSelected, run: (context) => mirrorSelection(context, 'north-south') },
  { id: 'mirror-along', name: 'Mirror north to south', group: 'Arrange', keys: ['Shift+N'], also: 'flip north south', unavailable: nothingSelected, run: (context) => mirrorSelection(context, 'east-west') },
  {
    id: 'align',
    name: 'Set at a distance from a wall…',
    group: 'Arrange',
    keys: ['Shift+W'],
    also: 'align offset typed distance',
    unavailable: nothingSelected,
    run: ({ desk }) => {
      desk.set({ bench: { kind: 'selection' } });
      requestAnimationFrame(() => document.querySelector<HTMLElement>('[data-part="align"] select, [data-part="align"] input')?.focus());
    },
  },
  ...DIRECTIONS.flatMap(([key, word, x, y]): Action[] => [
    { id: `nudge-${word}`, name: `Nudge ${word}`, group: 'Arrange', keys: [key], also: 'move arrow step', run: (context) => nudge(context, x, y, 'grid') },
    { id: `nudge-${word}-ten`, name: `Nudge ${word} ten steps`, group: 'Arrange', keys: [`Shift+${key}`], also: 'move arrow', run: (context) => nudge(context, x, y, 'ten') },
    { id: `nudge-${word}-fine`, name: `Nudge ${word} finely`, group: 'Arrange', keys: [`Alt+${key}`], also: 'move arrow', run: (context) => nudge(context, x, y, 'fine') },
  ]),
];
