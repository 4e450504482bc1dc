import type { Answer, OpenPlan, PlanRef, Problem, SavedPlan } from '#shared/host/contract';
import type { Plan } from '#shared/model/plan';
import { problemText } from '../plan-words.ts';
import { presentUntil } from '../store/selectors.ts';
import { slicesOf } from '../store/slices.ts';
import type { Stage, State } from '../store/state.ts';
import type { ActionContext } from './action.ts';
import { fitLevel } from './fit-view.ts';
import { whenSettled } from './unsaved.ts';

/** Shows a problem where the user looks, as it stands. */
export const showProblem = ({ store }: Pick<ActionContext, 'store'>, problem: Problem): void =>
  store.session({ message: { kind: 'problem', text: problemText(problem), problem } });

/** Tells that something was done. */
export const tell = ({ store }: Pick<ActionContext, 'store'>, text: string): void => store.session({ message: { kind: 'done', text } });

/** Name of a plan file without its ending. */
export const bareName = (name: string): string => name.replace(/\.(nzw|json)$/i, '');

/** Name under which the plan of a state is spoken of. */
export const planName = (state: State): string => bareName(state.session.file?.name ?? '') || state.history.present.info.project || 'New plan';

/** An opened plan is looked through for stops no longer than this before it is shown [ms]. */
const LOOK_ms = 600;

/** Where work on an opened plan goes on: at what stops it, as far as that is soon found, at the layout, or at the survey. */
function stageFor(state: State): Stage {
  const isTimeUp = slicesOf(() => performance.now(), LOOK_ms)();
  if (presentUntil(state, isTimeUp).found.counts.stop > 0) return 'proof';
  return Object.values(state.history.present.networks).some((network) => Object.keys(network.nozzles).length > 0) ? 'layout' : 'survey';
}

/** Puts an opened plan on the board in place of the present one. */
function adopt(context: ActionContext, opened: OpenPlan, savedAtStep: number): void {
  const { store, desk, host } = context;
  const { file, id } = store.get().session;
  if (file?.ref && file.ref !== opened.ref) void host.closePlan({ session: id, ref: file.ref });
  store.load(opened.plan, { ref: opened.ref, name: opened.name, stamp: opened.stamp, savedAtStep, openElsewhere: opened.openElsewhere });
  store.session({ stage: stageFor(store.get()), dialog: null, message: opened.remarks.length > 0 ? { kind: 'done', text: opened.remarks.join(' ') } : null });
  desk.set({ bench: { kind: 'stage' }, menu: null });
  fitLevel(context);
}

async function openWith(context: ActionContext, ask: () => Promise<Answer<OpenPlan>>, savedAtStep = 0): Promise<boolean> {
  const answer = await ask();
  if (!answer.ok) {
    showProblem(context, answer.problem);
    return false;
  }
  // What the window kept aside belongs to the plan that goes; it was saved or given up.
  await context.host.dropRecovery({ session: context.store.get().session.id });
  adopt(context, answer.value, savedAtStep);
  return true;
}

/** Opens a plan of the plans folder or the recent list. */
export const openRef = (context: ActionContext, ref: PlanRef): Promise<void> =>
  whenSettled(context.store, context.desk, async () => {
    await openWith(context, () => context.host.openPlan({ session: context.store.get().session.id, ref }));
  });

/** Opens a plan file that was dropped or picked in a file field. */
export const openBytes = (context: ActionContext, name: string, bytes: Uint8Array): Promise<void> =>
  whenSettled(context.store, context.desk, async () => {
    await openWith(context, () => context.host.openPlanBytes({ name, bytes }));
  });

/** Begins an empty plan, or a copy of a finished demo. */
export const startPlan = (context: ActionContext, demo: string | null): Promise<void> =>
  whenSettled(context.store, context.desk, async () => {
    const lengths = context.store.get().history.present.settings.lengths;
    await openWith(context, () => context.host.newPlan({ demo, lengths }));
  });

/** Takes up work that an earlier run left unsaved; it stays unsaved until the user saves it. */
export async function openRecovery(context: ActionContext, id: string): Promise<void> {
  const answer = await context.host.openRecovery({ session: context.store.get().session.id, id });
  if (!answer.ok) return showProblem(context, answer.problem);
  adopt(context, answer.value, -1);
  tell(context, 'Your unsaved work is back. Save it to keep it.');
}

/** Asks for a plan with the system's dialog, or shows our own list where there is none. */
export async function pickAndOpen(context: ActionContext): Promise<void> {
  if (!context.store.get().session.host?.hasDialogs) return context.store.session({ dialog: 'open' });
  const picked = await context.host.pickPlan({});
  if (picked.ok) await openRef(context, picked.value.ref);
  else if (picked.problem.code !== 'cancelled') showProblem(context, picked.problem);
}

/** Plan that was sent and the step it stood at, so that what is drawn meanwhile stays unsaved. */
async function write(context: ActionContext, ref: PlanRef, stamp: string | null, overwrite: boolean): Promise<Answer<SavedPlan>> {
  const { store, host, desk } = context;
  const { history, session } = store.get();
  const sent: Plan = history.present;
  const step = history.past.length;
  const answer = await host.savePlan({ session: session.id, ref, plan: sent, stamp, overwrite });
  if (answer.ok) {
    const { name, stamp: written, ref: place, remarks } = answer.value;
    const openElsewhere = session.file?.ref === place ? (session.file?.openElsewhere ?? null) : null;
    store.session({ file: { ref: place, name, stamp: written, savedAtStep: step, openElsewhere }, message: { kind: 'done', text: [`Saved as ${name}.`, ...remarks].join(' ') } });
    if (store.get().history.present === sent) await host.dropRecovery({ session: session.id });
  } else if (answer.problem.code === 'conflict') {
    desk.set({ conflict: answer.problem });
    store.session({ dialog: 'conflict' });
  } else showProblem(context, answer.problem);
  return answer;
}

/** Saves to the plan's own file, or asks where for a plan that has none. Answers whether it was saved. */
export async function save(context: ActionContext): Promise<boolean> {
  const { file, host } = context.store.get().session;
  if (file?.ref) return (await write(context, file.ref, file.stamp, false)).ok;
  if (host?.hasDialogs) return saveUnder(context, planName(context.store.get()));
  context.store.session({ dialog: 'save-as' });
  return false;
}

/**
 * Saves under a name in the plans folder, or where the system's dialog says.
 * @param replace  the user agreed to replace a file of that name
 */
export async function saveUnder(context: ActionContext, name: string, replace = false): Promise<boolean> {
  const picked = await context.host.pickPlanPlace({ name });
  if (!picked.ok) {
    if (picked.problem.code !== 'cancelled') showProblem(context, picked.problem);
    return false;
  }
  const { ref, exists } = picked.value;
  const hasDialogs = context.store.get().session.host?.hasDialogs ?? false;
  const answer = await write(context, ref, null, exists && (replace || hasDialogs));
  if (answer.ok) context.store.session({ dialog: null });
  return answer.ok;
}

/** Writes over a file that was changed by someone else, as the user decided. */
export async function saveOver(context: ActionContext): Promise<void> {
  const { file } = context.store.get().session;
  context.store.session({ dialog: null });
  context.desk.set({ conflict: null });
  if (file?.ref) await write(context, file.ref, file.stamp, true);
}

/** Gives up what is unsaved and shows what the file holds now. */
export async function reopen(context: ActionContext): Promise<void> {
  const { file, id } = context.store.get().session;
  context.desk.set({ conflict: null });
  const ref = file?.ref;
  if (ref) await openWith(context, () => context.host.openPlan({ session: id, ref }));
}

/** Offers bytes as a download of the browser, where the host has no dialog of its own. */
export function download(name: string, bytes: Uint8Array, type: string): void {
  const address = URL.createObjectURL(new Blob([new Uint8Array(bytes)], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser reads the address after the click has been handled.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** Writes bytes where the user says, or downloads them. Answers the place when the host wrote it. */
export async function keepBytes(context: ActionContext, name: string, bytes: Uint8Array, type: string): Promise<string | null> {
  const saved = await context.host.saveFile({ name, bytes });
  if (saved.ok) {
    tell(context, `Written to ${saved.value.place}.`);
    return saved.value.place;
  }
  if (saved.problem.code === 'unsupported') {
    download(name, bytes, type);
    tell(context, `“${name}” is among your downloads.`);
  } else if (saved.problem.code !== 'cancelled') showProblem(context, saved.problem);
  return null;
}
