/** A function of pressure at one temperature. */
export type PressureCurve = (pressure_Pa: number) => number;

/** Steps of a grid that starts at vacuum and at its least temperature. */
export interface TableGrid {
  readonly pressureStep_Pa: number;
  readonly temperatureStep_K: number;
  readonly leastTemperature_K: number;
}

/** Room for the pressures of one temperature in the numbers of grid points. */
const PRESSURES = 4096;

/** Lagrange's cubic through four neighbours at 0, 1, 2 and 3. */
const cubic = (at: number, a: number, b: number, c: number, d: number): number =>
  (-a * (at - 1) * (at - 2) * (at - 3)) / 6 + (b * at * (at - 2) * (at - 3)) / 2 - (c * at * (at - 1) * (at - 3)) / 2 + (d * at * (at - 1) * (at - 2)) / 6;

/**
 * A costly smooth function of pressure and temperature, worked out only at the grid points that are asked for and once each; cubic in between.
 * At the first pressure of the grid, vacuum, it is 1.
 */
export function lazyTable(valueAt: (pressure_Pa: number, temperature_K: number) => number, grid: TableGrid): (temperature_K: number) => PressureCurve {
  const known = new Map<number, number>();
  const pointOf = (row: number, column: number): number => {
    if (row === 0) return 1;
    const key = column * PRESSURES + row;
    let value = known.get(key);
    if (value === undefined) {
      value = valueAt(row * grid.pressureStep_Pa, grid.leastTemperature_K + column * grid.temperatureStep_K);
      known.set(key, value);
    }
    return value;
  };
  return (temperature_K) => {
    const place = Math.max(0, (temperature_K - grid.leastTemperature_K) / grid.temperatureStep_K);
    const column = Math.max(0, Math.floor(place) - 1);
    const curve: number[] = [];
    const rowOf = (row: number): number =>
      (curve[row] ??= cubic(place - column, pointOf(row, column), pointOf(row, column + 1), pointOf(row, column + 2), pointOf(row, column + 3)));
    return (pressure_Pa) => {
      const height = Math.max(0, pressure_Pa / grid.pressureStep_Pa);
      const row = Math.max(0, Math.floor(height) - 1);
      return cubic(height - row, rowOf(row), rowOf(row + 1), rowOf(row + 2), rowOf(row + 3));
    };
  };
}
