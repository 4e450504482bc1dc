import { describe, expect, test } from 'vitest';
import { notWorked, worked } from '#shared/calculations/design/worked';
import { l09Battery as rule } from '#shared/rules/release/l09-battery';
import { check, checkOne, layout } from '../../../support/layout.ts';
import { checkSumsOnce } from '../../../support/network-sums.ts';
import { withRelease } from '../../../support/releasing-circuit.ts';

const holding = (needed_Ah: number, capacity_Ah: number) =>
  checkSumsOnce(rule, withRelease({}), { battery: worked({ standby_A: 0.3, standby_s: 86_400, alarm_A: 2, alarm_s: 300, needed_Ah, capacity_Ah }) });

describe('L9', () => {
  test.each([
    ['at the limit', 8.84, 8.84, 'ok'],
    ['inside', 8.84, 18, 'ok'],
    ['outside', 8.84, 8.83, 'stop'],
  ])('%s', (_, needed_Ah, capacity_Ah, verdict) => {
    expect(holding(needed_Ah, capacity_Ah)).toMatchObject({ verdict, measure: 'charge', measured: needed_Ah, limit: capacity_Ah, margin: capacity_Ah - needed_Ah });
  });

  test('says what it takes and holds, and never rounds a fault away', () => {
    expect(holding(8.84, 18).text).toBe('24 h of standing by and 5 min of alarm take 8.8 Ah, with the reserve for its age; the battery holds 18.0 Ah.');
    expect(holding(8.84, 8.83).text).toContain('take 8.84 Ah, with the reserve for its age; the battery holds only 8.83 Ah. Take a larger one.');
  });

  // By hand: 1.2·(0.3 A · 24 h + 2 A · 5/60 h) = 1.2·7.36667 Ah = 8.84 Ah.
  test('the sums of a plan are asked', () => {
    expect(checkOne(rule, withRelease({}, { basis: { batteryStandby_s: 86_400, batteryAlarm_s: 300 } }))).toMatchObject({ verdict: 'ok', measured: expect.closeTo(8.84, 9), limit: 18, inputs: expect.arrayContaining([{ label: 'Stands by for', value: '24 h', source: 'basis of design' }]) });
  });

  test.each([
    ['battery', withRelease({ battery: null }, { basis: { batteryStandby_s: 86_400, batteryAlarm_s: 300 } })],
    ['standing by', withRelease({}, { basis: { batteryAlarm_s: 300 } })],
    ['alarm', withRelease({}, { basis: { batteryStandby_s: 86_400 } })],
  ])('%s not entered: not checked', (_, plan) => {
    expect(checkOne(rule, plan).verdict).toBe('not-checked');
  });

  test('sums that are not known are not checked; without a circuit nothing is asked', () => {
    expect(checkSumsOnce(rule, withRelease({}), { battery: notWorked('it is not entered.') }).verdict).toBe('not-checked');
    expect(check(rule, layout({}))).toEqual([]);
  });
});
