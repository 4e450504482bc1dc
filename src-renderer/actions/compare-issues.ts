import type { IssuedSet } from '#shared/model/plan';
import type { PlanChange } from '#shared/revisions/plan-change';
import type { Compared, State } from '../store/state.ts';
import type { ActionContext } from './action.ts';
import { fitPlaces } from './fit-view.ts';
import { showProblem } from './plan-file.ts';

/** Issued sets whose plan was kept: only these can be compared. */
export const comparableSets = ({ history: { present } }: State): readonly IssuedSet[] => present.issuedSets.filter(({ plan }) => plan !== null);

/** A frozen plan out of the log; a problem is shown and answers null. */
async function read(context: ActionContext, set: IssuedSet): Promise<Compared['before'] | null> {
  const asset = context.store.get().history.present.assets[set.plan ?? ''];
  if (!asset) return null;
  const answer = await context.host.readIssue({ sha256: asset.sha256 });
  if (!answer.ok) {
    showProblem(context, answer.problem);
    return null;
  }
  return { set: set.id, label: `Set ${set.mark}`, plan: answer.value.plan };
}

/**
 * Compares an issued set with another, or with the plan as it is, and brings the list up.
 * @param now  null: the plan as it is
 */
export async function compareIssues(context: ActionContext, before: IssuedSet, now: IssuedSet | null): Promise<void> {
  const was = await read(context, before);
  const is = now ? await read(context, now) : null;
  if (!was || (now && !is)) return;
  context.store.session({ compared: { before: was, now: is, shown: null } });
  context.desk.set({ bench: { kind: 'compare' } });
}

/** Ends comparing: the board shows the plan alone. */
export function stopComparing({ store, desk }: Pick<ActionContext, 'store' | 'desk'>): void {
  store.session({ compared: null });
  desk.set({ bench: { kind: 'stage' } });
}

const isThere = ({ history: { present } }: State, { ref, now }: PlanChange): boolean => {
  if (!ref || !now) return false;
  return 'network' in ref ? present.networks[ref.network] !== undefined : 'level' in ref ? present.levels[ref.level] !== undefined : true;
};

/** Shows the place of a change on the board and selects the thing, where it still stands. */
export function showChange({ store }: Pick<ActionContext, 'store'>, change: PlanChange): void {
  const shape = change.now ?? change.before;
  const state = store.get();
  const { compared, level } = state.session;
  const isKnown = shape && state.history.present.levels[shape.level] !== undefined;
  store.session({
    ...(compared ? { compared: { ...compared, shown: change.key } } : {}),
    level: isKnown ? shape.level : level,
    selection: change.ref && isThere(state, change) && compared?.now === null ? [change.ref] : [],
  });
  const places = [...(change.before?.places ?? []), ...(change.now?.places ?? [])];
  if (isKnown && places.length > 0) fitPlaces(store, places, 5);
}
