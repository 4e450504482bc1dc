import type { Design, EnclosureDesign, Exposure } from '../calculations/design/design.ts';
import type { Derived } from '../derived/derived.ts';
import { remembered } from '../derived/remember.ts';
import { ringOf, refKey } from '../model/plan.ts';
import type { Place } from './finding.ts';

/** Every enclosure with its sums. */
export const enclosureSubjects = (_: Derived, { enclosures }: Design) =>
  enclosures.map((enclosure) => ({ subject: enclosure, ref: enclosure.ref, name: enclosure.name }));

/** Enclosures that the nozzles of a plan blow into; several rules ask for the same plan. */
const servedBy = remembered((nozzles: Derived['nozzles']): ReadonlySet<string> => new Set(nozzles.flatMap(({ space }) => (space ? [refKey(space.enclosureRef)] : []))));

/**
 * Enclosures that some nozzle blows into. The others lack everything that follows from their supply: one rule says
 * so, and a first sketch is not flooded with checks that cannot be made.
 */
export function servedEnclosureSubjects(derived: Derived, design: Design) {
  const served = servedBy(derived.nozzles);
  return enclosureSubjects(derived, design).filter(({ ref }) => served.has(refKey(ref)));
}

/** Where a finding about a whole enclosure shows. */
export const placeOfEnclosure = ({ ref, enclosure }: EnclosureDesign): Place => ({ level: ref.level, at: ringOf(enclosure.outline) });

const STAYS: Readonly<Record<Exposure, string>> = {
  '5-min': 'people may stay at most 5 min',
  '3-min': 'people may stay at most 3 min',
  '30-s': 'people may stay at most 30 s',
  none: 'nobody may be inside',
};

/** What a band of exposure means for people, in the middle of a sentence. */
export const stayWords = (exposure: Exposure): string => STAYS[exposure];

/** A number of cylinders, which is a share of whole ones where a network serves several enclosures: "3 cylinders", "2.4 cylinders". */
export const cylinderWords = (count: number): string => `${Number(count.toFixed(2))} ${count === 1 ? 'cylinder' : 'cylinders'}`;
