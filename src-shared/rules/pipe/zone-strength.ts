import type { ZoneSums } from '../../calculations/design/design.ts';
import { worked } from '../../calculations/design/worked.ts';
import { type Member, memberSubjects, perPipedNetwork } from '../design-subjects.ts';

/** A side of the regulator, or why its pressure is not known. */
export type ZoneMember = Member<ZoneSums>;

/** Every side of the regulator on which something stands, of every network. */
export const zoneSubjects = (isUsed: (zone: ZoneSums) => boolean) =>
  perPipedNetwork((network) => {
    const { zones } = network;
    return memberSubjects(network, zones.isKnown ? worked(zones.sums.filter(isUsed)) : zones, ({ side }) => ({ ref: network.ref, name: `${network.name}, ${side}` }));
  });

/** The part with the least rating. */
export const weakestOf = <P extends { readonly rating_Pa: number }>(parts: readonly P[]): P | undefined =>
  parts.reduce<P | undefined>((weakest, part) => (weakest && weakest.rating_Pa <= part.rating_Pa ? weakest : part), undefined);

/** "1 of 4 pipes is", "2 of 4 pipes are". */
export const someAre = (some: number, all: number, noun: string): string => `${some} of ${all} ${noun}${all === 1 ? '' : 's'} ${some === 1 ? 'is' : 'are'}`;
