import { describe, expect, test } from 'vitest';
import type { Underlay } from '#shared/model/plan';
import type { UnderlayDrawing } from '#shared/underlay/drawing';
import { fileToPx, isNearWhite, underlaySteps } from '../../../src-renderer/canvas/underlay-steps.ts';
import { toScreen } from '../../../src-renderer/canvas/viewport.ts';
import { drawnPieces, named, recordingPen, texts } from './support/recording-pen.ts';

const view = { camera: { at: { x: 0, y: 0 }, scale_px_m: 100 }, width: 800, height: 600 };
const underlay: Underlay = {
  id: 'u1',
  name: 'Plan',
  asset: 'a1',
  kind: 'dxf',
  page: 1,
  at: { x: 1, y: -1 },
  rotation_rad: Math.PI / 2,
  metresPerUnit: 0.001,
  calibration: 'file-units',
  knownLengths: [],
  opacity: 0.6,
  hiddenLayers: ['Hidden'],
  visible: true,
  locked: true,
};
const layer = (name: string, segments: number[], change: Partial<UnderlayDrawing['layers'][number]> = {}): UnderlayDrawing['layers'][number] => ({
  name,
  visible: true,
  colour: '#000000',
  segments: Float64Array.from(segments),
  fills: [],
  closed: [],
  texts: [],
  ...change,
});
const drawing = (layers: UnderlayDrawing['layers']): UnderlayDrawing => ({
  kind: 'dxf',
  metresPerUnit: 0.001,
  unitsText: '',
  unitsDoubt: null,
  extents: { minX: 0, minY: 0, maxX: 1, maxY: 1 },
  layers,
  images: [],
  pageCount: 1,
  warnings: [],
});
const draw = (layers: UnderlayDrawing['layers'], change: Partial<Underlay> = {}) => {
  const { pen, calls } = recordingPen();
  let steps = 0;
  for (const _ of underlaySteps(pen, view, [{ underlay: { ...underlay, ...change }, drawing: drawing(layers) }], { colour: '#888888', isDark: false, pictureOf: () => undefined })) steps += 1;
  return { calls, steps };
};

test('file units lie where the placement says: turned, scaled and shifted', () => {
  const [a, b, c, d, e, f] = fileToPx(view, underlay);
  const expected = toScreen(view, { x: 1 - 2, y: -1 + 3 });
  expect(a * 3000 + c * 2000 + e).toBeCloseTo(expected.x);
  expect(b * 3000 + d * 2000 + f).toBeCloseTo(expected.y);
});

describe('lines', () => {
  test('layers that are hidden and pieces out of sight are not drawn', () => {
    const { calls } = draw([layer('Walls', [0, 0, 1000, 0, 90_000, 90_000, 91_000, 90_000]), layer('Hidden', [0, 0, 500, 0])]);
    expect(drawnPieces(calls)).toHaveLength(1);
  });

  test('a run of tiny pieces keeps its ends but not every corner', () => {
    const run: number[] = [];
    for (let i = 0; i < 100; i += 1) run.push(i * 2, 0, i * 2 + 2, 0);
    const pieces = drawnPieces(draw([layer('Arc', run)]).calls);
    expect(pieces.length).toBeLessThan(30);
    const start = pieces[0];
    const end = pieces.at(-1);
    const length = Math.hypot((end?.[2] ?? 0) - (start?.[0] ?? 0), (end?.[3] ?? 0) - (start?.[1] ?? 0));
    expect(length).toBeCloseTo(20);
  });

  test('a long drawing lets the caller look at the clock', () => {
    const many: number[] = [];
    for (let i = 0; i < 30_000; i += 1) many.push((i % 300) * 10, Math.floor(i / 300) * 10, (i % 300) * 10 + 9, Math.floor(i / 300) * 10);
    expect(draw([layer('Hatch', many)], { rotation_rad: 0, at: { x: -2, y: -1 } }).steps).toBeGreaterThan(3);
  });
});

test('texts are drawn once they can be read', () => {
  const text = { x: 0, y: 0, height: 150, rotation_rad: 0, text: 'Archive' };
  expect(texts(draw([layer('Text', [], { texts: [text] })]).calls)).toEqual(['Archive']);
  expect(texts(draw([layer('Text', [], { texts: [{ ...text, height: 5 }] })]).calls)).toEqual([]);
});

test('white fills mask and are left out', () => {
  const ring = Float64Array.from([0, 0, 1000, 0, 1000, 1000]);
  expect(named(draw([layer('Fill', [], { fills: [ring] })]).calls, 'fill')).toHaveLength(1);
  expect(named(draw([layer('Fill', [], { fills: [ring], colour: '#ffffff' })]).calls, 'fill')).toHaveLength(0);
  expect([isNearWhite('#fefefe'), isNearWhite('#ffff00'), isNearWhite('nonsense')]).toEqual([true, false, false]);
});
