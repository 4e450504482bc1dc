import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { toolBench } from '../../support/tool-bench.ts';

const room = () => planBuilder().room(6, 4, 2.7, { x: 0, y: 0 }, { underFloor: { depth_m: 0.3, isProtected: true, exclusion: null }, ceilingVoid: { depth_m: 0.5, isProtected: true, exclusion: null } });

describe('nozzles in voids', () => {
  test.each([
    ['under the floor', -0.1, -0.18, 'under-floor', 'U1'],
    ['above the ceiling', 3, 2.9, 'ceiling-void', 'N1'],
  ])('%s: pipe and nozzle are drawn by typed heights, and it serves the void', (_, pipeHeight, height, space, name) => {
    const built = room().network().run([place3(1, 1, 2), place3(1, 1, pipeHeight)]);
    const drawn = toolBench(built.plan).use('pipe').click(1, 1).say(`z ${pipeHeight} m east 2 m`).enter().use('nozzle').type({ height }).click(3, 1);
    const [nozzle] = derivePlan(drawn.plan()).nozzles;
    expect(nozzle).toMatchObject({ nozzle: { name }, at: { x: 3, y: 1, z: height }, space: { kind: space } });
    expect(derivePlan(drawn.plan()).networks[0]?.paths).toHaveLength(1);
    expect(derivePlan(drawn.plan()).networks[0]?.faults).toEqual([]);
  });
});
