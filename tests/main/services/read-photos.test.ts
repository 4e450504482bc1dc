import { createHash } from 'node:crypto';
import { deflateSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { pinPhotos } from '#shared/commands/pin-photos';
import { recordMeasurements } from '#shared/commands/record-measurements';
import { derivePlan } from '#shared/derived/derive-plan';
import { fieldDimensionsOf } from '#shared/derived/field-dimensions';
import type { Plan } from '#shared/model/plan';
import { readPhotos } from '../../../src-main/services/read-photos.ts';
import { jpegFile, pngChunk, pngFile } from '../../support/picture-file.ts';
import { planBuilder } from '../../support/plan-builder.ts';
import { sheetsOf, wordsOf } from '../../support/sheet-set.ts';
import { done } from '../../support/try-command.ts';

const { signal } = new AbortController();
const HEAD_bytes = 33;
/** A grey PNG with other bytes in place of its pixels. */
const pngOf = (width: number, height: number, packed: Uint8Array): Uint8Array => Uint8Array.from([...pngFile(width, height, [], new Uint8Array(1)).subarray(0, HEAD_bytes), ...pngChunk('IDAT', packed), ...pngChunk('IEND', [])]);
const sound = pngOf(4, 3, deflateSync(new Uint8Array(3 * 5)));

/** A room of which one wall was measured, with photographs of it. */
function withPhotos(files: Readonly<Record<string, Uint8Array | undefined>>) {
  const { plan } = planBuilder('metric').room(5, 4, 2.6).network().nozzle(2, 2, 2.3);
  const [wall] = fieldDimensionsOf(derivePlan(plan));
  if (!wall) throw new Error('Nothing is measured.');
  const measured = done(plan, recordMeasurements([{ id: wall.id, value_m: wall.planned_m, by: 'R. Fenn', at: '2026-03-12 09:00' }])).next;
  const entries = Object.entries(files).map(([name, bytes]) => ({ name, file: name, sha256: createHash('sha256').update(bytes ?? name).digest('hex') }));
  const kept = new Map(Object.entries(files).map(([name, bytes], i) => [entries[i]?.sha256, bytes && { name, bytes }]));
  return { wall, plan: done(measured, pinPhotos(wall.id, entries)).next, find: async (sha256: string) => kept.get(sha256) };
}
const wordsOfAll = (plan: Plan, photos: Awaited<ReturnType<typeof readPhotos>>): string => JSON.stringify(sheetsOf(plan, { photos }).map(wordsOf));

test('sound photographs are printed with number, dimension, name and time, the right way up', async () => {
  const { plan, find, wall } = withPhotos({ 'wall.png': sound, 'corner.jpg': jpegFile(6, 4) });
  const photos = await readPhotos(plan, find, signal);
  expect(photos.size).toBe(2);
  const sheets = sheetsOf(plan, { photos });
  const words = JSON.stringify(sheets.map(wordsOf));
  for (const each of ['Photographs from the site', 'P1', 'P2', 'wall.png', 'corner.jpg', wall.name, 'R. Fenn']) expect(words).toContain(each);
  const pictures = sheets.flatMap(({ marks }) => marks).filter((mark) => mark.kind === 'image');
  expect(pictures).toHaveLength(2);
  for (const { matrix } of pictures) {
    expect(matrix[0]).toBeGreaterThan(0);
    expect(matrix[3]).toBeLessThan(0);
  }
});

test('a photograph whose file is gone is named in its place, and the others are printed', async () => {
  const { plan, find } = withPhotos({ 'wall.png': sound, 'gone.jpg': undefined });
  const photos = await readPhotos(plan, find, signal);
  expect(photos.size).toBe(1);
  const words = wordsOfAll(plan, photos);
  expect(words).toContain('gone.jpg');
  expect(words.replace(/[^a-z]+/gi, ' ')).toContain('missing');
});

test.each([
  ['cut', sound.subarray(0, 40)],
  ['with pixels that do not unpack', pngOf(4, 3, Uint8Array.of(1, 2, 3))],
  ['that promises more pixels than a picture may have', pngOf(60_000, 60_000, deflateSync(new Uint8Array(10)))],
  ['that unpacks to far more than its head promises', pngOf(4, 3, deflateSync(new Uint8Array(50_000_000)))],
  ['with nothing in it', new Uint8Array()],
  ['that is a script', new TextEncoder().encode('<svg onload="alert(1)"/>')],
])('a hostile picture %s is left out, and the set is printed', async (_, bytes) => {
  const { plan, find } = withPhotos({ 'bad.png': bytes, 'wall.png': sound });
  expect((await readPhotos(plan, find, signal)).size).toBe(1);
});

test('without photographs there is no sheet of them', () => {
  expect(wordsOfAll(planBuilder('metric').room(5, 4, 2.6).plan, new Map())).not.toContain('Photographs from the site');
});
