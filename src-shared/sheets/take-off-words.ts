import type { BillOfMaterials, FittingCount } from '../take-off/bill-of-materials.ts';
import { FITTING_WORDS } from '../derived/fitting-words.ts';
import type { PieceEndKind } from '../take-off/piece-runs.ts';
import type { Piece } from '../take-off/pieces-of.ts';
import { roundCut } from '../take-off/round-cut.ts';
import { toInches, toMillimetres } from '../units/convert.ts';
import { type LengthSystem, formatLength } from '../units/length-text.ts';
import { sizeText } from './sheet-text.ts';

/** What stands at an end of a piece, in the user's words. */
export const END_WORDS: Readonly<Record<PieceEndKind, string>> = {
  ...FITTING_WORDS,
  open: 'bare end',
  nozzle: 'nozzle',
  joint: 'weld or grooved coupling',
  unfitted: 'nozzle without a tee',
};

/** "3/4″ Sch 40 black steel". */
export const makeWords = ({ size, schedule, material }: Pick<Piece, 'size' | 'schedule' | 'material'>, lengths: LengthSystem): string =>
  `${sizeText(size, lengths)} Sch ${schedule} ${material.replace('-', ' ')}`;

export const classWords = ({ fittingClass }: Pick<FittingCount, 'fittingClass'>): string => (fittingClass === null ? 'class not known' : `Class ${fittingClass}`);

/** "90° elbow 3/4″ Class 300". */
export const fittingWords = (fitting: Omit<FittingCount, 'count'>, lengths: LengthSystem): string =>
  [END_WORDS[fitting.kind], fitting.sizes.map((size) => sizeText(size, lengths)).join(' × '), classWords(fitting)].join(' ');

/** "1–2": its two ends by their numbers. */
export const pieceLabel = ({ from, to }: Piece): string => `${from.label}–${to.label}`;

/** What the rounding of a cut leaves over: "rounded up by 0.005 in". */
export function remainderWords(cut_m: number, lengths: LengthSystem): string {
  const { remainder_m, way } = roundCut(cut_m, lengths);
  if (way === 'exact') return 'exact';
  const off_m = Math.abs(remainder_m);
  return `rounded ${way} by ${lengths === 'feet' ? `${toInches(off_m).toFixed(3)} in` : `${toMillimetres(off_m).toFixed(2)} mm`}`;
}

export const otherSystem = (lengths: LengthSystem): LengthSystem => (lengths === 'feet' ? 'metric' : 'feet');

/** A cut length as a tape shows it: to 1/16 in or 1 mm. */
export const cutText = (cut_m: number, lengths: LengthSystem): string => formatLength(roundCut(cut_m, lengths).length_m, lengths);

/** Why a piece has no cut length, or none to cut by; empty where it has one. */
export const whyWords = ({ because, isTooShort }: Piece): string => [...(isTooShort ? ['Too short'] : []), ...because].join(': ');

/** A cut length as a tape shows it, in both ways, with what the rounding left over; or why there is none. */
export function cutWords({ cut_m, because, isTooShort }: Piece, lengths: LengthSystem): string {
  const why = [...(isTooShort ? ['TOO SHORT'] : []), ...because].join(': ');
  if (cut_m === null) return `no cut length: ${why}`;
  return `cut ${cutText(cut_m, lengths)} (${cutText(cut_m, otherSystem(lengths))}), ${remainderWords(cut_m, lengths)}${why && `; ${why}`}`;
}

const CAUTIONS = [
  'Measure the fittings in hand before cutting, and the leg as built before its last piece. Take-offs are of malleable fittings by ASME B16.3 (memory for Class 300) and of the thread engagement that shops allow for.',
  'What a nozzle or the discharge assembly takes of the pipe is not known here: take it off the first and last piece.',
];
const REDUCING = 'Where pipes of different sizes meet, the fitting is listed with its reducers: buy it straight with these reducers, or as one reducing fitting without them.';
const AUTHORITY = 'Preliminary. The unit’s own manual, its listing, the adopted code and licensed practice decide.';

/** What a reader of a take-off must be told. */
export const takeOffCautions = ({ fittings }: BillOfMaterials): string[] => [...CAUTIONS, ...(fittings.some(({ sizes }) => sizes.length > 1) ? [REDUCING] : []), AUTHORITY];
