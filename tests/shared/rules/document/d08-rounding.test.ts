import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { d08Rounding as rule } from '#shared/rules/document/d08-rounding';
import { n01WallClearance } from '#shared/rules/nozzle/n01-wall-clearance';
import { at3, checkOne, layout } from '../../../support/layout.ts';

const INCH_m = 0.0254;
const away = (wall_in: number, lengths: 'feet' | 'metric' = 'feet') =>
  layout({ lengths, nozzles: [{ at: at3(wall_in * INCH_m, 2, 2.5) }], limits: { nozzleToWall_m: 10 * INCH_m } });

describe('D8', () => {
  test('9.97 in against a limit of 10 in never prints as 10 in', () => {
    const { text, verdict } = checkOne(n01WallClearance, away(9.97));
    expect(verdict).toBe('stop');
    expect(text).toContain('9');
    expect(text).not.toMatch(/Stands 10"/);
    expect(checkOne(rule, away(9.97)).verdict).toBe('ok');
  });

  test('no distance near the limit is hidden, in feet or metric', () => {
    fc.assert(
      fc.property(fc.double({ min: 9.9, max: 10.1, noNaN: true }), fc.constantFrom('feet' as const, 'metric' as const), (wall_in, lengths) => {
        expect(checkOne(rule, away(wall_in, lengths)).verdict).toBe('ok');
      }),
    );
  });

  test('a nozzle that neither rule can judge is not checked', () => {
    expect(checkOne(rule, layout({ nozzles: [{ at: at3(-3, 2, 2.5) }] })).verdict).toBe('not-checked');
  });
});
