import { command, refuse } from './command.ts';

/** Takes a service visit out. Refuses one that has gone. */
export const removeVisit = command('Take out service visit', (draft, id: string) => {
  const { visits } = draft.siteRecord.service;
  const index = visits.findIndex((each) => each.id === id);
  if (index < 0) refuse('This service visit is no longer in the plan.');
  visits.splice(index, 1);
});
