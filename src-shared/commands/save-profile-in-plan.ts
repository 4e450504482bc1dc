import { firstIssues, pathInWords } from '../model/first-issues.ts';
import { type UnitProfile, unitProfileSchema } from '../profile/unit-profile.ts';
import { command, refuse } from './command.ts';
import { soundName } from './sound-value.ts';

const ID = /^[A-Za-z0-9][A-Za-z0-9._-]{0,79}$/;

/** Keeps a unit profile in the plan, in place of the one with the same id. Refuses one without name and one with a figure out of range. */
export const saveProfileInPlan = command('Save unit profile', (draft, profile: UnitProfile) => {
  soundName('A unit profile', profile.name);
  const [issue] = firstIssues(unitProfileSchema, profile, 1);
  if (issue) refuse(`This unit profile cannot be kept: ${pathInWords(profile, issue.path) || 'it'} ${issue.text}.`);
  if (!ID.test(profile.id) || ['constructor', 'prototype'].includes(profile.id)) refuse('This unit profile cannot be kept: its id has signs that are not allowed.');
  draft.profiles[profile.id] = { ...profile, limits: { ...profile.limits }, pipeSizes: [...profile.pipeSizes] };
});
