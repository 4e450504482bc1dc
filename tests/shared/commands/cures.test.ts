import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { workedDischarge } from '#shared/calculations/discharge/worked-discharge';
import { applyCure } from '#shared/commands/apply-cure';
import { replaceSupports } from '#shared/commands/replace-supports';
import { evaluate } from '#shared/evaluate';
import type { Plan, Support } from '#shared/model/plan';
import { type Finding, findingKey } from '#shared/rules/finding';
import { type Placing, anyPlacing, at3, placed, placedLayout } from '../../support/layout.ts';
import { done, refusal } from '../../support/try-command.ts';

const HERE: Placing = { angle_rad: 0, dx: 0, dy: 0, isMirrored: false };
const source = workedDischarge();
/** A riser, a tee with two lines, a sag in one of them, a street elbow, a long drop, pipe through the west wall. */
function faulty(placing: Placing, change: (plan: Plan) => void = () => {}): Plan {
  const plan = placedLayout(
    {
      height_m: 3.2,
      runs: [
        { places: [at3(-1, 2, 2), at3(-1, 2, 2.8), at3(3, 2, 2.8), at3(3, 3.4, 2.8), at3(4, 3.4, 2.8), at3(4, 3.4, 1.9)] },
        { places: [at3(3, 2, 2.8), at3(3, 0.6, 2.8), at3(3, 0.6, 2.4), at3(4, 0.6, 2.4), at3(4, 0.6, 2.9), at3(5, 0.6, 2.9), at3(5, 0.6, 2.6)] },
      ],
      nozzles: [{ at: at3(4, 3.4, 1.9) }, { at: at3(5, 0.6, 2.6) }],
    },
    placing,
  );
  change(plan);
  return plan;
}
const supported = (placing: Placing, kind: Support['kind'], ...places: readonly (readonly [number, number, number])[]) => (plan: Plan): void => {
  const { net } = plan.networks;
  if (net) net.supports = Object.fromEntries(places.map(([x, y, z], i) => [`s${i}`, { id: `s${i}`, at: placed(at3(x, y, z), placing), kind, capacity_N: null, brace: 'none' }]));
};
const found = (plan: Plan, rule: string): Finding[] => evaluate(plan, source).findings.filter((finding) => finding.rule === rule);
const stops = (plan: Plan): string[] => evaluate(plan, source).findings.filter(({ verdict }) => verdict === 'stop').map(findingKey);

/** Carries out the first ready cure of a rule, and answers the next plan. */
function cured(plan: Plan, rule: string): Plan {
  const open = found(plan, rule).find(({ verdict, cure }) => verdict !== 'ok' && cure && cure.kind !== 'advice');
  if (!open?.cure) throw new Error(`${rule} has no ready cure.`);
  expect(open.cure.text).not.toMatch(/\.$/);
  return done(plan, applyCure(open.cure)).next;
}

describe('a cure that is carried out in one step', () => {
  test.each<[string, (placing: Placing) => Plan]>([
    ['P12', (placing) => faulty(placing, supported(placing, 'rigid', [0, 2, 2.8]))],
    ['P18', (placing) => faulty(placing, supported(placing, 'rigid', [0, 2, 2.8]))],
    ['P19', (placing) => faulty(placing, supported(placing, 'rigid', [0, 2, 2.8]))],
    ['P20', (placing) => faulty(placing, supported(placing, 'rigid', [0, 2, 2.8]))],
    ['P21', (placing) => faulty(placing, supported(placing, 'sling', [-1, 2, 2.7], [4, 3.4, 2], [5, 0.6, 2.65]))],
    ['P24', (placing) => faulty(placing)],
    ['P25', (placing) => faulty(placing)],
  ])('%s is cleared, wherever the building stands, and nothing new is stopped', (rule, build) => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        let plan = build(placing);
        expect(found(plan, rule).some(({ verdict }) => verdict !== 'ok')).toBe(true);
        // P19 and P25 judge nozzle by nozzle: each has its cure.
        for (let open = found(plan, rule).filter(({ verdict }) => verdict !== 'ok').length; open > 0; ) {
          const next = cured(plan, rule);
          const left = found(next, rule).filter(({ verdict }) => verdict !== 'ok').length;
          expect(left).toBeLessThan(open);
          const before = new Set(stops(plan));
          expect(stops(next).filter((key) => !before.has(key))).toEqual([]);
          [plan, open] = [next, left];
        }
      }),
      { numRuns: 2 },
    );
  });

  test('where no support is drawn the check of spans places all of them', () => {
    const plan = faulty(HERE);
    expect(found(plan, 'P18')[0]).toMatchObject({ verdict: 'not-checked', cure: { kind: 'place-supports' } });
    const next = cured(plan, 'P18');
    for (const rule of ['P12', 'P18', 'P19', 'P20', 'P21']) expect(found(next, rule).map(({ verdict }) => verdict)).not.toEqual(expect.arrayContaining([expect.stringMatching(/stop|warn|not-checked/)]));
  });

  test('supports that are placed anew brace as those that stood there', () => {
    const plan = faulty(HERE, supported(HERE, 'rigid', [0, 2, 2.8]));
    const { net } = plan.networks;
    if (net?.supports.s0) net.supports.s0.brace = 'four-way';
    const { next } = done(plan, replaceSupports({ kind: 'network', id: 'net' }, [{ at: at3(0.005, 2, 2.8), kind: 'rigid', capacity_N: null }, { at: at3(1, 2, 2.8), kind: 'rigid', capacity_N: null }]));
    expect(Object.values(next.networks.net?.supports ?? {}).map(({ brace }) => brace)).toEqual(['four-way', 'none']);
  });

  test('an advice is left to a person, and what has gone is refused', () => {
    const plan = faulty(HERE);
    expect(refusal(plan, applyCure({ kind: 'advice', text: 'Move it.' }))).toContain('by hand');
    expect(refusal(plan, applyCure({ kind: 'add-dirt-trap', text: '', network: 'gone', node: 'k1' }))).toContain('no longer in the plan');
    expect(refusal(plan, applyCure({ kind: 'make-rigid', text: '', network: 'net', supports: ['gone'] }))).toContain('no longer in the plan');
    expect(refusal(plan, applyCure({ kind: 'set-parts', text: '', network: 'net', nodes: ['gone'], part: null }))).toContain('no longer in the plan');
    expect(refusal(plan, applyCure({ kind: 'add-supports', text: '', network: 'net', places: [at3(9, 9, 9)] }))).toContain('No pipe of this network runs here');
  });
});
