import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bandByConcentration, bandByOxygen, egressKept, exposureBand, longestExposure_s } from '#shared/calculations/formulas/exposure';
import { residualOxygen_pct } from '#shared/calculations/formulas/oxygen';

describe('exposure', () => {
  // NFPA 2001, 1.5.1.3 of the 2004 to 2018 editions: 43 % and 5 min read in a worked sheet, the rest memory.
  test.each([
    [0, '5-min'],
    [43, '5-min'],
    [43.001, '3-min'],
    [52, '3-min'],
    [52.001, '30-s'],
    [62, '30-s'],
    [62.001, 'none'],
    [100, 'none'],
  ] as const)('NFPA 2001: %d %% of agent, %s', (concentration_pct, band) => expect(bandByConcentration(concentration_pct)).toBe(band));

  test.each([
    [20.95, '5-min'],
    [12, '5-min'],
    [11.999, '3-min'],
    [10, '3-min'],
    [9.999, '30-s'],
    [8, '30-s'],
    [7.999, 'none'],
    [0, 'none'],
  ] as const)('NFPA 2001: %d %% of oxygen, %s', (oxygen_pct, band) => expect(bandByOxygen(oxygen_pct)).toBe(band));

  test.each([
    ['5-min', 300],
    ['3-min', 180],
    ['30-s', 30],
    ['none', 0],
  ] as const)('NFPA 2001: %s is %d s', (band, longest_s) => expect(longestExposure_s(band)).toBe(longest_s));

  test('noise of binary numbers moves no band', () => {
    expect(bandByConcentration(43 + 1e-12)).toBe('5-min');
    expect(bandByOxygen(12 - 1e-12)).toBe('5-min');
  });

  test.each([
    ['concentration', '5-min'],
    ['oxygen', '3-min'],
    ['stricter', '3-min'],
  ] as const)('the trap at exactly 43 %%, 11.94 %% of oxygen: by %s %s', (judgement, band) => {
    expect(exposureBand(43, residualOxygen_pct(43, 20.95), judgement)).toBe(band);
  });

  test('at altitude the oxygen is the stricter, whichever way round they differ', () => {
    expect(exposureBand(40.3, 10.38, 'stricter')).toBe('3-min');
    expect(exposureBand(52.1, 10.02, 'stricter')).toBe('30-s');
  });

  test.each([
    [300, '5-min', true],
    [300.1, '5-min', false],
    [180, '3-min', true],
    [200, '3-min', false],
    [30, '30-s', true],
    [31, '30-s', false],
    [0, 'none', false],
  ] as const)('leaving within %d s in band %s: %s', (egress_s, band, kept) => expect(egressKept(egress_s, band)).toBe(kept));

  test('more agent and less oxygen never allow longer', () => {
    const percent = fc.double({ min: 0, max: 100, noNaN: true });
    fc.assert(
      fc.property(percent, percent, (one, other) => {
        const low = Math.min(one, other);
        const high = Math.max(one, other);
        expect(longestExposure_s(bandByConcentration(high))).toBeLessThanOrEqual(longestExposure_s(bandByConcentration(low)));
        expect(longestExposure_s(bandByOxygen(high))).toBeGreaterThanOrEqual(longestExposure_s(bandByOxygen(low)));
        const stricter_s = longestExposure_s(exposureBand(one, other, 'stricter'));
        expect(stricter_s).toBe(Math.min(longestExposure_s(bandByConcentration(one)), longestExposure_s(bandByOxygen(other))));
      }),
    );
  });

  test.each([
    ['concentration_pct', () => bandByConcentration(-1)],
    ['oxygenSeaLevel_pct', () => bandByOxygen(Number.NaN)],
    ['egress_s', () => egressKept(-1, '5-min')],
  ])('refuses, naming %s', (name, run) => expect(run).toThrow(name));
});
