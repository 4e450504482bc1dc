import { editSettings } from '#shared/commands/edit-settings';
import { usualGrid_m } from '#shared/model/plan';
import { zoomedAt } from '../canvas/viewport.ts';
import type { LayerName, State, Store } from '../store/state.ts';
import type { Action, ActionContext } from './action.ts';
import { fitLevel, fitPlaces, placesOfThing } from './fit-view.ts';

/** Levels from the lowest floor to the highest. */
export const levelsInOrder = (state: State) => Object.values(state.history.present.levels).sort((a, b) => a.floorElevation_m - b.floorElevation_m);

type Shown = Pick<ActionContext, 'store' | 'drawings'>;

function toLevel(context: Shown, by: 1 | -1): void {
  const { store } = context;
  const levels = levelsInOrder(store.get());
  const next = levels[levels.findIndex((level) => level.id === store.get().session.level) + by];
  if (next) showLevel(context, next.id);
}

/** Shows another level. */
export function showLevel(context: Shown, level: string): void {
  context.store.session({ level, selection: [], cut: null });
  fitLevel(context);
}

const noLevel = (by: 1 | -1) => (state: State): string | null => {
  const levels = levelsInOrder(state);
  return levels[levels.findIndex((level) => level.id === state.session.level) + by] ? null : by > 0 ? 'This is the highest level.' : 'This is the lowest level.';
};

function zoom(store: Store, factor: number): void {
  const { camera, board } = store.get().session;
  store.session({ camera: zoomedAt({ camera, width: board.width, height: board.height }, { x: board.width / 2, y: board.height / 2 }, factor) });
}

/** Layers as the user calls them. */
export const LAYER_WORDS: Readonly<Record<LayerName, string>> = {
  underlays: 'Floor plans',
  adjoining: 'Adjoining spaces',
  enclosures: 'Enclosures',
  obstructions: 'Obstacles',
  devices: 'Detectors, signs and buttons',
  pipes: 'Pipe and cylinders',
  nozzles: 'Nozzles',
  coverage: 'Coverage',
  jets: 'Jets',
  dimensions: 'Dimensions',
  notes: 'Notes',
  findings: 'Findings',
  grid: 'Grid',
};

const LAYERS = Object.keys(LAYER_WORDS) as LayerName[];
/** Layers with nothing in them that could be picked. */
export const NEVER_PICKED: readonly LayerName[] = ['coverage', 'jets', 'findings', 'grid'];
const LAYER_KEYS: Readonly<Partial<Record<LayerName, readonly string[]>>> = { coverage: ['Shift+C'], jets: ['Shift+J'], findings: ['Shift+V'], underlays: ['Shift+U'] };

/** Shows or hides a layer, or locks and frees it. */
export const changeLayer = (store: Store, name: LayerName, change: Partial<State['session']['layers'][LayerName]>): void =>
  store.session(({ layers }) => ({ layers: { ...layers, [name]: { ...layers[name], ...change } } }));

const toggleOption = (option: 'orthogonal' | 'snapGrid' | 'snapPlan' | 'snapUnderlay') => ({ store }: { readonly store: Store }): void =>
  store.session(({ toolOptions }) => ({ toolOptions: { ...toolOptions, [option]: !toolOptions[option] } }));

/** Height of the section strip when it is pulled up [px]. */
const STRIP_HEIGHT_px = 200;

/** Actions on what is shown and how. */
export const VIEW_ACTIONS: readonly Action[] = [
  { id: 'fit', name: 'Show the whole level', group: 'View', keys: ['F'], also: 'fit zoom all extents', run: fitLevel },
  {
    id: 'fit-selection',
    name: 'Show the selection',
    group: 'View',
    keys: ['Shift+F'],
    also: 'zoom to selected',
    unavailable: (state) => (state.session.selection.length === 0 ? 'Select something first.' : null),
    run: ({ store }) => {
      const { history, session } = store.get();
      fitPlaces(store, session.selection.flatMap((ref) => placesOfThing(history.present, ref)), 2);
    },
  },
  { id: 'zoom-in', name: 'Zoom in', group: 'View', keys: ['+'], also: 'closer larger', run: ({ store }) => zoom(store, 1.25) },
  { id: 'zoom-out', name: 'Zoom out', group: 'View', keys: ['-'], also: 'smaller', run: ({ store }) => zoom(store, 0.8) },
  { id: 'level-up', name: 'Go up one level', group: 'View', keys: ['PageUp'], also: 'floor storey', unavailable: noLevel(1), run: (context) => toLevel(context, 1) },
  { id: 'level-down', name: 'Go down one level', group: 'View', keys: ['PageDown'], also: 'floor storey', unavailable: noLevel(-1), run: (context) => toLevel(context, -1) },
  { id: 'layers', name: 'Layers: show, hide and lock', group: 'View', keys: ['L'], also: 'visibility grid spacing distance', run: ({ desk }) => desk.set({ bench: { kind: 'layers' } }) },
  ...LAYERS.map(
    (name): Action => ({
      id: `layer-${name}`,
      name: `Show or hide: ${LAYER_WORDS[name].toLowerCase()}`,
      nameNow: ({ session }) => `${session.layers[name].visible ? 'Hide' : 'Show'}: ${LAYER_WORDS[name].toLowerCase()}`,
      group: 'View',
      keys: LAYER_KEYS[name],
      also: 'layer toggle visible',
      run: ({ store }) => changeLayer(store, name, { visible: !store.get().session.layers[name].visible }),
    }),
  ),
  ...LAYERS.filter((name) => !NEVER_PICKED.includes(name)).map(
    (name): Action => ({
      id: `lock-${name}`,
      name: `Lock or free: ${LAYER_WORDS[name].toLowerCase()}`,
      nameNow: ({ session }) => `${session.layers[name].locked ? 'Free' : 'Lock'}: ${LAYER_WORDS[name].toLowerCase()}`,
      group: 'View',
      also: 'layer unlock protect pick',
      run: ({ store }) => changeLayer(store, name, { locked: !store.get().session.layers[name].locked }),
    }),
  ),
  {
    id: 'section',
    name: 'Pull up or put away the section strip',
    group: 'View',
    keys: ['Shift+X'],
    also: 'side view height elevation toggle',
    run: ({ store }) => store.session(({ sectionHeight_px }) => ({ sectionHeight_px: sectionHeight_px > 40 ? 0 : STRIP_HEIGHT_px })),
  },
  ...(['isometric', 'cylinder-wall'] as const).map(
    (kind): Action => ({
      id: kind,
      name: kind === 'isometric' ? 'Isometric beside the plan' : 'Cylinder wall beside the plan',
      nameNow: ({ session }) => `${session.sideView === kind ? 'Put away' : 'Show'} the ${kind === 'isometric' ? 'isometric' : 'cylinder wall'} beside the plan`,
      group: 'View',
      keys: [kind === 'isometric' ? 'I' : 'Shift+I'],
      also: kind === 'isometric' ? 'three dimensional pipe view side' : 'elevation rail clamp gauge outlet side view',
      run: ({ store }) => store.session(({ sideView }) => ({ sideView: sideView === kind ? 'none' : kind })),
    }),
  ),
  { id: 'square', name: 'Square lines on or off', group: 'View', keys: ['Q'], also: 'orthogonal right angle lock', run: toggleOption('orthogonal') },
  { id: 'snap-grid', name: 'Catch the grid: on or off', group: 'View', keys: ['G'], also: 'snap toggle', run: toggleOption('snapGrid') },
  { id: 'snap-plan', name: 'Catch what is drawn: on or off', group: 'View', keys: ['Shift+G'], also: 'snap toggle', run: toggleOption('snapPlan') },
  { id: 'snap-underlay', name: 'Catch the floor plan: on or off', group: 'View', keys: ['Shift+K'], also: 'snap toggle underlay', run: toggleOption('snapUnderlay') },
  {
    id: 'units',
    name: 'Change between feet and metric',
    group: 'View',
    keys: ['U'],
    nameNow: (state) => (state.history.present.settings.lengths === 'feet' ? 'Show lengths in metres' : 'Show lengths in feet and inches'),
    also: 'units inches metres millimetres imperial',
    run: ({ store }) => {
      const { lengths: before, grid_m } = store.get().history.present.settings;
      const lengths = before === 'feet' ? 'metric' : 'feet';
      // A grid that nobody chose goes with the units: 76 mm would be nobody's grid.
      store.commit(editSettings(grid_m === usualGrid_m(before) ? { lengths, grid_m: usualGrid_m(lengths) } : { lengths }));
    },
  },
  ...(['light', 'dark', 'system'] as const).map(
    (theme): Action => ({
      id: `theme-${theme}`,
      name: theme === 'system' ? 'Ground as the system has it' : theme === 'light' ? 'Paper-white ground' : 'Slate ground',
      group: 'View',
      also: `theme colours ${theme} mode`,
      unavailable: (state) => (state.session.theme === theme ? 'It is so now.' : null),
      run: ({ store }) => store.session({ theme }),
    }),
  ),
];
