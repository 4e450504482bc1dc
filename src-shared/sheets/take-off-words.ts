import type { BillOfMaterials, FittingCount } from '../take-off/bill-of-materials.ts';
import { FITTING_WORDS, boughtWords } from '../derived/fitting-words.ts';
import type { PieceEndKind } from '../take-off/piece-runs.ts';
import type { LengthBasis } from '../take-off/as-built.ts';
import type { Piece, PieceEnd } from '../take-off/pieces-of.ts';
import { roundCut } from '../take-off/round-cut.ts';
import { toInches, toMillimetres } from '../units/convert.ts';
import { type LengthSystem, formatLength } from '../units/length-text.ts';
import { sizeText } from './sheet-text.ts';

/** What stands at an end of a piece, in the user's words. */
export const END_WORDS: Readonly<Record<PieceEndKind, string>> = {
  ...FITTING_WORDS,
  open: 'bare end',
  nozzle: 'nozzle',
  unfitted: 'nozzle without a tee',
  unfed: 'pipe that no agent comes to',
};

/** "3/4″ Sch 40 black steel". */
export const makeWords = ({ size, schedule, material }: Pick<Piece, 'size' | 'schedule' | 'material'>, lengths: LengthSystem): string =>
  `${sizeText(size, lengths)} Sch ${schedule} ${material.replace('-', ' ')}`;

/** What stands at an end of a piece: "90° street elbow", "bare end". */
export const endWords = ({ kind, isStreet }: Pick<PieceEnd, 'kind' | 'isStreet'>): string => (isStreet ? END_WORDS[kind].replace('elbow', 'street elbow') : END_WORDS[kind]);

/** A fitting as it is bought: "reducing tee". */
export const kindWords = ({ kind, isStreet, sizes }: Pick<FittingCount, 'kind' | 'isStreet' | 'sizes'>): string => boughtWords({ kind, isStreet, isReducing: sizes.length > 1 });

/** "Class 300", or that nobody entered it. */
export const classWords = ({ fittingClass }: Pick<FittingCount, 'fittingClass'>): string => (fittingClass === null ? 'class not known' : `Class ${fittingClass}`);

/** "90° elbow 3/4″ Class 300". */
export const fittingWords = (fitting: Pick<FittingCount, 'kind' | 'isStreet' | 'sizes' | 'fittingClass'>, lengths: LengthSystem): string =>
  [kindWords(fitting), fitting.sizes.map((size) => sizeText(size, lengths)).join(' × '), classWords(fitting)].join(' ');

/** "1–2": its two ends by their numbers. */
export const pieceLabel = ({ from, to }: Piece): string => `${from.label}–${to.label}`;

/** What the length between centres rests on. */
export const BASIS_WORDS: Readonly<Record<LengthBasis, string>> = {
  drawn: 'between centres',
  measured: 'between centres, as measured',
  follows: 'between centres, taking up what was measured elsewhere',
};

/** What the rounding of a cut leaves over: "rounded up by 0.005 in". */
export function remainderWords(cut_m: number, lengths: LengthSystem): string {
  const { remainder_m, way } = roundCut(cut_m, lengths);
  if (way === 'exact') return 'exact';
  const off_m = Math.abs(remainder_m);
  return `rounded ${way} by ${lengths === 'feet' ? `${toInches(off_m).toFixed(3)} in` : `${toMillimetres(off_m).toFixed(2)} mm`}`;
}

/** The way of writing lengths that the user has not chosen. */
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

const MEASURE = 'Measure the fittings in hand before cutting, and the leg as built before its last piece.';
const ENDS = 'What a nozzle or the discharge assembly takes of the pipe is not known here: take it off the first and last piece.';
const REDUCING = 'Where pipes of different sizes meet, one reducing fitting is listed if its maker gives it or the trade keeps it (common practice), else a straight one with reducers. Ask the supplier before the pipe is cut: their lengths differ.';
const WELDED = 'Of welded and grooved ends the maker’s centre-to-end is taken off in full: leave the gap that the weld or the coupling needs.';
const PLUGGED = 'A plug is listed with the coupling that holds it on the end of its pipe.';
const AUTHORITY = 'Preliminary. The unit’s own manual, its listing, the adopted code and licensed practice decide.';

/** What a reader of a take-off must be told, with where the lengths of its fittings were read. */
export function takeOffCautions({ pieces, fittings }: Pick<BillOfMaterials, 'pieces' | 'fittings'>): string[] {
  const sources = new Set(pieces.flatMap(({ from, to }) => [from, to].flatMap(({ takeOff }) => (takeOff.isKnown && takeOff.source !== '' ? [takeOff.source] : []))));
  const read = sources.size === 0 ? '' : ` Lengths of fittings: ${[...sources].join('; ')}. Threads are made up as far as shops allow for.`;
  return [
    `${MEASURE}${read}`,
    ENDS,
    ...(fittings.some(({ kind, sizes }) => sizes.length > 1 && kind !== 'reducer') ? [REDUCING] : []),
    ...(pieces.some(({ joint, cut_m, from, to }) => joint !== 'threaded' && cut_m !== null && [from, to].some(({ takeOff }) => takeOff.isKnown && takeOff.reach_m > 0)) ? [WELDED] : []),
    ...(fittings.some(({ kind }) => kind === 'plug') ? [PLUGGED] : []),
    AUTHORITY,
  ];
}
