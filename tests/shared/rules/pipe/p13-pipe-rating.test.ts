import { describe, expect, test } from 'vitest';
import type { ZoneSums } from '#shared/calculations/design/design';
import { notWorked, worked } from '#shared/calculations/design/worked';
import type { DerivedNetwork } from '#shared/derived/derived';
import { p13PipeRating as rule } from '#shared/rules/pipe/p13-pipe-rating';
import { at3, layout } from '../../../support/layout.ts';
import { checkSums, checkSumsOnce } from '../../../support/network-sums.ts';

const plan = layout({ runs: [{ places: [at3(0, 0, 2), at3(3, 0, 2), at3(3, 2, 2)] }] });
const GREATEST_Pa = 6_000_000;
const zone = ({ pipes }: DerivedNetwork, ratings_Pa: readonly number[], more: Partial<ZoneSums> = {}): ZoneSums => ({
  side: 'after the regulator',
  greatest_Pa: GREATEST_Pa,
  greatestSource: 'set pressure of the regulator',
  pipes: pipes.map((pipe, i) => ({ pipe, rating_Pa: ratings_Pa[i] ?? 0 })),
  fittings: [],
  line_Pa: undefined,
  ...more,
});
const rated = (...ratings_Pa: number[]) => checkSumsOnce(rule, plan, (network) => ({ zones: worked([zone(network, ratings_Pa)]) }));

describe('P13', () => {
  test.each([
    ['at the limit', GREATEST_Pa, 'ok'],
    ['a hair of float noise below it', GREATEST_Pa * (1 - 1e-12), 'ok'],
    ['inside', GREATEST_Pa + 1, 'ok'],
    ['outside', GREATEST_Pa - 1, 'stop'],
    ['without any strength', 0, 'stop'],
    ['not a number', Number.NaN, 'stop'],
  ])('the weakest pipe %s', (_, rating_Pa, verdict) => {
    expect(rated(rating_Pa, 2 * GREATEST_Pa).verdict).toBe(verdict);
  });

  test('one finding names the weakest and shows all that are too weak', () => {
    const finding = rated(5_000_000, 4_000_000);
    expect(finding).toMatchObject({ verdict: 'stop', measured: 4_000_000, limit: GREATEST_Pa, margin: -2_000_000, limitSource: 'set pressure of the regulator' });
    expect(finding.text).toBe(
      '2 of 2 pipes are too weak: 3/4 in Schedule 40 threaded pipe bears 40.0 bar gauge, and 60.0 bar gauge may come there (set pressure of the regulator). Use a heavier schedule.',
    );
    expect(finding.place?.at).toHaveLength(4);
    expect(rated(5_000_000, 7_000_000).place?.at).toHaveLength(2);
  });

  test('rounding hides no fault', () => {
    const { text } = rated(GREATEST_Pa - 1, 2 * GREATEST_Pa);
    expect(text).toContain('59.99999 bar gauge');
    expect(text).toContain('60.00000 bar gauge');
  });

  test('each side of the regulator is asked by itself, one without pipe is not', () => {
    const findings = checkSums(rule, plan, (network) => ({
      zones: worked([zone(network, [1, 1], { side: 'before the regulator' }), zone(network, [9e6, 9e6]), zone(network, [], { side: 'no regulator', pipes: [] })]),
    }));
    expect(findings.map(({ name, verdict }) => [name, verdict])).toEqual([
      ['Network, before the regulator', 'stop'],
      ['Network, after the regulator', 'ok'],
    ]);
  });

  test('what is not known is not checked', () => {
    const finding = checkSumsOnce(rule, plan, { zones: notWorked('the fill pressure is blank.') });
    expect(finding).toMatchObject({ verdict: 'not-checked', name: 'Network', text: 'Not checked: the fill pressure is blank.' });
  });
});
