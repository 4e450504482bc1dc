import { isSameStretch } from '../model/known-length.ts';
import type { KnownLength, RefOf } from '../model/plan.ts';
import { command, refuse } from './command.ts';
import { underlayOf } from './lookup.ts';
import { soundKnownLength } from './underlay-scale.ts';

const MOST = 20;

/**
 * Adds a known length that checks the scale of a floor plan. Refuses while the floor plan has no scale to check,
 * two equal places, two that have their distance already, a distance that is not more than 0, and more than 20 of them.
 */
export const addKnownLength = command('Add check length', (draft, ref: RefOf<'underlay'>, known: KnownLength) => {
  const underlay = underlayOf(draft, ref);
  if (underlay.metresPerUnit === null) refuse('This floor plan has no scale yet. Set its scale first, then check it with a second length.');
  if (underlay.knownLengths.length >= MOST) refuse(`A floor plan takes ${MOST} known lengths at most. Take one away first.`);
  const sound = soundKnownLength(known);
  if (underlay.knownLengths.some((each) => isSameStretch(each, sound))) refuse('These two places have their distance already, and a length cannot prove itself. Pick two others, best square to them.');
  underlay.knownLengths.push(sound);
});
