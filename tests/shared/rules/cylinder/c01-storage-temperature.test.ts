import { describe, expect, test } from 'vitest';
import { c01StorageTemperature as rule } from '#shared/rules/cylinder/c01-storage-temperature';
import type { Cylinder } from '#shared/model/plan';
import { type LayoutSpec, checkOne, layout } from '../../../support/layout.ts';

const C = (celsius: number): number => celsius + 273.15;

/** A cylinder in a room, −20 to 50 °C allowed. */
function stored(storage: Cylinder['storage'], spec: LayoutSpec = {}, at?: { x: number; y: number }) {
  const plan = layout({ ...spec, limits: { storageLeast_K: C(-20), storageGreatest_K: C(50), ...spec.limits } });
  const cylinder = plan.networks.net?.cylinders.cy1;
  if (cylinder) Object.assign(cylinder, { storage, ...(at ? { at } : {}) });
  return checkOne(rule, plan);
}
const range = (least: number, greatest: number) => ({ least_K: C(least), greatest_K: C(greatest) });

describe('C1', () => {
  test.each([
    ['on both limits', -20, 50, 'ok'],
    ['just warmer than the least', -19.99, 30, 'ok'],
    ['just colder', -20.01, 30, 'stop'],
    ['just cooler than the greatest', 0, 49.99, 'ok'],
    ['just warmer', 0, 50.01, 'stop'],
  ])('%s', (_, least, greatest, verdict) => {
    expect(stored(range(least, greatest)).verdict).toBe(verdict);
    expect(stored(null, { enclosure: { temperature: range(least, greatest) } }).verdict).toBe(verdict);
  });

  test('its own place goes before its room, and the nearer limit is the one that is told', () => {
    expect(stored(range(0, 40), { enclosure: { temperature: range(-40, 40) } })).toMatchObject({ verdict: 'ok', measured: C(40), limit: C(50) });
    expect(stored(range(-19, 20)).measured).toBe(C(-19));
    expect(stored(range(-30, 60)).text).toMatch(/as cold as .*as warm as/);
  });

  test('nothing known, or no room, is not checked', () => {
    expect(stored(null).text).toContain('is not known');
    expect(stored(null, {}, { x: 99, y: 99 }).text).toContain('stands in no drawn room');
    expect(stored(range(0, 20), {}, { x: 99, y: 99 }).verdict).toBe('ok');
  });

  test('a blank limit is not checked, yet a fault against the other is told', () => {
    expect(stored(range(0, 20), { limits: { storageLeast_K: null } }).verdict).toBe('not-checked');
    expect(stored(range(0, 20), { limits: { storageGreatest_K: null } }).verdict).toBe('not-checked');
    expect(stored(range(0, 60), { limits: { storageLeast_K: null } }).verdict).toBe('stop');
  });
});
