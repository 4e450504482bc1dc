import { toInches, toMillimetres } from '../units/convert.ts';
import { type LengthSystem, formatLength } from '../units/length-text.ts';
import { type WorkbookCell, type WorkbookColumn, figure } from './workbook.ts';

const RIGHT: Readonly<Record<LengthSystem, (head: string) => WorkbookColumn[]>> = {
  feet: (head) => [
    { head: `${head} [in]`, width: 12 },
    { head: `${head}, as a tape reads`, width: 15 },
  ],
  metric: (head) => [{ head: `${head} [mm]`, width: 12 }],
};

/** Columns of a length: metres, then the plan's units, in feet also with fractions in words. */
export const lengthColumns = (head: string, lengths: LengthSystem): WorkbookColumn[] => [{ head: `${head} [m]`, width: 11 }, ...RIGHT[lengths](head)];

/** Cells under `lengthColumns`: empty where the length is not known. */
export function lengthCells(length_m: number | null, lengths: LengthSystem): WorkbookCell[] {
  if (length_m === null) return lengths === 'feet' ? [null, null, null] : [null, null];
  const metres = figure(length_m, 4);
  return lengths === 'feet' ? [metres, figure(toInches(length_m), 3), formatLength(length_m, 'feet')] : [metres, figure(toMillimetres(length_m), 1)];
}
