import type { UnderlayDrawing } from '../underlay/drawing.ts';
import type { SheetOptions } from './sheet.ts';

/** The picture of a title block out of a file as it was read; undefined for a file that is no picture. */
export function logoOf({ kind, images }: Pick<UnderlayDrawing, 'kind' | 'images'>): SheetOptions['logo'] {
  const [image] = images;
  if (!image || (kind !== 'png' && kind !== 'jpeg')) return undefined;
  return { bytes: image.bytes, mime: image.mime, width_px: image.width, height_px: image.height };
}
