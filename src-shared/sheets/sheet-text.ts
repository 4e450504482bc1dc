import type { Space } from '../derived/derived.ts';
import type { Settings, SpaceKind } from '../model/plan.ts';
import { PIPE_TABLE, type PipeSize } from '../profile/pipe-table.ts';
import { toDegrees } from '../units/convert.ts';
import { formatLength } from '../units/length-text.ts';

type Lengths = Settings['lengths'];

/** A length as a sheet prints it: below zero with a minus sign, as all figures of the set. */
export const lengthText = (length_m: number, lengths: Lengths): string => formatLength(length_m, lengths).replace(/^-/, '−');

/** A height above the finished floor, with its sign: `+7'-4"`, `−0'-7"`. */
export const heightText = (z_m: number, lengths: Lengths): string => {
  const words = formatLength(z_m, lengths);
  if (!Number.isFinite(z_m)) return words;
  return words.startsWith('-') ? `−${words.slice(1)}` : `+${words}`;
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

/** How far an orifice hangs below the face above it, in words; one that stands above it says so. */
export function dropText(localCeiling_m: number, z_m: number, kind: SpaceKind | undefined, lengths: Lengths): string {
  const face = kind === 'under-floor' ? 'floor' : kind === 'ceiling-void' ? 'slab' : 'ceiling';
  const drop_m = localCeiling_m - z_m;
  return `${formatLength(Math.abs(drop_m), lengths)} ${drop_m < 0 ? 'ABOVE' : 'below'} ${face}`;
}

/** Clear height of a space: floor to highest ceiling of a room, entered depth of a void; undefined while unknown. */
export const clearHeight_m = ({ kind, enclosure, floor_m, tallest_m }: Space): number | undefined =>
  kind === 'under-floor' ? enclosure.underFloor?.depth_m : kind === 'ceiling-void' ? enclosure.ceilingVoid?.depth_m : tallest_m === undefined ? undefined : tallest_m - floor_m;
