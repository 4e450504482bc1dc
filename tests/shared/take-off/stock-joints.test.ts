import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Plan } from '#shared/model/plan';
import { stockJointsOf } from '#shared/take-off/stock-joints';
import { at3, layout } from '../../support/layout.ts';

/** 21 ft [m]. */
const STOCK_m = 6.4008;

function jointsOf(plan: Plan) {
  const [network] = derivePlan(plan).networks;
  if (!network) throw new Error('The layout has its network.');
  return stockJointsOf(network);
}
/** Turns every pipe about: drawn from its far end to its near one. */
function turned(plan: Plan): Plan {
  const { net } = plan.networks;
  if (net) for (const [id, pipe] of Object.entries(net.pipes)) net.pipes[id] = { ...pipe, from: pipe.to, to: pipe.from };
  return plan;
}
const straight = (...ends: readonly number[]): Plan => layout({ runs: [{ places: [0, ...ends].map((x) => at3(x, 0, 0)), size: '1' }] });

// By hand: pipe with bare ends. Two lengths of stock are kept apart by what a coupling takes off each; the first ends, and the
// coupling's middle stands, half of that past the stock. Coupling of ASME B16.3 Class 300 1 in: 2.28 in long (memory), 11/16 in in it.
const HALF_m = (2.28 / 2 - 11 / 16) * 0.0254;

describe('where the stock length puts couplings', () => {
  test('none in pipe that one length makes', () => {
    expect(jointsOf(straight(6.4))).toEqual([]);
    expect(jointsOf(layout({}))).toEqual([]);
  });

  test('one after the first length, measured from the end that the pipe is drawn from', () => {
    const [joint, ...more] = jointsOf(straight(10));
    expect(more).toEqual([]);
    expect(Math.abs((joint?.along_m ?? Number.NaN) - STOCK_m - HALF_m)).toBeLessThan(0.003);
    const [back] = jointsOf(turned(straight(10)));
    expect((back?.along_m ?? Number.NaN) + (joint?.along_m ?? Number.NaN)).toBeCloseTo(10, 9);
  });

  test('on the pipe of a run that it comes to lie on', () => {
    const [whole] = jointsOf(straight(10));
    const plan = straight(4, 10);
    const second = Object.values(plan.networks.net?.pipes ?? {})[1];
    expect(jointsOf(plan)).toEqual([{ pipe: second?.id, along_m: expect.closeTo((whole?.along_m ?? Number.NaN) - 4, 9) }]);
  });

  test('a pipe that was measured longer than drawn keeps its coupling at the same share of it', () => {
    const plan = straight(10);
    const [pipe] = Object.values(plan.networks.net?.pipes ?? {});
    if (!pipe) throw new Error('The layout has its pipe.');
    const [drawn] = jointsOf(plan);
    pipe.measured_m = 10.4;
    expect(jointsOf(plan)).toEqual([{ pipe: pipe.id, along_m: expect.closeTo(((drawn?.along_m ?? Number.NaN) * 10) / 10.4, 9) }]);
  });
});
