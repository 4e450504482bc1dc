import { describe, expect, test } from 'vitest';
import type { Enclosure } from '#shared/model/plan';
import { n23TilesClipped as rule } from '#shared/rules/nozzle/n23-tiles-clipped';
import { at3, check, checkOne, layout } from '../../../support/layout.ts';
import { PLACINGS, placedPlan } from '../../../support/placed-plan.ts';

const room = (make: Enclosure['ceiling']['make'], clipped_m: number | null) => layout({ nozzles: [{ at: at3(2, 2, 2.5) }, { at: at3(4, 2, 2.5) }], enclosure: { ceiling: { make, clipped_m } } });

describe('N23', () => {
  test.each([
    // 4 ft: common practice.
    ['tiles clipped too near', 'tiles', 1.219, 'note'],
    ['on the limit', 'tiles', 1.2192, 'ok'],
    ['farther', 'tiles', 2, 'ok'],
    ['tiles of which nobody has said', 'tiles', null, 'not-checked'],
    ['a ceiling of which nobody has said', 'unknown', 2, 'not-checked'],
    ['a hard ceiling', 'hard', null, 'ok'],
    ['no ceiling', 'open', null, 'ok'],
  ] as const)('%s', (_, make, clipped_m, verdict) => {
    for (const placing of PLACINGS) expect(checkOne(rule, placedPlan(room(make, clipped_m), placing)).verdict).toBe(verdict);
  });

  test('shows the tiles around each nozzle; a room without one is not asked', () => {
    expect(checkOne(rule, room('tiles', 1)).place?.areas).toHaveLength(2);
    expect(check(rule, layout({ enclosure: { ceiling: { make: 'tiles', clipped_m: null } } }))).toEqual([]);
  });
});
