import type { Host } from '#shared/host/contract';
import type { State, Store } from '../store/state.ts';
import type { UnderlayDrawings } from '../store/underlay-drawings.ts';
import type { Desk, DeskState } from './desk.ts';

/** What an action may use. */
export interface ActionContext {
  readonly store: Store;
  readonly host: Host;
  readonly desk: Desk;
  readonly drawings: UnderlayDrawings;
}

export type ActionGroup = 'Plan' | 'Edit' | 'Draw' | 'Arrange' | 'Check' | 'Sheets' | 'View' | 'Help';

/** One named thing the user can do: in the action list, by shortcut, in menus, all from here. */
export interface Action {
  readonly id: string;
  /** Imperative, as the user reads it: "Save plan". */
  readonly name: string;
  /** The name with what it would do now: "Undo move nozzle N2". */
  nameNow?(state: State): string;
  readonly group: ActionGroup;
  /** `Mod` is Ctrl, on a Mac Cmd: "Mod+Shift+S", "N", "F2". */
  readonly keys?: readonly string[];
  /** Further words under which the action list finds it. */
  readonly also?: string;
  /** Why it cannot be done now, or null. */
  unavailable?(state: State, desk: DeskState): string | null;
  run(context: ActionContext): void | Promise<void>;
}
