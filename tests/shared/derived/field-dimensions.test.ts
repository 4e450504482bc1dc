import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { fieldDimensionsAbout, fieldDimensionsOf } from '#shared/derived/field-dimensions';
import { nozzleName } from '#shared/derived/nozzle-name';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';

const dimensionsOf = async (name: 'F1' | 'F2' | 'F3') => {
  const { plan } = await buildDemo(name);
  return { derived: derivePlan(plan), dimensions: fieldDimensionsOf(derivePlan(plan)) };
};

describe('what is measured on site', () => {
  test('a rectangle has four walls, both diagonals and three ceiling heights', async () => {
    const { dimensions } = await dimensionsOf('F1');
    const room = dimensions.filter(({ about }) => about.kind === 'enclosure');
    expect(room.map(({ kind }) => kind)).toEqual(['wall', 'wall', 'wall', 'wall', 'diagonal', 'diagonal', 'ceiling', 'ceiling', 'ceiling']);
    // 16-0 x 11-0, by Pythagoras 19-5; ceiling 8-0.
    expect(room.filter(({ kind }) => kind === 'diagonal').map(({ planned_m }) => planned_m.toFixed(4))).toEqual(['5.9181', '5.9181']);
    expect(room.filter(({ kind }) => kind === 'ceiling').map(({ planned_m }) => planned_m.toFixed(4))).toEqual(['2.4384', '2.4384', '2.4384']);
  });

  test('a room of six corners has four diagonals, none through a wall', async () => {
    const { dimensions } = await dimensionsOf('F2');
    const diagonals = dimensions.filter(({ kind }) => kind === 'diagonal');
    expect(diagonals).toHaveLength(4);
    // From the corner at the origin: to (31-6, 15-0), to the inner corner (19-6, 15-0) and to (19-6, 25-6).
    const feet = diagonals.map(({ planned_m }) => (planned_m / 0.3048).toFixed(3));
    expect(feet.slice(0, 3)).toEqual([Math.hypot(31.5, 15), Math.hypot(19.5, 15), Math.hypot(19.5, 25.5)].map((length) => length.toFixed(3)));
  });

  test('rooms come first, every id once, and each thing has its own', async () => {
    for (const name of ['F1', 'F2', 'F3'] as const) {
      const { derived, dimensions } = await dimensionsOf(name);
      expect(new Set(dimensions.map(({ id }) => id)).size).toBe(dimensions.length);
      expect(dimensions[0]?.kind).toBe('wall');
      for (const nozzle of derived.nozzles) {
        const own = fieldDimensionsAbout(dimensions, nozzle.ref);
        expect(own.map(({ part }) => part)).toEqual(['first', 'second', 'height', 'drop']);
        expect(own[0]?.name).toBe(`${nozzleName(derived, nozzle)} a`);
      }
    }
  });

  test('cylinders and turns of the pipe are placed too', async () => {
    const { dimensions } = await dimensionsOf('F1');
    expect(dimensions.filter(({ kind }) => kind === 'cylinder').map(({ part, planned_m }) => [part, (planned_m / 0.3048).toFixed(2)])).toEqual([
      ['first', '0.75'],
      ['second', '9.50'],
      ['rail', '4.00'],
    ]);
    expect(dimensions.some(({ kind, part }) => kind === 'pipe' && part === 'height')).toBe(true);
  });
});
