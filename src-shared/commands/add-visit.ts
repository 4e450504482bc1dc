import { findDay } from '../model/day.ts';
import { type Visit, takeId } from '../model/plan.ts';
import { visitSchema } from '../model/schema.ts';
import { applyChange } from './apply-change.ts';
import { command, refuse } from './command.ts';

const FIELDS = visitSchema.omit({ id: true }).partial();
const MOST_VISITS = 10_000;

/**
 * Adds something of the service that was done, as the newest.
 * Refuses one without a name, and one whose day is none of the calendar, since the next one is reckoned from it.
 */
export const addVisit = command('Add service visit', (draft, visit: Omit<Visit, 'id'>) => {
  const { visits } = draft.siteRecord.service;
  if (visit.by.trim() === '') refuse('Say who did it: the name is printed with it.');
  if (!findDay(visit.on)) refuse('Write the day as year, month and day, such as 2026-03-04.');
  if (visits.length >= MOST_VISITS) refuse(`A plan takes ${MOST_VISITS} service visits at most.`);
  const added: Visit = { id: takeId(draft, 'visit'), kind: visit.kind, about: '', on: '', by: '', note: '' };
  applyChange(added, FIELDS, { ...visit, by: visit.by.trim(), on: visit.on.trim() });
  visits.push(added);
});
