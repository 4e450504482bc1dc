import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { n02CeilingDrop as rule } from '#shared/rules/nozzle/n02-ceiling-drop';
import { anyPlacing, at3, checkOne, layout, placedLayout } from '../../../support/layout.ts';

// 12 in = 304.8 mm: common practice.
const spec = (drop_m: number, height_m: number | null = 2.7) => ({
  height_m,
  nozzles: [{ at: at3(3, 2, 2.7 - drop_m) }],
  limits: { nozzleToCeiling_m: 0.3048 },
});

describe('N2', () => {
  test.each([
    ['in the ceiling plane', 0, 'ok'],
    ['just above the ceiling', -0.001, 'stop'],
    ['on the limit', 0.3048, 'ok'],
    ['just inside', 0.304, 'ok'],
    ['just too low', 0.3049, 'stop'],
    ['far too low', 1.5, 'stop'],
  ])('%s', (_, drop_m, verdict) => {
    const finding = checkOne(rule, layout(spec(drop_m)));
    expect(finding.verdict).toBe(verdict);
    expect(finding.measured).toBeCloseTo(drop_m, 9);
  });

  test('a nozzle said to serve the room but hung above its ceiling is a stop', () => {
    const plan = layout(spec(-0.05));
    const nozzle = plan.networks.net?.nozzles.n1;
    if (nozzle) nozzle.serves = { enclosure: 'e1', space: 'room' };
    expect(checkOne(rule, plan)).toMatchObject({ verdict: 'stop', margin: expect.closeTo(-0.05, 9) });
  });

  test('wherever the building stands, the verdict is the same', () => {
    fc.assert(
      fc.property(anyPlacing, fc.constantFrom(0.3047, 0.3048, 0.3049), (placing, drop_m) => {
        expect(checkOne(rule, placedLayout(spec(drop_m), placing)).verdict).toBe(drop_m > 0.3048 ? 'stop' : 'ok');
      }),
    );
  });

  test('its cure raises the orifice to the limit', () => {
    expect(checkOne(rule, layout(spec(0.5))).cure).toMatchObject({ kind: 'move-nozzle', to: { z: expect.closeTo(2.7 - 0.3048, 9) } });
  });

  test('an unknown ceiling or a blank limit is not checked', () => {
    expect(checkOne(rule, layout(spec(0.1, null))).verdict).toBe('not-checked');
    expect(checkOne(rule, layout({ ...spec(0.1), limits: { nozzleToCeiling_m: null } })).verdict).toBe('not-checked');
  });
});
