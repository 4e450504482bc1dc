import type { CalculationTopic } from '#shared/calculations/lines/calculation';
import type { Problem, Recovery } from '#shared/host/contract';
import type { PlanPoint } from '#shared/geometry/point';
import type { Ref } from '#shared/model/plan';
import { type Astray, NOTHING_ASTRAY } from '#shared/sheets/astray';
import type { Sheet } from '#shared/sheets/sheet';

/** A figure of the ledger whose sum is shown on the bench. */
export type LedgerFigure = 'volume' | 'area' | 'path' | 'elbows' | 'nozzles' | 'cylinders';

/** What the bench shows: the stage's own panel, the selection, the calculations, the take-off, the basis of design, the layers, a comparison of issues, or a figure of the ledger. */
export type BenchView =
  | { readonly kind: 'stage' }
  | { readonly kind: 'selection' }
  | { readonly kind: 'sums'; /** Scrolled to; null: from the top. */ readonly topic: CalculationTopic | null }
  | { readonly kind: 'take-off'; /** Id of the only network that is taken off; null: the whole plan. */ readonly network: string | null }
  | { readonly kind: 'basis' }
  | { readonly kind: 'layers' }
  | { readonly kind: 'compare' }
  | { readonly kind: 'sum'; readonly figure: LedgerFigure };

/** What lies on the desk beside the plan: questions that wait for an answer, and what was copied. Never saved. */
export interface DeskState {
  readonly bench: BenchView;
  /** What the user wanted to do when there was unsaved work; runs once that is settled. */
  readonly leave: (() => Promise<void>) | null;
  /** Why a save was refused because the file had changed. */
  readonly conflict: Problem | null;
  /** File that is to become an underlay; null while the user still picks one. */
  readonly importing: { readonly name: string; readonly bytes: Uint8Array } | null;
  readonly recoveries: readonly Recovery[];
  /** Where the context menu stands [px of the window], over which place of the plan, and on which thing. */
  readonly menu: { readonly x: number; readonly y: number; readonly at: PlanPoint; readonly on: Ref | null } | null;
  readonly clipboard: { readonly refs: readonly Ref[]; readonly cut: boolean; readonly from: PlanPoint } | null;
  /** The sheets as they were last composed; the number of the one that lies on the board in place of the plan. */
  readonly sheets: readonly Sheet[];
  /** What the user put on sheets and none of them shows any more. */
  readonly astray: Astray;
  readonly paper: string | null;
  /** The five steps of a first drawing stand on the bench until they are done or put away. */
  readonly showsSteps: boolean;
  /** The board shows what a cure or another choice would do, while lists and forms keep to the plan as it is. */
  readonly isTrying: boolean;
}

/** Holds the desk of one window. */
export interface Desk {
  get(): DeskState;
  set(change: Partial<DeskState>): void;
  subscribe(listener: () => void): () => void;
}

/** An empty desk. */
export function makeDesk(): Desk {
  let state: DeskState = {
    bench: { kind: 'stage' },
    leave: null,
    conflict: null,
    importing: null,
    recoveries: [],
    menu: null,
    clipboard: null,
    sheets: [],
    astray: NOTHING_ASTRAY,
    paper: null,
    showsSteps: true,
    isTrying: false,
  };
  const listeners = new Set<() => void>();
  return {
    get: () => state,
    set(change) {
      state = { ...state, ...change };
      for (const listener of [...listeners]) listener();
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
