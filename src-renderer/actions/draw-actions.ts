import { addSupport } from '#shared/commands/add-support';
import { STAGES, type State, type ToolId } from '../store/state.ts';
import { STAGE_TOOLS, STAGE_WORDS, TOOL_WORDS } from '../plan-words.ts';
import type { NetworkHit } from '../tools/network-hits.ts';
import { supportPlaceAt } from '../tools/support-place.ts';
import type { Action } from './action.ts';
import type { DeskState } from './desk.ts';

/** The letter of each tool. */
export const TOOL_KEYS: Readonly<Record<ToolId, string>> = {
  select: 'S',
  enclosure: 'E',
  hole: 'H',
  'pick-outline': 'T',
  'ceiling-zone': 'Z',
  opening: 'O',
  obstruction: 'B',
  device: 'V',
  adjoining: 'Y',
  cylinder: 'C',
  pipe: 'P',
  nozzle: 'N',
  support: 'J',
  dimension: 'D',
  note: 'W',
  measure: 'M',
  calibrate: 'K',
  section: 'X',
};

const ALSO: Partial<Record<ToolId, string>> = {
  enclosure: 'room wall draw outline',
  hole: 'shaft column void',
  'pick-outline': 'pick outline room floor plan',
  'ceiling-zone': 'height beam soffit slope zone',
  opening: 'door vent window damper grille penetration',
  obstruction: 'beam rack duct cabinet column light obstacle tray',
  device: 'detector smoke sounder strobe horn alarm sign manual release pull station abort disconnect switch lock-out valve door button panel diffuser air intake',
  adjoining: 'adjoining adjacent space corridor pit shaft exit outdoors outline',
  cylinder: 'unit',
  support: 'hanger guide sling clamp rigid pipe',
  dimension: 'measure print distance',
  note: 'text label write',
  measure: 'distance tape ruler',
  calibrate: 'scale two points distance',
  section: 'cut elevation side view',
};

/** A pipe this near to the pointer is meant [px]. */
const SUPPORT_REACH_px = 16;

const TOOLS = Object.keys(TOOL_WORDS) as ToolId[];

/** Where a support would stand on the pipe under the context menu, else under the pointer. */
function supportHere({ history, session }: State, { menu }: DeskState): NetworkHit | undefined {
  const { pointer, level, camera } = session;
  const at = menu?.at ?? pointer;
  return at ? supportPlaceAt(history.present, level, at, SUPPORT_REACH_px / camera.scale_px_m) : undefined;
}

/** Actions that take up a tool or go to a stage of the job. */
export const DRAW_ACTIONS: readonly Action[] = [
  ...TOOLS.map(
    (tool): Action => ({
      id: `tool-${tool}`,
      name: `${TOOL_WORDS[tool].name}: ${TOOL_WORDS[tool].does.charAt(0).toLowerCase()}${TOOL_WORDS[tool].does.slice(1)}`,
      group: 'Draw',
      keys: [TOOL_KEYS[tool]],
      also: ALSO[tool],
      unavailable: (state) => {
        const level = state.history.present.levels[state.session.level];
        if ((tool === 'calibrate' || tool === 'pick-outline') && Object.keys(level?.underlays ?? {}).length === 0) return 'Import a floor plan first.';
        if ((tool === 'opening' || tool === 'hole' || tool === 'ceiling-zone') && Object.keys(level?.enclosures ?? {}).length === 0) return 'Draw an enclosure first.';
        return null;
      },
      run: ({ store }) =>
        store.session(({ stage }) => ({ tool, refusal: null, stage: STAGE_TOOLS[stage].includes(tool) ? stage : (STAGES.find((each) => STAGE_TOOLS[each].includes(tool)) ?? stage) })),
    }),
  ),
  {
    id: 'add-vent',
    name: 'Put a relief vent in a wall',
    group: 'Draw',
    also: 'pressure relief opening venting',
    unavailable: ({ history, session }) => (Object.keys(history.present.levels[session.level]?.enclosures ?? {}).length === 0 ? 'Draw an enclosure first.' : null),
    run: ({ store }) => store.session(({ toolOptions }) => ({ stage: 'survey', tool: 'opening', refusal: null, toolOptions: { ...toolOptions, openingKind: 'relief-vent', openingWidth_m: null } })),
  },
  {
    id: 'support-here',
    name: 'Add support here',
    group: 'Draw',
    also: 'hanger guide sling clamp rigid pipe',
    unavailable: (state, desk) => (supportHere(state, desk) ? null : 'Point at a pipe that runs over the plan.'),
    run: ({ store, desk }) => {
      const hit = supportHere(store.get(), desk.get());
      if (hit) store.commit(addSupport(hit.network.id, hit.at, 'rigid'));
    },
  },
  ...STAGES.map(
    (stage, i): Action => ({
      id: `stage-${stage}`,
      name: `Go to ${STAGE_WORDS[stage].name}`,
      group: 'View',
      keys: [`Mod+${i + 1}`],
      also: STAGE_WORDS[stage].does,
      run: ({ store, desk }) => {
        desk.set({ bench: { kind: 'stage' } });
        // What a finding measured belongs to the proof: it would stay on the board for good.
        store.session((session) => ({ stage, tool: STAGE_TOOLS[stage].includes(session.tool) ? session.tool : 'select', finding: stage === 'proof' ? session.finding : null }));
      },
    }),
  ),
];
