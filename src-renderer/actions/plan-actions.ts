import type { Action } from './action.ts';
import { keepBytes, pickAndOpen, planName, save, saveUnder, showProblem, startPlan } from './plan-file.ts';
import { isChanged } from './unsaved.ts';

/** The finished demos, in the order in which a newcomer should meet them. */
export const DEMOS = [
  { name: 'F1', title: 'Signal hut', does: 'One small room, one cylinder, one nozzle' },
  { name: 'F2', title: 'Archive annex', does: 'An L-shaped room with racks, beams and an under-floor void' },
  { name: 'F3', title: 'Control floor', does: 'Six rooms on one floor, each with its own unit' },
  { name: 'F2-faults', title: 'Archive annex with faults', does: 'The annex with five mistakes to find and cure' },
  { name: 'F3-faults', title: 'Control floor with faults', does: 'The floor with four mistakes to find and cure' },
] as const;

/** Actions on the plan as a file. */
export const PLAN_ACTIONS: readonly Action[] = [
  { id: 'new', name: 'New plan', group: 'Plan', keys: ['Alt+N'], also: 'empty start', run: (context) => startPlan(context, null) },
  ...DEMOS.map(
    (demo): Action => ({
      id: `demo-${demo.name}`,
      name: `Open demo: ${demo.title.charAt(0).toLowerCase()}${demo.title.slice(1)}`,
      group: 'Plan',
      also: `example sample ${demo.name} ${demo.does}`,
      run: (context) => startPlan(context, demo.name),
    }),
  ),
  { id: 'open', name: 'Open plan…', group: 'Plan', keys: ['Mod+O'], also: 'load recent file', run: pickAndOpen },
  {
    id: 'save',
    name: 'Save plan',
    group: 'Plan',
    keys: ['Mod+S'],
    unavailable: (state) => (state.session.file?.ref && !isChanged(state) ? 'Everything is saved.' : null),
    run: async (context) => {
      await save(context);
    },
  },
  {
    id: 'save-as',
    name: 'Save plan as…',
    group: 'Plan',
    keys: ['Mod+Shift+S'],
    also: 'copy another name',
    run: async (context) => {
      if (context.store.get().session.host?.hasDialogs) await saveUnder(context, planName(context.store.get()));
      else context.store.session({ dialog: 'save-as' });
    },
  },
  {
    id: 'download',
    name: 'Save a copy elsewhere…',
    group: 'Plan',
    also: 'download export file',
    run: async (context) => {
      const packed = await context.host.packPlan({ plan: context.store.get().history.present });
      if (packed.ok) await keepBytes(context, `${planName(context.store.get())}.nzw`, packed.value.bytes, 'application/zip');
      else showProblem(context, packed.problem);
    },
  },
  {
    id: 'import',
    name: 'Import a floor plan…',
    group: 'Plan',
    keys: ['Mod+I'],
    also: 'underlay background dxf pdf svg png jpeg picture scan draw over',
    run: ({ store, desk }) => {
      desk.set({ importing: null });
      store.session({ dialog: 'import' });
    },
  },
  { id: 'info', name: 'Project, basis and revisions…', group: 'Plan', keys: ['Mod+Shift+I'], also: 'title block client site code edition drawn checked', run: ({ store }) => store.session({ dialog: 'info' }) },
  {
    id: 'basis',
    name: 'Basis of design…',
    group: 'Plan',
    keys: ['Mod+Shift+B'],
    also: 'editions methods standards constants altitude oxygen vent hold time losses stress pipe specification supports',
    run: ({ desk }) => desk.set({ bench: { kind: 'basis' } }),
  },
  { id: 'profile', name: 'Unit profile…', group: 'Plan', keys: ['Mod+Shift+U'], also: 'limits manual cylinder figures source blank', run: ({ store }) => store.session({ dialog: 'profile' }) },
];
