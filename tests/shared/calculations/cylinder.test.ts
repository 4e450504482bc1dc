import { describe, expect, test } from 'vitest';
import { cylinderTopic } from '#shared/calculations/cylinder';
import type { TopicResult } from '#shared/calculations/topic';
import { numberOf, runTopic } from '../../support/run-topic.ts';

/** A list of an answer in bar. */
function bars(result: TopicResult, key: string): number[] {
  const list = result[key];
  if (!Array.isArray(list)) throw new Error(`${key} is no list.`);
  return list.map((pressure_Pa: number) => pressure_Pa / 1e5);
}

const FILL = { volume_L: 80, pressure_bar: 200, temperature_C: 15 };

describe('cylinder', () => {
  test('Span et al. 2000: 80 L at 200 bar and 15 °C hold 17.855 kg, an ideal gas 4.8 % more', () => {
    const result = runTopic(cylinderTopic, FILL);
    expect(numberOf(result, 'mass_kg')).toBeCloseTo(17.855, 3);
    expect(numberOf(result, 'density_kg_m3')).toBeCloseTo(223.187, 3);
    expect(numberOf(result, 'idealMass_kg') / numberOf(result, 'mass_kg') - 1).toBeCloseTo(0.048, 3);
    expect(result.pressures_Pa).toEqual([]);
  });

  test('Span et al. 2000: at −20, 20 and 50 °C it shows 165.1, 205.0 and 234.6 bar', () => {
    const result = runTopic(cylinderTopic, { ...FILL, otherTemperatures_C: [-20, 20, 50] });
    [165.1, 205.0, 234.6].forEach((expected, index) => {
      expect(Math.abs((bars(result, 'pressures_Pa')[index] ?? 0) - expected)).toBeLessThanOrEqual(0.051);
    });
    expect(bars(result, 'short_Pa')[1]).toBeCloseTo(0.95 * (bars(result, 'pressures_Pa')[1] ?? 0), 6);
    expect(bars(result, 'afterLoss_Pa')[1]).toBeLessThan(bars(result, 'short_Pa')[1] ?? 0);
  });

  test('a loss of none is the full cylinder', () => {
    const result = runTopic(cylinderTopic, { ...FILL, otherTemperatures_C: [-20, 50], loss_pct: 0 });
    expect(result.afterLoss_Pa).toEqual(result.pressures_Pa);
    expect(result.short_Pa).toEqual(result.pressures_Pa);
  });

  test('units in any form give the same answer', () => {
    const result = runTopic(cylinderTopic, { ...FILL, otherTemperatures_C: [30] });
    const same = runTopic(cylinderTopic, { volume_ft3: 0.08 / 0.028316846592, pressure_psig: 20e6 / 6894.757293168 - 14.695948775, temperature_F: 59, otherTemperatures_F: [86], loss_pct: 5 });
    expect(numberOf(same, 'mass_kg')).toBeCloseTo(numberOf(result, 'mass_kg'), 7);
    expect(bars(same, 'pressures_Pa')[0]).toBeCloseTo(bars(result, 'pressures_Pa')[0] ?? 0, 6);
  });

  test('a temperature that no cylinder has is named', () => {
    expect(() => runTopic(cylinderTopic, { ...FILL, otherTemperatures_C: [20, 500] })).toThrow('otherTemperatures_C[1]');
    expect(() => runTopic(cylinderTopic, { ...FILL, volume_L: 0 })).toThrow('volume_L');
  });
});
