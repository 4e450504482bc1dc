import { command, refuse } from './command.ts';
import { type AssetEntry, holdAsset } from './hold-asset.ts';

/** Photographs that one dimension takes. */
export const MOST_PHOTOS = 20;

const labelOf = (_plan: unknown, _id: string, photos: readonly AssetEntry[]): string => (photos.length === 1 ? 'Pin photograph' : `Pin ${photos.length} photographs`);

/**
 * Pins photographs from the site to a measured dimension; one that is pinned to it already stays as it is.
 * Refuses a dimension that was not measured, more than twenty, and a file that cannot lie in the plan.
 */
export const pinPhotos = command(labelOf, (draft, id: string, photos: readonly AssetEntry[]) => {
  const { measurements } = draft.siteRecord;
  const measurement = (Object.hasOwn(measurements, id) ? measurements[id] : undefined) ?? refuse('This dimension was not measured: type what was measured, then pin the photograph to it.');
  if (photos.length === 0) refuse('There is no photograph to pin.');
  for (const photo of photos) {
    const asset = holdAsset(draft, photo, 'This photograph cannot be kept in the plan. Choose the file again.');
    if (!measurement.photos.includes(asset)) measurement.photos.push(asset);
  }
  if (measurement.photos.length > MOST_PHOTOS) refuse(`A dimension takes ${MOST_PHOTOS} photographs. Take one out first.`);
});

/** Takes a photograph off a measured dimension. Refuses one that is not pinned to it. */
export const unpinPhoto = command('Take photograph off', (draft, id: string, photo: string) => {
  const { measurements } = draft.siteRecord;
  const measurement = Object.hasOwn(measurements, id) ? measurements[id] : undefined;
  if (!measurement?.photos.includes(photo)) refuse('This photograph is no longer pinned here.');
  else measurement.photos = measurement.photos.filter((each) => each !== photo);
});
