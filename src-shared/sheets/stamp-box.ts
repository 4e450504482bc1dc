import { box, pen, text } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import type { Mark } from './sheet.ts';
import type { Table } from './tables.ts';
import { type PaperBox, wrapText } from './text-box.ts';
import type { TypeSizes } from '../paper/type-sizes.ts';

/** The clear box that authorities ask for: 4 × 6 in. Common practice. */
export const STAMP_mm = { width: 101.6, height: 152.4 } as const;

/** Line pitch of the caption, and the paper of its two lines, over the height of its capitals. */
const PITCH = 1.6;
/** A box that is lower or narrower takes no stamp [mm]: none is drawn. */
const LEAST_mm = 40;
const CAPTION = 4;

/** The clear box and its caption in the paper that a title column leaves for it: upright or across, whichever is larger, 4 × 6 in at most; none where no stamp would go in. @param fullAt sheet that holds the full box, named where this one is smaller */
export function stampBox(room: PaperBox, { factor, note_mm }: TypeSizes, fullAt?: string): Mark[] {
  const pad = 1.4 * factor;
  const caption = note_mm * CAPTION;
  const [width, height] = [room.right - room.left - 2 * pad, room.bottom - room.top - caption - pad];
  if (width <= 0 || height <= 0) return [];
  const ways = [
    [STAMP_mm.width, STAMP_mm.height],
    [STAMP_mm.height, STAMP_mm.width],
  ] as const;
  const shares = ways.map(([w, h]) => Math.min(1, width / w, height / h));
  const [share = 0, best] = (shares[0] ?? 0) >= (shares[1] ?? 0) ? [shares[0], ways[0]] : [shares[1], ways[1]];
  // A box that cannot have its full size takes what there is.
  const [w, h] = share >= 1 - 1e-9 ? [best[0], best[1]] : [Math.min(width, best[0]), Math.min(height, best[1])];
  const captioned = (words: string): Mark[] => wrapText(words, width, note_mm, 'plain').map((each, i) => text(room.left + pad, room.top + pad + note_mm * (1 + i * PITCH), each, { height_mm: note_mm, colour: PRINT.quiet }));
  if (Math.min(w, h) < LEAST_mm) return fullAt === undefined ? [] : captioned(`Stamp and signature: sheet ${fullAt}`);
  const less = `${Math.floor(w)} × ${Math.floor(h)} mm clear, ${fullAt === undefined ? 'less than 4 × 6 in' : `4 × 6 in on sheet ${fullAt}`}`;
  return [
    ...captioned(share >= 1 - 1e-9 ? 'Stamp and signature, 4 × 6 in clear' : `Stamp and signature: ${less}`),
    box(pen(WEIGHT.hair, PRINT.faint), (room.left + room.right - w) / 2, room.top + caption, w, h),
  ];
}

/** Paper that the full box takes in a column [mm], with its caption. @param width_mm of the column */
export function stampHeight_mm(width_mm: number, { factor, note_mm }: TypeSizes): number {
  const inner = width_mm - 2.8 * factor;
  const wished = inner >= STAMP_mm.height ? STAMP_mm.width : STAMP_mm.height;
  return wished + note_mm * CAPTION + 1.4 * factor;
}

/** How the cover calls its box. */
export const STAMP_TITLE = 'Stamp and signature';

/** The full box on paper of its own, for sets whose title column is too small for it. @returns undefined where this paper is too small too */
export function stampTable({ right, left, top, bottom }: PaperBox, { heading_mm, factor }: TypeSizes): Table | undefined {
  const [width_mm, height_mm] = right - left >= STAMP_mm.height ? [STAMP_mm.height, STAMP_mm.width] : [STAMP_mm.width, STAMP_mm.height];
  if (right - left < width_mm || bottom - top < height_mm + heading_mm * 3 + 4 * factor) return undefined;
  const draw = (x: number, y: number): Mark[] => [box(pen(WEIGHT.hair, PRINT.faint), x, y, width_mm, height_mm)];
  return { title: `${STAMP_TITLE}, 4 × 6 in clear`, shortTitle: STAMP_TITLE, columns: [{ head: '', isWide: true }], rows: [], isPlain: true, foot: [{ kind: 'drawings', drawings: [{ kind: 'drawing', width_mm, height_mm, draw }] }] };
}
