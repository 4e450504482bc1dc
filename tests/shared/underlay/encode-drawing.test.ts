import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { UnderlayDrawing } from '#shared/underlay/drawing';
import { decodeDrawing, encodeDrawing } from '#shared/underlay/encode-drawing';
import { problemOf } from '../../support/underlay.ts';

const number = fc.double({ noNaN: true, noDefaultInfinity: true });
const run = (group: number): fc.Arbitrary<Float64Array> =>
  fc.array(fc.array(number, { minLength: group, maxLength: group }), { maxLength: 6 }).map((rows) => Float64Array.from(rows.flat()));
const text = fc.record({ x: number, y: number, height: number, rotation_rad: number, text: fc.string({ unit: 'grapheme' }) });
const layer = fc.record({
  name: fc.string({ unit: 'grapheme', maxLength: 20 }),
  visible: fc.boolean(),
  colour: fc.constantFrom('#000000', '#a1b2c3'),
  segments: run(4),
  fills: fc.array(run(2), { maxLength: 3 }),
  closed: fc.array(run(2), { maxLength: 3 }),
  texts: fc.array(text, { maxLength: 3 }),
});
const image = fc.record({
  mime: fc.constantFrom('image/png' as const, 'image/jpeg' as const),
  bytes: fc.uint8Array({ maxLength: 20 }),
  width: fc.nat(5000),
  height: fc.nat(5000),
  matrix: fc.tuple(number, number, number, number, number, number),
});
const drawing: fc.Arbitrary<UnderlayDrawing> = fc.record({
  kind: fc.constantFrom('dxf' as const, 'pdf' as const, 'svg' as const, 'png' as const, 'jpeg' as const),
  metresPerUnit: fc.constantFrom(null, 0.001, 0.0254),
  unitsText: fc.string(),
  unitsDoubt: fc.option(fc.string(), { nil: null }),
  extents: fc.record({ minX: number, minY: number, maxX: number, maxY: number }),
  layers: fc.array(layer, { maxLength: 4 }),
  images: fc.array(image, { maxLength: 2 }),
  pageCount: fc.integer({ min: 1, max: 50 }),
  warnings: fc.array(fc.string({ unit: 'grapheme' }), { maxLength: 3 }),
});
/** JSON knows no minus zero; the header's numbers lose its sign, which no plan can show. */
const plain = (value: UnderlayDrawing): UnderlayDrawing => ({
  ...value,
  extents: JSON.parse(JSON.stringify(value.extents)),
  layers: value.layers.map((one) => ({ ...one, texts: JSON.parse(JSON.stringify(one.texts)) })),
  images: value.images.map((one) => ({ ...one, matrix: JSON.parse(JSON.stringify(one.matrix)) })),
});

describe('packed drawings', () => {
  test('unpacking gives back what was packed', () => {
    fc.assert(
      fc.property(drawing, (one) => {
        expect(decodeDrawing(encodeDrawing(one))).toEqual(plain(one));
      }),
    );
  });

  test('it may lie anywhere in a larger buffer', () => {
    fc.assert(
      fc.property(drawing, fc.integer({ min: 1, max: 9 }), (one, shift) => {
        const packed = encodeDrawing(one);
        const larger = new Uint8Array(packed.length + shift + 3);
        larger.set(packed, shift);
        expect(decodeDrawing(larger.subarray(shift, shift + packed.length))).toEqual(plain(one));
      }),
      { numRuns: 30 },
    );
  });

  test('a cut, lengthened or garbled pack is a problem, never a crash or a half drawing', () => {
    fc.assert(
      fc.property(drawing, fc.nat(), (one, at) => {
        const packed = encodeDrawing(one);
        expect(problemOf(() => decodeDrawing(packed.subarray(0, at % packed.length))).what).toMatch(/damaged/);
        expect(problemOf(() => decodeDrawing(new Uint8Array([...packed, 0]))).what).toMatch(/damaged/);
      }),
      { numRuns: 50 },
    );
    expect(problemOf(() => decodeDrawing(new Uint8Array(0))).remedy).toMatch(/Import the file again/);
  });

  test('numbers that are none are refused', () => {
    const [one] = fc.sample(drawing, { seed: 1, numRuns: 1 });
    if (!one) throw new Error('no sample');
    const bad = { ...one, layers: [{ name: 'a', visible: true, colour: '#000000', segments: Float64Array.of(0, 0, Number.NaN, 1), fills: [], closed: [], texts: [] }] };
    expect(problemOf(() => decodeDrawing(encodeDrawing(bad))).where).toBe('coordinates');
  });
});
