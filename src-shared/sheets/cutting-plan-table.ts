import type { BillOfMaterials } from '../take-off/bill-of-materials.ts';
import { formatLength } from '../units/length-text.ts';
import { textWidth_mm } from './font-widths.ts';
import { box, line, pen, text } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import type { Mark } from './sheet.ts';
import { sizeText } from './sheet-text.ts';
import { type CutBar, barWords, barsOf } from './take-off-bars.ts';
import type { TakeOffFacts } from './take-off-tables.ts';
import { makeWords, pieceLabel } from './take-off-words.ts';
import type { Cell, Drawing, Table } from './tables.ts';
import type { TypeSizes } from '../paper/type-sizes.ts';

/** Height of a bar against that of its letters, and the air beside a label. */
const BAR_HEIGHT = 2;
const AIR = 0.6;
/** Share of the paper that a bar takes. */
const BAR_SHARE = 0.42;

/** One stock length to scale: pieces with their names where these fit, what is left over crossed out. */
function barDrawing({ pieces, offcut_m }: CutBar, stock_m: number, width_mm: number, sizes: TypeSizes): Drawing {
  const letter = sizes.text_mm;
  const height_mm = letter * BAR_HEIGHT;
  const mm = (length_m: number): number => (length_m / stock_m) * width_mm;
  return {
    kind: 'drawing',
    width_mm,
    height_mm,
    draw: (x, y) => {
      const offcut = x + width_mm - mm(offcut_m);
      const hair = pen(WEIGHT.hair, PRINT.faint);
      return [
        ...(mm(offcut_m) > 0.3 ? [line(hair, offcut, y, x + width_mm, y + height_mm), line(hair, offcut, y + height_mm, x + width_mm, y)] : []),
        ...pieces.flatMap(({ piece, start_m, length_m }): Mark[] => {
          const label = pieceLabel(piece);
          const fits = textWidth_mm(label, letter, 'plain') + 2 * AIR * letter <= mm(length_m);
          return [
            box(pen(WEIGHT.thin), x + mm(start_m), y, mm(length_m), height_mm),
            ...(fits ? [text(x + mm(start_m + length_m / 2), y + height_mm / 2 + letter / 2, label, { height_mm: letter, align: 'middle' })] : []),
          ];
        }),
        box(pen(WEIGHT.medium), x, y, width_mm, height_mm),
      ];
    },
  };
}

/** Every stock length with what is cut from it, drawn to scale and in words. */
export function cuttingPlanTable(bill: BillOfMaterials, { lengths, networkName }: TakeOffFacts, width_mm: number, sizes: TypeSizes): Table {
  const isSeveral = new Set(bill.pieces.map(({ network }) => network)).size > 1;
  const tooLong = bill.pipe.flatMap((order) => order.nesting.tooLong.flatMap((index) => order.pieces.slice(index, index + 1).map((piece) => `${pieceLabel(piece)} (${makeWords(order, lengths)})`)));
  return {
    title: 'Cutting plan',
    note: `Lengths of ${formatLength(bill.stock_m, lengths)}, drawn to scale; what is crossed out is left over. A piece without a cut length is reckoned as long as it can be.`,
    columns: [
      { head: 'Pipe', font: 'bold', least_mm: 24 },
      { head: 'No.', align: 'right' },
      { head: 'Stock length' },
      { head: 'Pieces in this order', isWide: true },
      { head: 'Left over', align: 'right', least_mm: 20 },
    ],
    rows: bill.pipe.flatMap((order) =>
      barsOf(order, bill.kerf_m).map((bar): Cell[] => [
        `${sizeText(order.size, lengths)} Sch ${order.schedule}`,
        String(bar.number),
        barDrawing(bar, order.stock_m, width_mm * BAR_SHARE, sizes),
        barWords(bar, isSeveral ? networkName : undefined),
        formatLength(bar.offcut_m, lengths),
      ]),
    ),
    foot: tooLong.length > 0 ? [{ kind: 'words', words: `Longer than the stock, to be bought apart: ${tooLong.join(', ')}.`, isStrong: true }] : [],
  };
}
