import { applyPatches } from 'immer';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layOutAssembly } from '#shared/commands/lay-out-assembly';
import { assemblyRunOf } from '#shared/derived/assembly-run';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Plan } from '#shared/model/plan';
import { p32Hose } from '#shared/rules/pipe/p32-hose';
import { p33AssemblyOrder } from '#shared/rules/pipe/p33-assembly-order';
import { ALONE, type AssemblySpec, SEVERAL, assemblyPlan, part } from '../../support/assembly-layout.ts';
import { anyPlacing, at3, check } from '../../support/layout.ts';

const REF = { kind: 'network', id: 'net' } as const;
const bare = (spec: AssemblySpec): AssemblySpec => ({ ...spec, manifold: null, cylinders: (spec.cylinders ?? []).map(({ y }) => ({ y, outlet_rad: null, end: null })) });
function laidOut(plan: Plan): Plan {
  const outcome = layOutAssembly(REF)(plan);
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome.next;
}
const reasonOf = (spec: AssemblySpec): string => {
  const outcome = layOutAssembly(REF)(assemblyPlan(spec));
  return outcome.ok ? 'done' : outcome.reason;
};
const verdicts = (plan: Plan): string[] => [...check(p32Hose, plan), ...check(p33AssemblyOrder, plan)].map(({ verdict }) => verdict);

describe('laying the discharge assembly out', () => {
  test('one cylinder: a half turn into level parts along the wall, which end where the pipe begins', () => {
    const plan = laidOut(assemblyPlan(bare(ALONE)));
    expect(plan.networks.net?.manifold).toBeNull();
    expect(plan.networks.net?.cylinders.cy1?.hoseEnd?.z).toBeCloseTo(1.82, 9);
    expect(Math.abs((plan.networks.net?.cylinders.cy1?.hoseEnd?.y ?? 0) - 1)).toBeCloseTo(0.25, 9);
    expect(verdicts(plan)).toEqual(['ok', 'ok']);
  });

  test('several: a manifold past all of them, hoses that turn up a quarter', () => {
    const plan = laidOut(assemblyPlan(bare(SEVERAL)));
    const { manifold, cylinders } = plan.networks.net ?? {};
    expect(manifold?.to).toEqual({ x: expect.closeTo(0.2, 9), y: expect.closeTo(1.85, 9), z: expect.closeTo(1.85, 9) });
    for (const { hoseEnd } of Object.values(cylinders ?? {})) {
      expect(hoseEnd?.z).toBeCloseTo(1.75, 9);
      expect(hoseEnd?.y).toBeGreaterThan((manifold?.from.y ?? 0) + 0.049);
      expect(hoseEnd?.y).toBeLessThan((manifold?.to.y ?? 0) - 0.049);
    }
    expect(verdicts(plan)).toEqual(['ok', 'ok', 'ok', 'ok']);
  });

  test('several without a manifold in their list get one, as long as it is drawn; a manifold without a length gets it', () => {
    for (const parts of [[part('hose', 0.45), part('check-valve', 0.1), part('regulator', 0.15)], [part('hose', 0.45), part('check-valve', 0.1), part('manifold', 0), part('regulator', 0.15)]]) {
      const plan = laidOut(assemblyPlan({ ...bare(SEVERAL), parts }));
      expect(plan.networks.net?.assembly.map(({ kind }) => kind)).toEqual(['hose', 'check-valve', 'manifold', 'regulator']);
      expect(new Set(plan.networks.net?.assembly.map(({ id }) => id)).size).toBe(4);
      expect(verdicts(plan)).toEqual(['ok', 'ok', 'ok', 'ok']);
    }
  });

  test('the length of a hose stays; a hose that is too short is told', () => {
    const plan = laidOut(assemblyPlan({ ...bare(ALONE), parts: [part('hose', 0.5), part('check-valve', 0.1), part('regulator', 0.15)] }));
    expect(plan.networks.net?.assembly[0]?.length_m).toBe(0.5);
    expect(verdicts(plan)).toEqual(['stop', 'ok']);
    const unknown = laidOut(assemblyPlan({ ...bare(ALONE), parts: [part('hose', 0), part('check-valve', 0.1), part('regulator', 0.15)] }));
    expect(check(p32Hose, unknown)[0]?.text).toMatch(/is not entered. It takes 7\d\d mm at least\./);
  });

  test('turned, shifted and mirrored it lays out alike', () => {
    fc.assert(
      fc.property(anyPlacing, fc.boolean(), (placing, isAlone) => {
        const plan = laidOut(assemblyPlan({ ...bare(isAlone ? ALONE : SEVERAL), placing }));
        expect(new Set(verdicts(plan))).toEqual(new Set(['ok']));
        const [network] = derivePlan(plan).networks;
        expect(network && assemblyRunOf(network).isPlaced).toBe(true);
      }),
      { numRuns: 12 },
    );
  });

  test('is one step that goes back', () => {
    const plan = assemblyPlan({ ...bare(SEVERAL), parts: [part('hose', 0.45), part('check-valve', 0.1), part('regulator', 0.15)] });
    const outcome = layOutAssembly(REF)(plan);
    if (!outcome.ok) throw new Error(outcome.reason);
    expect(outcome.label).toBe('Lay out the discharge assembly');
    expect(applyPatches(outcome.next, [...outcome.inverse])).toEqual(plan);
  });

  test.each([
    ['no cylinder', { ...ALONE, cylinders: [] }, 'No cylinder is drawn yet. Place one first.'],
    ['no beginning of the pipe', { ...ALONE, source: null }, 'Choose first where the pipe begins.'],
    ['no outlet height', { ...ALONE, limits: { outletHeight_m: null } }, 'The height of the valve outlet is blank in the unit profile.'],
    ['no bend radius', { ...ALONE, limits: { hoseBendRadius_m: null } }, 'The least bend radius of the hose is blank in the unit profile.'],
    ['no hose first', { ...ALONE, parts: [part('check-valve')] }, 'List the hose first: the discharge assembly begins with it at the valve.'],
    ['a rigid part without a length', { ...ALONE, parts: [part('hose', 0.8), part('check-valve', 0)] }, 'Enter the length of “check-valve” first: where the hose ends follows from it.'],
    ['nothing between hose and manifold', { ...SEVERAL, parts: [part('hose', 0.4), part('manifold', 1), part('regulator')] }, 'List what stands between hose and manifold, such as the check valve: the hose ends at it.'],
    ['a pipe that begins amid the cylinders', { ...SEVERAL, source: at3(0.2, 1.4, 1.85) }, 'The pipe begins between the cylinders. Begin it at one end of their row.'],
  ])('refuses with %s', (_, spec, reason) => {
    expect(reasonOf(spec)).toBe(reason);
  });
});
