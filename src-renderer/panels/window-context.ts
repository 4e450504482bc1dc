import { createContext, useContext, useMemo, useSyncExternalStore } from 'react';
import type { Host } from '#shared/host/contract';
import type { Underlay } from '#shared/model/plan';
import type { Action, ActionContext } from '../actions/action.ts';
import { findAction, runAction } from '../actions/actions.ts';
import type { Desk, DeskState } from '../actions/desk.ts';
import { useDrawings } from '../input/board-context.ts';
import type { DrawingState } from '../store/underlay-drawings.ts';
import { useStoreItself } from '../store/use-store.ts';

/** Gives every panel the host and the desk. */
export const WindowContext = createContext<{ readonly host: Host; readonly desk: Desk } | null>(null);

/** What actions need, for handlers. */
export function useActionContext(): ActionContext {
  const store = useStoreItself();
  const around = useContext(WindowContext);
  const drawings = useDrawings();
  if (!around) throw new Error('A panel stands outside the window.');
  return useMemo(() => ({ store, ...around, drawings }), [store, around, drawings]);
}

/** A part of the desk; the panel is painted again when that part changes. */
export function useDesk<T>(select: (desk: DeskState) => T): T {
  const { desk } = useActionContext();
  return useSyncExternalStore(desk.subscribe, () => select(desk.get()));
}

/** Runs actions, by themselves or by id. */
export function useRun(): (action: Action | string) => void {
  const context = useActionContext();
  return (action) => {
    const found = typeof action === 'string' ? findAction(action) : action;
    if (found) void runAction(context, found);
  };
}

/** Whether this keyboard has a Cmd key. */
export const isMac = (): boolean => /mac/i.test(navigator.userAgent);

/** How far the reading of a floor plan is; undefined while nobody asked for it. */
export function useDrawingState(underlay: Underlay): DrawingState | undefined {
  const drawings = useDrawings();
  const store = useStoreItself();
  return useSyncExternalStore(drawings.subscribe, () => drawings.stateOf(store.get().history.present, underlay));
}
