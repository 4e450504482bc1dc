import type { Plan } from '#shared/model/plan';
import { logoOf } from '#shared/sheets/logo-of';
import type { SheetOptions } from '#shared/sheets/sheet';
import type { ReadAsset } from './print-plan.ts';
import { readPicture } from './read-picture.ts';

/** The picture of the title block. Undefined when there is none, when its file is gone, and when it is no sound picture: the sheets say so. */
export async function readLogo(plan: Pick<Plan, 'settings' | 'assets'>, readAsset: ReadAsset, signal: AbortSignal): Promise<SheetOptions['logo']> {
  const { logo } = plan.settings.sheets.titleBlock;
  const drawing = logo === null ? undefined : await readPicture(plan, logo, readAsset, signal);
  return drawing && logoOf(drawing);
}
