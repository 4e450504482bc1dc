import type { Plan } from '#shared/model/plan';
import { photoOf } from '#shared/sheets/photo-table';
import type { SheetPhoto } from '#shared/sheets/sheet';
import type { ReadAsset } from './print-plan.ts';
import { readPicture } from './read-picture.ts';

/** The photographs from the site by the id of their file, each read once. One that is gone or damaged is left out: the sheet says so in its place. */
export async function readPhotos(plan: Pick<Plan, 'siteRecord' | 'assets'>, readAsset: ReadAsset, signal: AbortSignal): Promise<ReadonlyMap<string, SheetPhoto>> {
  const photos = new Map<string, SheetPhoto>();
  const named = new Set(Object.values(plan.siteRecord.measurements).flatMap(({ photos: own }) => own));
  for (const id of named) {
    const drawing = await readPicture(plan, id, readAsset, signal);
    const photo = drawing && photoOf(drawing);
    if (photo) photos.set(id, photo);
  }
  return photos;
}
