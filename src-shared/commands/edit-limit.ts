import { LIMIT_CATALOGUE, type LimitKey } from '../profile/limit-catalogue.ts';
import type { SourcedLimit } from '../profile/unit-profile.ts';
import { command, refuse } from './command.ts';
import { entryOf } from '../model/find-thing.ts';

/**
 * Sets one figure of a unit profile with the place it was read from, or blanks it: what needs a blank figure is not
 * checked. Refuses a profile that has gone, and a figure that is not a number or less than 0.
 */
export const editLimit = command('Edit unit profile', (draft, profileId: string, key: LimitKey, limit: SourcedLimit | null) => {
  const profile = entryOf(draft.profiles, profileId) ?? refuse('This unit profile is no longer in the plan.');
  if (!Object.hasOwn(LIMIT_CATALOGUE, key)) refuse('A unit profile has no such figure.');
  if (limit === null) {
    delete profile.limits[key];
    return;
  }
  if (!Number.isFinite(limit.value) || limit.value < 0) refuse(`${LIMIT_CATALOGUE[key].label} must be a number of 0 or more.`);
  if (limit.source.length > 400) refuse('The source has 400 characters at most.');
  const old = profile.limits[key];
  if (old?.value !== limit.value || old.source !== limit.source) profile.limits[key] = { value: limit.value, source: limit.source };
});
