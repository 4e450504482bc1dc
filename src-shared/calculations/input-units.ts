import {
  ATMOSPHERE_Pa,
  absoluteOf_Pa,
  bar_Pa,
  celsius_K,
  cubicFeet_m3,
  fahrenheit_K,
  feet_m,
  inches_m,
  litres_m3,
  millimetres_m,
  pounds_kg,
  psf_Pa,
  psi_Pa,
  squareFeet_m2,
  squareInches_m2,
} from '../units/convert.ts';

/** What a calculator's number measures. */
export type Quantity =
  | 'pressure'
  | 'pressureDifference'
  | 'temperature'
  | 'volume'
  | 'length'
  | 'altitude'
  | 'mass'
  | 'massFlow'
  | 'area'
  | 'density'
  | 'stress'
  | 'current'
  | 'voltage'
  | 'percent'
  | 'time'
  | 'count'
  | 'ratio';

type ToBase = (value: number) => number;

const same: ToBase = (value) => value;
const LENGTHS: Readonly<Record<string, ToBase>> = { m: same, mm: millimetres_m, ft: feet_m, in: inches_m };
/** One inch of water at 4 °C [Pa], NIST SP 811 (2008) appendix B. */
const INCH_OF_WATER_Pa = 249.082;

/**
 * The units each quantity may be given in, by the suffix of the key, each with its way to base SI; the first is
 * the base. `bar` and `psi` are absolute, `barg` and `psig` read on a gauge at sea level. A percentage stays one.
 * A quantity whose only suffix is empty has none.
 */
export const INPUT_UNITS: Readonly<Record<Quantity, Readonly<Record<string, ToBase>>>> = {
  pressure: {
    Pa: same,
    kPa: (value) => value * 1000,
    bar: bar_Pa,
    psi: psi_Pa,
    barg: (value) => absoluteOf_Pa(bar_Pa(value)),
    psig: (value) => absoluteOf_Pa(psi_Pa(value)),
    atm: (value) => value * ATMOSPHERE_Pa,
  },
  pressureDifference: { Pa: same, kPa: (value) => value * 1000, psf: psf_Pa, inH2O: (value) => value * INCH_OF_WATER_Pa },
  temperature: { K: same, C: celsius_K, F: fahrenheit_K },
  volume: { m3: same, L: litres_m3, ft3: cubicFeet_m3 },
  length: LENGTHS,
  altitude: LENGTHS,
  mass: { kg: same, lb: pounds_kg },
  massFlow: { kg_s: same, lb_s: pounds_kg },
  area: { m2: same, mm2: (value) => value / 1e6, in2: squareInches_m2, ft2: squareFeet_m2 },
  density: { kg_m3: same },
  stress: { Pa: same, MPa: (value) => value * 1e6, psi: psi_Pa },
  current: { A: same, mA: (value) => value / 1000 },
  voltage: { V: same },
  percent: { pct: same },
  time: { s: same, min: (value) => value * 60 },
  count: { '': same },
  ratio: { '': same },
};

/** The key under which JSON gives an input in a unit. */
export const keyOf = (name: string, unit: string): string => (unit === '' ? name : `${name}_${unit}`);

/** Every key under which JSON may give an input of a quantity, base unit first. */
export const keysOf = (name: string, quantity: Quantity): string[] => Object.keys(INPUT_UNITS[quantity]).map((unit) => keyOf(name, unit));

/** Base SI as a unit of the quantity shows it; every unit is a factor and perhaps a shift. */
export function inUnit(base: number, toBase: ToBase): number {
  const zero = toBase(0);
  return (base - zero) / (toBase(1) - zero);
}
