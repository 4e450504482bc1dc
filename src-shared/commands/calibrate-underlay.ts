import { distance_m } from '../geometry/point.ts';
import { isSameStretch } from '../model/known-length.ts';
import type { KnownLength, RefOf } from '../model/plan.ts';
import { command } from './command.ts';
import { underlayOf } from './lookup.ts';
import { refuseLocked, rescale, soundKnownLength } from './underlay-scale.ts';

/**
 * Sets the scale of a floor plan from two of its places and their distance on site. The first place stays where
 * it is on the plan. Other known lengths stay, to check the new scale;
 * one between the same two places does not, since it would only prove itself.
 * Refuses two equal places, a distance that is not more than 0, and a locked floor plan.
 */
export const calibrateUnderlay = command('Set scale of floor plan', (draft, ref: RefOf<'underlay'>, known: KnownLength) => {
  const underlay = underlayOf(draft, ref);
  refuseLocked(underlay);
  const sound = soundKnownLength(known);
  rescale(underlay, sound.distance_m / distance_m(sound.a, sound.b), sound.a);
  const checks = underlay.knownLengths.slice(underlay.calibration === 'two-points' ? 1 : 0).filter((each) => !isSameStretch(each, sound));
  underlay.knownLengths = [sound, ...checks].slice(0, 20);
  underlay.calibration = 'two-points';
});
