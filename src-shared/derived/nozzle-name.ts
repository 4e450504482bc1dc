import type { Derived, DerivedNozzle } from './derived.ts';
import { remembered } from './remember.ts';

const countsOf = remembered((nozzles: readonly DerivedNozzle[]): ReadonlyMap<string, number> => {
  const counts = new Map<string, number>();
  for (const { nozzle } of nozzles) counts.set(nozzle.name, (counts.get(nozzle.name) ?? 0) + 1);
  return counts;
});

/** Name of a nozzle in a table; the network's is added when two nozzles share one. */
export const nozzleName = ({ nozzles }: Derived, { nozzle, network }: DerivedNozzle): string => ((countsOf(nozzles).get(nozzle.name) ?? 0) > 1 ? `${nozzle.name} (${network.network.name})` : nozzle.name);
