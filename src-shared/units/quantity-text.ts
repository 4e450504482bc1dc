import {
  BAR_Pa,
  PSI_Pa,
  absoluteOf_Pa,
  bar_Pa,
  celsius_K,
  cubicFeet_m3,
  degrees_rad,
  fahrenheit_K,
  litres_m3,
  pounds_kg,
  psf_Pa,
  psi_Pa,
  squareFeet_m2,
  squareInches_m2,
} from './convert.ts';
import { type LengthSystem, formatAgainstLimit, formatLength, parseLength } from './length-text.ts';

/**
 * What a figure measures. `pressure` is absolute, `gaugePressure` over the air around; `pressureDifference` is what
 * a wall bears, `pressureLoss` what pipe under test loses. `insulation` is a resistance that is read in megohms.
 * `ratio` is a share of one, shown in per cent.
 */
export type QuantityKind =
  | 'length'
  | 'area'
  | 'orificeArea'
  | 'volume'
  | 'mass'
  | 'pressure'
  | 'gaugePressure'
  | 'pressureDifference'
  | 'pressureLoss'
  | 'angle'
  | 'count'
  | 'massFlow'
  | 'volumeFlow'
  | 'voltage'
  | 'current'
  | 'ratio'
  | 'temperature'
  | 'time'
  | 'force'
  | 'sound'
  | 'charge'
  | 'resistance'
  | 'insulation';

/** A figure in base SI, or a sentence that says why it was not understood, with an example. */
export type ParsedQuantity = { readonly ok: true; readonly value: number } | { readonly ok: false; readonly reason: string };

interface Unit {
  /** As it is printed after the number. */
  readonly name: string;
  /** Base SI value of one of it. */
  readonly one: number;
  /** Base SI value at its zero, for °C, °F and gauge pressures. */
  readonly zero?: number;
  readonly decimals: number;
  /** Printed straight after the number. */
  readonly isTight?: boolean;
  /** Other ways to write it, in small letters without spaces. */
  readonly also?: readonly string[];
}
interface Scale {
  readonly feet: Unit;
  readonly metric: Unit;
  /** Further units that are understood when typed. */
  readonly others?: readonly Unit[];
  readonly word: string;
}

const unit = (name: string, one: number, decimals: number, also: readonly string[] = [], more: Partial<Unit> = {}): Unit => ({ name, one, decimals, also, ...more });

const m2 = unit('m²', 1, 2, ['m2', 'sqm']);
const ft2 = unit('ft²', squareFeet_m2(1), 2, ['ft2', 'sqft', 'sf']);
const mm2 = unit('mm²', 1e-6, 1, ['mm2', 'sqmm']);
const in2 = unit('in²', squareInches_m2(1), 4, ['in2', 'sqin']);
const cm2 = unit('cm²', 1e-4, 1, ['cm2', 'sqcm']);
const m3 = unit('m³', 1, 2, ['m3', 'cum']);
const ft3 = unit('ft³', cubicFeet_m3(1), 1, ['ft3', 'cuft', 'cf']);
const litre = unit('L', litres_m3(1), 1, ['liter', 'litre', 'liters', 'litres']);
const kg = unit('kg', 1, 1);
const lb = unit('lb', pounds_kg(1), 1, ['lbs', 'pound', 'pounds']);
const pascals = [unit('Pa', 1, 0), unit('kPa', 1000, 2), unit('MPa', 1e6, 3), unit('mbar', 100, 1)];
const absolutePascals = [
  unit('Pa', 1, 0, ['paabs', 'paa']),
  unit('kPa', 1000, 2, ['kpaabs', 'kpaa']),
  unit('MPa', 1e6, 3, ['mpaabs', 'mpaa']),
];
const barAbsolute = unit('bar abs', BAR_Pa, 1, ['bar', 'bara', 'bar(a)', 'barabs']);
const psiAbsolute = unit('psi abs', PSI_Pa, 1, ['psi', 'psia', 'psiabs', 'psi(a)']);
const barGauge = unit('bar gauge', BAR_Pa, 1, ['barg', 'bar(g)', 'bargauge'], { zero: absoluteOf_Pa(0) });
const psiGauge = unit('psi gauge', PSI_Pa, 1, ['psig', 'psi(g)', 'psigauge'], { zero: absoluteOf_Pa(0) });
const plainBar = unit('bar', bar_Pa(1), 3);
const plainPsi = unit('psi', psi_Pa(1), 2);
const ohm = unit('Ω', 1, 2, ['ohm', 'ohms']);
const kiloohm = unit('kΩ', 1000, 2, ['kohm', 'kohms', 'k']);
const megohm = unit('MΩ', 1e6, 2, ['mohm', 'megohm', 'megohms']);
const psf = unit('psf', psf_Pa(1), 2, ['lb/ft2', 'lb/ft²']);
const degree = unit('°', degrees_rad(1), 1, ['deg', 'degree', 'degrees'], { isTight: true });
const same = (each: Unit): { feet: Unit; metric: Unit } => ({ feet: each, metric: each });

const SCALES: Readonly<Record<Exclude<QuantityKind, 'length'>, Scale>> = {
  area: { feet: ft2, metric: m2, others: [in2, cm2, mm2], word: 'an area' },
  orificeArea: { feet: in2, metric: mm2, others: [cm2], word: 'an area' },
  volume: { feet: ft3, metric: m3, others: [litre], word: 'a volume' },
  mass: { feet: lb, metric: kg, others: [unit('g', 0.001, 0)], word: 'a mass' },
  pressure: { feet: psiAbsolute, metric: barAbsolute, others: [barGauge, psiGauge, psf, ...absolutePascals], word: 'a pressure' },
  gaugePressure: { feet: unit('psi gauge', PSI_Pa, 1, ['psi', 'psig', 'psi(g)']), metric: unit('bar gauge', BAR_Pa, 1, ['bar', 'barg', 'bar(g)']), word: 'a gauge pressure' },
  pressureDifference: { feet: psf, metric: unit('Pa', 1, 0), others: [plainBar, plainPsi, ...pascals], word: 'a pressure' },
  pressureLoss: { feet: plainPsi, metric: plainBar, others: pascals, word: 'a loss of pressure' },
  angle: { ...same(degree), others: [unit('rad', 1, 3)], word: 'an angle' },
  count: { ...same(unit('', 1, 0)), word: 'a whole number' },
  massFlow: { feet: unit('lb/s', pounds_kg(1), 2), metric: unit('kg/s', 1, 3), others: [unit('lb/min', pounds_kg(1) / 60, 1), unit('kg/min', 1 / 60, 1)], word: 'a mass flow' },
  volumeFlow: {
    feet: unit('ft³/min', cubicFeet_m3(1) / 60, 0, ['cfm', 'ft3/min']),
    metric: unit('m³/s', 1, 3, ['m3/s']),
    others: [unit('L/s', litres_m3(1), 1), unit('m³/h', 1 / 3600, 0, ['m3/h'])],
    word: 'an air flow',
  },
  voltage: { ...same(unit('V', 1, 1, ['volt', 'volts', 'vdc'])), word: 'a voltage' },
  current: { ...same(unit('A', 1, 2, ['amp', 'amps'])), others: [unit('mA', 0.001, 0)], word: 'a current' },
  time: { ...same(unit('s', 1, 1, ['sec', 'second', 'seconds'])), others: [unit('min', 60, 1, ['minute', 'minutes'])], word: 'a time' },
  force: { feet: unit('lbf', 4.448_221_615, 1), metric: unit('N', 1, 0), others: [unit('kN', 1000, 2)], word: 'a force' },
  sound: { ...same(unit('dB', 1, 1, ['db', 'dba', 'db(a)', 'decibel'])), word: 'a loudness' },
  charge: { ...same(unit('Ah', 1, 1, ['ah', 'amperehours', 'amp-hours', 'amphours'])), word: 'a charge' },
  resistance: { ...same(ohm), others: [kiloohm, megohm], word: 'a resistance' },
  insulation: { ...same(megohm), others: [ohm, kiloohm], word: 'an insulation resistance' },
  ratio: { ...same(unit('%', 0.01, 1, ['percent'])), word: 'a share' },
  temperature: {
    feet: unit('°F', 5 / 9, 1, ['f', 'degf'], { zero: fahrenheit_K(0) }),
    metric: unit('°C', 1, 1, ['c', 'degc'], { zero: celsius_K(0) }),
    others: [unit('K', 1, 1)],
    word: 'a temperature',
  },
};

/** A kind without a unit. */
const PLAIN: Scale = { ...same(unit('', 1, 3)), word: 'a number' };

const isKind = (kind: string): kind is Exclude<QuantityKind, 'length'> => Object.hasOwn(SCALES, kind);
const unitOf = (kind: Exclude<QuantityKind, 'length'>, system: LengthSystem, value: number): Unit => {
  const { feet, metric } = SCALES[kind];
  // Below a tenth of an atmosphere nobody means an absolute pressure: a wall's strength or a loss is shown as such.
  if (kind === 'pressure' && Math.abs(value) < 10_000) return unitOf('pressureDifference', system, value);
  return system === 'feet' ? feet : metric;
};

const print = (value: number, { name, one, zero = 0, isTight }: Unit, decimals: number): string => {
  const figure = ((value - zero) / one).toFixed(decimals);
  const shown = Number(figure) === 0 ? figure.replace('-', '') : figure;
  return name === '' || isTight ? `${shown}${name}` : `${shown} ${name}`;
};

/** Decimals that keep three figures of a number below one, within reason. */
const decimalsFor = (value: number, { one, zero, decimals }: Unit): number => {
  const size = Math.abs(value) / one;
  const isSmall = zero === undefined && decimals > 0 && size > 0 && size < 1;
  return isSmall ? Math.min(decimals + 3, Math.max(decimals, 2 - Math.floor(Math.log10(size)))) : decimals;
};

/**
 * Unit that a field of a kind shows, and that a bare number typed into it has: "ft²", "bar abs", "" for counts
 * and for a kind without a unit.
 */
export function unitName(kind: QuantityKind | (string & {}), system: LengthSystem): string {
  if (kind === 'length') return system === 'feet' ? 'ft' : 'm';
  return isKind(kind) ? SCALES[kind][system].name : '';
}

/**
 * A figure with its unit, as the user reads it: "677.25 ft²", "0.35 kg/s", "12.5°".
 * @param value in base SI; one that is not a number prints as “not known”
 * @param kind  what it measures; a kind without a unit (`text`) prints the number alone
 */
export function formatQuantity(value: number, kind: QuantityKind | (string & {}), system: LengthSystem): string {
  if (!Number.isFinite(value)) return 'not known';
  if (kind === 'length') return formatLength(value, system);
  if (!isKind(kind)) return String(value);
  const shown = unitOf(kind, system, value);
  return print(value, shown, decimalsFor(value, shown));
}

/**
 * The same with at least so many significant figures, for sums that somebody follows by hand.
 * @param figures  1 to 9
 */
export function formatFigures(value: number, kind: QuantityKind | (string & {}), system: LengthSystem, figures: number): string {
  if (kind === 'length' || !isKind(kind) || !Number.isFinite(value)) return formatQuantity(value, kind, system);
  const shown = unitOf(kind, system, value);
  const size = Math.abs((value - (shown.zero ?? 0)) / shown.one);
  const needed = size > 0 ? figures - 1 - Math.floor(Math.log10(size)) : 0;
  return print(value, shown, Math.min(9, Math.max(decimalsFor(value, shown), needed)));
}

/**
 * A figure and its limit with their unit, printed alike and so finely that they read differently whenever
 * they differ, so that rounding never hides a fault (check D8).
 */
export function formatQuantityAgainstLimit(
  value: number,
  limit: number,
  kind: QuantityKind | (string & {}),
  system: LengthSystem,
): { readonly value: string; readonly limit: string } {
  if (kind === 'length') return formatAgainstLimit(value, limit, system);
  if (!isKind(kind) || !Number.isFinite(value) || !Number.isFinite(limit)) {
    return { value: formatQuantity(value, kind, system), limit: formatQuantity(limit, kind, system) };
  }
  const shown = unitOf(kind, system, Math.max(Math.abs(value), Math.abs(limit)));
  const start = Math.max(decimalsFor(value, shown), decimalsFor(limit, shown));
  const both = (decimals: number) => ({ value: print(value, shown, decimals), limit: print(limit, shown, decimals) });
  if (Math.abs(value - limit) <= 1e-9 * Math.max(1e-3, Math.abs(limit))) return both(start);
  for (let decimals = start; decimals <= 15; decimals += 1) {
    const printed = both(decimals);
    if (printed.value !== printed.limit) return printed;
  }
  return both(start);
}

const TYPED = /^(?<sign>[+-]?)(?<number>\d+(?:[.,]\d*)?|[.,]\d+)(?<unit>\D.*)?$/;

/**
 * Understands a typed figure. A bare number has the unit that the field shows (`unitName`); any other unit of
 * the kind may be written after it. Decimals stand after a point or a comma; there is no sign between thousands.
 * @returns the figure in base SI; or a sentence for the user with an example
 */
export function parseQuantity(text: string, kind: QuantityKind | (string & {}), system: LengthSystem): ParsedQuantity {
  if (kind === 'length') {
    const parsed = parseLength(text, system);
    return parsed.ok ? { ok: true, value: parsed.length_m } : parsed;
  }
  const scale = isKind(kind) ? SCALES[kind] : PLAIN;
  const example = `${kind === 'count' ? '4' : '12.5'} ${scale[system].name}`.trim();
  const no = (reason: string): ParsedQuantity => ({ ok: false, reason });
  const shown = text.trim().slice(0, 24);
  if (shown === '') return no(`Type ${scale.word}, such as ${example}.`);
  const written = text.length > 60 ? '' : text.replace(/\s+/g, '').replace(/[−–]/g, '-').toLowerCase();
  const typed = TYPED.exec(written)?.groups;
  if (!typed?.number) return no(`“${shown}” is not ${scale.word}. Write it as ${example}.`);
  if (/^[1-9]\d{0,2},\d{3}$/.test(typed.number)) {
    return no(`“${shown}” can be read in two ways. Write the decimals after a point and no sign between thousands.`);
  }
  const units = [scale[system], scale.feet, scale.metric, ...(scale.others ?? [])];
  const wanted = typed.unit ?? '';
  const found = wanted === '' ? scale[system] : units.find(({ name, also = [] }) => name.toLowerCase().replace(/\s+/g, '') === wanted || also.includes(wanted));
  if (!found) {
    const known = [...new Set(units.map(({ name }) => name).filter((name) => name !== ''))];
    return no(`“${wanted.slice(0, 12)}” is not a unit of ${scale.word}.${known.length > 0 ? ` Use ${known.join(', ')}.` : ''}`);
  }
  const figure = Number(`${typed.sign === '-' ? '-' : ''}${typed.number.replace(',', '.')}`);
  if (kind === 'count' && !Number.isInteger(figure)) return no(`“${shown}” is not a whole number. Write it as ${example}.`);
  const value = figure * found.one + (found.zero ?? 0);
  return Number.isFinite(value) ? { ok: true, value } : no(`“${shown}” is too large.`);
}
