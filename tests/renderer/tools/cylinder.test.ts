import { describe, expect, test } from 'vitest';
import { SAMPLE_PROFILE } from '#shared/profile/sample-profile';
import { planBuilder } from '../../support/plan-builder.ts';
import { toolBench } from '../../support/tool-bench.ts';

const radius_m = (SAMPLE_PROFILE.limits.cylinderDiameter_m?.value ?? 0) / 2;
const bench = () => toolBench(planBuilder().room(6, 4, 2.7).plan).use('cylinder');
const networks = (drawn: ReturnType<typeof bench>) => Object.values(drawn.plan().networks);
const cylinders = (drawn: ReturnType<typeof bench>) => networks(drawn).flatMap((network) => Object.values(network.cylinders));

describe('standing a cylinder', () => {
  test('leans on the nearest wall with its back to it', () => {
    const [cylinder] = cylinders(bench().click(0.3, 3));
    expect(cylinder?.at).toMatchObject({ x: expect.closeTo(radius_m, 9), y: expect.closeTo(3, 9) });
    expect(Math.cos((cylinder?.back_rad ?? 0) - Math.PI)).toBeCloseTo(1, 12);
  });

  test('stands on the side of the wall that is pointed at', () => {
    const [cylinder] = cylinders(bench().click(-0.3, 3));
    expect(cylinder?.at.x).toBeCloseTo(-radius_m, 9);
  });

  test('keeps the grid along its wall', () => {
    const drawn = toolBench(planBuilder().room(6, 4, 2.7).plan, { snapGrid: true }).use('cylinder').click(0.31, 2.93);
    const { grid_m } = drawn.plan().settings;
    const y = cylinders(drawn)[0]?.at.y ?? Number.NaN;
    expect(Math.abs(y - 2.93)).toBeLessThanOrEqual(grid_m / 2 + 1e-9);
    expect(y / grid_m).toBeCloseTo(Math.round(y / grid_m), 9);
  });

  test('a typed length is the distance from the start of the wall', () => {
    // The west wall runs from its north end.
    const [cylinder] = cylinders(bench().move(0.3, 3).type({ length: 0.5 }));
    expect(cylinder?.at.y).toBeCloseTo(3.5, 9);
    expect(bench().move(0.3, 3).type({ length: 4 }).refusal()).toContain('beyond the end');
  });

  test('beside another it joins its network, elsewhere it begins one', () => {
    const drawn = bench().click(0.3, 3).click(0.3, 2.6).click(5.7, 1);
    expect(networks(drawn).map((network) => Object.keys(network.cylinders).length)).toEqual([2, 1]);
    expect(drawn.steps()).toBe(3);
  });

  test('away from walls it stands free', () => {
    expect(cylinders(bench().click(3, 2))[0]?.at).toEqual({ x: 3, y: 2 });
  });
});
