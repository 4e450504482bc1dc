import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { n12NozzleSpacing as rule } from '#shared/rules/nozzle/n12-nozzle-spacing';
import { expectCured } from '../../../support/cure-check.ts';
import { type LayoutSpec, at3, check, checkOne, layout } from '../../../support/layout.ts';
import { PLACINGS, placedPlan } from '../../../support/placed-plan.ts';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const NORTH = [rad(90), rad(270)];
const EAST = [0, Math.PI];
const limits = { nozzleSpacing_m: 1.5, freeJet_m: 0.9, jetSpread_rad: rad(12) };
/** Two nozzles, the second `apart_m` east of the first. */
const two = (apart_m: number, one: readonly number[], other: readonly number[], more: LayoutSpec = {}): LayoutSpec => ({
  room: rectangle(12, 8),
  nozzles: [
    { at: at3(4, 4, 2.5), holes_rad: one },
    { at: at3(4 + apart_m, 4, 2.5), holes_rad: other },
  ],
  limits,
  ...more,
});

describe('N12', () => {
  test.each([
    ['nearer than the limit', two(1.499, NORTH, NORTH), 'warn'],
    ['on the limit', two(1.5, NORTH, NORTH), 'ok'],
    ['farther', two(3, NORTH, NORTH), 'ok'],
    ['each blows at the other, nearer than both free jets', two(1.799, EAST, EAST), 'warn'],
    ['on both free jets', two(1.8, EAST, EAST), 'ok'],
    ['only one blows at the other', two(1.7, EAST, NORTH), 'ok'],
    ['aside by less than the spread', two(1.7, [rad(11.99)], [rad(180 - 11.99)]), 'warn'],
    ['aside by more', two(1.7, [rad(12.01)], [rad(180)]), 'ok'],
  ])('%s', (_, spec, verdict) => {
    const plan = layout(spec);
    for (const placing of PLACINGS) expect(checkOne(rule, placedPlan(plan, placing)).verdict).toBe(verdict);
  });

  test('is told of the pair, with its distance as a dimension', () => {
    const finding = checkOne(rule, layout(two(1.2, NORTH, NORTH)));
    expect(finding).toMatchObject({ name: 'N1 and N2', subject: { id: 'n1' }, measured: expect.closeTo(1.2, 9), limit: 1.5, margin: expect.closeTo(-0.3, 9) });
    expect(finding.place?.dimension).toMatchObject({ a: { x: 4, y: 4 }, b: { x: 5.2, y: 4 } });
    expect(checkOne(rule, layout(two(1.7, EAST, EAST))).place?.rays).toHaveLength(2);
  });

  test('what stands between them parts their jets', () => {
    const column = { kind: 'column', footprint: rectangle(0.3, 1, planPoint(4.7, 3.5)), bottom_m: 0, top_m: 2.7 } as const;
    expect(checkOne(rule, layout(two(1.7, EAST, EAST, { obstructions: [column] }))).verdict).toBe('ok');
  });

  test('nozzles one above the other keep their distance in space', () => {
    const nozzles = [{ at: at3(4, 4, 2.5), holes_rad: NORTH }, { at: at3(4, 4.5, 1), holes_rad: NORTH }];
    expect(checkOne(rule, layout({ ...two(1, NORTH, NORTH), nozzles })).measured).toBeCloseTo(Math.hypot(0.5, 1.5), 9);
  });

  test('one nozzle has nobody to keep away from; of three each is asked with its nearest', () => {
    expect(check(rule, layout({ nozzles: [{ at: at3(3, 2, 2.5) }], limits }))).toEqual([]);
    const nozzles = [2, 4, 10].map((x) => ({ at: at3(x, 4, 2.5), holes_rad: NORTH }));
    expect(check(rule, layout({ ...two(1, NORTH, NORTH), nozzles })).map(({ name }) => name)).toEqual(['N1 and N2', 'N2 and N3']);
  });

  test.each(['nozzleSpacing_m', 'freeJet_m', 'jetSpread_rad'] as const)('while %s is blank it is not checked', (key) => {
    expect(checkOne(rule, layout(two(5, NORTH, NORTH, { limits: { ...limits, [key]: null } }))).verdict).toBe('not-checked');
  });

  test('a distance that is short is reported whatever is blank of the jets', () => {
    expect(checkOne(rule, layout(two(1.2, NORTH, NORTH, { limits: { ...limits, jetSpread_rad: null } }))).verdict).toBe('warn');
  });

  test.each(PLACINGS)('its cures spread them and turn them apart, and stop nothing new: %o', (placing) => {
    const moved = expectCured(rule, placedPlan(layout(two(1.2, NORTH, NORTH)), placing), 'move-nozzle');
    expect(checkOne(rule, moved).measured).toBeCloseTo(1.5, 6);
    expectCured(rule, placedPlan(layout(two(1.7, EAST, EAST)), placing), 'turn-nozzle');
  });
});
