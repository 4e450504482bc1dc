import type { Basis } from '../topic.ts';
import { type Logarithm, SUM_NOISE, airChanges } from './agent-quantity.ts';
import { between, positive, within } from './checked.ts';

/** Cylinders whose fill cannot be chosen, and what they must do to a room. */
export interface FixedFill {
  /** Fill of one cylinder [kg]. */
  readonly massEach_kg: number;
  /** C, minimum design concentration [vol %]. */
  readonly concentration_pct: number;
  /** s at the lowest temperature of the room, sea-level pressure [m³/kg]. */
  readonly coldSpecificVolume_m3_kg: number;
  /** s at the highest temperature of the room, sea-level pressure [m³/kg]. */
  readonly hotSpecificVolume_m3_kg: number;
  /** Least oxygen for people, sea-level equivalent [vol %]. */
  readonly oxygenLimit_pct: number;
  /** Oxygen of the air before [vol %]. */
  readonly oxygenBase_pct: number;
  /** f, pressure of the room over that at sea level. */
  readonly altitudeFactor: number;
  /** Form of the logarithm in the quantity, as the rest of the design has it. */
  readonly logarithm: Logarithm;
}

/** A number of them. */
export interface CountedFill extends FixedFill {
  /** n, at least 1. */
  readonly count: number;
}

/** Volumes that suit a count of cylinders; none does when the least is above the greatest. */
export interface FixedFillBand {
  /** Below it too little oxygen is left when the room is hottest. */
  readonly least_m3: number;
  /** Above it the mass falls short when the room is coldest. */
  readonly greatest_m3: number;
}

export const fixedFillBasis: Basis = {
  formula: 'V_least = n·m·s_hot/(f·ln(O2_air·f/O2_limit)); V_greatest = n·m·s_cold/(f·ln(100/(100 − C)))',
  source: 'the quantity formula of EN 15004-8:2008 and the residual oxygen, each solved for the volume',
  caution: 'The band can be a few percent wide, or empty: the net volume and both temperatures must be sure.',
};

/** Agent for each volume of room, as it is in the hottest room, that leaves just enough oxygen; undefined if even air has not enough. */
function greatestAirChanges({ oxygenLimit_pct, oxygenBase_pct, altitudeFactor }: FixedFill): number | undefined {
  const base_pct = within('oxygenBase_pct', oxygenBase_pct, 20, 21);
  const changes = Math.log((base_pct * positive('altitudeFactor', altitudeFactor)) / between('oxygenLimit_pct', oxygenLimit_pct, 0, base_pct));
  return changes > 0 ? changes : undefined;
}

/**
 * Volumes of room that a count of cylinders floods enough when cold and not too much when hot.
 *
 * @param fill  cylinders and what they must do [-]
 * @returns band; undefined if at this altitude even air has less oxygen than the limit [m³]
 * @throws {RangeError} a figure not finite or out of range
 * @example fixedFillBand({ massEach_kg: 24.7, count: 1, concentration_pct: 40.3, coldSpecificVolume_m3_kg: 0.85242, hotSpecificVolume_m3_kg: 0.87879, oxygenLimit_pct: 12, oxygenBase_pct: 20.95, altitudeFactor: 1, logarithm: 'exact' }) // { least_m3: 38.95, greatest_m3: 40.82 }
 */
export function fixedFillBand(fill: CountedFill): FixedFillBand | undefined {
  const mass_kg = positive('massEach_kg', fill.massEach_kg) * within('count', fill.count, 1, 1000);
  const needed = airChanges(positive('concentration_pct', fill.concentration_pct), fill.logarithm);
  const bearable = greatestAirChanges(fill);
  if (bearable === undefined) return undefined;
  const atPressure_kg = mass_kg / fill.altitudeFactor;
  return {
    least_m3: (atPressure_kg * positive('hotSpecificVolume_m3_kg', fill.hotSpecificVolume_m3_kg)) / bearable,
    greatest_m3: (atPressure_kg * positive('coldSpecificVolume_m3_kg', fill.coldSpecificVolume_m3_kg)) / needed,
  };
}

/**
 * Counts of cylinders whose band holds a room, ends included.
 *
 * @param volume_m3      V, net volume [m³], > 0
 * @param fill           cylinders and what they must do [-]
 * @param greatestCount  most cylinders that come into question [-], 1 to 1000
 * @returns counts, rising, perhaps none [-]
 * @throws {RangeError} a figure not finite or out of range
 * @example feasibleCounts(199.84, { massEach_kg: 24.7, concentration_pct: 40.3, coldSpecificVolume_m3_kg: 0.85242, hotSpecificVolume_m3_kg: 0.87879, oxygenLimit_pct: 12, oxygenBase_pct: 20.95, altitudeFactor: 1, logarithm: 'exact' }, 20) // [5]
 */
export function feasibleCounts(volume_m3: number, fill: FixedFill, greatestCount: number): readonly number[] {
  const counts = Array.from({ length: within('greatestCount', greatestCount, 1, 1000) }, (_, index) => index + 1);
  const room_m3 = positive('volume_m3', volume_m3);
  return counts.filter((count) => {
    const band = fixedFillBand({ ...fill, count });
    return band !== undefined && room_m3 >= band.least_m3 * (1 - SUM_NOISE) && room_m3 <= band.greatest_m3 * (1 + SUM_NOISE);
  });
}
