import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { flowOrderOf } from '#shared/derived/flow-order';
import { at3, layout } from '../../support/layout.ts';

const orderOf = (runs: NonNullable<Parameters<typeof layout>[0]['runs']>) => {
  const [network] = derivePlan(layout({ runs })).networks;
  if (!network) throw new Error('The layout has its network.');
  return flowOrderOf(network);
};

describe('order of flow', () => {
  test('every pipe but the first is fed, whichever way it was drawn', () => {
    const { feeds } = orderOf([{ places: [at3(0, 0, 2), at3(1, 0, 2)] }, { places: [at3(3, 0, 2), at3(2, 0, 2), at3(1, 0, 2)] }]);
    expect(feeds.map(({ inlet, pipe }) => [inlet.pipe.id, pipe.pipe.id])).toEqual([['p1', 'p3'], ['p3', 'p2']]);
  });

  test('pipe that the source does not reach is fed by nothing', () => {
    const { feeds, teeRuns } = orderOf([
      { places: [at3(0, 0, 2), at3(1, 0, 2)] },
      { places: [at3(5, 0, 2), at3(6, 0, 2), at3(7, 0, 2)] },
      { places: [at3(6, 0, 2), at3(6, 1, 2)] },
    ]);
    expect(feeds).toEqual([]);
    expect(teeRuns).toEqual([]);
  });

  test('the straight run of a second tee begins at the first', () => {
    const { teeRuns } = orderOf([
      { places: [at3(0, 0, 2), at3(1, 0, 2), at3(1.5, 0, 2), at3(4, 0, 2)] },
      { places: [at3(1, 0, 2), at3(1, 1, 2)] },
      { places: [at3(1.5, 0, 2), at3(1.5, 1, 2)] },
    ]);
    expect(teeRuns.map(({ straight_m }) => straight_m)).toEqual([1, 0.5]);
  });

  test('a level or rising pipe is no drop; a branch ends one', () => {
    const { drops } = orderOf([{ places: [at3(0, 0, 2), at3(0, 0, 3), at3(1, 0, 3), at3(1, 0, 2), at3(1, 0, 1)] }, { places: [at3(1, 0, 2), at3(2, 0, 2)] }]);
    expect(drops.map((drop) => drop.map(({ pipe }) => pipe.id))).toEqual([['p3'], ['p4']]);
  });
});
