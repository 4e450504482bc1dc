import { describe, expect, test } from 'vitest';
import { notWorked, worked } from '#shared/calculations/design/worked';
import { p19NozzleSupport as rule } from '#shared/rules/pipe/p19-nozzle-support';
import { at3 } from '../../../support/layout.ts';
import { checkSumsOnce } from '../../../support/network-sums.ts';
import { heldOn, supportSums, supportedRun } from '../../../support/supported-run.ts';

const plan = supportedRun([{ at: at3(3, 1.9, 2) }]);
// ISO 14520-1:2000 as a trade-press series reports it: 100 mm up to DN 25.
const LIMIT_m = 0.1;
const far = (distance_m: number | undefined) =>
  checkSumsOnce(rule, plan, (network) => {
    const held = heldOn(network, { s1: 'p2' });
    const support = distance_m === undefined ? undefined : held[0];
    return { supports: worked(supportSums({ held, nozzles: network.nozzles.map(({ ref, nozzle }) => ({ ref, name: nozzle.name, distance_m, allowed_m: LIMIT_m, support })) })) };
  });

describe('P19', () => {
  test.each([
    ['at the limit', 0.1, 'ok'],
    ['inside', 0.05, 'ok'],
    ['outside', 0.101, 'stop'],
    ['not a number', Number.NaN, 'stop'],
  ])('a last support %s', (_, distance_m, verdict) => {
    expect(far(distance_m).verdict).toBe(verdict);
  });

  test('shows the way from the nozzle to its support', () => {
    expect(far(0.2)).toMatchObject({ name: 'N1', text: 'Its last support is 200 mm away; only 100 mm is allowed. Add one.', place: { dimension: { a: { x: 3, y: 2 }, b: { x: 3, y: 1.9 } } } });
  });

  test('names the source that the basis of design chose', () => {
    const other = structuredClone(plan);
    other.basis.lastSupport = 'us';
    const sums = (made: typeof plan) =>
      checkSumsOnce(rule, made, (network) => {
        const held = heldOn(network, { s1: 'p2' });
        return { supports: worked(supportSums({ held, nozzles: network.nozzles.map(({ ref, nozzle }) => ({ ref, name: nozzle.name, distance_m: 0.1, allowed_m: LIMIT_m, support: held[0] })) })) };
      });
    expect([plan, other].map((made) => sums(made).limitSource)).toEqual(['ISO 14520-1:2000 as a trade-press series reports it', 'common practice']);
  });

  test('a nozzle without any support on its pipe is a fault while others have some', () => {
    expect(far(undefined)).toMatchObject({ verdict: 'stop', name: 'N1', limit: LIMIT_m, text: 'No support holds its pipe; one is needed within 100 mm. Add one.' });
  });

  test('without any support, or while sums are not known, the network is not checked, once', () => {
    expect(checkSumsOnce(rule, supportedRun([]), { supports: worked(supportSums({})) })).toMatchObject({ verdict: 'not-checked', name: 'Network' });
    expect(checkSumsOnce(rule, plan, { supports: notWorked('no pipe leads to a nozzle yet.') }).verdict).toBe('not-checked');
  });
});
