import type { EnclosureDesign, Exposure } from '../calculations/design/design.ts';
import { type Level, ringOf } from '../model/plan.ts';
import type { Place } from './finding.ts';
import type { Asked } from './rule.ts';
import { perEnclosureSums, perEnclosureSumsOnLevel } from './subjects.ts';

const asked = (enclosure: EnclosureDesign): Asked<EnclosureDesign> => ({ subject: enclosure, ref: enclosure.ref, name: enclosure.name });

/** Every enclosure with its sums. */
export const enclosureSubjects = perEnclosureSums((enclosure) => [asked(enclosure)]);

/**
 * Enclosures that some nozzle blows into, and that a check is asked about. The others lack everything that follows from
 * their supply: one rule says so, and a first sketch is not flooded with checks that cannot be made.
 */
export const servedEnclosuresThat = (isAsked: (enclosure: EnclosureDesign) => boolean) => perEnclosureSums((enclosure) => (enclosure.isServed && isAsked(enclosure) ? [asked(enclosure)] : []));

/** Every enclosure that some nozzle blows into. */
export const servedEnclosureSubjects = servedEnclosuresThat(() => true);

/** The sums of an enclosure with the level that it is drawn on. */
export interface EnclosureOnLevel {
  readonly design: EnclosureDesign;
  readonly level: Level;
}

/** Every enclosure that some nozzle blows into, on its level. */
export const servedEnclosuresOnLevel = perEnclosureSumsOnLevel((design, { level }) => (design.isServed ? [{ subject: { design, level } satisfies EnclosureOnLevel, ref: design.ref, name: design.name }] : []));

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
