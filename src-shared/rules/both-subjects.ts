import type { Design } from '../calculations/design/design.ts';
import type { Derived } from '../derived/derived.ts';
import { remembered } from '../derived/remember.ts';
import type { SubjectsOf } from './subjects.ts';

/** Subjects from two kinds of owners, first those of the one, then those of the other. */
export function bothSubjects<S>(one: SubjectsOf<S>, other: SubjectsOf<S>): SubjectsOf<S> {
  const ofOne = new WeakSet<object>();
  return {
    owners: remembered((derived: Derived, design: Design) => {
      const first = one.owners(derived, design);
      for (const owner of first) ofOne.add(owner);
      return [...first, ...other.owners(derived, design)];
    }),
    keyOf: (owner) => (ofOne.has(owner) ? `one/${one.keyOf(owner)}` : `other/${other.keyOf(owner)}`),
    of: (owner) => (ofOne.has(owner) ? one.of(owner) : other.of(owner)),
  };
}
