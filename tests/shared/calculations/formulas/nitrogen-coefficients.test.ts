import { describe, expect, test } from 'vitest';
import { NITROGEN_BELLS, NITROGEN_CRITICAL_kg_m3, NITROGEN_R_J_kgK, NITROGEN_TERMS } from '#shared/calculations/formulas/nitrogen-coefficients';

describe('coefficients of the nitrogen equation', () => {
  // Span et al. 2000: 6 polynomial terms, 26 with an exponential, 4 Gaussian bells.
  test('there are as many terms as published', () => {
    expect(NITROGEN_TERMS.filter(([, , , l]) => l === 0)).toHaveLength(6);
    expect(NITROGEN_TERMS.filter(([, , , l]) => l > 0)).toHaveLength(26);
    expect(NITROGEN_BELLS).toHaveLength(4);
  });

  test('Span et al. 2000: critical density 313.3 kg/m³, R 296.803 J/(kg·K)', () => {
    expect(NITROGEN_CRITICAL_kg_m3).toBeCloseTo(313.3, 2);
    expect(NITROGEN_R_J_kgK).toBeCloseTo(296.804, 2);
  });
});
