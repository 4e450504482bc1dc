import { describe, expect, test } from 'vitest';
import type { FillingSums } from '#shared/calculations/design/design';
import { notWorked, worked } from '#shared/calculations/design/worked';
import type { Derived } from '#shared/derived/derived';
import { e05DischargeTime as rule } from '#shared/rules/enclosure/e05-discharge-time';
import { checkEnclosure, servedRoom } from '../../../support/enclosure-sums.ts';

const filling =
  (times: readonly (number | undefined)[], more: Partial<FillingSums> = {}) =>
  ({ spaces }: Derived) => ({
    filling: worked<FillingSums>({
      spaces: times.flatMap((timeTo95_s, i) => (spaces[i] ? [{ space: spaces[i], mass_kg: 10, timeTo95_s }] : [])),
      timeTo95_s: times.every((time) => time !== undefined) ? Math.max(...times) : undefined,
      limit_s: 60,
      limitSource: 'ISO 14520-1:2006',
      peakOverpressure_Pa: 0,
      isStale: false,
      ...more,
    }),
  });
const oneSpace = (time_s: number | undefined, more: Partial<FillingSums> = {}) => checkEnclosure(rule, servedRoom(), filling([time_s], more));

describe('E5', () => {
  test.each([
    ['inside', 55, 'ok', 5],
    ['at the limit', 60, 'ok', 0],
    ['float noise late', 60 * (1 + 1e-12), 'ok', 0],
    ['late', 60.01, 'stop', -0.01],
  ])('%s', (_, time_s, verdict, margin) => {
    const finding = oneSpace(time_s);
    expect(finding).toMatchObject({ verdict, measure: 'time', limit: 60, limitSource: 'ISO 14520-1:2006' });
    expect(finding.margin).toBeCloseTo(margin, 9);
  });
  test('rounding hides no fault', () => {
    expect(oneSpace(60.01).text).toBe('It has 95 % of its design concentration only after 60.01 s; 60.00 s are allowed.');
  });
  test('a space that never gets there is a stop without a measured time', () => {
    expect(oneSpace(undefined)).toMatchObject({ verdict: 'stop', text: 'It never reaches 95 % of its design concentration; 60.0 s are allowed.' });
    expect(oneSpace(undefined).measured).toBeUndefined();
  });
  test('of several spaces the slowest is named and shown', () => {
    const plan = servedRoom({ underFloor: { depth_m: 0.4, isProtected: true, exclusion: null } });
    expect(checkEnclosure(rule, plan, filling([50, 70]))).toMatchObject({ verdict: 'stop', measured: 70, text: expect.stringContaining('Its slowest space, “Room, under floor”,') });
    expect(checkEnclosure(rule, plan, filling([undefined, 50]))).toMatchObject({ verdict: 'stop', text: expect.stringContaining('“Room”, never reaches') });
  });
  test('an earlier discharge is said to be one', () => {
    expect(oneSpace(50, { isStale: true }).text).toContain('the new one is being worked out');
  });
  test('without a discharge it is not checked', () => {
    expect(checkEnclosure(rule, servedRoom(), { filling: notWorked('the discharge is being worked out.') })).toMatchObject({ verdict: 'not-checked', text: 'Not checked: the discharge is being worked out.' });
  });
});
