import type { Calculation } from '#shared/calculations/lines/calculation';
import { CALCULATION_TOPICS } from '#shared/calculations/lines/calculation';
import type { Derived } from '#shared/derived/derived';
import { type Ref, type RefOf, isSameRef, refKey } from '#shared/model/plan';

/** What sums are about: a room or a unit with its pipe. */
export type SumSubject = RefOf<'enclosure'> | RefOf<'network'>;

/** The room or unit that a selected thing belongs to; undefined for what belongs to none. */
export function subjectOf(ref: Ref): SumSubject | undefined {
  if (ref.kind === 'enclosure') return { kind: 'enclosure', level: ref.level, id: ref.id };
  if (ref.kind === 'network') return ref;
  if ('network' in ref) return { kind: 'network', id: ref.network };
  return 'enclosure' in ref ? { kind: 'enclosure', level: ref.level, id: ref.enclosure } : undefined;
}

/** Every room and every unit of a plan with its name, rooms first. */
export function subjectsOf({ spaces, networks }: Derived): { readonly ref: SumSubject; readonly name: string }[] {
  const rooms = spaces.filter(({ kind }) => kind === 'room').map(({ enclosureRef, enclosure }) => ({ ref: enclosureRef, name: enclosure.name }));
  return [...rooms, ...networks.map(({ ref, network }) => ({ ref, name: network.name || 'Pipe network' }))];
}

/** The subject and what it works with: the units that blow into a room, or the rooms that a unit blows into. */
export function joinedTo({ nozzles }: Derived, subject: SumSubject): SumSubject[] {
  const joined = new Map<string, SumSubject>([[refKey(subject), subject]]);
  for (const { ref, space } of nozzles) {
    if (!space) continue;
    const network: SumSubject = { kind: 'network', id: ref.network };
    if (isSameRef(space.enclosureRef, subject)) joined.set(refKey(network), network);
    if (isSameRef(network, subject)) joined.set(refKey(space.enclosureRef), space.enclosureRef);
  }
  return [...joined.values()];
}

/** The calculations of a subject and of what it works with, in the order in which a design needs them, its own first in each topic. */
export function calculationsAbout(calculations: readonly Calculation[], subjects: readonly SumSubject[]): Calculation[] {
  const keys = subjects.map(refKey);
  const place = ({ topic, subject }: Calculation): number => CALCULATION_TOPICS.indexOf(topic) * (keys.length + 1) + keys.indexOf(refKey(subject));
  return calculations.filter(({ subject }) => keys.includes(refKey(subject))).sort((a, b) => place(a) - place(b));
}
