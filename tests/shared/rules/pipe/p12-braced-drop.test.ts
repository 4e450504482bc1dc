import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { p12BracedDrop as rule } from '#shared/rules/pipe/p12-braced-drop';
import type { PlanPoint3 } from '#shared/geometry/point';
import { type Placing, anyPlacing, at3, checkOne, placed, placedLayout } from '../../../support/layout.ts';

const FREE_m = 2 * 0.3048;
const HERE: Placing = { angle_rad: 0, dx: 0, dy: 0, isMirrored: false };

/** Up 1 m, along, and down by `drop` to the nozzle, with supports at these places; the drop has a node after each of `joints`. */
function falling(drop: number, supports: readonly PlanPoint3[] = [at3(2, 1, 2.6)], joints: readonly number[] = [], placing = HERE) {
  const down = [...joints, drop].map((far) => at3(3, 1, 2.6 - far));
  return placedLayout(
    {
      runs: [{ places: [at3(1, 1, 1.6), at3(1, 1, 2.6), at3(3, 1, 2.6), ...down] }],
      nozzles: [{ at: at3(3, 1, 2.6 - drop) }],
      network: { supports: Object.fromEntries(supports.map((at, i) => [`s${i}`, { id: `s${i}`, at: placed(at, placing), kind: 'rigid', capacity_N: null, brace: 'none' }])) },
    },
    placing,
  );
}

describe('P12', () => {
  test.each([
    ['2 ft', FREE_m, 'ok'],
    ['just shorter', FREE_m - 1e-4, 'ok'],
    ['just longer', FREE_m + 1e-4, 'warn'],
  ])('a drop of %s without a support on it', (_, drop, verdict) => {
    expect(checkOne(rule, falling(drop))).toMatchObject({ verdict, measured: expect.closeTo(drop, 9), limit: expect.closeTo(FREE_m, 9) });
  });

  test('a support on it holds it, wherever on it', () => {
    expect(checkOne(rule, falling(1, [at3(3, 1, 2)])).verdict).toBe('ok');
    expect(checkOne(rule, falling(1, [at3(3, 1, 2.4)], [0.5])).verdict).toBe('ok');
  });

  test('pieces that fall on from each other are one drop', () => {
    expect(checkOne(rule, falling(1, undefined, [0.4, 0.8]))).toMatchObject({ verdict: 'warn', measured: expect.closeTo(1, 9) });
  });

  test('pipe that rises is no drop', () => {
    expect(checkOne(rule, falling(-0.2)).text).toBe('Every falling pipe has a support on it, or none falls.');
  });

  test('turned, shifted and mirrored', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        expect(checkOne(rule, falling(1, undefined, [], placing)).verdict).toBe('warn');
        expect(checkOne(rule, falling(1, [at3(3, 1, 2)], [], placing)).verdict).toBe('ok');
      }),
      { numRuns: 30 },
    );
  });

  test('no support at all over a long drop, or no pipe, is not checked', () => {
    expect(checkOne(rule, falling(1, [])).text).toBe('Not checked: no support is drawn; place them by the table.');
    expect(checkOne(rule, falling(0.3, [])).verdict).toBe('ok');
    expect(checkOne(rule, placedLayout({}, HERE)).verdict).toBe('not-checked');
  });
});
