import type { BillOfMaterials, FittingCount } from '#shared/take-off/bill-of-materials';
import type { Piece } from '#shared/take-off/pieces-of';
import type { PipeOrder } from '#shared/take-off/pipe-order';
import { sizeText } from '#shared/sheets/sheet-text';
import { type PartLine, partLines } from '#shared/sheets/take-off-parts';
import { BASIS_WORDS, cutWords, endWords, fittingWords, makeWords, pieceLabel, takeOffCautions } from '#shared/sheets/take-off-words';
import { type LengthSystem, formatLength } from '#shared/units/length-text';
import { formatQuantity } from '#shared/units/quantity-text';
import { wrapped } from './console-out.ts';

const massWords = (weight_kg: number, lengths: LengthSystem): string => formatQuantity(weight_kg, 'mass', lengths);

function orderLines(order: PipeOrder, lengths: LengthSystem): string[] {
  const { nesting, pieces, uncut, length_m } = order;
  const least = nesting.isFewest ? 'the fewest possible' : `at least ${nesting.leastBars} are needed`;
  return [
    `${makeWords(order, lengths)}: ${formatLength(length_m, lengths)} between centres, pieces ${pieces.length}, ${massWords(order.weight_kg, lengths)}`,
    `    buy ${nesting.bars.length} × ${formatLength(order.stock_m, lengths)} (${least}), ${massWords(order.stockWeight_kg, lengths)}; waste with kerf ${formatLength(nesting.waste_m, lengths)}, at best ${formatLength(nesting.leastWaste_m, lengths)}`,
    ...(uncut > 0 ? [`    ${uncut} without a cut length: reckoned as long as they can be`] : []),
  ];
}

function barLines(order: PipeOrder, nameOf: (piece: Piece) => string, lengths: LengthSystem): string[] {
  return order.nesting.bars.map((bar, i) => {
    const pieces = bar.flatMap((index) => order.pieces[index] ?? []);
    return `${makeWords(order, lengths)}, bar ${i + 1}: ${pieces.map(nameOf).join(', ')}`;
  });
}

function pieceLine(piece: Piece, lengths: LengthSystem): string {
  const end = (each: Piece['from']): string => {
    const { takeOff } = each;
    return `${endWords(each)}${takeOff.isKnown ? (takeOff.takeOff_m === 0 ? '' : ` −${formatLength(takeOff.takeOff_m, lengths, { precision: 'fine' })}`) : ' −?'}`;
  };
  const nipple = piece.nipple === null ? '' : `; ${piece.nipple} nipple`;
  return `${pieceLabel(piece)}  ${sizeText(piece.size, lengths)}  ${end(piece.from)} to ${end(piece.to)}, ${formatLength(piece.centreToCentre_m, lengths)} ${BASIS_WORDS[piece.basis]}: ${cutWords(piece, lengths)}${nipple}`;
}

function fittingLine(fitting: FittingCount, lengths: LengthSystem): string {
  const { weight_kg, weightFrom, place, count } = fitting;
  const weight = weight_kg === null ? 'weight not known' : `${massWords(weight_kg, lengths)} each${weightFrom === 'estimate' ? ', estimated' : ''}`;
  return `${count} × ${fittingWords(fitting, lengths)}${place === 'stock' ? ', between stock lengths' : ''}; ${weight}`;
}

const partLine = ({ what, count, remark }: PartLine): string => `${count === null ? '' : `${count} × `}${what}${remark === '' ? '' : `; ${remark}`}`;

function weightLines({ weights, stockWeight_kg }: BillOfMaterials, lengths: LengthSystem): string[] {
  const { pipe_kg, fittings_kg, estimated_kg, cylinders_kg, total_kg, unknown } = weights;
  return [
    `Pipe ${massWords(pipe_kg, lengths)}; the stock that it is cut from ${massWords(stockWeight_kg, lengths)}`,
    `Fittings ${massWords(fittings_kg, lengths)}${estimated_kg > 0 ? `, ${massWords(estimated_kg, lengths)} of it estimated` : ''}`,
    `Filled cylinders ${massWords(cylinders_kg, lengths)}`,
    `All of these ${massWords(total_kg, lengths)}${unknown.length > 0 ? `; not in it: ${unknown.join(', ')}` : ''}`,
  ];
}

function measuredLines({ asBuilt }: BillOfMaterials, { networkName, nozzleName }: TakeOffNames, lengths: LengthSystem): string[] {
  return Object.entries(asBuilt).flatMap(([id, { moved, unused }]) => [
    ...moved.map(({ nozzle, by_m }) => `${networkName(id)}: nozzle ${nozzleName(id, nozzle)} moves by ${formatLength(by_m, lengths, { precision: 'fine' })}, since no pipe before it takes up what was measured`),
    ...(unused.length > 0 ? [`${networkName(id)}: ${unused.length} measured ${unused.length === 1 ? 'pipe is' : 'pipes are'} taken as drawn: the network closes a ring, or the pipe has no length`] : []),
  ]);
}

/** How networks and nozzles are named to the reader, by their ids. */
export interface TakeOffNames {
  readonly networkName: (id: string) => string;
  readonly nozzleName: (network: string, id: string) => string;
}

/** A bill of materials and its cut list in lines to read. */
export function takeOffLines(bill: BillOfMaterials, names: TakeOffNames, lengths: LengthSystem, width: number): string[] {
  const { networkName } = names;
  const networks = [...new Set(bill.pieces.map(({ network }) => network))];
  const nameOf = (piece: Piece): string => (networks.length > 1 ? `${networkName(piece.network)} ${pieceLabel(piece)}` : pieceLabel(piece));
  const section = (heading: string, rows: readonly string[]): string[] =>
    rows.length === 0 ? [] : ['', heading, ...rows.flatMap((row) => wrapped(row, width, row.startsWith(' ') ? '      ' : '  '))];
  const parts = partLines(bill, lengths);
  return [
    ...section(`Pipe, from stock of ${formatLength(bill.stock_m, lengths)}, kerf ${formatLength(bill.kerf_m, lengths)}`, bill.pipe.flatMap((order) => orderLines(order, lengths))),
    ...section('Fittings', bill.fittings.map((fitting) => fittingLine(fitting, lengths))),
    ...[...new Set(parts.map(({ part }) => part))].flatMap((heading) => section(heading, parts.filter(({ part }) => part === heading).map(partLine))),
    ...section('Weight', weightLines(bill, lengths)),
    ...section('As measured on site', measuredLines(bill, names, lengths)),
    ...networks.flatMap((id) => section(`Cut list of ${networkName(id)}, ends numbered along the flow`, bill.pieces.filter(({ network }) => network === id).map((piece) => pieceLine(piece, lengths)))),
    ...section('Cutting from stock', bill.pipe.flatMap((order) => barLines(order, nameOf, lengths))),
    '',
    ...takeOffCautions(bill).flatMap((caution) => wrapped(caution, width)),
  ];
}
