import type { DerivedNozzle } from '#shared/derived/derived';
import { blankArcLimits, legalArcs } from '#shared/derived/legal-arc';
import type { Arc } from './nozzle-dial.tsx';

/** Directions that the first hole of a nozzle may take; undefined while that cannot be known. */
export function legalDirections(nozzle: DerivedNozzle): Arc[] | undefined {
  const [first] = nozzle.nozzle.holes_rad;
  if (first === undefined || !nozzle.at || !nozzle.space || blankArcLimits(nozzle).length > 0) return undefined;
  return legalArcs(nozzle).map(({ from_rad, to_rad }) => ({ from_rad: from_rad + first, to_rad: to_rad + first }));
}
