import type { BillOfMaterials } from '../take-off/bill-of-materials.ts';
import type { Piece, PieceEnd } from '../take-off/pieces-of.ts';
import { type LengthSystem, formatLength } from '../units/length-text.ts';
import { formatQuantity } from '../units/quantity-text.ts';
import { sizesText } from './pipe-schedules.ts';
import { sentence, sizeText } from './sheet-text.ts';
import { barsOf } from './take-off-bars.ts';
import { partLines } from './take-off-parts.ts';
import { classWords, cutText, endWords, kindWords, otherSystem, pieceLabel, takeOffCautions, whyWords } from './take-off-words.ts';
import type { Cell, Table } from './tables.ts';

/** What the tables of a take-off say of the plan. */
export interface TakeOffFacts {
  readonly lengths: LengthSystem;
  readonly networkName: (id: string) => string;
}

const LENGTH_MARK = { drawn: '', measured: ' M', follows: ' F' } as const;

/** Pipe by size: how much there is, what to buy, what is wasted, what it weighs. */
export function pipeOrderTable({ pipe, stock_m, kerf_m }: BillOfMaterials, lengths: LengthSystem): Table {
  return {
    title: 'Pipe',
    note: `Bought in lengths of ${formatLength(stock_m, lengths)}; a saw cut takes ${formatLength(kerf_m, lengths)}. Between centres: from centre to centre of fittings. Waste: what is bought less the pieces.`,
    columns: [
      { head: 'Size', font: 'bold', least_mm: 11 },
      { head: 'Make', isWide: true },
      { head: 'Between centres', align: 'right' },
      { head: 'To buy', align: 'right' },
      { head: 'Waste', align: 'right', least_mm: 20 },
      { head: 'Weight built', align: 'right' },
    ],
    rows: pipe.map(({ size, schedule, material, pieces, length_m, nesting, weight_kg }) => {
      const joints = [...new Set(pieces.map(({ joint }) => joint))].join(', ');
      const buy = `${nesting.bars.length}${nesting.isFewest ? '' : ` (at least ${nesting.leastBars})`}`;
      return [sizeText(size, lengths), `Sch ${schedule}, ${material.replace('-', ' ')}, ${joints}`, formatLength(length_m, lengths), buy, formatLength(nesting.waste_m, lengths), formatQuantity(weight_kg, 'mass', lengths)];
    }),
  };
}

/** Fittings that are alike, counted. */
export function fittingTable({ fittings }: BillOfMaterials, lengths: LengthSystem): Table {
  return {
    title: 'Fittings',
    note: fittings.some(({ sizes }) => sizes.length > 1) ? 'Sizes of a tee: the run first, then the branch.' : undefined,
    columns: [{ head: 'Fitting', isWide: true }, { head: 'Size' }, { head: 'Class' }, { head: 'Count', align: 'right' }],
    rows: fittings.map((fitting) => [
      sentence(kindWords(fitting)) + (fitting.place === 'stock' ? ', between stock lengths' : ''),
      sizesText(fitting.sizes, lengths),
      fitting.fittingClass ?? classWords(fitting),
      String(fitting.count),
    ]),
  };
}

/** Everything else that is bought. */
export function partTable(bill: BillOfMaterials, lengths: LengthSystem): Table {
  const { total_kg, unknown } = bill.weights;
  return {
    title: 'Parts',
    columns: [{ head: 'Part', font: 'bold', least_mm: 24 }, { head: 'What', isWide: true }, { head: 'Count', align: 'right' }, { head: 'Remark', most_mm: 52 }],
    rows: partLines(bill, lengths).map(({ part, what, count, remark }) => [part, what, count === null ? '' : String(count), remark]),
    foot: total_kg > 0 ? [{ kind: 'words', words: `Pipe, fittings and filled cylinders together: ${formatQuantity(total_kg, 'mass', lengths)}.${unknown.length > 0 ? ` Not in it: ${unknown.join('; ')}.` : ''}` }] : [],
  };
}

function takenOffText({ takeOff }: PieceEnd, lengths: LengthSystem): string {
  if (!takeOff.isKnown) return 'not known';
  return takeOff.takeOff_m === 0 ? '0' : formatLength(takeOff.takeOff_m, lengths, { precision: 'fine' });
}

/** Words of a piece that cannot simply be cut: why it has no length, or that it is bought as a nipple. */
const remarkOf = (piece: Piece): string => [piece.nipple ? `${piece.nipple} nipple` : '', whyWords(piece)].filter(Boolean).join('; ');

/** Every piece of pipe with its take-offs and the length that it is sawn to, in both ways of measuring. */
export function cutListTable(bill: BillOfMaterials, { lengths, networkName }: TakeOffFacts): Table {
  const isSeveral = new Set(bill.pieces.map(({ network }) => network)).size > 1;
  const numbers = new Map(bill.pipe.flatMap((order) => barsOf(order, bill.kerf_m).flatMap(({ number, pieces }) => pieces.map(({ piece }) => [piece, number] as const))));
  const isMeasured = bill.pieces.some(({ basis }) => basis !== 'drawn');
  const hasRemarks = bill.pieces.some((piece) => remarkOf(piece) !== '');
  return {
    title: 'Cut list',
    note: `Pieces are named by the numbers of the isometric. Cut: between centres less what both fittings take off, rounded to what a tape shows. Stock: number of the length in the cutting plan of its size.${isMeasured ? ' M: as measured on site; F: takes up what was measured elsewhere.' : ''}`,
    columns: [
      ...(isSeveral ? [{ head: 'Network' }] : []),
      { head: 'Piece', font: 'bold' },
      { head: 'Pipe' },
      { head: 'Between centres', align: 'right' },
      { head: 'From' },
      { head: 'Takes off', align: 'right' },
      { head: 'To' },
      { head: 'Takes off', align: 'right' },
      { head: 'Cut', align: 'right', font: 'bold' },
      { head: lengths === 'feet' ? 'Metric' : 'Inches', align: 'right' },
      { head: 'Threads', align: 'right' },
      { head: 'Stock', align: 'right' },
      { head: hasRemarks ? 'Remark' : '', isWide: true },
    ],
    rows: bill.pieces.map((piece): Cell[] => [
      ...(isSeveral ? [networkName(piece.network)] : []),
      pieceLabel(piece),
      sizeText(piece.size, lengths),
      formatLength(piece.centreToCentre_m, lengths) + LENGTH_MARK[piece.basis],
      sentence(endWords(piece.from)),
      takenOffText(piece.from, lengths),
      sentence(endWords(piece.to)),
      takenOffText(piece.to, lengths),
      piece.cut_m === null ? 'none' : cutText(piece.cut_m, lengths),
      piece.cut_m === null ? '' : cutText(piece.cut_m, otherSystem(lengths)),
      String(piece.threads),
      String(numbers.get(piece) ?? ''),
      remarkOf(piece),
    ]),
    foot: takeOffCautions(bill).map((words) => ({ kind: 'words', words })),
  };
}
