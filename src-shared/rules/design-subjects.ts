import type { NetworkDesign, SupportSums } from '../calculations/design/design.ts';
import { type Worked, notWorked, worked } from '../calculations/design/worked.ts';
import type { PlanPoint, PlanPoint3 } from '../geometry/point.ts';
import type { RefOf } from '../model/plan.ts';
import type { Finding, Place } from './finding.ts';
import type { Asked } from './rule.ts';
import { type SubjectsOf, perNetworkSums } from './subjects.ts';

/** One of several things that sums of a network are about; while they are not known it is the reason why. */
export interface Member<T> {
  readonly network: NetworkDesign;
  readonly member: Worked<T>;
}

/** What is asked of every network with pipe, from its sums. While one has none P1 says so, and no check of its strength or supports repeats it. */
export const perPipedNetwork = <S>(of: (network: NetworkDesign) => readonly Asked<S>[]): SubjectsOf<S> =>
  perNetworkSums((sums) => (Object.keys(sums.network.pipes).length > 0 ? of(sums) : []));

/** Every network with pipe, with its sums, under its own name. */
export const pipedNetworkSubjects = perPipedNetwork((network) => [{ subject: network, ref: network.ref, name: network.name }]);

/** Each thing of a group of sums; the network alone, once, while they are not known. */
export function memberSubjects<T>(
  network: NetworkDesign,
  group: Worked<readonly T[]>,
  about: (member: T, index: number) => { readonly ref: Finding['subject']; readonly name: string },
): Asked<Member<T>>[] {
  if (!group.isKnown) return [{ subject: { network, member: group }, ref: network.ref, name: network.name }];
  return group.sums.map((each, index) => ({ subject: { network, member: worked(each) }, ...about(each, index) }));
}

/** What is known of the supports of a network; none drawn is missing data, not a fault at every place. */
export function supportSumsOf({ network, supports }: NetworkDesign): Worked<SupportSums> {
  if (Object.keys(network.supports).length === 0) return notWorked('no support is drawn; place them by the table.');
  if (supports.isKnown && supports.sums.held.every(({ pipe }) => !pipe)) return notWorked('none of the supports that are drawn holds a pipe; move them onto it.');
  return supports;
}

/** Where a finding about a network shows. */
export const placeOn = ({ network }: NetworkDesign, at: readonly (PlanPoint | PlanPoint3)[], more: Omit<Place, 'level' | 'at'> = {}): Place | undefined =>
  at.length > 0 ? { level: network.level, at: at.map(({ x, y }) => ({ x, y })), ...more } : undefined;

/** The node that a nozzle hangs at. */
export const nozzleAt = ({ network }: NetworkDesign, { id }: RefOf<'nozzle'>): PlanPoint3 | undefined => network.nodes[network.nozzles[id]?.node ?? '']?.at;

/** What a finding adds while the discharge that it rests on is the last one and a new one is on its way. */
export const staleDischarge = (isStale: boolean): string => (isStale ? ' This is the discharge before the last change: the new one is being worked out.' : '');
