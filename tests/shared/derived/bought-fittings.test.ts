import { describe, expect, test } from 'vitest';
import { boughtFittingsOf, fittingSizesOf } from '#shared/derived/bought-fittings';
import { derivePlan } from '#shared/derived/derive-plan';
import { boughtWords } from '#shared/derived/fitting-words';
import { findMadeFitting } from '#shared/derived/made-fitting';
import { isOrdinaryFitting } from '#shared/derived/ordinary-fitting';
import type { Pipe } from '#shared/model/plan';
import type { NODE_PARTS } from '#shared/model/schema';
import type { PipeSize } from '#shared/profile/pipe-table';
import type { MadeFitting } from '#shared/profile/unit-profile';
import { place3, planBuilder } from '../../support/plan-builder.ts';

type Leg = readonly [x: number, y: number, z: number, size: PipeSize, change?: Partial<Pipe>];

/** What is bought at (2, 0, 2), in words with sizes: the first leg comes from the source. */
function boughtAt(legs: readonly Leg[], part: (typeof NODE_PARTS)[number] | null = null, madeFittings: MadeFitting[] = []): string[] {
  const built = planBuilder();
  for (const [i, [x, y, z, size, change]] of legs.entries()) {
    const [here, there] = [place3(2, 0, 2), place3(2 + x, y, 2 + z)];
    built.run(i === 0 ? [there, here] : [here, there], size, change);
  }
  for (const profile of Object.values(built.plan.profiles)) Object.assign(profile, { madeFittings });
  const { id } = built.nodeAt(2, 0, 2);
  Object.assign(built.plan.networks[built.networkId]?.nodes[id] ?? {}, { part });
  const [network] = derivePlan(built.plan).networks;
  if (!network) throw new Error('The plan has a network.');
  return boughtFittingsOf(network).filter(({ node }) => node === id).map((fitting) => `${boughtWords(fitting)} ${fittingSizesOf(fitting).join(' × ')}`);
}

describe('what is bought at a node', () => {
  test.each([
    ['a tee of one size', [[-2, 0, 0, '1'], [2, 0, 0, '1'], [0, 2, 0, '1']], ['tee 1']],
    ['a smaller branch: one reducing tee, and no reducer', [[-2, 0, 0, '1'], [2, 0, 0, '1'], [0, 2, 0, '3/4']], ['reducing tee 1 × 1 × 3/4']],
    ['run and branch smaller', [[-2, 0, 0, '1-1/4'], [2, 0, 0, '1'], [0, 2, 0, '3/4']], ['reducing tee 1-1/4 × 1 × 3/4']],
    ['fed through its larger branch', [[-2, 0, 0, '1'], [0, 2, 0, '3/4'], [0, -2, 0, '3/4']], ['reducing tee 3/4 × 3/4 × 1']],
    ['a branch far smaller than any that the trade keeps', [[-2, 0, 0, '4'], [2, 0, 0, '4'], [0, 2, 0, '1/2']], ['tee 4', 'reducer 4 × 1/2']],
    ['a larger branch on a run that changes: none is kept', [[-2, 0, 0, '1'], [2, 0, 0, '3/4'], [0, 2, 0, '1-1/4']], ['tee 1-1/4', 'reducer 1-1/4 × 1', 'reducer 1-1/4 × 3/4']],
    ['a turn into a smaller size: one reducing elbow', [[-2, 0, 0, '1'], [0, 2, 0, '3/4']], ['reducing 90° elbow 1 × 3/4']],
    ['the same against the flow', [[-2, 0, 0, '3/4'], [0, 2, 0, '1']], ['reducing 90° elbow 1 × 3/4']],
    ['a turn by three sizes', [[-2, 0, 0, '1-1/2'], [0, 2, 0, '3/4']], ['90° elbow 1-1/2', 'reducer 1-1/2 × 3/4']],
    ['45° elbows are not kept reducing', [[-2, 0, 0, '1'], [2, 2, 0, '3/4']], ['45° elbow 1', 'reducer 1 × 3/4']],
    ['straight on into another size', [[-2, 0, 0, '3/4'], [2, 0, 0, '1']], ['reducer 1 × 3/4']],
    ['straight on into another schedule', [[-2, 0, 0, '1'], [2, 0, 0, '1', { schedule: '80' }]], ['coupling 1']],
    ['straight on from threaded into welded pipe', [[-2, 0, 0, '1'], [2, 0, 0, '1', { joint: 'welded' }]], ['weld or grooved coupling 1']],
    ['straight on', [[-2, 0, 0, '1'], [2, 0, 0, '1']], []],
    ['a cross with two sizes', [[-2, 0, 0, '1'], [2, 0, 0, '1'], [0, 2, 0, '3/4'], [0, -2, 0, '3/4']], ['reducing cross 1 × 1 × 3/4 × 3/4']],
    ['a cross with two sizes on its branches', [[-2, 0, 0, '1'], [2, 0, 0, '1'], [0, 2, 0, '3/4'], [0, -2, 0, '1']], ['cross 1', 'reducer 1 × 3/4']],
    ['an end', [[-2, 0, 0, '1']], ['cap 1']],
  ] as const satisfies readonly (readonly [string, readonly Leg[], readonly string[]])[])('%s', (_, legs, bought) => {
    expect(boughtAt(legs)).toEqual(bought);
  });

  test('what is built in', () => {
    const straight = [[-2, 0, 0, '1'], [2, 0, 0, '1']] as const;
    expect(boughtAt(straight, 'union')).toEqual(['union 1']);
    expect(boughtAt(straight, 'coupling')).toEqual(['coupling 1']);
    expect(boughtAt([[-2, 0, 0, '1'], [0, 2, 0, '1']], 'street-elbow')).toEqual(['90° street elbow 1']);
    expect(boughtAt([[-2, 0, 0, '1']], 'drain')).toEqual(['drain 1']);
    expect(boughtAt([[-2, 0, 0, '1']], 'dirt-trap')).toEqual(['cap 1']);
    expect(boughtAt([[-2, 0, 0, '1']], 'plug')).toEqual(['plug 1', 'coupling 1']);
  });

  test('what a maker gives is bought, whether the trade keeps it or not', () => {
    const tee: MadeFitting = { kind: 'tee', legs: [{ size: '4', reach_m: 0.1 }, { size: '4', reach_m: 0.1 }, { size: '1/2', reach_m: 0.08 }], weight_kg: 9, source: 'maker' };
    expect(boughtAt([[-2, 0, 0, '4'], [2, 0, 0, '4'], [0, 2, 0, '1/2']], null, [tee])).toEqual(['reducing tee 4 × 4 × 1/2']);
  });
});

test('a maker’s fitting is found however it is turned, and no other', () => {
  const made = (kind: MadeFitting['kind'], ...sizes: PipeSize[]): MadeFitting => ({ kind, legs: sizes.map((size, i) => ({ size, reach_m: (i + 1) / 100 })), weight_kg: null, source: 'maker' });
  const find = (list: MadeFitting[], kind: Parameters<typeof findMadeFitting>[1], isStreet: boolean, ...sizes: PipeSize[]) => findMadeFitting(list, kind, sizes.map((size) => ({ size })), isStreet)?.reaches_m;
  const list = [made('tee', '1', '3/4', '1/2'), made('elbow-90', '1', '3/4'), made('street-elbow', '1', '1'), made('union', '1')];
  expect(find(list, 'tee', false, '3/4', '1', '1/2')).toEqual([0.02, 0.01, 0.03]);
  expect(find(list, 'tee', false, '1', '1/2', '3/4')).toBeUndefined();
  expect(find(list, 'elbow-90', false, '3/4', '1')).toEqual([0.02, 0.01]);
  expect(find(list, 'elbow-90', true, '1', '1')).toEqual([0.01, 0.02]);
  expect(find(list, 'elbow-45', true, '1', '1')).toBeUndefined();
  expect(find(list, 'elbow-90', false, '1', '1')).toBeUndefined();
  expect(find(list, 'union', false, '1', '1')).toEqual([0.01, 0.01]);
  expect(find(list, 'drain', false, '1')).toBeUndefined();
});

test('at and outside the steps that the trade keeps', () => {
  expect([isOrdinaryFitting('elbow-90', ['1-1/4', '3/4']), isOrdinaryFitting('elbow-90', ['1-1/2', '3/4'])]).toEqual([true, false]);
  expect([isOrdinaryFitting('tee', ['2', '2', '3/4']), isOrdinaryFitting('tee', ['2', '2', '1/2'])]).toEqual([true, false]);
  expect([isOrdinaryFitting('tee', ['1', '1', '1-1/4']), isOrdinaryFitting('tee', ['1', '1', '1-1/2'])]).toEqual([true, false]);
});
