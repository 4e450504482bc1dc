import { materialWeight_kg_m } from '../calculations/formulas/part-weights.ts';
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
  /** Of the bare pipe, without zinc, for each metre [kg/m]. */
  readonly weight_kg_m: number;
  /** Of the pieces [kg]. */
  readonly weight_kg: number;
  /** Of the bars to buy [kg]. */
  readonly stockWeight_kg: number;
}

/** A fitting of unknown length only shortens a piece. */
function longest_m({ cut_m, centreToCentre_m, from, to }: Piece): number {
  const takenOff_m = [from, to].reduce((sum, { takeOff }) => sum + (takeOff.isKnown ? takeOff.takeOff_m : 0), 0);
  return cut_m ?? Math.max(0, centreToCentre_m - takenOff_m);
}

/** Orders of pipe, pieces without pipe left out, the largest size first, each nested on its stock. */
export function pipeOrdersOf(pieces: readonly Piece[], stock_m: number, kerf_m: number): PipeOrder[] {
  const groups = new Map<string, Piece[]>();
  for (const piece of pieces.filter(({ hasPipe }) => hasPipe)) {
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
      const weight_kg_m = materialWeight_kg_m(size, schedule, material);
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
          weight_kg: weight_kg_m * reckoned_m.reduce((sum, length_m) => sum + length_m, 0),
          stockWeight_kg: weight_kg_m * nesting.bars.length * stock_m,
        },
      ];
    })
    .sort((a, b) => pipeSizeRank(b.size) - pipeSizeRank(a.size) || a.schedule.localeCompare(b.schedule) || a.material.localeCompare(b.material));
}
