import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import type { Obstruction } from '#shared/model/plan';
import { n08JetAtPeople as rule } from '#shared/rules/nozzle/n08-jet-at-people';
import { expectCured } from '../../../support/cure-check.ts';
import { type LayoutSpec, at3, check, checkOne, layout } from '../../../support/layout.ts';
import { PLACINGS, placedPlan } from '../../../support/placed-plan.ts';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
/** From its half angle of 12°, the way on which a jet drops by half a metre. */
const DROP_m = 0.5 / Math.tan(rad(12));
const limits = { jetSpread_rad: rad(12), freeJet_m: 0.9 };
/** A nozzle 2.5 m up that blows east and west, and a thing 2 m high whose near side is `from_m` east of it. */
const beside = (from_m: number, thing: Partial<Obstruction> & Pick<Obstruction, 'kind'>, more: LayoutSpec = {}): LayoutSpec => ({
  room: rectangle(10, 6),
  nozzles: [{ at: at3(5, 3, 2.5), holes_rad: [0, Math.PI] }],
  obstructions: [{ footprint: rectangle(0.8, 1, planPoint(5 + from_m, 2.5)), bottom_m: 0, top_m: 2, ...thing }],
  limits,
  ...more,
});
const LOOSE = { kind: 'rack', hasLooseItems: true } as const;

describe('N8', () => {
  test.each([
    // The jet is spent at 4 × 0.9 = 3.6 m; the thing is 0.8 m long.
    ['a work place that the jet passes over', beside(DROP_m - 0.8001, { kind: 'work-place' }), 'ok'],
    ['a work place that ends where the jet comes down to it', beside(DROP_m - 0.8, { kind: 'work-place' }), 'warn'],
    ['a work place in the jet', beside(2.5, { kind: 'work-place' }), 'warn'],
    ['a work place where the jet is spent', beside(3.6, { kind: 'work-place' }), 'warn'],
    ['a work place beyond that', beside(3.601, { kind: 'work-place' }), 'ok'],
    ['loose things on a rack in the jet', beside(2.5, LOOSE), 'warn'],
    ['a rack without loose things', beside(2.5, { kind: 'rack', hasLooseItems: false }), 'ok'],
    ['a rack at which nobody has looked', beside(2.5, { kind: 'rack' }), 'not-checked'],
    ['such a rack out of reach', beside(3.7, { kind: 'rack' }), 'ok'],
    ['a beam is no shelf', beside(2.5, { kind: 'beam', bottom_m: 1.8, top_m: 2 }), 'ok'],
    ['a shelf that the jet hits from the side', beside(2.5, { kind: 'rack', hasLooseItems: true, top_m: 2.65 }), 'warn'],
  ])('%s', (_, spec, verdict) => {
    const plan = layout(spec);
    for (const placing of PLACINGS) expect(checkOne(rule, placedPlan(plan, placing)).verdict).toBe(verdict);
  });

  test('says where the jet comes down, with rays to the place', () => {
    const finding = checkOne(rule, layout(beside(2.5, LOOSE)));
    expect(finding).toMatchObject({ measured: expect.closeTo(2.5, 9), limit: expect.closeTo(3.6, 9), subject: { kind: 'nozzle', id: 'n1' } });
    expect(finding.text).toContain('Thing 1');
    expect(finding.place?.rays).toHaveLength(1);
    expect(finding.inputs?.map(({ label }) => label)).toEqual(['Spread of a jet, half its angle', 'Length of a jet at most']);
  });

  test('what stands before it takes the jet up', () => {
    const wall = { kind: 'column', footprint: rectangle(0.3, 3, planPoint(6.5, 1.5)), bottom_m: 0, top_m: 2.7 } as const;
    const { obstructions = [], ...spec } = beside(2.5, LOOSE);
    expect(checkOne(rule, layout({ ...spec, obstructions: [...obstructions, wall] })).verdict).toBe('ok');
  });

  test('a work place stops no jet', () => {
    const tall = { kind: 'work-place', footprint: rectangle(0.3, 3, planPoint(6.5, 1.5)), bottom_m: 0, top_m: 2.7 } as const;
    const { obstructions = [], ...spec } = beside(2.5, LOOSE);
    expect(checkOne(rule, layout({ ...spec, obstructions: [...obstructions, tall] })).place?.rays).toHaveLength(2);
  });

  test.each(['jetSpread_rad', 'freeJet_m'] as const)('while %s is blank it is not checked beside a work place', (key) => {
    expect(checkOne(rule, layout(beside(4, { kind: 'work-place' }, { limits: { ...limits, [key]: null } }))).verdict).toBe('not-checked');
  });

  test('nor without holes; where there is nothing to blow at it is kept', () => {
    expect(checkOne(rule, layout(beside(2.5, LOOSE, { nozzles: [{ at: at3(5, 3, 2.5), holes_rad: [] }] }))).verdict).toBe('not-checked');
    expect(checkOne(rule, layout({ nozzles: [{ at: at3(3, 2, 2.5) }], limits: { jetSpread_rad: null } })).verdict).toBe('ok');
  });

  test('a nozzle in no room is asked nothing', () => {
    expect(check(rule, layout(beside(2.5, LOOSE, { nozzles: [{ at: at3(50, 3, 2.5) }] })))).toEqual([]);
  });

  test.each(PLACINGS)('its cure turns the jets off the shelf and stops nothing new: %o', (placing) => {
    expectCured(rule, placedPlan(layout(beside(2.5, LOOSE)), placing), 'turn-nozzle');
  });

  test('where no turn helps it says so', () => {
    const ring = [0, 1, 2, 3].map((side) => ({ ...LOOSE, footprint: rectangle(side % 2 ? 1 : 7, side % 2 ? 7 : 1, planPoint([1.5, 7.5, 1.5, 1.5][side] ?? 0, [4.7, -0.5, 0.3, -0.5][side] ?? 0)), bottom_m: 0, top_m: 2 }));
    const { obstructions: _, ...spec } = beside(2.5, LOOSE);
    const [finding] = check(rule, layout({ ...spec, obstructions: ring }));
    expect(finding?.cure?.kind).toBe('advice');
  });
});
