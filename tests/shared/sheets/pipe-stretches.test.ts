import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { dropTo, networkStretches } from '#shared/sheets/pipe-stretches';
import { place3, planBuilder } from '../../support/plan-builder.ts';

const stretches = (built: ReturnType<typeof planBuilder>) => {
  const [network] = derivePlan(built.plan).networks;
  if (!network) throw new Error('The plan has a network.');
  return networkStretches(network, network.pipes);
};

describe('pipe stretches', () => {
  test('pipe that goes straight on through a coupling is one stretch', () => {
    const found = stretches(planBuilder().run([place3(0, 0, 2), place3(3, 0, 2), place3(6, 0, 2), place3(6, 4, 2)]));
    expect(found.map(({ length_m, lie, pipes }) => [length_m, lie, pipes.length])).toEqual([
      [6, 'level', 2],
      [4, 'level', 1],
    ]);
  });

  test('it ends where the size changes, at a branch, at a nozzle and where the pipe begins', () => {
    const bySize = planBuilder().run([place3(0, 0, 2), place3(3, 0, 2)], '1').run([place3(3, 0, 2), place3(6, 0, 2)], '3/4');
    expect(stretches(bySize)).toHaveLength(2);
    const byBranch = planBuilder().run([place3(0, 0, 2), place3(3, 0, 2), place3(6, 0, 2)]).run([place3(3, 0, 2), place3(3, 2, 2)]);
    expect(stretches(byBranch)).toHaveLength(3);
    const byNozzle = planBuilder().run([place3(0, 0, 2), place3(3, 0, 2), place3(6, 0, 2)]).nozzle(3, 0, 2);
    expect(stretches(byNozzle)).toHaveLength(2);
  });

  test('risers and drops are upright in the sense of the flow, slopes are told apart', () => {
    const found = stretches(planBuilder().run([place3(0, 0, 1), place3(0, 0, 2.5), place3(4, 0, 2.6), place3(4, 0, 2.3)]).nozzle(4, 0, 2.3));
    expect(found.map(({ lie, way }) => [lie, way])).toEqual([
      ['upright', 'riser'],
      ['sloped', null],
      ['upright', 'drop'],
    ]);
    expect(dropTo(found, place3(4, 0, 2.3))?.length_m).toBeCloseTo(0.3, 9);
    expect(dropTo(found, place3(1, 0, 2.3))).toBeUndefined();
  });

  test('all stretches together are as long as all pipe', () => {
    const built = planBuilder().run([place3(0, 0, 1), place3(0, 0, 2.5), place3(2, 0, 2.5), place3(4, 0, 2.5), place3(4, 3, 2.5)]).run([place3(2, 0, 2.5), place3(2, 5, 2.5), place3(2, 5, 2.3)]);
    const [network] = derivePlan(built.plan).networks;
    expect(stretches(built).reduce((sum, { length_m }) => sum + length_m, 0)).toBeCloseTo(network?.totalLength_m ?? 0, 9);
  });

  test('a loop of straight pipe does not run for ever', () => {
    expect(stretches(planBuilder().run([place3(0, 0, 2), place3(2, 0, 2), place3(2, 2, 2), place3(0, 2, 2), place3(0, 0, 2)])).length).toBeGreaterThan(0);
  });
});
