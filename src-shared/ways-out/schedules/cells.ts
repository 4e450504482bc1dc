import { toCelsius, toCubicFeet, toDegrees, toFahrenheit, toSquareFeet, toSquareInches } from '../../units/convert.ts';
import type { LengthSystem } from '../../units/length-text.ts';
import { type WorkbookCell, type WorkbookColumn, type WorkbookSheet, figure } from '../../workbook/workbook.ts';

/** Columns and rows of a schedule before it is a sheet of a workbook. */
export type ScheduleContent = Pick<WorkbookSheet, 'columns' | 'rows'>;

/** A column of a schedule, its width in characters. */
export const column = (head: string, width: number): WorkbookColumn => ({ head, width });
/** A whole number of things. */
export const count = (number: number): WorkbookCell => figure(number, 0);

/** Quantities that stand in SI and beside it in what a plan in feet shows. */
const KINDS = {
  area: { si: 'm²', feet: 'ft²', toFeet: toSquareFeet },
  volume: { si: 'm³', feet: 'ft³', toFeet: toCubicFeet },
} as const;

/** Heads of an area or a volume: SI, and in feet as well where the plan has them. */
export const quantityColumns = (head: string, kind: keyof typeof KINDS, lengths: LengthSystem): WorkbookColumn[] => [
  column(`${head} [${KINDS[kind].si}]`, 12),
  ...(lengths === 'feet' ? [column(`${head} [${KINDS[kind].feet}]`, 12)] : []),
];

/** Cells under `quantityColumns`: empty where it is not known. */
export const quantityCells = (value: number | null | undefined, kind: keyof typeof KINDS, lengths: LengthSystem): WorkbookCell[] => {
  const isKnown = value !== null && value !== undefined;
  return [isKnown ? figure(value, 3) : null, ...(lengths === 'feet' ? [isKnown ? figure(KINDS[kind].toFeet(value), 2) : null] : [])];
};

/** Heads of an orifice area, in the units that orifices are told by. */
export const orificeColumns = (lengths: LengthSystem): WorkbookColumn[] => [column('Orifice area [mm²]', 12), ...(lengths === 'feet' ? [column('Orifice area [in²]', 12)] : [])];
/** An orifice area under those heads; empty while it is not known. */
export const orificeCells = (area_m2: number | null, lengths: LengthSystem): WorkbookCell[] => [
  area_m2 === null ? null : figure(area_m2 * 1e6, 2),
  ...(lengths === 'feet' ? [area_m2 === null ? null : figure(toSquareInches(area_m2), 4)] : []),
];

/** A temperature in the unit of the plan. */
export const temperatureUnit = (lengths: LengthSystem): string => (lengths === 'feet' ? '°F' : '°C');
/** A temperature in that unit; empty while it is not known. */
export const temperatureCell = (kelvins: number | null | undefined, lengths: LengthSystem): WorkbookCell => (kelvins === null || kelvins === undefined ? null : figure(lengths === 'feet' ? toFahrenheit(kelvins) : toCelsius(kelvins), 1));

/** An angle counter-clockwise from plan east [°], 0 … 360. */
export const angleCell = (angle_rad: number | null): WorkbookCell => (angle_rad === null ? null : figure((((Math.round(toDegrees(angle_rad) * 10) / 10) % 360) + 360) % 360, 1));

/** Answered, or nobody has looked. */
export const answerWords = (answer: boolean | null): string => (answer === null ? 'not known' : answer ? 'yes' : 'NO');
