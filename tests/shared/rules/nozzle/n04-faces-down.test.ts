import { describe, expect, test } from 'vitest';
import { n04FacesDown as rule } from '#shared/rules/nozzle/n04-faces-down';
import { at3, checkOne, layout } from '../../../support/layout.ts';

const leaning = (tilt_deg: number, limit_deg: number | null = 2) =>
  layout({
    nozzles: [{ at: at3(3, 2, 2.5), tilt_rad: (tilt_deg * Math.PI) / 180 }],
    limits: { nozzleTilt_rad: limit_deg === null ? null : (limit_deg * Math.PI) / 180 },
  });

describe('N4', () => {
  test.each([
    ['straight down', 0, 'ok'],
    ['on the limit', 2, 'ok'],
    ['just inside', 1.9, 'ok'],
    ['just beyond', 2.01, 'stop'],
    ['upside down', 180, 'stop'],
  ])('%s', (_, tilt_deg, verdict) => {
    expect(checkOne(rule, leaning(tilt_deg)).verdict).toBe(verdict);
  });
  test('a lean just beyond the limit never prints as the limit', () => {
    expect(checkOne(rule, leaning(2.04)).text).toContain('Leans 2.04° off the vertical; 2° is allowed');
  });
  test('its cure squares the drop', () => {
    expect(checkOne(rule, leaning(5)).cure).toMatchObject({ kind: 'level-nozzle', nozzle: { network: 'net', id: 'n1' } });
  });
  test('a blank limit is not checked', () => {
    expect(checkOne(rule, leaning(0, null)).verdict).toBe('not-checked');
  });
});
