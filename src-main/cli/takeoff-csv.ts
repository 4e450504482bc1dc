import { partLines } from '#shared/sheets/take-off-parts';
import { BASIS_WORDS, endWords, kindWords, pieceLabel, whyWords } from '#shared/sheets/take-off-words';
import type { BillOfMaterials } from '#shared/take-off/bill-of-materials';
import type { Piece } from '#shared/take-off/pieces-of';
import { roundCut } from '#shared/take-off/round-cut';
import { toMillimetres } from '#shared/units/convert';
import { formatLength } from '#shared/units/length-text';

const COLUMNS = ['list', 'network', 'item', 'size', 'schedule', 'material', 'count', 'length_mm', 'from', 'to', 'take_off_from_mm', 'take_off_to_mm', 'cut_mm', 'cut_in', 'threads', 'weight_kg', 'bar', 'remark'] as const;
type Row = Readonly<Partial<Record<(typeof COLUMNS)[number], string | number | null>>>;

/** A cell that no spreadsheet takes for a formula, quoted where it must be. */
function cell(value: string | number | null | undefined): string {
  if (value === null || value === undefined) return '';
  if (typeof value === 'number') return String(value);
  const plain = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}

/** A bare 3/4 would be read as a day of the year. */
const nps = (size: string): string => `NPS ${size}`;
const hundredths = (value: number): number => Math.round(value * 100) / 100;
const mm = (length_m: number): number => hundredths(toMillimetres(length_m));

function pieceRow(piece: Piece, network: string, bar: string): Row {
  const { from, to, cut_m, size, schedule, material, threads } = piece;
  const takeOff = ({ takeOff: each }: Piece['from']): number | null => (each.isKnown ? mm(each.takeOff_m) : null);
  return {
    list: 'cut',
    network,
    item: pieceLabel(piece),
    size: nps(size),
    schedule,
    material,
    count: 1,
    length_mm: mm(piece.centreToCentre_m),
    from: endWords(from),
    to: endWords(to),
    take_off_from_mm: takeOff(from),
    take_off_to_mm: takeOff(to),
    cut_mm: cut_m === null ? null : Math.round(toMillimetres(roundCut(cut_m, 'metric').length_m)),
    cut_in: cut_m === null ? null : formatLength(roundCut(cut_m, 'feet').length_m, 'feet'),
    threads,
    bar,
    remark: [piece.basis === 'drawn' ? '' : BASIS_WORDS[piece.basis], piece.nipple === null ? '' : `${piece.nipple} nipple`, whyWords(piece)].filter(Boolean).join('; '),
  };
}

/** A bill of materials and its cut list as lines of comma-separated values, one table for all. */
export function takeOffCsv(bill: BillOfMaterials, networkName: (id: string) => string): string[] {
  const bars = new Map<Piece, string>();
  for (const { pieces, nesting } of bill.pipe) {
    for (const [i, bar] of nesting.bars.entries()) for (const index of bar) for (const piece of pieces.slice(index, index + 1)) bars.set(piece, String(i + 1));
  }
  const rows: Row[] = [
    ...bill.pipe.map(({ size, schedule, material, nesting, stock_m, stockWeight_kg }) => ({
      list: 'pipe', item: 'stock length', size: nps(size), schedule, material, count: nesting.bars.length, length_mm: mm(stock_m), weight_kg: hundredths(stockWeight_kg), remark: `waste ${mm(nesting.waste_m)} mm, at best ${mm(nesting.leastWaste_m)} mm`,
    })),
    ...bill.fittings.map((fitting) => ({
      list: 'fitting',
      item: kindWords(fitting),
      size: fitting.sizes.map(nps).join(' x '),
      count: fitting.count,
      weight_kg: fitting.weight_kg === null ? null : hundredths(fitting.weight_kg * fitting.count),
      remark: [fitting.fittingClass === null ? 'class not known' : `Class ${fitting.fittingClass}`, fitting.place === 'stock' ? 'between stock lengths' : '', fitting.weightFrom === 'estimate' ? 'weight estimated' : ''].filter(Boolean).join('; '),
    })),
    ...partLines(bill, 'metric').map(({ part, what, count, remark }) => ({ list: part.toLowerCase(), item: what, count, remark })),
    ...bill.pieces.map((piece) => pieceRow(piece, networkName(piece.network), bars.get(piece) ?? '')),
  ];
  return [COLUMNS.join(','), ...rows.map((row) => COLUMNS.map((column) => cell(row[column])).join(','))];
}
