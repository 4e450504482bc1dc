import { describe, expect, test } from 'vitest';
import { n03CeilingKnown as rule } from '#shared/rules/nozzle/n03-ceiling-known';
import { at3, checkOne, layout } from '../../../support/layout.ts';

describe('N3', () => {
  const nozzles = [{ at: at3(3, 2, 2.5) }];
  test('a ceiling height is known', () => {
    expect(checkOne(rule, layout({ nozzles })).verdict).toBe('ok');
  });
  test('without one it is a stop, for no other check can judge the drop', () => {
    expect(checkOne(rule, layout({ nozzles, height_m: null })).verdict).toBe('stop');
  });
  test('outside every enclosure it is a stop', () => {
    expect(checkOne(rule, layout({ nozzles: [{ at: at3(-4, 2, 2.5) }] })).verdict).toBe('stop');
  });
  test('a nozzle that lost its pipe end is not checked', () => {
    const plan = layout({ nozzles });
    if (plan.networks.net) plan.networks.net.nodes = {};
    expect(checkOne(rule, plan).verdict).toBe('not-checked');
  });
});
