import type { FittingCount } from '#shared/take-off/bill-of-materials';
import type { Piece } from '#shared/take-off/pieces-of';
import { roundCut } from '#shared/take-off/round-cut';
import type { PieceEndKind } from '#shared/take-off/piece-runs';
import { FITTING_WORDS } from '#shared/derived/fitting-words';
import { sizeText } from '#shared/sheets/sheet-text';
import { toInches, toMillimetres } from '#shared/units/convert';
import { type LengthSystem, formatLength } from '#shared/units/length-text';

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

/** "90° elbow 3/4″ Class 300". */
export const fittingWords = ({ kind, sizes, fittingClass }: Omit<FittingCount, 'count'>, lengths: LengthSystem): string =>
  [END_WORDS[kind], sizes.map((size) => sizeText(size, lengths)).join(' × '), fittingClass === null ? 'class not known' : `Class ${fittingClass}`].join(' ');

/** "1–2": its two ends by their numbers. */
export const pieceLabel = ({ from, to }: Piece): string => `${from.label}–${to.label}`;

/** What the rounding of a cut leaves over: "rounded up by 0.005 in". */
function remainderWords(cut_m: number, lengths: LengthSystem): string {
  const { remainder_m, way } = roundCut(cut_m, lengths);
  if (way === 'exact') return 'exact';
  const off_m = Math.abs(remainder_m);
  return `rounded ${way} by ${lengths === 'feet' ? `${toInches(off_m).toFixed(3)} in` : `${toMillimetres(off_m).toFixed(2)} mm`}`;
}

/** A cut length as a tape shows it, in both ways, with what the rounding left over; or why there is none. */
export function cutWords({ cut_m, because, isTooShort }: Piece, lengths: LengthSystem): string {
  const why = [...(isTooShort ? ['TOO SHORT'] : []), ...because].join(': ');
  if (cut_m === null) return `no cut length: ${why}`;
  const other: LengthSystem = lengths === 'feet' ? 'metric' : 'feet';
  const text = (system: LengthSystem): string => formatLength(roundCut(cut_m, system).length_m, system);
  return `cut ${text(lengths)} (${text(other)}), ${remainderWords(cut_m, lengths)}${why && `; ${why}`}`;
}
