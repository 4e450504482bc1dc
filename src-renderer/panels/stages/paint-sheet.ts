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
