import { type Plan, type Ref, refKey } from '../model/plan.ts';
import { thingName } from '../model/thing-name.ts';

/** Everything that a log entry or a service visit may be about. */
function* loggedThings({ levels, networks }: Plan): Generator<Ref> {
  for (const network of Object.values(networks)) {
    yield { kind: 'network', id: network.id };
    for (const { id } of Object.values(network.cylinders)) yield { kind: 'cylinder', network: network.id, id };
    for (const { id } of Object.values(network.nozzles)) yield { kind: 'nozzle', network: network.id, id };
  }
  for (const level of Object.values(levels)) for (const { id } of Object.values(level.enclosures)) yield { kind: 'enclosure', level: level.id, id };
}

/** Names of everything that a log entry or a visit may be about, by its key. */
export const namesByKey = (plan: Plan): ReadonlyMap<string, string> => new Map([['', 'Whole job'], ...[...loggedThings(plan)].map((ref): [string, string] => [refKey(ref), thingName(plan, ref)])]);

/** What stands where something was logged that is no longer drawn. */
export const GONE_WORDS = 'no longer drawn';
