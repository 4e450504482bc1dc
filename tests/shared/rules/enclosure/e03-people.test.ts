import { describe, expect, test } from 'vitest';
import type { Atmosphere, PeopleSums } from '#shared/calculations/design/design';
import { bandByConcentration, bandByOxygen, exposureBand, longestExposure_s } from '#shared/calculations/formulas/exposure';
import { notWorked, worked } from '#shared/calculations/design/worked';
import type { Enclosure, Plan } from '#shared/model/plan';
import { e03People as rule } from '#shared/rules/enclosure/e03-people';
import { celsius_K } from '#shared/units/convert';
import { checkEnclosure, servedRoom } from '../../../support/enclosure-sums.ts';

type ExposureBy = Plan['basis']['exposureBy'];
const peopleAt = (concentration_pct: number, oxygen_pct: number, by: ExposureBy = 'stricter'): PeopleSums => {
  const hot: Atmosphere = { temperature_K: celsius_K(30), concentration_pct, oxygen_pct, oxygenSeaLevel_pct: oxygen_pct, byConcentration: bandByConcentration(concentration_pct), byOxygen: bandByOxygen(oxygen_pct) };
  const exposure = exposureBand(concentration_pct, oxygen_pct, by);
  return { cold: hot, hot, doBandsAgree: hot.byConcentration === hot.byOxygen, exposure, longest_s: longestExposure_s(exposure) };
};
interface Case {
  readonly concentration_pct?: number;
  readonly oxygen_pct?: number;
  readonly occupancy?: Enclosure['occupancy'];
  readonly counted?: Enclosure['people']['exposure'];
  readonly by?: ExposureBy;
}
const asked = ({ concentration_pct = 42, oxygen_pct = 12.15, occupancy = 'normally-occupied', counted = '5-min', by = 'stricter' }: Case) =>
  checkEnclosure(rule, servedRoom({ enclosure: { occupancy, people: { exposure: counted, egress_s: null, delay_s: null } }, basis: { exposureBy: by } }), { people: worked(peopleAt(concentration_pct, oxygen_pct, by)) });

describe('E3', () => {
  // Limits of the bands: 43 % and 12 %, 52 % and 10 %, 62 % and 8 % (NFPA 2001 exposure to inert gas, memory).
  test.each<[string, Case, string]>([
    ['inside five minutes', {}, 'ok'],
    ['at 12 % oxygen', { oxygen_pct: 12 }, 'ok'],
    ['at 43 % agent', { concentration_pct: 43, oxygen_pct: 12 }, 'ok'],
    ['beyond 43 %', { concentration_pct: 43.01 }, 'stop'],
    ['below 12 %', { oxygen_pct: 11.99 }, 'stop'],
    ['three minutes counted on and reached', { concentration_pct: 52, oxygen_pct: 10, counted: '3-min' }, 'ok'],
    ['people work there beyond 52 %', { concentration_pct: 52.1, oxygen_pct: 10, counted: '30-s' }, 'stop'],
    ['people come now and then beyond 52 %', { concentration_pct: 52.1, oxygen_pct: 10, counted: '30-s', occupancy: 'normally-unoccupied' }, 'ok'],
    ['people come now and then beyond 62 %', { concentration_pct: 63, oxygen_pct: 7.7, counted: 'none', occupancy: 'normally-unoccupied' }, 'stop'],
    ['nobody can be inside beyond 62 %', { concentration_pct: 63, oxygen_pct: 7.7, counted: 'none', occupancy: 'unoccupiable' }, 'ok'],
    ['nobody can be inside but the design counts on thirty seconds', { concentration_pct: 63, oxygen_pct: 7.7, counted: '30-s', occupancy: 'unoccupiable' }, 'stop'],
    ['use not known', { occupancy: 'unknown' }, 'not-checked'],
    ['use not known, beyond what is counted on', { occupancy: 'unknown', concentration_pct: 45 }, 'stop'],
  ])('%s', (_, given, verdict) => {
    expect(asked(given).verdict).toBe(verdict);
  });
  test('the figures are those of the way of judging that decides', () => {
    // At exactly 43 % of 20.95 % oxygen 11.94 % is left: the two ways differ there.
    const finding = asked({ concentration_pct: 43, oxygen_pct: 11.9415 });
    expect(finding).toMatchObject({ verdict: 'stop', limit: 0.12 });
    expect(finding.measured).toBeCloseTo(0.119415, 9);
    expect(finding.margin).toBeCloseTo(-0.000585, 9);
    expect(finding.text).toBe(
      'With all its agent at 30.0 °C it has 43.0 % agent and 11.9 % oxygen (12.0 % at least), as at sea level: people may stay at most 3 min. Judged by concentration people may stay at most 5 min, by oxygen people may stay at most 3 min: the stricter one counts. But the design counts on that people may stay at most 5 min.',
    );
    const chosen = asked({ concentration_pct: 43, oxygen_pct: 11.9415, by: 'concentration' });
    expect(chosen).toMatchObject({ verdict: 'ok', measured: 0.43, limit: 0.43 });
    expect(chosen.text).toContain('the concentration counts, as the basis of design has it');
    expect(asked({ concentration_pct: 42, oxygen_pct: 11.9, by: 'oxygen' })).toMatchObject({ verdict: 'stop', limit: 0.12 });
  });
  test('a hair beyond does not print as the limit', () => {
    expect(asked({ concentration_pct: 43.004, oxygen_pct: 12.5 }).text).toContain('43.004 % agent (43.000 % at most)');
  });
  test('where no limit is left none is shown', () => {
    expect(asked({ concentration_pct: 63, oxygen_pct: 7.7, counted: 'none', occupancy: 'unoccupiable' }).limit).toBeUndefined();
  });
  test('an atmosphere that is not known is not checked', () => {
    expect(checkEnclosure(rule, servedRoom(), { people: notWorked('no design concentration is chosen for the enclosure.') }).verdict).toBe('not-checked');
  });
});
