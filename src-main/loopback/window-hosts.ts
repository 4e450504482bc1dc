import type { LocalHost } from '../services/local-host.ts';

/** More windows than anybody opens; bounds what a page gone astray can make. */
const MOST_WINDOWS = 64;

/** The host of each open window. A window is there as long as its event stream is. */
export interface WindowHosts {
  /** Host of a window, made at its first request; undefined when there are too many. */
  hostOf(window: string): LocalHost | undefined;
  /** The window opened its stream. */
  came(window: string): void;
  /** The window closed its stream: reloaded, shut or crashed. */
  went(window: string): void;
  endAll(): Promise<void>;
}

/**
 * @param grace_ms  how long no window may be there, once one was, before `onGone` is called; null: for ever
 */
export function makeWindowHosts(makeHost: () => LocalHost, grace_ms: number | null, onGone: () => void): WindowHosts {
  const hosts = new Map<string, LocalHost>();
  const streams = new Map<string, number>();
  let leaving: NodeJS.Timeout | undefined;

  return {
    hostOf(window) {
      const known = hosts.get(window);
      if (known) return known;
      if (hosts.size >= MOST_WINDOWS) return undefined;
      const made = makeHost();
      hosts.set(window, made);
      return made;
    },
    came(window) {
      clearTimeout(leaving);
      streams.set(window, (streams.get(window) ?? 0) + 1);
    },
    went(window) {
      const left = (streams.get(window) ?? 1) - 1;
      if (left > 0) {
        streams.set(window, left);
        return;
      }
      streams.delete(window);
      // At once, so that a window that was merely reloaded is offered its own unsaved work.
      void hosts.get(window)?.end();
      hosts.delete(window);
      if (streams.size === 0 && grace_ms !== null) leaving = setTimeout(onGone, grace_ms);
    },
    async endAll() {
      clearTimeout(leaving);
      await Promise.all([...hosts.values()].map((host) => host.end()));
      hosts.clear();
    },
  };
}
