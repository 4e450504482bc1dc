import type { Mark, Sheet } from '#shared/sheets/sheet';
import { paintMark } from '../../canvas/paint-marks.ts';

const imagesIn = (marks: readonly Mark[]): Extract<Mark, { kind: 'image' }>[] => marks.flatMap((mark) => (mark.kind === 'image' ? mark : mark.kind === 'clip' ? imagesIn(mark.marks) : []));

/** Decodes the pictures of a sheet; one that cannot be decoded is left out. */
export async function picturesOf(sheet: Sheet): Promise<Map<Uint8Array, ImageBitmap>> {
  const pictures = new Map<Uint8Array, ImageBitmap>();
  for (const { bytes, mime } of imagesIn(sheet.marks)) {
    if (pictures.has(bytes)) continue;
    try {
      pictures.set(bytes, await createImageBitmap(new Blob([new Uint8Array(bytes)], { type: mime })));
    } catch {
      // The print tells about it; the preview shows the rest.
    }
  }
  return pictures;
}

/** What of a sheet a canvas shows: the paper place at its upper left corner [mm] and its pixels per millimetre. */
export interface PaperCamera {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

/** Paints the part of a sheet that a camera sees; the ground beside the paper stays clear. */
export function paintPaper(canvas: HTMLCanvasElement, sheet: Sheet, pictures: ReadonlyMap<Uint8Array, ImageBitmap>, { x, y, scale }: PaperCamera): void {
  const pen = canvas.getContext('2d');
  if (!pen) return;
  pen.setTransform(1, 0, 0, 1, 0, 0);
  pen.clearRect(0, 0, canvas.width, canvas.height);
  pen.setTransform(scale, 0, 0, scale, -x * scale, -y * scale);
  pen.fillStyle = '#ffffff';
  pen.fillRect(0, 0, sheet.paper.width_mm, sheet.paper.height_mm);
  pen.lineCap = 'round';
  pen.lineJoin = 'round';
  for (const mark of sheet.marks) paintMark(pen, mark, { pictures });
}

/** Paints a sheet onto a canvas as wide as the canvas is, white paper and all. */
export function paintSheet(canvas: HTMLCanvasElement, sheet: Sheet, pictures: ReadonlyMap<Uint8Array, ImageBitmap>): void {
  const pen = canvas.getContext('2d');
  if (!pen) return;
  const scale = canvas.width / sheet.paper.width_mm;
  pen.setTransform(1, 0, 0, 1, 0, 0);
  pen.fillStyle = '#ffffff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.setTransform(scale, 0, 0, scale, 0, 0);
  pen.lineCap = 'round';
  pen.lineJoin = 'round';
  for (const mark of sheet.marks) paintMark(pen, mark, { pictures });
}
