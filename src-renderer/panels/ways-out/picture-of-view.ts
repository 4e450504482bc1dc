import type { Mark } from '#shared/sheets/sheet';
import type { SvgDrawing } from '#shared/ways-out/svg/write-svg';
import { paintMark } from '../../canvas/paint-marks.ts';

/** Dots to the inch: read on a screen, printed small, printed large. */
export const PICTURE_DPI = ['150', '300', '600'] as const;
export type PictureDpi = (typeof PICTURE_DPI)[number];

/** More dots than this along a side, or in all, are beyond what browsers paint (common practice). */
const MOST_ALONG = 16_000;
const MOST_IN_ALL = 120_000_000;

const imagesIn = (marks: readonly Mark[]): Extract<Mark, { kind: 'image' }>[] => marks.flatMap((mark) => (mark.kind === 'image' ? mark : mark.kind === 'clip' ? imagesIn(mark.marks) : []));

/** The finest of the resolutions, up to the one that was asked for, at which a picture of this size can be painted. */
export function paintableDpi({ width_mm, height_mm }: Pick<SvgDrawing, 'width_mm' | 'height_mm'>, asked: number): number {
  const dots = (dpi: number): readonly [number, number] => [Math.round((width_mm / 25.4) * dpi), Math.round((height_mm / 25.4) * dpi)];
  const fits = (dpi: number): boolean => Math.max(...dots(dpi)) <= MOST_ALONG && dots(dpi)[0] * dots(dpi)[1] <= MOST_IN_ALL;
  let dpi = asked;
  while (dpi > 20 && !fits(dpi)) dpi = Math.floor(dpi * 0.8);
  return dpi;
}

/** Paints a view as the bytes of a PNG; undefined when the browser has no memory for it. */
export async function pictureOfView(drawing: SvgDrawing, dpi: number): Promise<Uint8Array | undefined> {
  const canvas = document.createElement('canvas');
  canvas.width = Math.round((drawing.width_mm / 25.4) * dpi);
  canvas.height = Math.round((drawing.height_mm / 25.4) * dpi);
  const pen = canvas.getContext('2d');
  if (!pen) return undefined;
  const pictures = new Map<Uint8Array, ImageBitmap>();
  for (const { bytes, mime } of imagesIn(drawing.marks)) {
    const picture = await createImageBitmap(new Blob([new Uint8Array(bytes)], { type: mime })).catch(() => undefined);
    if (picture) pictures.set(bytes, picture);
  }
  pen.fillStyle = '#ffffff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.scale(canvas.width / drawing.width_mm, canvas.height / drawing.height_mm);
  pen.lineCap = 'round';
  pen.lineJoin = 'round';
  for (const mark of drawing.marks) paintMark(pen, mark, { pictures });
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
  canvas.width = 0;
  return blob ? new Uint8Array(await blob.arrayBuffer()) : undefined;
}
