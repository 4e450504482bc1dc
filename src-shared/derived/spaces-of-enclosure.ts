import type { Space } from './derived.ts';
import { remembered } from './remember.ts';

const byEnclosure = remembered((spaces: readonly Space[]): ReadonlyMap<string, readonly Space[]> => {
  const found = new Map<string, Space[]>();
  for (const space of spaces) {
    const known = found.get(space.enclosure.id);
    if (known) known.push(space);
    else found.set(space.enclosure.id, [space]);
  }
  return found;
});

const NONE: readonly Space[] = [];

/** The room of an enclosure and its voids, out of the spaces of its level; looked through once for all who ask. */
export const spacesOfEnclosure = (spaces: readonly Space[], enclosure: string): readonly Space[] => byEnclosure(spaces).get(enclosure) ?? NONE;
