import { command, refuse } from './command.ts';
import { networkOf } from './lookup.ts';

/** Gives a network another unit profile of the plan. Refuses a profile that the plan does not hold. */
export const setProfile = command('Choose unit profile', (draft, networkId: string, profileId: string) => {
  const network = networkOf(draft, networkId);
  if (!Object.hasOwn(draft.profiles, profileId)) refuse('This unit profile is not in the plan. Load it first.');
  network.profile = profileId;
});
