import type { Settings } from '../model/plan.ts';
import { PIPE_TABLE, type PipeSize } from '../profile/pipe-table.ts';
import { toDegrees } from '../units/convert.ts';
import { formatLength } from '../units/length-text.ts';

type Lengths = Settings['lengths'];

/** A height above the finished floor, with its sign: `+7'-4"`. */
export const heightText = (z_m: number, lengths: Lengths): string => {
  const words = formatLength(z_m, lengths);
  return words.startsWith('-') || !Number.isFinite(z_m) ? words : `+${words}`;
};

/** A pipe size as the sheet names it: `3/4"` or `DN 20`. */
export const sizeText = (size: PipeSize, lengths: Lengths): string => (lengths === 'feet' ? `${size.replace('-', ' ')}"` : `DN ${PIPE_TABLE[size].dn}`);

/** A direction on the plan in whole degrees, or tenths where it is none: 0° is plan east, counter-clockwise. */
export const degreesText = (angle_rad: number): string => {
  const turned = ((toDegrees(angle_rad) % 360) + 360) % 360;
  const rounded = Math.round(turned * 10) / 10;
  return `${Number((rounded === 360 ? 0 : rounded).toFixed(1))}°`;
};

/** Words with a capital first letter. */
export const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
