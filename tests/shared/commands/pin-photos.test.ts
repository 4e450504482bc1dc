import { expect, test } from 'vitest';
import { clearMeasurement } from '#shared/commands/clear-measurement';
import { MOST_PHOTOS, pinPhotos, unpinPhoto } from '#shared/commands/pin-photos';
import { recordMeasurements } from '#shared/commands/record-measurements';
import { assetsInUse } from '#shared/model/assets-in-use';
import { newPlan } from '#shared/model/plan';
import { done, refusal } from '../../support/try-command.ts';

const photo = (digit: number) => ({ name: `valve ${digit}.jpg`, file: `photo${digit}.jpg`, sha256: digit.toString(16).padStart(64, '0') });
const measured = done(newPlan('feet'), recordMeasurements([{ id: 'wall', value_m: 2, by: 'R. Fenn' }])).next;
const photosOf = (plan: typeof measured) => plan.siteRecord.measurements.wall?.photos ?? [];

test('photographs are pinned in one step, held by the plan, and stay when the value is measured again', () => {
  const { next, label } = done(measured, pinPhotos('wall', [photo(1), photo(2)]));
  expect(label).toBe('Pin 2 photographs');
  expect(photosOf(next).map((id) => next.assets[id]?.name)).toEqual(['valve 1.jpg', 'valve 2.jpg']);
  expect(assetsInUse(next)).toEqual(new Set(photosOf(next)));
  expect(photosOf(done(next, recordMeasurements([{ id: 'wall', value_m: 2.1 }])).next)).toEqual(photosOf(next));
  expect(photosOf(done(next, clearMeasurement(['wall'])).next)).toEqual([]);
});

test('the same photograph is pinned once, and held once for two dimensions', () => {
  const twice = done(done(measured, pinPhotos('wall', [photo(1), photo(1)])).next, recordMeasurements([{ id: 'door', value_m: 1 }])).next;
  expect(photosOf(twice)).toHaveLength(1);
  const both = done(twice, pinPhotos('door', [photo(1)])).next;
  expect(both.siteRecord.measurements.door?.photos).toEqual(photosOf(both));
  expect(Object.keys(both.assets)).toHaveLength(1);
});

test('twenty are taken, the next is refused', () => {
  const full = done(measured, pinPhotos('wall', Array.from({ length: MOST_PHOTOS }, (_, i) => photo(i)))).next;
  expect(photosOf(full)).toHaveLength(MOST_PHOTOS);
  expect(refusal(full, pinPhotos('wall', [photo(77)]))).toContain('takes 20 photographs');
});

test('nothing is pinned to what was not measured, nor a file that cannot lie in a plan', () => {
  for (const id of ['door', 'constructor', '']) expect(refusal(measured, pinPhotos(id, [photo(1)]))).toContain('was not measured');
  expect(refusal(measured, pinPhotos('wall', []))).toContain('no photograph');
  expect(refusal(measured, pinPhotos('wall', [{ ...photo(1), file: '../up.jpg' }]))).toContain('cannot be kept');
  expect(refusal(measured, pinPhotos('wall', [{ ...photo(1), sha256: 'short' }]))).toContain('cannot be kept');
});

test('one is taken off, and only where it is pinned', () => {
  const { next } = done(measured, pinPhotos('wall', [photo(1), photo(2)]));
  const [first = '', second = ''] = photosOf(next);
  const { next: left } = done(next, unpinPhoto('wall', first));
  expect(photosOf(left)).toEqual([second]);
  expect(refusal(left, unpinPhoto('wall', first))).toContain('no longer pinned');
  expect(refusal(left, unpinPhoto('constructor', second))).toContain('no longer pinned');
});
