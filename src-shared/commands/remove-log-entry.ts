import { POINT_OF_READING } from '../model/hold-points.ts';
import type { Plan } from '../model/plan.ts';
import { command, refuse } from './command.ts';
import { takeBackTicks, tickedFrom } from './take-back-ticks.ts';

const labelOf = ({ siteRecord: { log, checks } }: Plan, id: string): string => {
  const entry = log.find((each) => each.id === id);
  const point = entry ? POINT_OF_READING[entry.kind] : null;
  const taken = point === null ? [] : tickedFrom(checks, point);
  return taken.length === 0 ? 'Take reading out of the log' : `Take reading out of the log, and take back ${taken.join(', ')}`;
};

/** Takes a reading out of the log, and with it the ticks that stood on readings of its hold point. Refuses one that has gone. */
export const removeLogEntry = command(labelOf, (draft, id: string) => {
  const { log, checks } = draft.siteRecord;
  const index = log.findIndex((each) => each.id === id);
  const entry = log[index] ?? refuse('This reading is no longer in the log.');
  log.splice(index, 1);
  const point = POINT_OF_READING[entry.kind];
  if (point !== null) takeBackTicks(checks, point);
});
