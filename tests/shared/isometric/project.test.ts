import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ISO_VIEWS, type IsoView, nearness, project } from '#shared/isometric/project';

const number = fc.double({ min: -50, max: 50, noNaN: true });
const way = fc.record({ x: number, y: number, z: number });
const view = fc.constantFrom(...ISO_VIEWS);
/** The same building turned a quarter to the left. */
const quarter = ({ x, y, z }: { x: number; y: number; z: number }) => ({ x: -y, y: x, z });
const next: Readonly<Record<IsoView, IsoView>> = { 'south-east': 'north-east', 'north-east': 'north-west', 'north-west': 'south-west', 'south-west': 'south-east' };

describe('isometric axes', () => {
  test.each([
    ['east runs right and down', { x: 1, y: 0, z: 0 }, -30],
    ['north runs right and up', { x: 0, y: 1, z: 0 }, 30],
    ['up stays up', { x: 0, y: 0, z: 1 }, 90],
  ])('seen from the south-east %s at 30°, at full length (isometric drawing, ISO 5456-3, from memory)', (_, along, degrees) => {
    const { x, y } = project(along, 'south-east');
    expect((Math.atan2(y, x) * 180) / Math.PI).toBeCloseTo(degrees, 9);
    expect(Math.hypot(x, y)).toBeCloseTo(1, 12);
  });

  test('what is parallel stays parallel, in the same proportion, wherever the viewer stands', () => {
    fc.assert(
      fc.property(way, number, view, (along, times, from) => {
        const one = project(along, from);
        const many = project({ x: along.x * times, y: along.y * times, z: along.z * times }, from);
        expect(many.x).toBeCloseTo(one.x * times, 6);
        expect(many.y).toBeCloseTo(one.y * times, 6);
      }),
    );
  });

  test('a building turned by 90° looks as it did from the next corner', () => {
    fc.assert(
      fc.property(way, view, (along, from) => {
        const [turned, moved] = [project(quarter(along), from), project(along, next[next[next[from]]])];
        expect(turned.x).toBeCloseTo(moved.x, 9);
        expect(turned.y).toBeCloseTo(moved.y, 9);
      }),
    );
  });

  test('what stands on the viewer’s side or higher is nearer', () => {
    expect(nearness({ x: 1, y: -1, z: 0 }, 'south-east')).toBeGreaterThan(nearness({ x: 0, y: 0, z: 0 }, 'south-east'));
    expect(nearness({ x: 1, y: -1, z: 0 }, 'north-west')).toBeLessThan(nearness({ x: 0, y: 0, z: 0 }, 'north-west'));
    for (const from of ISO_VIEWS) expect(nearness({ x: 0, y: 0, z: 1 }, from)).toBeGreaterThan(nearness({ x: 0, y: 0, z: 0 }, from));
  });
});
