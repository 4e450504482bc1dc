import { describe, expect, test } from 'vitest';
import type { DeviceVoltage, ReleaseSums } from '#shared/calculations/design/design';
import { notWorked, worked } from '#shared/calculations/design/worked';
import { l01DeviceVoltage as rule } from '#shared/rules/release/l01-device-voltage';
import { checkOne } from '../../../support/layout.ts';
import { checkSums, checkSumsOnce } from '../../../support/network-sums.ts';
import { withRelease } from '../../../support/releasing-circuit.ts';

const LEAST_V = 18;
const device = (given: Partial<DeviceVoltage>): DeviceVoltage => ({
  id: 'd1',
  name: 'Solenoid',
  kind: 'solenoid',
  distance_m: 30,
  current_A: 1.5,
  voltage_V: 19,
  least_V: LEAST_V,
  ...given,
});
const sums = (...devices: DeviceVoltage[]): ReleaseSums => ({ devices, resistance_ohm_m: 0.01, drop_V: 1, lumpedDrop_V: 1, end_V: 19, total_A: 1.5 });
const getting = (given: Partial<DeviceVoltage>) => checkSumsOnce(rule, withRelease({}), { release: worked(sums(device(given))) });

describe('L1', () => {
  test.each([
    ['at the limit', 18, 'ok'],
    ['inside', 18.1, 'ok'],
    ['outside', 17.99, 'stop'],
    ['below zero, for the wire takes it all', -3, 'stop'],
    ['not a number', Number.NaN, 'stop'],
  ])('a voltage %s', (_, voltage_V, verdict) => {
    expect(getting({ voltage_V }).verdict).toBe(verdict);
  });

  test('says where the device is, what it gets and whose figure it needs', () => {
    expect(getting({ voltage_V: 17 })).toMatchObject({
      name: 'Network, Solenoid',
      measured: 17,
      limit: 18,
      limitSource: 'sample, invented',
      text: 'Gets only 17.0 V 30.000 m from the panel; it needs 18.0 V. Use thicker wire or a shorter run.',
    });
    expect(getting({ least_V: 17.5 }).limitSource).toBe('device, as stated on the plan');
  });

  test('every device is asked; two of one name are told apart', () => {
    const findings = checkSums(rule, withRelease({}), { release: worked(sums(device({}), device({ voltage_V: 1 }), device({ name: 'Horn' }))) });
    expect(findings.map(({ name, verdict }) => [name, verdict])).toEqual([
      ['Network, Solenoid (device 1)', 'ok'],
      ['Network, Solenoid (device 2)', 'stop'],
      ['Network, Horn', 'ok'],
    ]);
  });

  test('missing data is not checked', () => {
    expect(getting({ least_V: undefined })).toMatchObject({ verdict: 'not-checked', name: 'Network, Solenoid' });
    expect(checkSumsOnce(rule, withRelease({}), { release: notWorked('the current of “Horn” is not known.') })).toMatchObject({ verdict: 'not-checked', name: 'Network' });
    expect(checkSumsOnce(rule, withRelease(null), { release: notWorked('whatever.') }).text).toBe('Not checked: the releasing circuit is not drawn up.');
  });

  test('the sums of a plan are asked', () => {
    // NEC Chapter 9 Table 8: 3.07 ohm per 1000 ft; 20.4 V − 2 · 30 m · 0.0100722 Ω/m · 1.5 A = 19.49 V.
    expect(checkOne(rule, withRelease({}))).toMatchObject({ verdict: 'ok', measured: expect.closeTo(19.4935, 3) });
    expect(checkOne(rule, withRelease({}, { limits: { solenoidLeastVoltage_V: null } })).verdict).toBe('not-checked');
  });
});
