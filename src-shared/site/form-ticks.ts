import { recordMeasurements, type MeasuredEntry } from '../commands/record-measurements.ts';
import { type Command, sequence } from '../commands/command.ts';
import { type HoldPointTick, tickHoldPoint } from '../commands/tick-hold-point.ts';
import type { Evaluation } from '../evaluate.ts';
import { armingOrder } from './arming-order.ts';
import type { FieldCheckAnswer } from './field-entries.ts';

/**
 * `can`: may be ticked now, after those before it on the form. `already`: ticked and holds; it stays as it was signed.
 * `out-of-order`: an earlier one comes first. `lacks`: a reading that it stands on is missing or bad. `unsigned`: a name,
 * a witness or the time is missing. `not-read`: the form does not say clearly that it is done, or is not of this plan.
 */
export type FormTickKind = 'can' | 'already' | 'out-of-order' | 'lacks' | 'unsigned' | 'not-read';

/** Answer to one hold point that a form has something about. Nothing is applied by it. */
export interface FormTick {
  readonly id: string;
  readonly kind: FormTickKind;
  readonly tick: HoldPointTick;
  readonly where: string;
  /** Whether the form is of the plan as it is now; of another state it is taken only when the user says so. */
  readonly isOfThisPlan: boolean;
  /** Sentences for the user: what, why, and what to do. */
  readonly words: readonly string[];
}

/** Signed as done, by a form that may be taken. */
const isSigned = ({ kind, done }: FieldCheckAnswer): boolean => done && (kind === 'taken' || kind === 'other-revision');

/**
 * What can be done with the hold points that a form ticks, each after those before it, in the order that keeps people safe.
 * @param checks  as `readEntries` answers them, in the order of the work
 * @param taken   ids that the user takes: a later one may stand on them
 */
export function formTicks({ derived, design }: Pick<Evaluation, 'derived' | 'design'>, checks: readonly FieldCheckAnswer[], taken: ReadonlySet<string>): FormTick[] {
  let plan = derived.plan;
  return checks.flatMap((check): FormTick[] => {
    const { id, kind, where, by, witness, at } = check;
    if (kind === 'missing' || kind === 'empty' || kind === 'unchanged') return [];
    const about = { id, where, tick: { by, witness, at }, isOfThisPlan: kind === 'taken' };
    if (!isSigned(check)) return [{ ...about, kind: 'not-read', words: [check.words] }];
    const state = armingOrder({ derived: { ...derived, plan }, design }).find(({ point }) => point.id === id);
    if (!state) return [];
    if (state.standing === 'done') return [{ ...about, kind: 'already', words: [`Hold point ${id} is ticked already${state.check?.by ? `, by ${state.check.by}` : ''}. It stays as it was signed.`] }];
    if (state.first) return [{ ...about, kind: 'out-of-order', words: state.lacks.slice(0, 1) }];
    if (state.lacks.length > 0) return [{ ...about, kind: 'lacks', words: state.lacks }];
    const outcome = tickHoldPoint(id, about.tick, [])(plan);
    if (!outcome.ok) return [{ ...about, kind: 'unsigned', words: [outcome.reason] }];
    if (taken.has(id)) plan = outcome.next;
    return [{ ...about, kind: 'can', words: kind === 'taken' ? [`${state.point.words}: ${check.words}`] : [check.words] }];
  });
}

/** Takes measured dimensions and hold points of one file in one step; what is not answered `can` must not be handed in. */
export function takeFromForm(entries: readonly MeasuredEntry[], ticks: readonly FormTick[]): Command {
  const steps: Command[] = entries.length > 0 ? [recordMeasurements(entries)] : [];
  if (ticks.length === 0 && steps[0]) return steps[0];
  const measured = entries.length === 0 ? '' : entries.length === 1 ? 'Record a measurement and tick' : `Record ${entries.length} measurements and tick`;
  const ids = ticks.map(({ id }) => id).join(', ');
  return sequence(`${measured || 'Tick'} ${ids}`, [...steps, ...ticks.map(({ id, tick }) => tickHoldPoint(id, tick, []))]);
}
