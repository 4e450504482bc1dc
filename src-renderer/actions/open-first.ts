import type { ActionContext } from './action.ts';
import { openRef, showProblem, startPlan } from './plan-file.ts';

/** What a window shows first: unsaved work of an earlier run, the plan or demo that was asked for, or the start page. */
export async function openFirst(context: ActionContext): Promise<void> {
  const { host, store, desk } = context;
  const info = await host.info({});
  if (!info.ok) return showProblem(context, info.problem);
  store.session({ host: info.value });
  if (info.value.startPlan !== null) await openRef(context, info.value.startPlan);
  else if (info.value.startDemo !== null) await startPlan(context, info.value.startDemo);
  const left = await host.listRecoveries({});
  if (!left.ok || left.value.recoveries.length === 0) return;
  desk.set({ recoveries: left.value.recoveries });
  if (store.get().session.dialog === null) store.session({ dialog: 'recover' });
}
