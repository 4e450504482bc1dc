import { describe, expect, test } from 'vitest';
import { p01Network as rule } from '#shared/rules/pipe/p01-network';
import { at3, checkOne, layout } from '../../../support/layout.ts';

const run = { places: [at3(0.2, 2, 2), at3(0.2, 2, 2.6), at3(3, 2, 2.6), at3(3, 2, 2.4)] };
const nozzles = [{ at: at3(3, 2, 2.4) }];

describe('P1', () => {
  test('one tree from source to nozzle is kept', () => {
    expect(checkOne(rule, layout({ runs: [run], nozzles }))).toMatchObject({ verdict: 'ok', measured: 0 });
  });
  test('an end without a nozzle is a stop', () => {
    expect(checkOne(rule, layout({ runs: [run] })).verdict).toBe('stop');
  });
  test('pipe that the source does not reach is a stop', () => {
    const stray = { places: [at3(4, 1, 2.6), at3(5, 1, 2.6)] };
    expect(checkOne(rule, layout({ runs: [run, stray], nozzles })).verdict).toBe('stop');
  });
  test('a loop is a stop', () => {
    const loop = { places: [at3(0.2, 2, 2.6), at3(0.2, 3, 2.6), at3(3, 3, 2.6), at3(3, 2, 2.6)] };
    expect(checkOne(rule, layout({ runs: [run, loop], nozzles })).verdict).toBe('stop');
  });
  test('no source is a stop', () => {
    const plan = layout({ runs: [run], nozzles });
    if (plan.networks.net) plan.networks.net.source = null;
    expect(checkOne(rule, plan).verdict).toBe('stop');
  });
  test('nothing drawn is not checked', () => {
    expect(checkOne(rule, layout({})).verdict).toBe('not-checked');
  });
});
