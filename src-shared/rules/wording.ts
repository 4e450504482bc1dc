import type { Settings } from '../model/plan.ts';
import { formatAgainstLimit, formatLength } from '../units/length-text.ts';
import { formatQuantity } from '../units/quantity-text.ts';

/** Prints the figures of findings in the user's units. */
export interface Wording {
  length(length_m: number): string;
  /** A measured length and its limit, printed alike and so finely that rounding hides no fault. */
  against(length_m: number, limit_m: number): { readonly value: string; readonly limit: string };
  area(area_m2: number): string;
  /** Whole degrees, or tenths where that matters. */
  angle(angle_rad: number): string;
}

/** Wording in the plan's way of showing lengths. */
export const wordingFor = (lengths: Settings['lengths']): Wording => ({
  length: (length_m) => formatLength(length_m, lengths),
  against: (length_m, limit_m) => formatAgainstLimit(length_m, limit_m, lengths),
  area: (area_m2) => formatQuantity(area_m2, 'area', lengths),
  angle: (angle_rad) => `${Math.round((angle_rad * 1800) / Math.PI) / 10}°`,
});
