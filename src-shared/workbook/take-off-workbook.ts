import type { BillOfMaterials } from '../take-off/bill-of-materials.ts';
import type { Piece } from '../take-off/pieces-of.ts';
import { roundCut } from '../take-off/round-cut.ts';
import { barsOf } from '../sheets/take-off-bars.ts';
import { partLines } from '../sheets/take-off-parts.ts';
import { classWords, endWords, kindWords, pieceLabel, takeOffCautions, whyWords } from '../sheets/take-off-words.ts';
import { sentence } from '../sheets/sheet-text.ts';
import { toInches, toMillimetres, toPounds } from '../units/convert.ts';
import { type LengthSystem, formatLength } from '../units/length-text.ts';
import { lengthCells, lengthColumns } from './length-columns.ts';
import { type Workbook, type WorkbookCell, type WorkbookColumn, type WorkbookSheet, figure } from './workbook.ts';

/** What a spreadsheet says of the plan it was taken from. */
export interface WorkbookFacts {
  readonly project: string;
  readonly lengths: LengthSystem;
  /** A unit of the plan rests on an invented profile. */
  readonly isSample: boolean;
  readonly networkName: (id: string) => string;
}

/** Sizes in both ways of writing, so that neither is taken for a day of the year. */
const nps = (size: string): string => `NPS ${size}`;
const count = (number: number): WorkbookCell => figure(number, 0);
const column = (head: string, width: number): WorkbookColumn => ({ head, width });
const weightColumns = (head: string, lengths: LengthSystem): WorkbookColumn[] => [column(`${head} [kg]`, 12), ...(lengths === 'feet' ? [column(`${head} [lb]`, 12)] : [])];
const weightCells = (weight_kg: number | null, lengths: LengthSystem): WorkbookCell[] => [
  weight_kg === null ? null : figure(weight_kg, 2),
  ...(lengths === 'feet' ? [weight_kg === null ? null : figure(toPounds(weight_kg), 2)] : []),
];

type Content = Pick<WorkbookSheet, 'columns' | 'rows'>;

function pipeSheet(bill: BillOfMaterials, lengths: LengthSystem): Content {
  return {
    columns: [
      column('Size', 12), column('Schedule', 10), column('Material', 18), column('Pieces', 8), column('Without a cut length', 12),
      ...lengthColumns('Centre to centre', lengths), ...lengthColumns('Stock length', lengths), column('Stock lengths to buy', 12), column('Fewest possible', 11),
      ...lengthColumns('Waste with kerf', lengths), ...lengthColumns('Least waste', lengths), ...weightColumns('Weight of pieces', lengths), ...weightColumns('Weight of stock', lengths),
    ],
    rows: bill.pipe.map(({ size, schedule, material, pieces, uncut, length_m, stock_m, nesting, weight_kg, stockWeight_kg }) => [
      nps(size), `Sch ${schedule}`, sentence(material.replace('-', ' ')), count(pieces.length), count(uncut),
      ...lengthCells(length_m, lengths), ...lengthCells(stock_m, lengths), count(nesting.bars.length), count(nesting.leastBars),
      ...lengthCells(nesting.waste_m, lengths), ...lengthCells(nesting.leastWaste_m, lengths), ...weightCells(weight_kg, lengths), ...weightCells(stockWeight_kg, lengths),
    ]),
  };
}

const takenOff_m = ({ takeOff }: Piece['from']): number | null => (takeOff.isKnown ? takeOff.takeOff_m : null);

/** A cut as it is sawn: to the sixteenth of an inch, and to the millimetre. */
function cutCells(cut_m: number | null): WorkbookCell[] {
  if (cut_m === null) return [null, null, null, null];
  const inches_m = roundCut(cut_m, 'feet').length_m;
  return [figure(cut_m, 4), figure(Math.round(toMillimetres(roundCut(cut_m, 'metric').length_m)), 0), figure(Math.round(toInches(inches_m) * 16) / 16, 4), formatLength(inches_m, 'feet')];
}

const LENGTH_WORDS = { drawn: 'drawn', measured: 'measured on site', follows: 'takes up a measurement' } as const;

function cutSheet(bill: BillOfMaterials, { lengths, networkName }: WorkbookFacts): Content {
  const bars = new Map(bill.pipe.flatMap((order) => barsOf(order, bill.kerf_m).flatMap(({ number, pieces }) => pieces.map(({ piece }) => [piece, number] as const))));
  return {
    columns: [
      column('Network', 18), column('Piece', 9), column('Size', 12), column('Schedule', 10), column('Material', 18), ...lengthColumns('Centre to centre', lengths),
      column('From', 20), ...lengthColumns('Taken off there', lengths), column('To', 20), ...lengthColumns('Taken off here', lengths),
      column('Cut, unrounded [m]', 12), column('Cut [mm]', 10), column('Cut [in]', 10), column('Cut, as a tape reads', 15), column('Threads', 9), column('Stock length no.', 10), column('Nipple', 9), column('Length is', 30), column('Remark', 60),
    ],
    rows: bill.pieces.map((piece) => [
      networkName(piece.network), pieceLabel(piece), nps(piece.size), `Sch ${piece.schedule}`, sentence(piece.material.replace('-', ' ')), ...lengthCells(piece.centreToCentre_m, lengths),
      sentence(endWords(piece.from)), ...lengthCells(takenOff_m(piece.from), lengths), sentence(endWords(piece.to)), ...lengthCells(takenOff_m(piece.to), lengths),
      ...cutCells(piece.cut_m), count(piece.threads), bars.has(piece) ? count(bars.get(piece) ?? 0) : null, piece.nipple ?? '', LENGTH_WORDS[piece.basis], whyWords(piece),
    ]),
  };
}

const WEIGHT_WORDS = { maker: 'from its maker', estimate: 'estimated', unknown: 'not known' } as const;

const fittingSheet = (bill: BillOfMaterials, lengths: LengthSystem): Content => ({
  columns: [column('Fitting', 26), column('Sizes', 32), column('Class', 16), column('Count', 8), ...weightColumns('Weight of one', lengths), column('Weight is', 20), column('Remark', 40)],
  rows: bill.fittings.map((fitting) => [
    sentence(kindWords(fitting)), fitting.sizes.map(nps).join(' × '), classWords(fitting), count(fitting.count), ...weightCells(fitting.weight_kg, lengths), WEIGHT_WORDS[fitting.weightFrom ?? 'unknown'],
    fitting.place === 'stock' ? 'Joins two stock lengths in one run' : '',
  ]),
});

const partSheet = (bill: BillOfMaterials, lengths: LengthSystem): Content => ({
  columns: [column('Part', 22), column('What', 44), column('Count', 10), column('Remark', 50)],
  rows: partLines(bill, lengths).map(({ part, what, count: number, remark }) => [part, what, number === null ? null : count(number), remark]),
});

/** A bill of materials with its cut list as a workbook of four sheets: pipe, cut list, fittings, parts. */
export function takeOffWorkbook(bill: BillOfMaterials, facts: WorkbookFacts): Workbook {
  const { lengths, project, isSample } = facts;
  const warnings = [
    ...(isSample ? ['SAMPLE PROFILE: NOT FOR CONSTRUCTION. The unit is invented; enter the figures of your unit’s manual before anything is bought or cut.'] : []),
    `Stock of ${formatLength(bill.stock_m, lengths)}, saw cut ${formatLength(bill.kerf_m, lengths)}. Pieces are named by the numbers of the isometric.`,
  ];
  const notes = takeOffCautions(bill);
  const sheet = (name: string, content: Content): WorkbookSheet => ({ name, title: `${name}: ${project || 'plan without a name'}`, warnings, notes, ...content });
  return { sheets: [sheet('Pipe', pipeSheet(bill, lengths)), sheet('Cut list', cutSheet(bill, facts)), sheet('Fittings', fittingSheet(bill, lengths)), sheet('Parts', partSheet(bill, lengths))] };
}
