import type { HoldSums, LeakSums } from '#shared/calculations/design/design';

/** Hold sums of a room as a test states them; ten minutes are required. */
export const holdSums = (given: Partial<HoldSums> = {}): HoldSums => ({
  model: 'wide',
  time_s: 900,
  sharp_s: 800,
  wide_s: 900,
  mixing_s: 700,
  required_s: 600,
  interface: 'rising',
  concentration_pct: 40,
  endConcentration_pct: 34,
  mixture_kg_m3: 1.19,
  height_m: 2.7,
  lowestProtected_m: 0.9,
  allowedLeakage_m2: 0.015,
  ...given,
});

/** Leaks of a room as a test states them. */
export const leakSums = (given: Partial<LeakSums> = {}): LeakSums => ({ coefficient: 0.01, exponent: 0.6, area_m2: 0.01, source: 'test', remarks: [], ...given });
