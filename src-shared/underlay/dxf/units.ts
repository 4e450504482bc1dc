import type { Header } from './header.ts';

interface Unit {
  readonly name: string;
  readonly metres: number;
}

const INCH_m = 0.0254;
const FOOT_m = 0.3048;
/** US survey foot, exactly 1200/3937 m (Mendenhall order of 1893). */
const SURVEY_FOOT_m = 1200 / 3937;

/** Drawing units by the code of the header variable $INSUNITS. */
const UNITS: Readonly<Record<number, Unit>> = {
  1: { name: 'inches', metres: INCH_m },
  2: { name: 'feet', metres: FOOT_m },
  3: { name: 'miles', metres: 5280 * FOOT_m },
  4: { name: 'millimetres', metres: 0.001 },
  5: { name: 'centimetres', metres: 0.01 },
  6: { name: 'metres', metres: 1 },
  7: { name: 'kilometres', metres: 1000 },
  8: { name: 'microinches', metres: INCH_m * 1e-6 },
  9: { name: 'thousandths of an inch', metres: INCH_m * 1e-3 },
  10: { name: 'yards', metres: 3 * FOOT_m },
  11: { name: 'ångströms', metres: 1e-10 },
  12: { name: 'nanometres', metres: 1e-9 },
  13: { name: 'micrometres', metres: 1e-6 },
  14: { name: 'decimetres', metres: 0.1 },
  15: { name: 'decametres', metres: 10 },
  16: { name: 'hectometres', metres: 100 },
  17: { name: 'gigametres', metres: 1e9 },
  18: { name: 'astronomical units', metres: 149_597_870_700 },
  19: { name: 'light years', metres: 9.4607e15 },
  20: { name: 'parsecs', metres: 3.0857e16 },
  21: { name: 'US survey feet', metres: SURVEY_FOOT_m },
  22: { name: 'US survey inches', metres: SURVEY_FOOT_m / 12 },
  23: { name: 'US survey yards', metres: SURVEY_FOOT_m * 3 },
  24: { name: 'US survey miles', metres: SURVEY_FOOT_m * 5280 },
};

/** Units that plans are drawn in, likeliest first for a plan that fits more than one. */
const LIKELY = [4, 1, 6, 2, 5];

/** A plan's longer side lies in this range [m]; common practice, wide on purpose. */
const PLAUSIBLE_m = { least: 3, most: 2000 };

const sized = (metres: number): string => (metres < 10 ? metres.toPrecision(2) : metres < 10_000 ? metres.toFixed(0) : metres.toPrecision(2));

/** What the file says of its units: metres on site per unit, and in words. */
export function unitsOf({ unitCode, showsFeetInches }: Header): { metresPerUnit: number | null; unitsText: string } {
  const unit = unitCode === undefined ? undefined : UNITS[unitCode];
  if (unit) return { metresPerUnit: unit.metres, unitsText: `${unit.name} ($INSUNITS ${unitCode})` };
  const hint = showsFeetInches ? '; lengths are shown in feet and inches, so one unit is likely an inch' : '';
  return { metresPerUnit: null, unitsText: `no units given${hint}` };
}

/**
 * Why the unit of the file is doubtful, in words, or null.
 * @param longer the drawing's longer side, file units
 */
export function doubtOf(header: Header, longer: number): string | null {
  const unit = header.unitCode === undefined ? undefined : UNITS[header.unitCode];
  if (!unit) return null;
  if (header.showsFeetInches && unit.name !== 'inches' && unit.name !== 'US survey inches') {
    return `The file says ${unit.name}, but shows its lengths in feet and inches, where one unit is an inch. Set the scale by a known length.`;
  }
  const size_m = longer * unit.metres;
  if (size_m >= PLAUSIBLE_m.least && size_m <= PLAUSIBLE_m.most) return null;
  const better = LIKELY.map((code) => UNITS[code]).filter(
    (other) => other !== undefined && longer * other.metres >= 2 * PLAUSIBLE_m.least && longer * other.metres <= 500,
  );
  const guess = better.slice(0, 2).map((other) => (other ? `read as ${other.name} it would be ${sized(longer * other.metres)} m` : ''));
  const instead = guess.length > 0 ? ` (${guess.join(', ')})` : '';
  return `The file says ${unit.name}, which makes the whole drawing ${sized(size_m)} m long${instead}. Set the scale by a known length.`;
}
