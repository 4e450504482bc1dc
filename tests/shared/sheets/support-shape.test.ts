import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { freeSide_rad, supportLie, supportShape } from '#shared/sheets/support-shape';

const KINDS = ['rigid', 'guide', 'hanger', 'sling'] as const;

describe('the sign of a support', () => {
  test('no two kinds look alike without colour', () => {
    const looks = KINDS.map((kind) => {
      const { bar, isBroken } = supportShape(kind, { pipe_rad: 0 });
      return `${bar !== undefined} ${isBroken}`;
    });
    expect(new Set(looks).size).toBe(4);
    expect(supportShape('rigid', { pipe_rad: 0 })).toMatchObject({ isBroken: false, bar: expect.anything() });
  });

  test('its strokes stand square to the pipe, and the bar on the same side whichever way the agent flows', () => {
    fc.assert(
      fc.property(fc.double({ min: -3, max: 3, noNaN: true }), fc.constantFrom(...KINDS), (pipe_rad, kind) => {
        const { strokes, bar } = supportShape(kind, { pipe_rad });
        for (const [ax = 0, ay = 0, bx = 0, by = 0] of strokes) {
          expect((bx - ax) * Math.cos(pipe_rad) + (by - ay) * Math.sin(pipe_rad)).toBeCloseTo(0, 9);
          expect(ax * Math.sin(pipe_rad) - ay * Math.cos(pipe_rad)).not.toBeCloseTo(0, 1);
        }
        if (Math.abs(Math.abs(pipe_rad) - Math.PI / 2) < 1e-6) return;
        const other = supportShape(kind, { pipe_rad: pipe_rad + Math.PI });
        const middle = (places: readonly number[] | undefined) => places && [(places[0] ?? 0) + (places[2] ?? 0), (places[1] ?? 0) + (places[3] ?? 0)];
        const [one, two] = [middle(bar), middle(other.bar)];
        one?.forEach((value, i) => {
          expect(two?.[i]).toBeCloseTo(value, 9);
        });
      }),
    );
  });

  test('beside a pipe seen end on it stands aslant, or in the widest gap between what leaves there', () => {
    expect(freeSide_rad([])).toBeCloseTo((5 * Math.PI) / 4, 9);
    expect(freeSide_rad([0, Math.PI, Math.PI / 2])).toBeCloseTo((5 * Math.PI) / 4, 9);
    expect(freeSide_rad([(5 * Math.PI) / 4, 0])).toBeCloseTo((7 * Math.PI) / 4, 9);
    expect(freeSide_rad([Math.PI / 4, (3 * Math.PI) / 4, (5 * Math.PI) / 4 + 0.1, (7 * Math.PI) / 4])).toBeCloseTo(Math.PI + 0.05, 9);
  });

  test('a pipe that runs is crossed, one seen end on is held from the side', () => {
    expect(supportLie({ x: 0, y: 0 }, { x: 0, y: 2 }, 1)).toEqual({ pipe_rad: Math.PI / 2 });
    expect(supportLie({ x: 0, y: 0 }, { x: 0, y: 0 }, 1)).toEqual({ beside_rad: 1 });
    expect(supportLie(undefined, undefined, 1)).toEqual({ beside_rad: 1 });
  });
});
