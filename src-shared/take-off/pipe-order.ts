import { pipeWeight_kg_m } from '../calculations/formulas/pipe-weight.ts';
import { pipeSizeRank } from '../profile/pipe-table.ts';
import { type Nesting, nestPieces } from './nest-pieces.ts';
import type { Piece } from './pieces-of.ts';

/** Pipe of one size, schedule and material: how much there is and how it is cut from the stock. */
export interface PipeOrder {
  readonly size: Piece['size'];
  readonly schedule: Piece['schedule'];
  readonly material: Piece['material'];
  readonly pieces: readonly Piece[];
  /** Developed, from centre to centre [m]. */
  readonly length_m: number;
  /** Lengths that the stock is reckoned with, piece by piece: the cut length, else the longest that the piece can be [m]. */
  readonly reckoned_m: readonly number[];
  /** Pieces without a cut length. */
  readonly uncut: number;
  /** Bars of stock; its indices are those of `pieces`. */
  readonly nesting: Nesting;
  readonly stock_m: number;
  /** Of plain carbon steel pipe, for each metre; null for a material that the formula is not for [kg/m]. */
  readonly weight_kg_m: number | null;
  /** Of the pieces [kg]. */
  readonly weight_kg: number | null;
  /** Of the bars to buy [kg]. */
  readonly stockWeight_kg: number | null;
}

/** A fitting of unknown length only shortens a piece. */
function longest_m({ cut_m, centreToCentre_m, from, to }: Piece): number {
  const takenOff_m = [from, to].reduce((sum, { takeOff }) => sum + (takeOff.isKnown ? takeOff.takeOff_m : 0), 0);
  return cut_m ?? Math.max(0, centreToCentre_m - takenOff_m);
}

/** Orders of pipe, the largest size first, each nested on its stock. */
export function pipeOrdersOf(pieces: readonly Piece[], stock_m: number, kerf_m: number): PipeOrder[] {
  const groups = new Map<string, Piece[]>();
  for (const piece of pieces) {
    const key = `${piece.size}/${piece.schedule}/${piece.material}`;
    groups.set(key, [...(groups.get(key) ?? []), piece]);
  }
  return [...groups.values()]
    .flatMap((alike): PipeOrder[] => {
      const [first] = alike;
      if (!first) return [];
      const { size, schedule, material } = first;
      const reckoned_m = alike.map(longest_m);
      const nesting = nestPieces(reckoned_m, stock_m, kerf_m);
      const weight_kg_m = material === 'stainless-steel' ? null : pipeWeight_kg_m(size, schedule);
      const weighed = (length_m: number): number | null => (weight_kg_m === null ? null : weight_kg_m * length_m);
      return [
        {
          size,
          schedule,
          material,
          pieces: alike,
          length_m: alike.reduce((sum, { centreToCentre_m }) => sum + centreToCentre_m, 0),
          reckoned_m,
          uncut: alike.filter(({ cut_m }) => cut_m === null).length,
          nesting,
          stock_m,
          weight_kg_m,
          weight_kg: weighed(reckoned_m.reduce((sum, length_m) => sum + length_m, 0)),
          stockWeight_kg: weighed(nesting.bars.length * stock_m),
        },
      ];
    })
    .sort((a, b) => pipeSizeRank(b.size) - pipeSizeRank(a.size) || a.schedule.localeCompare(b.schedule) || a.material.localeCompare(b.material));
}
