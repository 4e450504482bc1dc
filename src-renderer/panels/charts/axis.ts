import { BAR_Pa, PSI_Pa } from '#shared/units/convert';
import type { LengthSystem } from '#shared/units/length-text';
import { type QuantityKind, parseQuantity, unitName } from '#shared/units/quantity-text';

/** Unit of an axis: its name, and its figure of a value in base SI. */
export interface AxisUnit {
  readonly name: string;
  of(value: number): number;
}

const figureOf = (text: string, kind: QuantityKind, system: LengthSystem): number => {
  const parsed = parseQuantity(text, kind, system);
  return parsed.ok ? parsed.value : Number.NaN;
};

/** The unit in which a kind of figure is shown. */
export function axisUnit(kind: QuantityKind, system: LengthSystem): AxisUnit {
  const zero = figureOf('0', kind, system);
  const one = figureOf('1', kind, system) - zero;
  return { name: unitName(kind, system), of: (value) => (value - zero) / one };
}

/** The unit in which a gauge shows a pressure over the air around it. */
export const gaugeUnit = (system: LengthSystem): AxisUnit =>
  system === 'feet' ? { name: 'psi gauge', of: (value) => value / PSI_Pa } : { name: 'bar gauge', of: (value) => value / BAR_Pa };

const STEPS = [1, 2, 2.5, 5, 10];

/**
 * Round figures for the ticks of an axis: multiples of 1, 2, 2.5 or 5 times a power of ten.
 * @param most  how many may stand on the axis, at least 2
 * @example ticksBetween(0, 41.3, 5) // [0, 10, 20, 30, 40]
 */
export function ticksBetween(least: number, greatest: number, most: number): number[] {
  const span = greatest - least;
  if (!(span > 0) || !Number.isFinite(span)) return [least];
  const power = 10 ** Math.floor(Math.log10(span / most));
  const step = (STEPS.find((each) => Math.floor(greatest / (each * power) + 1e-9) - Math.ceil(least / (each * power) - 1e-9) < most) ?? 10) * power;
  const first = Math.ceil(least / step - 1e-9);
  const last = Math.floor(greatest / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(12)));
}

/** A figure of an axis, with the decimals that its step needs. */
export function tickText(value: number, step: number): string {
  const decimals = Math.max(0, Math.min(6, -Math.floor(Math.log10(step) + 1e-9) + (Number.isInteger(Number((step / 10 ** Math.floor(Math.log10(step) + 1e-9)).toPrecision(6))) ? 0 : 1)));
  return value.toFixed(decimals).replace(/\B(?=(\d{3})+(?!\d))/g, decimals === 0 ? '\u2009' : '');
}

/** A curve over other places, straight between its own; beyond its ends it stays as it was there. */
export function atPlaces(xs: readonly number[], values: readonly number[], places: readonly number[]): number[] {
  return places.map((place) => {
    const near = nearestIndex(xs, place);
    const low = (xs[near] ?? 0) > place ? near - 1 : near;
    const [x0, x1] = [xs[low], xs[low + 1]];
    const [v0, v1] = [values[low], values[low + 1]];
    if (x0 === undefined || v0 === undefined) return values[0] ?? 0;
    return x1 === undefined || v1 === undefined || x1 === x0 ? v0 : v0 + ((v1 - v0) * (place - x0)) / (x1 - x0);
  });
}

/** Index of the value nearest to `at` in a rising list. */
export function nearestIndex(values: readonly number[], at: number): number {
  let low = 0;
  let high = values.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((values[middle] ?? 0) <= at) low = middle;
    else high = middle;
  }
  return at - (values[low] ?? 0) <= (values[high] ?? 0) - at ? low : high;
}
