import type { Host } from '#shared/host/contract';
import type { State, Store } from '../store/state.ts';

/** What an action may use. */
export interface ActionContext {
  readonly store: Store;
  readonly host: Host;
}

/** One named thing the user can do: in the action list, by shortcut, in menus, all from here. */
export interface Action {
  readonly id: string;
  /** Imperative, as the user reads it: "Save plan". */
  readonly name: string;
  readonly group: 'Plan' | 'Edit' | 'Draw' | 'Arrange' | 'Check' | 'Sheets' | 'View' | 'Help';
  /** `Mod` is Ctrl, on a Mac Cmd: "Mod+Shift+S", "N", "F2". */
  readonly keys?: readonly string[];
  /** Why it cannot be done now, or null. */
  unavailable?(state: State): string | null;
  run(context: ActionContext): void | Promise<void>;
}
