import type { FittingKind } from './derived.ts';

/** Kinds of fitting in the user's words. */
export const FITTING_WORDS: Readonly<Record<FittingKind, string>> = {
  'elbow-90': '90° elbow',
  'elbow-45': '45° elbow',
  'odd-bend': 'bend of another angle',
  tee: 'tee',
  cross: 'cross',
  reducer: 'reducer',
  coupling: 'coupling',
  union: 'union',
  cap: 'cap',
  plug: 'plug',
  drain: 'drain',
};
