import { POINT_OF_READING } from '../model/hold-points.ts';
import { type LogEntry, type Plan, takeId } from '../model/plan.ts';
import { logEntrySchema } from '../model/schema.ts';
import { applyChange } from './apply-change.ts';
import { command, refuse } from './command.ts';
import { takeBackTicks, tickedFrom } from './take-back-ticks.ts';

const FIELDS = logEntrySchema.omit({ id: true }).partial();
const MOST_ENTRIES = 10_000;

/** The hold point from which on ticks stand no longer once this was read: what failed, and voltage that has been on again. */
function shakenPoint({ kind, isGood }: Pick<LogEntry, 'kind' | 'isGood'>): string | null {
  if (isGood === false) return POINT_OF_READING[kind];
  return kind === 'live' || kind === 'alarm' ? 'H12' : null;
}

const labelOf = ({ siteRecord: { checks } }: Plan, entry: Omit<LogEntry, 'id'>): string => {
  const shaken = shakenPoint(entry);
  const taken = shaken === null ? [] : tickedFrom(checks, shaken);
  return taken.length === 0 ? 'Log reading' : `Log reading and take back ${taken.join(', ')}`;
};

/**
 * Adds a reading to the wiring and arming log, as the newest. A reading that failed takes back the ticks that stood on
 * it, and voltage on the circuit takes back the last connection.
 * Refuses one without name or time, one that says nothing, and what does not fit.
 */
export const addLogEntry = command(labelOf, (draft, entry: Omit<LogEntry, 'id'>) => {
  const { log, checks } = draft.siteRecord;
  if (entry.by.trim() === '') refuse('Say who took the reading: the name is printed with it.');
  if (entry.at.trim() === '') refuse('Say when the reading was taken.');
  if (entry.kind === 'note' ? entry.note.trim() === '' : entry.value === null && entry.isGood === null) {
    refuse(entry.kind === 'note' ? 'Write what is to be noted.' : 'Enter the reading, or say how it turned out.');
  }
  if (log.length >= MOST_ENTRIES) refuse(`The log takes ${MOST_ENTRIES} entries at most.`);
  const added: LogEntry = { id: takeId(draft, 'log'), kind: entry.kind, about: '', value: null, isGood: null, temperature_K: null, by: '', at: '', instrument: '', note: '' };
  applyChange(added, FIELDS, { ...entry, by: entry.by.trim(), at: entry.at.trim() });
  log.push(added);
  const shaken = shakenPoint(added);
  if (shaken !== null) takeBackTicks(checks, shaken);
});
