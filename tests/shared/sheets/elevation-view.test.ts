import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { elevationsOf } from '#shared/elevation/elevations-of';
import type { Plan } from '#shared/model/plan';
import { spread } from '#shared/sheets/elevation-dimensions';
import { cylinderShape } from '#shared/sheets/elevation-shape';
import { composeElevation } from '#shared/sheets/elevation-view';
import { elevationPlace, elevationTitle, mountNotes } from '#shared/sheets/elevation-words';
import { PAPERS } from '#shared/paper/papers';
import { typeSizesOf } from '#shared/paper/type-sizes';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { demoSheets, wordsOf } from '../../support/sheet-set.ts';
import { textOverlaps } from '../../support/text-overlaps.ts';

const SIZES = typeSizesOf(PAPERS.A3);

function composed(plan: Plan, scale: number, sizes = SIZES) {
  const derived = derivePlan(plan);
  return elevationsOf(derived).map((elevation) => ({ elevation, view: composeElevation(elevation, derived.spaces, scale, sizes, plan.settings.lengths) }));
}
const { plan: hut } = await buildDemo('F1');
const { plan: annex } = await buildDemo('F2');

describe('the cylinder wall on paper', () => {
  test('heights, distances and parts of the annex, all from one corner', () => {
    const [wall] = composed(annex, 24);
    const words = wordsOf(wall?.view ?? { marks: [] });
    // Cylinders at y 4-0 step 1-2 before the east wall, whose nearer corner is the south one.
    expect(words).toEqual(expect.arrayContaining([`4'-0"`, `5'-2"`, `6'-4"`, `7'-6"`, `8'-8"`, `rail 4'-0"`, `restraint 2'-0"`, `gauge 5'-0"`, `valve outlet 5'-6"`, `ceiling 9'-6"`, 'finished floor', 'Manifold', 'C1', 'C5']));
    // Four spaces of 14 in, one diameter of 10.5 in and twice 6 in: 78.5 in.
    expect(words.some((each) => each.startsWith(`rail 6'-6 1/2"`))).toBe(true);
  });

  test('it is to scale: the hut is 8 ft high, 101.6 mm at 1:24', () => {
    const [wall] = composed(hut, 24);
    const { layout } = wall?.view ?? {};
    expect((layout?.frame.y(0) ?? 0) - (layout?.frame.y(8 * 0.3048) ?? 0)).toBeCloseTo(101.6, 9);
  });

  test.each(['F1', 'F2', 'F3'] as const)('no two texts of %s meet, on small paper or large, and every label finds room', async (name) => {
    const { plan } = await buildDemo(name);
    for (const [sizes, scale] of [[SIZES, 24], [SIZES, 48], [typeSizesOf(PAPERS['ARCH-D']), 24]] as const) {
      for (const { view } of composed(plan, scale, sizes)) {
        expect(textOverlaps(view.marks)).toEqual([]);
        expect(view.unplaced).toEqual([]);
      }
    }
  });

  test('names that do not fit into their cylinders stand with the distances', () => {
    const [wall] = composed(annex, 96);
    expect(wordsOf(wall?.view ?? { marks: [] })).toEqual(expect.arrayContaining([`C1: 4'-0"`, `C5: 8'-8"`]));
  });

  test('title, place and what no line can show', () => {
    const [wall] = composed(hut, 24);
    if (!wall) throw new Error('The hut has a cylinder wall.');
    expect(elevationTitle(wall.elevation)).toBe('Cylinder wall, Network 1');
    expect(elevationPlace(wall.elevation)).toBe('Signal hut, looking west from inside the room');
    expect(mountNotes(wall.elevation, 'feet').join(' ')).toMatch(/4 anchors.*two clamps.*Gauge faces the room.*clear floor in front, 2'-6".*Way out by.*hold point H8/);
  });

  test.each(['submittal', 'field'] as const)('stands in the %s set, several walls to a sheet', async (set) => {
    const walls = (await demoSheets('F3', { set, paper: 'A3' })).filter(({ title }) => /cylinder wall/i.test(title));
    expect(walls.length).toBeGreaterThan(0);
    expect(walls.length).toBeLessThanOrEqual(4);
    const words = walls.flatMap(wordsOf);
    for (const room of ['201', '202', '203', '204', '205', '206']) expect(words).toContain(`Cylinder wall, Network ${room}`);
  });
});

describe('a cylinder from the side', () => {
  test('is as wide as its diameter and its valve outlet as high as the manual says', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.08, max: 0.3, noNaN: true }), fc.double({ min: 0.9, max: 2.2, noNaN: true }), (radius_m, outlet_m) => {
        const { body, valve, top_m, shoulder_m } = cylinderShape({ radius_m, outlet_m });
        const xs = body.filter((_, i) => i % 2 === 0);
        const ys = body.filter((_, i) => i % 2 === 1);
        expect(Math.max(...xs)).toBeCloseTo(radius_m, 9);
        expect(Math.min(...xs)).toBeCloseTo(-radius_m, 9);
        expect(Math.min(...ys)).toBe(0);
        expect(shoulder_m).toBeGreaterThan(0);
        expect(Math.max(...ys)).toBeLessThan(outlet_m);
        expect(valve[1]).toBeLessThan(outlet_m);
        expect(top_m).toBeGreaterThan(outlet_m);
      }),
    );
  });
});

describe('heights that would meet', () => {
  test('are spread around their places', () => {
    expect(spread([0, 10, 20], 4)).toEqual([0, 10, 20]);
    expect(spread([10, 11], 4)).toEqual([8.5, 12.5]);
    const three = spread([10, 10, 10], 4);
    expect(three).toEqual([6, 10, 14]);
  });

  test('keep their order and the pitch', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 1, maxLength: 12 }), (wished) => {
        const places = spread(wished.toSorted((a, b) => a - b), 5);
        expect(places).toHaveLength(wished.length);
        for (const [i, at] of places.entries()) expect(i === 0 || at - (places[i - 1] ?? 0) >= 5 - 1e-6).toBe(true);
      }),
    );
  });
});
