import { describe, expect, test } from 'vitest';
import { boughtFittingsOf } from '#shared/derived/bought-fittings';
import { derivePlan } from '#shared/derived/derive-plan';
import { fittingAttitude } from '#shared/isometric/fitting-attitude';
import { place3, planBuilder } from '../../support/plan-builder.ts';

/** The fitting at (2, 0, 2) in words: the run comes from the west. */
function wordsOf(...legs: readonly (readonly [number, number, number])[]): string[] {
  const built = planBuilder().run([place3(0, 0, 2), place3(2, 0, 2)]);
  for (const [x, y, z] of legs) built.run([place3(2, 0, 2), place3(2 + x, y, 2 + z)]);
  const [network] = derivePlan(built.plan).networks;
  if (!network) throw new Error('The plan has a network.');
  const node = built.nodeAt(2, 0, 2).id;
  return boughtFittingsOf(network).filter((fitting) => fitting.node === node).map((fitting) => fittingAttitude(network, fitting));
}

describe('how a fitting is turned', () => {
  test.each([
    ['up', [[2, 0, 0], [0, 0, 1]], 'tee, branch up'],
    ['down', [[2, 0, 0], [0, 0, -1]], 'tee, branch down'],
    ['to the side', [[2, 0, 0], [0, 1, 0]], 'tee, branch to the side'],
    ['up, fed along a run that turns nowhere', [[0, 0, 1], [2, 0, 0]], 'tee, branch up'],
    ['fed through its branch', [[0, 1, 0], [0, -1, 0]], 'tee, fed through its branch (bull)'],
    ['fed through its branch, leaving up and down', [[0, 0, 1], [0, 0, -1]], 'tee, fed through its branch (bull)'],
  ] as const)('a tee %s', (_, legs, words) => {
    expect(wordsOf(...legs)).toEqual([words]);
  });

  test('what is not a tee has its plain name', () => {
    expect(wordsOf([0, 1, 0])).toEqual(['90° elbow']);
    expect(wordsOf([1, 1, 0])).toEqual(['45° elbow']);
    expect(wordsOf()).toEqual(['cap']);
  });
});
