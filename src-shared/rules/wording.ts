import { ANGLE_SLACK_rad } from '../geometry/tolerance.ts';
import type { Settings } from '../model/plan.ts';
import { formatAgainstLimit, formatLength } from '../units/length-text.ts';
import { type QuantityKind, formatQuantity, formatQuantityAgainstLimit } from '../units/quantity-text.ts';

/** Prints the figures of findings in the user's units. */
export interface Wording {
  length(length_m: number): string;
  /** A measured length and its limit, printed alike and so finely that rounding hides no fault. */
  against(length_m: number, limit_m: number): { readonly value: string; readonly limit: string };
  /** By how much a length is off; whatever is not 0 never prints as 0. */
  off(length_m: number): string;
  /** An area; whatever is not 0 never prints as 0. */
  area(area_m2: number): string;
  /** An area and its limit, as `against` prints lengths. */
  areaAgainst(area_m2: number, limit_m2: number): { readonly value: string; readonly limit: string };
  /** Whole degrees, or tenths where that matters. */
  angle(angle_rad: number): string;
  /** An angle and its limit, as `against` prints lengths. */
  angleAgainst(angle_rad: number, limit_rad: number): { readonly value: string; readonly limit: string };
  /** How far something has to be turned, in tenths of a degree and never less than it takes. */
  turn(angle_rad: number): string;
  /** Any other figure with its unit. */
  quantity(value: number, kind: QuantityKind): string;
  /** A figure and its limit, as `against` prints lengths. */
  quantityAgainst(value: number, limit: number, kind: QuantityKind): { readonly value: string; readonly limit: string };
}

const toDegrees = (angle_rad: number): number => (angle_rad * 180) / Math.PI;
const degreesText = (angle_rad: number, decimals = 1): string => `${Number(toDegrees(angle_rad).toFixed(decimals))}°`;
/** Tenths of a degree hide float noise of this many degrees when they are rounded up. */
const NOISE_deg = 1e-6;

function anglesApart(angle_rad: number, limit_rad: number): { value: string; limit: string } {
  const both = (decimals: number) => ({ value: degreesText(angle_rad, decimals), limit: degreesText(limit_rad, decimals) });
  if (Math.abs(angle_rad - limit_rad) <= ANGLE_SLACK_rad) return both(1);
  for (let decimals = 1; decimals < 12; decimals += 1) {
    const printed = both(decimals);
    if (printed.value !== printed.limit) return printed;
  }
  return both(1);
}

/** Wording in the plan's way of showing lengths. */
export const wordingFor = (lengths: Settings['lengths']): Wording => ({
  length: (length_m) => formatLength(length_m, lengths),
  against: (length_m, limit_m) => formatAgainstLimit(length_m, limit_m, lengths),
  off: (length_m) => formatAgainstLimit(length_m, 0, lengths).value,
  area: (area_m2) => formatQuantityAgainstLimit(area_m2, 0, 'area', lengths).value,
  areaAgainst: (area_m2, limit_m2) => formatQuantityAgainstLimit(area_m2, limit_m2, 'area', lengths),
  angle: (angle_rad) => degreesText(angle_rad),
  angleAgainst: anglesApart,
  turn: (angle_rad) => `${Math.ceil((toDegrees(angle_rad) - NOISE_deg) * 10) / 10}°`,
  quantity: (value, kind) => formatQuantity(value, kind, lengths),
  quantityAgainst: (value, limit, kind) => formatQuantityAgainstLimit(value, limit, kind, lengths),
});
