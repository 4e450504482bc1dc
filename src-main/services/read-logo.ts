import type { Plan } from '#shared/model/plan';
import { logoOf } from '#shared/sheets/logo-of';
import type { SheetOptions } from '#shared/sheets/sheet';
import { decodeDrawing } from '#shared/underlay/encode-drawing';
import { isSoundPng } from './picture-check.ts';
import type { ReadAsset } from './print-plan.ts';
import { startImport } from './underlay/import-job.ts';

/**
 * The picture of the title block, checked as every picture from outside is: read in a thread of its own with bounds on its
 * size, its pixels unpacked no further than its head promises. Undefined when there is none, when its file is gone, and
 * when it is no sound picture: the sheets are printed without it and say so.
 */
export async function readLogo({ settings, assets }: Pick<Plan, 'settings' | 'assets'>, readAsset: ReadAsset, signal: AbortSignal): Promise<SheetOptions['logo']> {
  const { logo: id } = settings.sheets.titleBlock;
  const asset = id === null ? undefined : assets[id];
  if (!asset) return undefined;
  try {
    const found = await readAsset(asset.sha256);
    signal.throwIfAborted();
    if (!found) return undefined;
    const reading = startImport(found.bytes, { name: asset.name, page: 1 }, () => undefined);
    signal.addEventListener('abort', reading.cancel, { once: true });
    try {
      const logo = logoOf(decodeDrawing((await reading.result).packed));
      return logo && (logo.mime !== 'image/png' || isSoundPng(logo.bytes)) ? logo : undefined;
    } finally {
      signal.removeEventListener('abort', reading.cancel);
    }
  } catch {
    signal.throwIfAborted();
    return undefined;
  }
}
