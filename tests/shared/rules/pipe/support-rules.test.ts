import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { suggestedSupports } from '#shared/calculations/design/suggested-supports';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Plan, Support } from '#shared/model/plan';
import { p18SupportSpan } from '#shared/rules/pipe/p18-support-span';
import { p19NozzleSupport } from '#shared/rules/pipe/p19-nozzle-support';
import { p20TurnSupport } from '#shared/rules/pipe/p20-turn-support';
import { p21RigidAtThrust } from '#shared/rules/pipe/p21-rigid-at-thrust';
import { type Placing, anyPlacing, at3, check, placedLayout } from '../../../support/layout.ts';

const RULES = [p18SupportSpan, p19NozzleSupport, p20TurnSupport, p21RigidAtThrust];
const HERE: Placing = { angle_rad: 0, dx: 0, dy: 0, isMirrored: false };
/** A riser, a tee and two branches of a network that hangs free over several spans, wherever the building stands. */
const teed = (placing: Placing): Plan =>
  placedLayout(
    {
      runs: [
        { places: [at3(0.3, 2, 1.7), at3(0.3, 2, 2.4), at3(4, 2, 2.4), at3(4, 3.4, 2.4), at3(4, 3.4, 2.2)] },
        { places: [at3(4, 2, 2.4), at3(4, 0.6, 2.4), at3(4, 0.6, 2.2)], size: '1/2' },
      ],
      nozzles: [{ at: at3(4, 3.4, 2.2) }, { at: at3(4, 0.6, 2.2) }],
    },
    placing,
  );

/** The same with supports placed by the table, but for those that a test leaves out or changes. */
function held(placing: Placing, change: (support: Support, index: number) => Support | undefined = (support) => support): Plan {
  const plan = teed(placing);
  const { net } = plan.networks;
  const [derived] = derivePlan(plan).networks;
  if (!net || !derived) throw new Error('The layout has its network.');
  const placed = suggestedSupports(derived, plan.basis, []).flatMap(({ at, kind, capacity_N }, i) => {
    const { x, y, z } = at;
    return change({ brace: 'none', id: `s${i + 1}`, at: { x, y, z }, kind, capacity_N }, i) ?? [];
  });
  net.supports = Object.fromEntries(placed.map((support) => [support.id, support]));
  return plan;
}
const verdicts = (plan: Plan) => RULES.map((rule) => [...new Set(check(rule, plan).map(({ verdict }) => verdict))].sort().join());
const COUNT = Object.keys(held(HERE).networks.net?.supports ?? {}).length;

describe('supports as they are drawn', () => {
  test('placed by the table they keep every rule, wherever the building stands', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        expect(verdicts(held(placing))).toEqual(['ok', 'ok', 'ok', 'ok']);
      }),
      { numRuns: 30 },
    );
  });

  test('none of them can be left out without a fault', () => {
    for (let left = 0; left < COUNT; left += 1) {
      expect(verdicts(held(HERE, (support, i) => (i === left ? undefined : support))).some((each) => /stop|warn/.test(each))).toBe(true);
    }
  });

  test('slings everywhere stop P21 alone, wherever the building stands', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        expect(verdicts(held(placing, (support) => ({ ...support, kind: 'sling' })))).toEqual(['ok', 'ok', 'ok', 'stop']);
      }),
      { numRuns: 20 },
    );
  });

  test('without any support each rule asks once and checks nothing', () => {
    const plan = teed(HERE);
    expect(RULES.flatMap((rule) => check(rule, plan)).map(({ verdict }) => verdict)).toEqual(Array(4).fill('not-checked'));
  });

  test('supports that hold no pipe count for nothing', () => {
    expect(verdicts(held(HERE, (support) => ({ ...support, at: { ...support.at, z: 1 } })))).toEqual(Array(4).fill('not-checked'));
  });
});
