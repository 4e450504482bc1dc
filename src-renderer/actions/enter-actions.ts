import type { Ref } from '#shared/model/plan';
import type { State } from '../store/state.ts';
import type { Action } from './action.ts';
import { goToForm } from './go-to-form.ts';

/** The room that is meant: the selected one, or that of the selected wall; else the first of the level. */
function roomMeant({ history, session }: State): Ref | undefined {
  const [only] = session.selection;
  if (only?.kind === 'enclosure') return only;
  if (only && 'enclosure' in only) return { kind: 'enclosure', level: only.level, id: only.enclosure };
  const [first] = Object.keys(history.present.levels[session.level]?.enclosures ?? {});
  return first === undefined ? undefined : { kind: 'enclosure', level: session.level, id: first };
}

/** The unit that is meant: the selected one, or that of the selected pipe; else the first of the level. */
function unitMeant({ history, session }: State): Ref | undefined {
  const [only] = session.selection;
  if (only?.kind === 'network') return only;
  if (only && 'network' in only) return { kind: 'network', id: only.network };
  const first = Object.values(history.present.networks).find(({ level }) => level === session.level);
  return first && { kind: 'network', id: first.id };
}

/** The cylinder that is meant: the selected one, else the first of the unit that is meant. */
function cylinderMeant(state: State): Ref | undefined {
  const [only] = state.session.selection;
  if (only?.kind === 'cylinder') return only;
  const unit = unitMeant(state);
  const [first] = unit ? Object.keys(state.history.present.networks[unit.id]?.cylinders ?? {}) : [];
  return unit && first !== undefined ? { kind: 'cylinder', network: unit.id, id: first } : undefined;
}

const MEANT = {
  room: { find: roomMeant, none: 'Draw an enclosure first.' },
  unit: { find: unitMeant, none: 'Stand a cylinder first.' },
  cylinder: { find: cylinderMeant, none: 'Stand a cylinder first.' },
} as const;

const enter = (id: string, of: keyof typeof MEANT, name: string, also: string, ...labels: readonly string[]): Action => ({
  id: `enter-${id}`,
  name,
  group: 'Edit',
  also,
  unavailable: (state) => (MEANT[of].find(state) ? null : MEANT[of].none),
  run: (context) => {
    const on = MEANT[of].find(context.store.get());
    if (on) goToForm(context, on, ...labels);
  },
});

/** Actions that lead to where a figure of the design is entered. */
export const ENTER_ACTIONS: readonly Action[] = [
  enter('concentration', 'room', 'Enter what can burn and the design concentration', 'hazard class agent quantity room', 'What can burn'),
  enter('temperatures', 'room', 'Enter the temperatures and the height above the sea', 'coldest warmest altitude elevation room', 'Coldest'),
  enter('people', 'room', 'Enter who is in the room, the time to leave and the delay', 'people occupancy egress alarm exposure stay', 'Time to leave'),
  enter('leaks', 'room', 'Enter the leaks and the lowest thing to protect', 'leakage door fan hold time retention room', 'What is known of the leaks'),
  enter('walls', 'room', 'Enter what the walls bear', 'pressure strength wall relief room', 'All walls bear'),
  enter('wall-load', 'cylinder', 'Enter what the wall behind the cylinder bears', 'load-bearing capacity weight rail', 'Load-bearing'),
  enter('anchors', 'cylinder', 'Enter the rail and the anchors of the cylinder', 'anchor bolt tension shear edge', 'Kind of anchor'),
  enter('assembly', 'unit', 'Enter the discharge assembly', 'hose check valve regulator adapter', 'What it is', 'Add hose'),
  enter('orifices', 'unit', 'Take the orifices that the sums ask for', 'orifice nozzle code area drill', 'Take all', 'Orifices'),
  enter('supports', 'unit', 'Place the supports by the table, and enter what they bear', 'hanger guide clamp span thrust', 'Place supports by the table'),
  enter('circuit', 'unit', 'Enter the releasing circuit, its wire and conduit', 'voltage drop battery solenoid panel conductor bends pull', 'Draw up the circuit', 'Supply at the end of battery'),
  enter('switch', 'unit', 'Enter the low-pressure switch', 'supervision pressure contact', 'Low-pressure switch turns at (absolute)', 'Draw up the circuit'),
];
