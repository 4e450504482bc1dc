import { describe, expect, test } from 'vitest';
import type { ZoneSums } from '#shared/calculations/design/design';
import { notWorked, worked } from '#shared/calculations/design/worked';
import type { DerivedNetwork } from '#shared/derived/derived';
import { p14FittingRating as rule } from '#shared/rules/pipe/p14-fitting-rating';
import { psi_Pa } from '#shared/units/convert';
import { at3, check, layout } from '../../../support/layout.ts';
import { checkSums, checkSumsOnce } from '../../../support/network-sums.ts';

/** Two elbows. */
const plan = layout({ lengths: 'feet', runs: [{ places: [at3(0, 0, 2), at3(3, 0, 2), at3(3, 2, 2), at3(3, 2, 1)] }], nozzles: [{ at: at3(3, 2, 1) }] });
// ASME B16.3, memory: Class 300 malleable bears 2000 psi up to NPS 1.
const GREATEST_Pa = psi_Pa(2000);
const zone = ({ fittings }: DerivedNetwork, ratings_Pa: readonly number[], isEverAllowed = true): ZoneSums => ({
  side: 'after the regulator',
  greatest_Pa: GREATEST_Pa,
  greatestSource: 'set pressure of the regulator',
  pipes: [],
  fittings: fittings.map((fitting, i) => ({ fitting, size: '3/4', rating_Pa: ratings_Pa[i] ?? 0, isEverAllowed })),
  line_Pa: undefined,
});
const rated = (ratings_Pa: readonly number[], isEverAllowed = true) =>
  checkSumsOnce(rule, plan, (network) => ({ zones: worked([zone(network, ratings_Pa, isEverAllowed)]) }));

describe('P14', () => {
  test.each([
    ['at the limit', psi_Pa(2000), 'ok'],
    ['inside', psi_Pa(2001), 'ok'],
    ['outside', psi_Pa(1999), 'stop'],
    ['not a number', Number.NaN, 'stop'],
  ])('the weakest fitting %s', (_, rating_Pa, verdict) => {
    expect(rated([psi_Pa(3000), rating_Pa]).verdict).toBe(verdict);
  });

  test('Class 150 is never allowed, however much it bears', () => {
    const finding = rated([psi_Pa(9000), psi_Pa(9000)], false);
    expect(finding.verdict).toBe('stop');
    expect(finding.text).toBe('2 of 2 fittings are of Class 150, which is never allowed here, whatever the pressure. Use a stronger class.');
    expect(finding.place?.at).toHaveLength(2);
  });

  test('one finding names the weakest and shows those that are too weak', () => {
    const finding = rated([psi_Pa(1500), psi_Pa(3000)]);
    expect(finding.text).toContain('1 of 2 fittings is too weak: 3/4 in 90° elbow bears 1500.0 psi gauge, and 2000.0 psi gauge may come there');
    expect(finding.place?.at).toEqual([{ x: 3, y: 0 }]);
  });

  test('a side without fittings is not asked; what is not known is not checked', () => {
    expect(checkSums(rule, layout({ runs: [{ places: [at3(0, 0, 2), at3(3, 0, 2)] }] }), { zones: worked([{ ...zoneless, fittings: [] }]) })).toEqual([]);
    expect(checkSumsOnce(rule, plan, { zones: notWorked('the fitting class is blank.') }).verdict).toBe('not-checked');
  });

  test('a network without pipe is not asked', () => {
    expect(check(rule, layout({}))).toEqual([]);
  });
});

const zoneless: ZoneSums = { side: 'no regulator', greatest_Pa: 1, greatestSource: '', pipes: [], fittings: [], line_Pa: undefined };
