import { useSyncExternalStore } from 'react';
import { DARK_INK, type Ink, LIGHT_INK } from '../ink.ts';
import type { State } from '../store/state.ts';
import { useStore } from '../store/use-store.ts';

let wanted: MediaQueryList | undefined;
/** Asked once: every view looks at it whenever anything changes. */
function darkWanted(): MediaQueryList {
  wanted ??= window.matchMedia('(prefers-color-scheme: dark)');
  return wanted;
}
const followSystem = (listener: () => void): (() => void) => {
  const query = darkWanted();
  query.addEventListener('change', listener);
  return () => query.removeEventListener('change', listener);
};
const systemIsDark = (): boolean => darkWanted().matches;
const chosenTheme = (state: State): 'light' | 'dark' | 'system' => state.session.theme;

/** Colours of the ground that the user chose, or that the system asks for. */
export function useInk(): Ink {
  const theme = useStore(chosenTheme);
  const dark = useSyncExternalStore(followSystem, systemIsDark);
  return theme === 'dark' || (theme === 'system' && dark) ? DARK_INK : LIGHT_INK;
}
