import type { BillOfMaterials } from '#shared/take-off/bill-of-materials';
import type { Piece } from '#shared/take-off/pieces-of';
import type { PipeOrder } from '#shared/take-off/pipe-order';
import { sizeText } from '#shared/sheets/sheet-text';
import { END_WORDS, cutWords, fittingWords, makeWords, pieceLabel, takeOffCautions } from '#shared/sheets/take-off-words';
import { type LengthSystem, formatLength } from '#shared/units/length-text';
import { formatQuantity } from '#shared/units/quantity-text';
import { wrapped } from './console-out.ts';

const weightWords = (weight_kg: number | null, lengths: LengthSystem): string => (weight_kg === null ? 'weight not known' : formatQuantity(weight_kg, 'mass', lengths));

function orderLines(order: PipeOrder, lengths: LengthSystem): string[] {
  const { nesting, pieces, uncut, length_m } = order;
  const least = nesting.isFewest ? 'the fewest possible' : `at least ${nesting.leastBars} are needed`;
  return [
    `${makeWords(order, lengths)}: ${formatLength(length_m, lengths)} between centres, pieces ${pieces.length}, ${weightWords(order.weight_kg, lengths)}`,
    `    buy ${nesting.bars.length} × ${formatLength(order.stock_m, lengths)} (${least}), ${weightWords(order.stockWeight_kg, lengths)}; waste with kerf ${formatLength(nesting.waste_m, lengths)}, at best ${formatLength(nesting.leastWaste_m, lengths)}`,
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
  const end = ({ kind, takeOff }: Piece['from']): string =>
    `${END_WORDS[kind]}${takeOff.isKnown ? (takeOff.takeOff_m === 0 ? '' : ` −${formatLength(takeOff.takeOff_m, lengths, { precision: 'fine' })}`) : ' −?'}`;
  return `${pieceLabel(piece)}  ${sizeText(piece.size, lengths)}  ${end(piece.from)} to ${end(piece.to)}, ${formatLength(piece.centreToCentre_m, lengths)} between centres: ${cutWords(piece, lengths)}`;
}

/** A bill of materials and its cut list in lines to read. */
export function takeOffLines(bill: BillOfMaterials, networkName: (id: string) => string, lengths: LengthSystem, width: number): string[] {
  const networks = [...new Set(bill.pieces.map(({ network }) => network))];
  const nameOf = (piece: Piece): string => (networks.length > 1 ? `${networkName(piece.network)} ${pieceLabel(piece)}` : pieceLabel(piece));
  const section = (heading: string, rows: readonly string[]): string[] =>
    rows.length === 0 ? [] : ['', heading, ...rows.flatMap((row) => wrapped(row, width, row.startsWith(' ') ? '      ' : '  '))];
  return [
    ...section(`Pipe, from stock of ${formatLength(bill.stock_m, lengths)}, kerf ${formatLength(bill.kerf_m, lengths)}`, bill.pipe.flatMap((order) => orderLines(order, lengths))),
    ...section('Fittings', bill.fittings.map((fitting) => `${fitting.count} × ${fittingWords(fitting, lengths)}`)),
    ...section('Supports', bill.supports.map(({ kind, size, count }) => `${count} × ${kind} ${size === null ? 'on no pipe' : sizeText(size, lengths)}`)),
    ...section('Nozzles', bill.nozzles.map(({ code, area_m2, count }) => `${count} × ${code === null ? (area_m2 === null ? 'orifice not chosen' : `orifice of ${formatQuantity(area_m2, 'orificeArea', lengths)}`) : `orifice ${code}`}`)),
    ...section('Cylinders', bill.cylinders.map(({ unit, mounting, count }) => `${count} × ${unit ?? 'unit not known'}, ${mounting}-mounted`)),
    ...section('Discharge assembly', bill.assembly.map(({ kind, name, length_m, count }) => `${count} × ${name || kind.replace('-', ' ')}, ${formatLength(length_m, lengths)}`)),
    ...section('Anchors', [
      ...bill.anchors.map(({ kind, count }) => `${count} × ${kind || 'kind not known'}`),
      ...(bill.withoutAnchors > 0 ? [`Cylinders on a wall without anchors chosen: ${bill.withoutAnchors}`] : []),
    ]),
    ...networks.flatMap((id) => section(`Cut list of ${networkName(id)}, ends numbered along the flow`, bill.pieces.filter(({ network }) => network === id).map((piece) => pieceLine(piece, lengths)))),
    ...section('Cutting from stock', bill.pipe.flatMap((order) => barLines(order, nameOf, lengths))),
    '',
    ...takeOffCautions(bill).flatMap((caution) => wrapped(caution, width)),
  ];
}
