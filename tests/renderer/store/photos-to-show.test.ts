import { expect, test } from 'vitest';
import { pinPhotos } from '#shared/commands/pin-photos';
import { recordMeasurements } from '#shared/commands/record-measurements';
import { derivePlan } from '#shared/derived/derive-plan';
import { fieldDimensionsOf } from '#shared/derived/field-dimensions';
import type { UnderlayDrawing } from '#shared/underlay/drawing';
import { photosToShow, wantPhotos } from '../../../src-renderer/store/photos-to-show.ts';
import type { DrawingState } from '../../../src-renderer/store/underlay-drawings.ts';
import { planBuilder } from '../../support/plan-builder.ts';
import { sheetsOf, wordsOf } from '../../support/sheet-set.ts';
import { done } from '../../support/try-command.ts';

const image = { bytes: Uint8Array.of(1), mime: 'image/jpeg', matrix: [6, 0, 0, 4, 0, 0], width: 6, height: 4 };
const drawing = { kind: 'jpeg', images: [image], extents: { minX: 0, minY: 0, maxX: 6, maxY: 4 } } as unknown as UnderlayDrawing;
const problem = { code: 'damaged', what: '', where: '', remedy: '' } as const;

/** A measured wall with four photographs: read, being read, asked for by nobody yet, and damaged. */
function pinned() {
  const { plan } = planBuilder('metric').room(5, 4, 2.6).network().nozzle(2, 2, 2.3);
  const [wall] = fieldDimensionsOf(derivePlan(plan));
  if (!wall) throw new Error('Nothing is measured.');
  const measured = done(plan, recordMeasurements([{ id: wall.id, value_m: wall.planned_m }])).next;
  const files = ['read', 'loading', 'unasked', 'damaged'].map((name, i) => ({ name: `${name}.jpg`, file: name, sha256: String(i).repeat(64) }));
  const next = done(measured, pinPhotos(wall.id, files)).next;
  const states: Record<string, DrawingState> = { 'read.jpg': { state: 'ready', drawing }, 'loading.jpg': { state: 'loading', progress: 0, doing: '' }, 'damaged.jpg': { state: 'failed', problem } };
  const names = next.assets;
  return { plan: next, wall, stateOf: (_: unknown, { asset }: { asset: string }) => states[names[asset]?.name ?? ''] };
}

test('a photograph is shown once it is read; until then it is said to be printed with the set, and only a damaged one is called damaged', () => {
  const { plan, stateOf } = pinned();
  const photos = photosToShow(plan, { stateOf });
  const byName = new Map([...photos].map(([id, photo]) => [plan.assets[id]?.name, photo]));
  expect(byName.get('read.jpg')).toMatchObject({ mime: 'image/jpeg', width: 6, height: 4 });
  expect([byName.get('loading.jpg'), byName.get('unasked.jpg'), byName.has('damaged.jpg')]).toEqual(['later', 'later', false]);
  const sheets = sheetsOf(plan, { photos });
  const words = sheets.map((sheet) => JSON.stringify(wordsOf(sheet))).join(' ').replace(/[^a-z]+/gi, ' ');
  expect(words.match(/Printed with the set/g)).toHaveLength(2);
  expect(words.match(/missing or damaged/g)).toHaveLength(1);
  expect(sheets.flatMap(({ marks }) => marks).filter(({ kind }) => kind === 'image')).toHaveLength(1);
});

test('a file that the plan no longer names is no photograph to wait for', () => {
  const { plan, stateOf } = pinned();
  expect(photosToShow({ ...plan, assets: {} }, { stateOf }).size).toBe(0);
});

test('every pinned photograph is asked for once', () => {
  const { plan } = pinned();
  const asked: string[] = [];
  wantPhotos(plan, { wantPage: (_, { asset, page }) => asked.push(`${plan.assets[asset]?.name} ${page}`) });
  expect(asked.toSorted()).toEqual(['damaged.jpg 1', 'loading.jpg 1', 'read.jpg 1', 'unasked.jpg 1']);
});
