import { type Patch, applyPatches, freeze } from 'immer';
import type { Plan } from '../model/plan.ts';
import type { Outcome } from './command.ts';

/** One step that can be undone, under the name that the user sees. */
export interface Step {
  readonly label: string;
  readonly patches: readonly Patch[];
  readonly inverse: readonly Patch[];
}

/** The plan with the steps that led to it and those that were taken back. */
export interface History {
  readonly past: readonly Step[];
  readonly present: Plan;
  readonly future: readonly Step[];
}

/** A history that begins with a plan, which is frozen: what is derived from its parts is remembered by identity. */
export const startHistory = (present: Plan): History => ({ past: [], present: freeze(present, true), future: [] });

/** Records what a command did; a command that changed nothing leaves no step. */
export function record(history: History, outcome: Extract<Outcome, { ok: true }>): History {
  if (outcome.patches.length === 0) return history;
  const { label, patches, inverse, next } = outcome;
  return { past: [...history.past, { label, patches, inverse }], present: next, future: [] };
}

/** Takes the last step back; without one, the same history. */
export function undo(history: History): History {
  const step = history.past.at(-1);
  if (!step) return history;
  return {
    past: history.past.slice(0, -1),
    present: applyPatches(history.present, [...step.inverse]),
    future: [step, ...history.future],
  };
}

/** Does the last undone step again; without one, the same history. */
export function redo(history: History): History {
  const [step, ...future] = history.future;
  if (!step) return history;
  return { past: [...history.past, step], present: applyPatches(history.present, [...step.patches]), future };
}
