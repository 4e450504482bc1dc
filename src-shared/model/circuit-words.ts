import type { Release, ReleaseDevice } from './plan.ts';

/** How a device is wired into the releasing circuit, in the middle of a sentence. */
export const WIRING_WORDS: Readonly<Record<ReleaseDevice['wiring'], string>> = { unknown: 'not yet known', 'in-line': 'both wires go through it', tapped: 'on a branch' };

/** Where the part stands by which the panel watches over the releasing circuit. */
export const END_OF_LINE_WORDS: Readonly<Record<Release['endOfLine'], string>> = {
  unknown: 'not yet known',
  none: 'there is none',
  'before-last': 'before the last device',
  'after-last': 'behind the last device',
};
