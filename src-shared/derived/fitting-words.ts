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
  joint: 'weld or grooved coupling',
};

/** A fitting as it is asked for in the trade: "90° street elbow", "reducing tee". */
export function boughtWords({ kind, isStreet, isReducing }: { readonly kind: FittingKind; readonly isStreet: boolean; readonly isReducing: boolean }): string {
  const words = isStreet ? FITTING_WORDS[kind].replace('elbow', 'street elbow') : FITTING_WORDS[kind];
  return isReducing && kind !== 'reducer' ? `reducing ${words}` : words;
}
