import { applyCure } from '#shared/commands/apply-cure';
import type { Ref } from '#shared/model/plan';
import { type Finding, findingKey } from '#shared/rules/finding';
import { selectOpenFindings, selectShownFinding } from '../store/selectors.ts';
import type { State, Store } from '../store/state.ts';
import type { Action } from './action.ts';
import { fitPlaces } from './fit-view.ts';
import { saveTakeOff } from './save-take-off.ts';

/** Findings that ask for something: all but the kept ones and the notes. */
export const openFindings = (state: State): Finding[] => selectOpenFindings(state).filter(({ verdict }) => verdict !== 'note');

/** The finding that is shown in detail, or undefined. */
export const shownFinding: (state: State) => Finding | undefined = selectShownFinding;

const isThing = (subject: Finding['subject']): subject is Ref => subject.kind !== 'plan' && subject.kind !== 'profile';

/** Goes to a finding: shows its place, selects what it is about and opens its explanation. */
export function goToFinding(store: Store, finding: Finding): void {
  const { place, subject } = finding;
  store.session((session) => ({
    finding: findingKey(finding),
    stage: 'proof',
    level: place?.level ?? session.level,
    selection: isThing(subject) ? [subject] : session.selection,
    refusal: null,
  }));
  if (place) {
    const ends = place.dimension ? [place.dimension.a, place.dimension.b] : [];
    const rays = (place.rays ?? []).flatMap(({ from, to }) => [from, to]);
    fitPlaces(store, [...place.at, ...ends, ...rays], 5);
  }
}

function step(store: Store, by: 1 | -1): void {
  const state = store.get();
  const open = openFindings(state);
  if (open.length === 0) return;
  const at = open.findIndex((finding) => findingKey(finding) === state.session.finding);
  const next = open[at < 0 ? (by > 0 ? 0 : open.length - 1) : (at + by + open.length) % open.length];
  if (next) goToFinding(store, next);
}

const nothingOpen = (state: State): string | null => (openFindings(state).length === 0 ? 'No check asks for anything.' : null);

/** Actions on what the checks say. */
export const CHECK_ACTIONS: readonly Action[] = [
  {
    id: 'next-finding',
    name: 'Go to the next finding',
    group: 'Check',
    keys: ['.'],
    also: 'stop warning problem fault jump',
    unavailable: nothingOpen,
    run: ({ store, desk }) => {
      desk.set({ bench: { kind: 'stage' } });
      step(store, 1);
    },
  },
  {
    id: 'previous-finding',
    name: 'Go to the previous finding',
    group: 'Check',
    keys: [','],
    unavailable: nothingOpen,
    run: ({ store, desk }) => {
      desk.set({ bench: { kind: 'stage' } });
      step(store, -1);
    },
  },
  {
    id: 'cure',
    name: 'Cure the shown finding',
    group: 'Check',
    keys: ['Mod+Enter'],
    also: 'fix repair correct',
    unavailable: (state) => {
      const finding = shownFinding(state);
      if (!finding) return 'Go to a finding first.';
      return finding.cure && finding.cure.kind !== 'advice' ? null : 'This finding has no ready cure: its text says what to do.';
    },
    run: ({ store }) => {
      const cure = shownFinding(store.get())?.cure;
      if (cure) store.commit(applyCure(cure));
    },
  },
  {
    id: 'sums',
    name: 'Show the sums',
    group: 'Check',
    keys: ['A'],
    also: 'calculations agent oxygen discharge vent hold time strength chart engineering',
    run: ({ desk }) => desk.set({ bench: { kind: 'sums', topic: null } }),
  },
  {
    id: 'take-off',
    name: 'Show the take-off',
    group: 'Check',
    keys: ['Shift+A'],
    also: 'bill of materials cut list pipe stock cutting plan fittings weight buy order parts',
    run: ({ store, desk }) => {
      const [only, ...others] = store.get().session.selection;
      desk.set({ bench: { kind: 'take-off', network: only?.kind === 'network' && others.length === 0 ? only.id : null } });
    },
  },
  {
    id: 'take-off-spreadsheet',
    name: 'Save the take-off as a spreadsheet…',
    group: 'Check',
    also: 'xlsx export bill of materials cut list order buy',
    unavailable: (state) => (Object.values(state.history.present.networks).some(({ pipes }) => Object.keys(pipes).length > 0) ? null : 'No pipe is drawn yet.'),
    run: async (context) => {
      await saveTakeOff(context, null);
    },
  },
  {
    id: 'findings',
    name: 'Show what the checks say',
    group: 'Check',
    also: 'proof list findings',
    run: ({ store, desk }) => {
      desk.set({ bench: { kind: 'stage' } });
      store.session({ stage: 'proof' });
    },
  },
];
