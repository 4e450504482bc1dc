import { HOLD_POINTS, holdPointIndex } from '../model/hold-points.ts';
import type { Plan, SiteRecord } from '../model/plan.ts';
import { command, refuse } from './command.ts';
import { takeBackTicks, tickedFrom } from './take-back-ticks.ts';

/** Who looked at a hold point, who saw it, and when. */
export interface HoldPointTick {
  readonly by: string;
  readonly witness: string;
  /** As it is printed, e.g. "2026-03-04 15:20". */
  readonly at: string;
}

const LONGEST_LABEL = 200;

const sameName = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

/** A tick as the record keeps it; refuses a blank name or time, a missing witness, and one who is the same person. */
function signed(isWitnessed: boolean, id: string, { by, witness, at }: HoldPointTick): SiteRecord['checks'][string] {
  const tick = { done: true, by: by.trim(), witness: witness.trim(), at: at.trim() };
  if (tick.by === '') refuse(`Say who looked at ${id}: the name is printed with it.`);
  if (isWitnessed && tick.witness === '') refuse(`${id} is witnessed: enter the name of who saw it.`);
  if (tick.witness !== '' && sameName(tick.by, tick.witness)) refuse(`The witness of ${id} is somebody else than who did the work.`);
  if (tick.at === '') refuse(`Say when ${id} was looked at.`);
  if ([tick.by, tick.witness, tick.at].some((words) => words.length > LONGEST_LABEL)) refuse(`Names and time take ${LONGEST_LABEL} characters at most.`);
  return tick;
}

/**
 * Ticks a hold point. Refuses one that comes before an earlier one has been ticked, one that lacks something, and one
 * without names.
 * @param lacks  what is missing for it, as sentences (`armingOrder`); nothing may be
 */
export const tickHoldPoint = command(
  (_plan: Plan, id: string, _tick: HoldPointTick, _lacks: readonly string[]) => `Tick hold point ${id}`,
  (draft, id: string, tick: HoldPointTick, lacks: readonly string[]) => {
    const { checks } = draft.siteRecord;
    const index = holdPointIndex(id);
    const point = HOLD_POINTS[index] ?? refuse('There is no such hold point.');
    const earlier = HOLD_POINTS.slice(0, index).find((each) => !checks[each.id]?.done);
    if (earlier) refuse(`${earlier.id} comes first: ${earlier.words}. ${earlier.why}`);
    const [first, ...others] = lacks;
    if (first !== undefined) refuse(others.length === 0 ? first : `${first} ${others.length === 1 ? 'One thing more is' : `${others.length} things more are`} missing for ${id}.`);
    checks[id] = signed(point.isWitnessed, id, tick);
  },
);

const untickLabel = ({ siteRecord: { checks } }: Plan, id: string): string => {
  const later = tickedFrom(checks, id).filter((each) => each !== id);
  return later.length === 0 ? `Take back hold point ${id}` : `Take back hold point ${id} and what stood on it: ${later.join(', ')}`;
};

/** Takes a tick back, and with it those of all later hold points: they stood on it. Refuses one that is not ticked. */
export const untickHoldPoint = command(untickLabel, (draft, id: string) => {
  if (holdPointIndex(id) < 0) refuse('There is no such hold point.');
  if (!draft.siteRecord.checks[id]?.done) refuse(`${id} is not ticked.`);
  takeBackTicks(draft.siteRecord.checks, id);
});
