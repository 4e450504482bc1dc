import fc from 'fast-check';
import { expect, test } from 'vitest';
import { axisOver, shareOn } from '#shared/sheets/charts/axis';

test.each([
  [0, 172.3, ['0', '50', '100', '150', '200']],
  [0, 0.344, ['0.0', '0.1', '0.2', '0.3', '0.4']],
  [10.3, 20.95, ['10.0', '12.5', '15.0', '17.5', '20.0', '22.5']],
  [-20, 50, ['−20', '0', '20', '40', '60']],
])('an axis from %d to %d has round ticks', (least, greatest, words) => {
  expect(axisOver(least, greatest).ticks.map((tick) => tick.words)).toEqual(words);
});

test('an axis holds both its ends, and each tick reads as what it stands at', () => {
  const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
  fc.assert(
    fc.property(value, value, (a, b) => {
      const axis = axisOver(Math.min(a, b), Math.max(a, b));
      for (const each of [a, b]) {
        expect(shareOn(axis, each)).toBeGreaterThanOrEqual(-1e-6);
        expect(shareOn(axis, each)).toBeLessThanOrEqual(1 + 1e-6);
      }
      expect(axis.ticks.length).toBeLessThanOrEqual(12);
      const span = axis.greatest - axis.least;
      for (const { at, words } of axis.ticks) expect(Math.abs(Number(words.replace('−', '-')) - at)).toBeLessThanOrEqual(1e-6 * span);
    }),
  );
});

test('values that are all alike still give an axis', () => {
  expect(axisOver(5, 5).greatest).toBeGreaterThan(axisOver(5, 5).least);
  expect(axisOver(0, 0).greatest).toBeGreaterThan(0);
});
