import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseNumber } from '#shared/underlay/dxf/parse-number';

const parse = (text: string): number => {
  const bytes = new Uint8Array(Buffer.from(`x${text}y`, 'latin1'));
  return parseNumber(bytes, 1, bytes.length - 1);
};

test('every finite number reads as the language itself reads it', () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
      expect(parse(String(value))).toBe(Number(String(value)));
      expect(parse(value.toExponential())).toBe(Number(value.toExponential()));
    }),
    { numRuns: 2000 },
  );
  fc.assert(
    fc.property(fc.integer(), fc.nat({ max: 999_999 }), (whole, part) => {
      expect(parse(`  ${whole}.${part} `)).toBe(Number(`${whole}.${part}`));
    }),
  );
});

test.each([
  ['-724.9812134527413', -724.9812134527413],
  ['  12', 12],
  ['.5', 0.5],
  ['5.', 5],
  ['+1E3', 1000],
  ['1e-7', 1e-7],
  ['00012.50', 12.5],
])('%j is %d', (text, value) => expect(parse(text)).toBe(value));

test.each(['', ' ', 'nan', 'NaN', 'inf', '1.#QNAN', '1,5', '--1', '1e', '1e+', '1.2.3', '0x10', '1e999', '12abc'])('%j is no number', (text) => {
  expect(parse(text)).toBeNaN();
});
