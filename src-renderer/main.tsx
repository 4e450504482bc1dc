import { createRoot } from 'react-dom/client';
import { newPlan } from '#shared/model/plan';
import { findAction, runAction } from './actions/actions.ts';
import type { ActionContext } from './actions/action.ts';
import { makeDesk } from './actions/desk.ts';
import { endMessages } from './actions/end-messages.ts';
import { keepPreferences, withPreferences } from './actions/keep-preferences.ts';
import { keepRecoveries } from './actions/keep-recoveries.ts';
import { openFirst } from './actions/open-first.ts';
import { isChanged, watchSavedStep } from './actions/unsaved.ts';
import { App } from './app.tsx';
import { startDischargeWorker } from './start-discharge-worker.ts';
import { startHeightsWorker } from './start-heights-worker.ts';
import { startMarginsWorker } from './start-margins-worker.ts';
import { startTolerancesWorker } from './start-tolerances-worker.ts';
import { connectHost } from './host/connect.ts';
import { followJob } from './host/follow-job.ts';
import { BoardContext } from './input/board-context.ts';
import { WindowContext } from './panels/window-context.ts';
import { makeDischargeRunner } from './store/discharge-runner.ts';
import { paceChecks, sliceChecks } from './store/evaluations.ts';
import { followChecks } from './store/follow-checks.ts';
import { followDischarges } from './store/follow-discharges.ts';
import { startSession } from './store/start-session.ts';
import { followHeights } from './store/heights-to-raise.ts';
import { followRoomToMove } from './store/room-to-move.ts';
import { slicesOf, whenIdle } from './store/slices.ts';
import { makeStore } from './store/store.ts';
import { makeUnderlayDrawings } from './store/underlay-drawings.ts';
import { StoreContext } from './store/use-store.ts';
import './styles/styles.ts';
import { makeToolRunner, viewSourceOf } from './tools/tool-runner.ts';

const sessionId = crypto.randomUUID();
const { host, onAction } = connectHost(sessionId);
const remembered = await host.readPreferences({});
const preferences = remembered.ok ? remembered.value.preferences : {};
const session = startSession(sessionId);
const store = makeStore(newPlan(preferences.lengths === 'metric' ? 'metric' : 'feet'), { ...session, ...withPreferences(session, preferences) });
const desk = makeDesk();
if (preferences.showsSteps === false) desk.set({ showsSteps: false });
const drawings = makeUnderlayDrawings(host, followJob);
const runner = makeToolRunner(store, viewSourceOf(drawings));
const context: ActionContext = { store, host, desk, drawings };

watchSavedStep(store);
endMessages(store);
drawings.follow(store);
followDischarges(store, makeDischargeRunner(startDischargeWorker));
sliceChecks(slicesOf(() => performance.now()));
paceChecks(() => performance.now());
followChecks(store, whenIdle);
const room = followRoomToMove(store, startMarginsWorker);
const heights = followHeights(store, startHeightsWorker);
const recoveries = keepRecoveries(store, host);
keepPreferences(store, host, desk);
onAction((id) => {
  const action = findAction(id);
  if (action && store.get().session.dialog === null) void runAction(context, action);
});
window.addEventListener('beforeunload', (event) => {
  if (!isChanged(store.get())) return;
  void recoveries.flush();
  event.preventDefault();
});
document.addEventListener('visibilitychange', () => {
  if (document.visibilityState === 'hidden') void recoveries.flush();
});

// Canvases measure their lettering when they are painted: the letters must be there by then.
await Promise.all([400, 700].map((weight) => document.fonts.load(`${weight} 13px 'Board Sans'`)));
// The first plan is on the board when the window appears: nothing that is pressed early gets lost.
await openFirst(context);

const place = document.getElementById('window');
if (!place) throw new Error('The page has no place for the window.');
createRoot(place).render(
  <StoreContext value={store}>
    <WindowContext value={{ host, desk }}>
      <BoardContext value={{ drawings, runner, room, heights, startTolerances: startTolerancesWorker }}>
        <App />
      </BoardContext>
    </WindowContext>
  </StoreContext>,
);
