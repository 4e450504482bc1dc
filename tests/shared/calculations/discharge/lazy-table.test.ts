import { expect, test } from 'vitest';
import { lazyTable } from '#shared/calculations/discharge/lazy-table';

const GRID = { pressureStep_Pa: 1e6, temperatureStep_K: 10, leastTemperature_K: 130 };

test('a cubic comes back exactly, between the points and at the edges of the grid', () => {
  const cubic = (pressure_Pa: number, temperature_K: number): number => 1 + (pressure_Pa / 1e6) * (temperature_K / 100) ** 3 + (pressure_Pa / 1e6) ** 3;
  const table = lazyTable(cubic, GRID);
  for (const temperature_K of [130, 133, 151, 288.15]) {
    for (const pressure_Pa of [0, 3e5, 1e6, 4.7e6, 2.9e7]) expect(table(temperature_K)(pressure_Pa)).toBeCloseTo(cubic(pressure_Pa, temperature_K), 8);
  }
});

test('a point is worked out once, and only when it is asked for', () => {
  const asked: string[] = [];
  const table = lazyTable((pressure_Pa, temperature_K) => {
    asked.push(`${pressure_Pa} ${temperature_K}`);
    return 2;
  }, GRID);
  const curve = table(200);
  expect(asked).toHaveLength(0);
  curve(4.5e6);
  curve(4.9e6);
  table(201)(4.5e6);
  expect(asked).toHaveLength(16);
  expect(new Set(asked).size).toBe(16);
});
