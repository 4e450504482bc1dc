import { createContext, useContext, useRef, useSyncExternalStore } from 'react';
import type { State, Store } from './state.ts';

/** Gives every view the window's store. */
export const StoreContext = createContext<Store | null>(null);

/** The window's store itself, for handlers. */
export function useStoreItself(): Store {
  const store = useContext(StoreContext);
  if (!store) throw new Error('A view stands outside the store.');
  return store;
}

/**
 * What a selector reads from the state; the view is painted again only when that changes.
 * Selectors answer something that stays identical while nothing changed.
 */
export function useStore<T>(selector: (state: State) => T): T {
  const store = useStoreItself();
  const last = useRef<{ state: State; selector: unknown; value: T } | null>(null);
  return useSyncExternalStore(store.subscribe, () => {
    const state = store.get();
    if (last.current?.state === state && last.current.selector === selector) return last.current.value;
    const value = selector(state);
    last.current = { state, selector, value };
    return value;
  });
}
