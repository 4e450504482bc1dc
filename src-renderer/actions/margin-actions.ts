import { MARGIN_RULES, type MarginRule } from '#shared/margins/place-margin';
import { selectedNozzle } from '../store/room-to-move.ts';
import type { Session, State, Store } from '../store/state.ts';
import { MARGIN_WORDS } from '../plan-words.ts';
import type { Action } from './action.ts';

/** Shows or hides something of where the selected nozzle may be put. */
export const changeMargins = (store: Store, change: Partial<Session['margins']>): void => store.session(({ margins }) => ({ margins: { ...margins, ...change } }));

const needsNozzle = (state: State): string | null => (selectedNozzle(state) ? null : 'Select one nozzle first.');

/** The rule after the one whose margins are shown; none after the last. */
function nextRule({ session: { margins } }: State): MarginRule | null {
  const at = margins.map === null ? -1 : MARGIN_RULES.indexOf(margins.map);
  return MARGIN_RULES[at + 1] ?? null;
}

/** Actions on where the selected nozzle may be put. */
export const MARGIN_ACTIONS: readonly Action[] = [
  {
    id: 'show-patch',
    name: 'Show where the nozzle may be put',
    nameNow: ({ session }) => `${session.margins.patch ? 'Hide' : 'Show'} where the nozzle may be put`,
    group: 'View',
    keys: ['Shift+Y'],
    also: 'allowed patch room to move shift tolerance fitter',
    unavailable: needsNozzle,
    run: ({ store }) => changeMargins(store, { patch: !store.get().session.margins.patch }),
  },
  {
    id: 'show-margins',
    name: 'Margins over the plan: next rule',
    nameNow: (state) => {
      const next = nextRule(state);
      return next ? `Margins over the plan: ${MARGIN_WORDS[next]}` : 'Put the margins away';
    },
    group: 'View',
    keys: ['Shift+B'],
    also: 'margin map heat rule slack',
    unavailable: needsNozzle,
    run: ({ store }) => changeMargins(store, { map: nextRule(store.get()) }),
  },
  {
    id: 'show-dial',
    name: 'Directions for the holes at the pointer',
    nameNow: ({ session }) => `${session.margins.dial ? 'Hide' : 'Show'} directions for the holes at the pointer`,
    group: 'View',
    keys: ['Shift+H'],
    also: 'legal angle dial azimuth ring',
    unavailable: needsNozzle,
    run: ({ store }) => changeMargins(store, { dial: !store.get().session.margins.dial }),
  },
];
