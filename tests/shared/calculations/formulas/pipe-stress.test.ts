import { describe, expect, test } from 'vitest';
import { PIPE_SPECIFICATIONS, STRESS_SETS, allowableStress_Pa } from '#shared/calculations/formulas/pipe-stress';

const PSI_Pa = 6894.757;
/** Tensile strengths [ksi], ASTM A53 and A106 as of the time of the older set, memory; efficiency of the seam, ASME B31.1, memory. */
const STEELS = { 'A106-C': [70, 1], 'A106-B': [60, 1], 'A53-B-seamless': [60, 1], 'A53-A-seamless': [48, 1], 'A53-B-ERW': [60, 0.85], 'A53-A-ERW': [48, 0.85], 'A53-F': [45, 0.6] } as const;

describe('allowable stress', () => {
  // All memory: NFPA 2001 annex (2000 to 2008) and ASME B31.1 before 1999; ASME B31.1 from the 1999 addenda on.
  test.each([
    ['older', 'A106-C', 17_500],
    ['older', 'A106-B', 15_000],
    ['older', 'A53-B-seamless', 15_000],
    ['older', 'A53-A-seamless', 12_000],
    ['older', 'A53-B-ERW', 12_800],
    ['older', 'A53-A-ERW', 10_200],
    ['older', 'A53-F', 6800],
    ['newer', 'A106-B', 17_100],
    ['newer', 'A53-B-seamless', 17_100],
    ['newer', 'A53-A-seamless', 13_700],
    ['newer', 'A53-B-ERW', 14_600],
    ['newer', 'A53-A-ERW', 11_700],
  ] as const)('%s set (memory): %s %d psi', (set, specification, expected) => {
    expect((allowableStress_Pa(set, specification) ?? 0) / PSI_Pa / expected).toBeCloseTo(1, 6);
  });

  test.each(['A106-C', 'A53-F'] as const)('the newer set gives none for %s: not 0, not the older one', (specification) => {
    expect(allowableStress_Pa('newer', specification)).toBeUndefined();
  });

  test.each(PIPE_SPECIFICATIONS)('tensile strength over 4 or 3.5 times the efficiency of the seam: %s', (specification) => {
    const [strength_ksi, efficiency] = STEELS[specification];
    for (const set of STRESS_SETS) {
      const stress_Pa = allowableStress_Pa(set, specification);
      if (stress_Pa === undefined) continue;
      const expected_ksi = (strength_ksi / (set === 'older' ? 4 : 3.5)) * efficiency;
      expect(Math.abs(stress_Pa / PSI_Pa / 1000 - expected_ksi)).toBeLessThanOrEqual(0.051);
    }
  });
});
