import { describe, expect, test } from 'vitest';
import { p10PipeVolume as rule } from '#shared/rules/pipe/p10-pipe-volume';
import { at3, checkOne, layout } from '../../../support/layout.ts';

// NPS 3/4 Schedule 40: bore 0.824 in (ASME B36.10M), so 2 m hold π/4 · 0.0209296² · 2 m³.
const HELD_m3 = (Math.PI / 4) * 0.020_929_6 ** 2 * 2;
const holding = (pipeVolume_m3: number | null) => checkOne(rule, layout({ runs: [{ places: [at3(1, 1, 2), at3(2, 1, 2), at3(2, 2, 2)] }], limits: { pipeVolume_m3 } }));

describe('P10', () => {
  test.each([
    ['at the limit', HELD_m3, 'ok'],
    ['just inside', HELD_m3 * 1.0001, 'ok'],
    ['just outside', HELD_m3 * 0.9999, 'warn'],
  ])('%s', (_, limit, verdict) => {
    expect(holding(limit)).toMatchObject({ verdict, measured: expect.closeTo(HELD_m3, 12), limit });
  });
  test('a blank limit or no pipe is not checked', () => {
    expect(holding(null).text).toContain('Pipe volume');
    expect(checkOne(rule, layout({})).verdict).toBe('not-checked');
  });
});
