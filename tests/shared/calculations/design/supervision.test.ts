import { describe, expect, test } from 'vitest';
import { supervisionOf } from '#shared/calculations/design/supervision';
import { SAMPLE_PROFILE } from '#shared/profile/sample-profile';
import { blankProfile } from '#shared/profile/unit-profile';
import { known, reason } from '../../../support/whole-plan.ts';

const filledTo = (value: number) => ({ ...SAMPLE_PROFILE, limits: { ...SAMPLE_PROFILE.limits, fillPressure_Pa: { value, source: '' } } });

describe('supervision of the cylinders', () => {
  test('Span and others 2000: 200 bar absolute at 15 °C is 234.57 bar at 50 °C; 5 % is noticed by the pressure first', () => {
    const { chart, fillTemperature_K } = known(supervisionOf(filledTo(200e5)));
    const at = (temperature_C: number) => chart.find(({ temperature_K }) => Math.abs(temperature_K - 273.15 - temperature_C) < 1e-9);
    expect(fillTemperature_K).toBe(288.15);
    expect(at(50)?.full_Pa).toBeCloseTo(23_456_977 - 101_325, -1);
    expect(at(15)?.full_Pa).toBeCloseTo(200e5 - 101_325, 0);
    expect(at(15)?.reject_Pa).toBeCloseTo(190e5 - 101_325, 0);
  });

  test('rises with the temperature, and what is rejected lies below what is full', () => {
    const { chart } = known(supervisionOf(SAMPLE_PROFILE));
    for (const [i, row] of chart.entries()) {
      expect(row.reject_Pa).toBeLessThan(row.full_Pa);
      expect(row.full_Pa).toBeGreaterThan(chart[i - 1]?.full_Pa ?? 0);
    }
  });

  test('is not known without profile or fill pressure, or for one that is none', () => {
    expect(reason(supervisionOf(undefined))).toBe('the network has no unit profile.');
    expect(reason(supervisionOf(blankProfile('b', 'Blank')))).toBe('“Fill pressure” is blank in the unit profile “Blank”.');
    expect(reason(supervisionOf(filledTo(0)))).toMatch(/^the formula does not hold here\./);
  });
});
