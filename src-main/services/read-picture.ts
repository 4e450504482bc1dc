import type { Plan } from '#shared/model/plan';
import type { UnderlayDrawing } from '#shared/underlay/drawing';
import { decodeDrawing } from '#shared/underlay/encode-drawing';
import { isSoundPng } from './picture-check.ts';
import type { ReadAsset } from './print-plan.ts';
import { startImport } from './underlay/import-job.ts';

/**
 * A picture that a plan names, checked as every picture from outside is: read in a thread of its own with bounds on its
 * size, its pixels unpacked no further than its head promises. Undefined when its file is gone, and when it is no sound
 * picture: the sheets are printed without it and say so.
 */
export async function readPicture({ assets }: Pick<Plan, 'assets'>, id: string, readAsset: ReadAsset, signal: AbortSignal): Promise<UnderlayDrawing | undefined> {
  const asset = Object.hasOwn(assets, id) ? assets[id] : undefined;
  if (!asset) return undefined;
  try {
    const found = await readAsset(asset.sha256);
    signal.throwIfAborted();
    if (!found) return undefined;
    const reading = startImport(found.bytes, { name: asset.name, page: 1 }, () => undefined);
    signal.addEventListener('abort', reading.cancel, { once: true });
    try {
      const drawing = decodeDrawing((await reading.result).packed);
      const [image] = drawing.images;
      return image && (image.mime !== 'image/png' || isSoundPng(image.bytes)) ? drawing : undefined;
    } finally {
      signal.removeEventListener('abort', reading.cancel);
    }
  } catch {
    signal.throwIfAborted();
    return undefined;
  }
}
