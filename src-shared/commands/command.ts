import { type Draft, type Patch, enablePatches, produceWithPatches, setAutoFreeze } from 'immer';
import type { Plan, Ref } from '../model/plan.ts';
import { carriedSupports } from './carry-supports.ts';

enablePatches();
setAutoFreeze(true);

/** What a command made of a plan: the next plan with the patches both ways, or the reason why it refused. */
export type Outcome =
  | {
      readonly ok: true;
      readonly label: string;
      readonly next: Plan;
      readonly patches: readonly Patch[];
      readonly inverse: readonly Patch[];
      /** Things that the command made, to be selected. */
      readonly created: readonly Ref[];
    }
  | { readonly ok: false; readonly reason: string };

/** One user action, ready to be tried on a plan. */
export type Command = (plan: Plan) => Outcome;

class Refusal extends Error {}

/** Ends a command: the plan stays as it was and the user reads the reason. */
export function refuse(reason: string): never {
  throw new Refusal(reason);
}

/** A recipe changes the draft, and may answer what it made. */
// biome-ignore lint/suspicious/noConfusingVoidType: a recipe that makes nothing simply ends
type Recipe<A extends unknown[]> = (draft: Draft<Plan>, ...args: A) => readonly Ref[] | void;

type Done = Extract<Outcome, { ok: true }>;

/** The same outcome with the pipe supports carried along. */
function withSupports(plan: Plan, done: Done): Done {
  const places = carriedSupports(plan, done.next);
  if (places.length === 0) return done;
  const [next, patches, inverse] = produceWithPatches(done.next, (draft) => {
    for (const { network, support, at } of places) {
      const supports = draft.networks[network]?.supports ?? {};
      const carried = supports[support];
      if (at === null) delete supports[support];
      else if (carried) carried.at = { ...at };
    }
  });
  return { ...done, next, patches: [...done.patches, ...patches], inverse: [...inverse, ...done.inverse] };
}

/**
 * Makes a command from a label and a recipe.
 * @param label   what undo calls it, e.g. "Move nozzle"; a function may name the thing: "Move nozzle N2"
 * @param recipe  changes the draft, or calls `refuse` with a reason for the user
 */
export const command =
  <A extends unknown[]>(label: string | ((plan: Plan, ...args: A) => string), recipe: Recipe<A>) =>
  (...args: A): Command =>
  (plan) => {
    try {
      let created: readonly Ref[] = [];
      const [next, patches, inverse] = produceWithPatches(plan, (draft) => {
        created = recipe(draft, ...args) ?? [];
      });
      return withSupports(plan, { ok: true, label: typeof label === 'string' ? label : label(plan, ...args), next, patches, inverse, created });
    } catch (problem) {
      if (problem instanceof Refusal) return { ok: false, reason: problem.message };
      throw problem;
    }
  };

/** Several commands as one step: all of them, or none when one refuses. */
export const sequence =
  (label: string, commands: readonly Command[]): Command =>
  (plan) => {
    let next = plan;
    const patches: Patch[] = [];
    const inverse: Patch[] = [];
    const created: Ref[] = [];
    for (const each of commands) {
      const outcome = each(next);
      if (!outcome.ok) return outcome;
      next = outcome.next;
      patches.push(...outcome.patches);
      inverse.unshift(...outcome.inverse);
      created.push(...outcome.created);
    }
    return { ok: true, label, next, patches, inverse, created };
  };
