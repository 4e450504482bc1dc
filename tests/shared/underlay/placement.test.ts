import fc from 'fast-check';
import { expect, test } from 'vitest';
import { layersHiddenByFile, toFile, toPlan } from '#shared/underlay/placement';
import { readParts } from '../../support/underlay.ts';
import { line } from '../../support/dxf-file.ts';

const number = fc.double({ min: -1e4, max: 1e4, noNaN: true });

test('an inch drawing turned by 90° lies where the surveyor says', () => {
  const placement = { at: { x: 10, y: 20 }, rotation_rad: Math.PI / 2, metresPerUnit: 0.0254 };
  const at = toPlan(placement, 100, 0);
  expect(at.x).toBeCloseTo(10, 12);
  expect(at.y).toBeCloseTo(22.54, 12);
});

test('before the scale is known a unit is drawn as a metre', () => {
  expect(toPlan({ at: { x: 1, y: 2 }, rotation_rad: 0, metresPerUnit: null }, 3, 4)).toEqual({ x: 4, y: 6 });
});

test('there and back is the same place', () => {
  fc.assert(
    fc.property(number, number, number, number, fc.double({ min: -7, max: 7, noNaN: true }), fc.double({ min: 1e-3, max: 10, noNaN: true }), (x, y, ax, ay, rotation_rad, metresPerUnit) => {
      const placement = { at: { x: ax, y: ay }, rotation_rad, metresPerUnit };
      const back = toFile(placement, toPlan(placement, x, y));
      expect(Math.abs(back.x - x)).toBeLessThan(1e-6);
      expect(Math.abs(back.y - y)).toBeLessThan(1e-6);
    }),
  );
});

test('layers that the file hides are named', () => {
  const drawing = readParts({ layers: [{ name: 'Off', colour: -3 }, { name: 'On' }], entities: [line(0, 0, 1, 1, 'Off'), line(0, 0, 1, 1, 'On')] });
  expect(layersHiddenByFile(drawing.layers)).toEqual(['Off']);
});
