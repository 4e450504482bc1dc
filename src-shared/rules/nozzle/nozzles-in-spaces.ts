import type { Space } from '../../derived/derived.ts';
import { type NozzleSubject, askedNozzle, perServedSpace } from '../subjects.ts';

/** A nozzle with all that serve the same space, itself among them. */
export interface NozzleInSpace {
  readonly nozzle: NozzleSubject;
  readonly nozzles: readonly NozzleSubject[];
}

/**
 * Every nozzle that serves a space of some kinds, each with the others there. One that serves none is left out: N1 to N3
 * say so of it.
 */
export const nozzlesInSpaces = (kinds: readonly Space['kind'][]) =>
  perServedSpace((space, nozzles) => {
    if (!kinds.includes(space.kind)) return [];
    const all = nozzles.map(askedNozzle);
    const subjects = all.map(({ subject }) => subject);
    return all.map(({ subject, ...named }) => ({ ...named, subject: { nozzle: subject, nozzles: subjects } satisfies NozzleInSpace }));
  });

/** Every nozzle of these spaces as any check of it needs it. */
export const ROOM_NOZZLES = nozzlesInSpaces(['room']);
export const VOID_NOZZLES = nozzlesInSpaces(['under-floor', 'ceiling-void']);
