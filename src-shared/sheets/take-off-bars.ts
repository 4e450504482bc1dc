import type { Piece } from '../take-off/pieces-of.ts';
import type { PipeOrder } from '../take-off/pipe-order.ts';
import { pieceLabel } from './take-off-words.ts';

/** A piece where it lies in its stock length. */
export interface PlacedPiece {
  readonly piece: Piece;
  /** From the end of the stock [m]. */
  readonly start_m: number;
  /** Length that it takes of the stock, unrounded [m]. */
  readonly length_m: number;
}

/** One stock length and what is cut from it. */
export interface CutBar {
  /** From 1, counted within the order. */
  readonly number: number;
  readonly pieces: readonly PlacedPiece[];
  /** What is left over [m], ≥ 0. */
  readonly offcut_m: number;
}

/** The cutting plan of an order, stock length by stock length; a kerf lies behind each piece that is sawn off. */
export function barsOf({ nesting, pieces, reckoned_m, stock_m }: PipeOrder, kerf_m: number): CutBar[] {
  return nesting.bars.map((bar, i) => {
    let at_m = 0;
    const placed = bar.flatMap((index): PlacedPiece[] => {
      const piece = pieces[index];
      const length_m = reckoned_m[index];
      if (!piece || length_m === undefined) return [];
      const start_m = at_m;
      at_m += length_m + kerf_m;
      return [{ piece, start_m, length_m }];
    });
    return { number: i + 1, pieces: placed, offcut_m: Math.max(0, stock_m - at_m) };
  });
}

/**
 * The pieces of a stock length in words, in their order.
 * @param networkName  says of whose network a piece is, where there are several; else undefined
 * @example "1–2, 2–3", "North: 1–2; South: 1–2, 2–3"
 */
export function barWords({ pieces }: Pick<CutBar, 'pieces'>, networkName: ((id: string) => string) | undefined): string {
  if (!networkName) return pieces.map(({ piece }) => pieceLabel(piece)).join(', ');
  const byNetwork = new Map<string, string[]>();
  for (const { piece } of pieces) byNetwork.set(piece.network, [...(byNetwork.get(piece.network) ?? []), pieceLabel(piece)]);
  return [...byNetwork].map(([id, labels]) => `${networkName(id)}: ${labels.join(', ')}`).join('; ');
}
