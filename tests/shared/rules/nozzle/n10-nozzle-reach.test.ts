import { describe, expect, test } from 'vitest';
import { n10NozzleReach as rule } from '#shared/rules/nozzle/n10-nozzle-reach';
import { at3, check, checkOne, layout } from '../../../support/layout.ts';

/** Middle of a 6 m × 4 m room: the corners are √13 m away. */
const nozzles = [{ at: at3(3, 2, 2.5) }];
const FAR_m = Math.sqrt(13);

describe('N10', () => {
  test.each([
    ['just inside', FAR_m + 0.001, 24.1, 'ok'],
    ['just too far', FAR_m - 0.001, 24.1, 'stop'],
  ])('%s', (_, nozzleReach_m, nozzleArea_m2, verdict) => {
    const finding = checkOne(rule, layout({ nozzles, limits: { nozzleReach_m, nozzleArea_m2 } }));
    expect(finding.verdict).toBe(verdict);
    expect(finding.measured).toBeCloseTo(FAR_m, 4);
  });

  test('too much floor is measured as an area, and its print never reads as allowed', () => {
    const finding = checkOne(rule, layout({ nozzles, limits: { nozzleReach_m: FAR_m + 0.001, nozzleArea_m2: 23.999 } }));
    expect(finding).toMatchObject({ verdict: 'stop', measure: 'area', limit: 23.999 });
    expect(finding.measured).toBeCloseTo(24, 6);
    expect(finding.margin).toBeCloseTo(-0.001, 6);
    expect(finding.text).toContain('24.000 m² of floor; one nozzle may serve 23.999 m²');
  });

  test('two nozzles share the floor between them', () => {
    const pair = [{ at: at3(1.5, 2, 2.5) }, { at: at3(4.5, 2, 2.5) }];
    const findings = check(rule, layout({ nozzles: pair, limits: { nozzleReach_m: 2.6, nozzleArea_m2: 12.2 } }));
    expect(findings.map(({ verdict }) => verdict)).toEqual(['ok', 'ok']);
    for (const { measured } of findings) expect(measured).toBeCloseTo(2.5, 1);
  });

  test('blank figures or no enclosure are not checked', () => {
    expect(checkOne(rule, layout({ nozzles, limits: { nozzleReach_m: null } })).verdict).toBe('not-checked');
    expect(checkOne(rule, layout({ nozzles, limits: { nozzleArea_m2: null } })).verdict).toBe('not-checked');
    expect(checkOne(rule, layout({ nozzles, footprint: null })).verdict).toBe('not-checked');
    expect(checkOne(rule, layout({ nozzles: [{ at: at3(-3, 2, 2.5) }] })).verdict).toBe('not-checked');
  });
});
