import { describe, expect, test } from 'vitest';
import { worked, notWorked } from '#shared/calculations/design/worked';
import type { LogEntry } from '#shared/model/plan';
import { chargeBandAt } from '#shared/site/charge-band';
import { correctedPressure_Pa, pressureTrends } from '#shared/site/pressure-trend';
import { armedPlan, entry } from '../../support/armed-plan.ts';

const { plan, keys } = armedPlan();
const network = Object.values(plan.networks)[0];
if (!network) throw new Error('The plan has no network.');
const fill = (pressure_bar: number) => worked({ chart: [], fillPressure_Pa: pressure_bar * 1e5, fillTemperature_K: 288.15 });
const trendOf = (log: readonly LogEntry[], supervision: ReturnType<typeof fill> | ReturnType<typeof notWorked> = fill(200)) => pressureTrends({ ref: { kind: 'network', id: network.id }, network, supervision }, log)[0];
const read = (bar: number | null, celsius: number | null, at = '2026-03-04', more: Partial<LogEntry> = {}) => entry('pressure', keys.cylinder, { value: bar === null ? null : bar * 1e5, temperature_K: celsius === null ? null : celsius + 273.15, at, ...more });
const shortOf = (...args: Parameters<typeof read>) => trendOf([read(...args)])?.readings[0]?.isShort;

describe('pressure corrected to the filling temperature', () => {
  // Constant-density pressures of nitrogen, computed with the equation of Span and others (2000): fill at 15 °C → −20, 20, 50 °C [bar abs].
  test.each([
    [200, -20, 165.1],
    [200, 20, 205.0],
    [200, 50, 234.6],
    [300, -20, 243.6],
    [300, 20, 308.0],
    [300, 50, 355.8],
  ])('%s bar at 15 °C reads the other at %s °C: %s', (bar, celsius, reading) => {
    const corrected = correctedPressure_Pa(reading * 1e5, celsius + 273.15, 288.15);
    expect(corrected.isKnown && corrected.sums / 1e5).toBeCloseTo(bar, -Math.log10(0.2));
  });
  // The ideal gas would say 234.6 × 288.15/323.15 = 209.2 bar: wrong by a whole 5 % rule.
  test('is not that of the ideal gas', () => {
    const corrected = correctedPressure_Pa(234.6e5, 323.15, 288.15);
    expect(corrected.isKnown && Math.abs(corrected.sums / 1e5 - 209.2)).toBeGreaterThan(8);
  });
  test('outside the range of the formula it is not known', () => expect(correctedPressure_Pa(200e5, 100, 288.15).isKnown).toBe(false));
});

describe('5 % rule', () => {
  test.each([
    ['full', 200, 15, false],
    ['at the limit', 190, 15, false],
    ['just beyond', 189.99, 15, true],
    ['full and cold', 165.1, -20, false],
    ['cold and 5.5 % gone', 165.1 * 0.945, -20, true],
    ['full and hot', 234.6, 50, false],
    ['hot and 5.5 % gone, though it reads more than full at 15 °C', 234.6 * 0.945, 50, true],
  ] as const)('%s', (_, bar, celsius, isShort) => expect(shortOf(bar, celsius)).toBe(isShort));

  test('what is missing is not checked', () => {
    expect(shortOf(null, 15)).toBeUndefined();
    expect(shortOf(200, null)).toBeUndefined();
    expect(trendOf([read(200, 15)], notWorked('“Fill pressure” is blank.'))?.readings[0]).toMatchObject({ isShort: undefined, lossShare: { isKnown: false } });
    expect(shortOf(200, null, '2026-03-04', { isGood: false })).toBe(true);
  });
  test('the share that is gone', () => {
    const loss = trendOf([read(195, 15)])?.readings[0]?.lossShare;
    expect(loss?.isKnown && loss.sums).toBeCloseTo(0.025, 6);
  });
  test('readings stand in the order of their days; what has none comes last; others are left out', () => {
    const log = [read(199, 15, '2026-09-01'), read(200, 15, '2026-03-01 08:00'), read(198, 15, 'some day'), entry('pressure', 'cylinder///other/1', { value: 1e7 }), entry('dead', keys.cylinder, { value: 0 })];
    expect(trendOf(log)?.readings.map(({ entry: { at } }) => at)).toEqual(['2026-03-01 08:00', '2026-09-01', 'some day']);
  });
});

describe('band of the filling chart', () => {
  // At 15 °C 5 % of 200 bar are 10 bar; losing 5 % of the mass costs more, 11.5 bar: the first is stricter.
  test('is the stricter of pressure and mass', () => {
    const band = chargeBandAt({ fillPressure_Pa: 200e5, fillTemperature_K: 288.15 }, 288.15);
    expect(band.isKnown && [band.sums.least_Pa, band.sums.full_Pa, band.sums.most_Pa].map((value) => Number((value / 1e5).toFixed(3)))).toEqual([190, 200, 210]);
  });
});
