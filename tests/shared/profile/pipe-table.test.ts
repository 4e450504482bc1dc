import { describe, expect, test } from 'vitest';
import { PIPE_SCHEDULES, PIPE_SIZES, PIPE_TABLE, type PipeSize, pipeBore_m, pipeOutside_m, pipeSizeRank } from '#shared/profile/pipe-table';
import { inches_m, toInches } from '#shared/units/convert';

/**
 * Published inside diameter [in] and plain-end mass [lb/ft] of steel pipe by schedule 40, 80, 160.
 * Source: ASME B36.10M-2018, inch columns; inside diameters as the usual wall charts print them.
 */
const PUBLISHED: readonly [PipeSize, [number, number], [number, number], [number, number]][] = [
  ['3/8', [0.493, 0.57], [0.423, 0.74], [0.359, 0.87]],
  ['1/2', [0.622, 0.85], [0.546, 1.09], [0.464, 1.31]],
  ['3/4', [0.824, 1.13], [0.742, 1.48], [0.612, 1.95]],
  ['1', [1.049, 1.68], [0.957, 2.17], [0.815, 2.85]],
  ['1-1/4', [1.38, 2.27], [1.278, 3.0], [1.16, 3.77]],
  ['1-1/2', [1.61, 2.72], [1.5, 3.63], [1.338, 4.86]],
  ['2', [2.067, 3.66], [1.939, 5.03], [1.687, 7.47]],
  ['2-1/2', [2.469, 5.8], [2.323, 7.67], [2.125, 10.02]],
  ['3', [3.068, 7.58], [2.9, 10.26], [2.624, 14.34]],
  ['4', [4.026, 10.8], [3.826, 15.0], [3.438, 22.53]],
];

describe('ASME B36.10M-2018', () => {
  test.each(PUBLISHED)('NPS %s has the published bore and mass', (size, ...columns) => {
    for (const [i, schedule] of PIPE_SCHEDULES.entries()) {
      const [inside_in, mass_lb_ft] = columns[i] ?? [0, 0];
      expect(toInches(pipeBore_m(size, schedule))).toBeCloseTo(inside_in, 3);
      // Plain-end mass of the same standard: 10.69 · (D − t) · t in lb/ft, D and t in inches.
      const wall_in = PIPE_TABLE[size].wall_in[schedule];
      expect(10.69 * (PIPE_TABLE[size].outside_in - wall_in) * wall_in).toBeCloseTo(mass_lb_ft, 1);
    }
  });

  test('metric nominal outside diameters are those of the inch column, within a tenth of a millimetre', () => {
    const nominal_mm = [13.7, 17.1, 21.3, 26.7, 33.4, 42.2, 48.3, 60.3, 73.0, 88.9, 114.3];
    for (const [i, size] of PIPE_SIZES.entries()) expect(Math.abs(pipeOutside_m(size) * 1000 - (nominal_mm[i] ?? 0))).toBeLessThan(0.1);
  });
});

test('larger sizes are larger, heavier schedules have thicker walls', () => {
  for (const [i, size] of PIPE_SIZES.entries()) {
    const before = PIPE_SIZES[i - 1];
    expect(pipeSizeRank(size)).toBe(i);
    if (before) expect(pipeOutside_m(size)).toBeGreaterThan(pipeOutside_m(before));
    const { 40: thin, 80: middle, 160: thick } = PIPE_TABLE[size].wall_in;
    expect(thin < middle && middle < thick).toBe(true);
    expect(pipeBore_m(size, '160')).toBeGreaterThan(inches_m(0.2));
  }
});
