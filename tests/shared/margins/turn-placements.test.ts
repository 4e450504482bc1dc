import { describe, expect, test } from 'vitest';
import { turnNozzle } from '#shared/commands/turn-nozzle';
import { evaluate } from '#shared/evaluate';
import { normalAngle_rad } from '#shared/geometry/angle';
import { siteOf } from '#shared/margins/site';
import { turnRangeOf } from '#shared/margins/turn-range';
import type { RefOf } from '#shared/model/plan';
import { patchPlan } from '../../support/patch-plans.ts';
import { isNews, numbers, quickAnswers, stopKeys, uncovered_m2 } from '../../support/patch-trials.ts';
import { SLIVER_m2 } from '#shared/geometry/tolerance';

const N1: RefOf<'nozzle'> = { kind: 'nozzle', network: 'net', id: 'n1' };
const RULES = ['N1', 'N2', 'N3', 'N5', 'N6', 'N7', 'N8', 'N9', 'N10', 'N12', 'N14', 'N15', 'N19', 'E11'];
const EACH = 50;

describe('1,000 turns held to the check', () => {
  test('within the range nothing is broken', () => {
    const told: string[] = [];
    let [asked, inside, ends] = [0, 0, 0];
    for (let seed = 1; asked < 1000 && seed <= 80; seed += 1) {
      const next = numbers(seed * 104_729);
      const plan = patchPlan(next);
      const { derived, findings } = evaluate(plan);
      const found = siteOf(derived, N1);
      const range = 'site' in found ? turnRangeOf(found.site) : null;
      if (!range) continue;
      const before = stopKeys(findings, '');
      const gap_m2 = uncovered_m2(findings);
      const answers = quickAnswers(plan, RULES);
      const nozzle = plan.networks.net?.nozzles.n1;
      if (!nozzle) continue;
      const first_rad = nozzle.rotation_rad + (nozzle.holes_rad[0] ?? 0);
      if (range.to_rad - range.from_rad < 6.28) ends += 1;
      for (let i = 0; i < EACH; i += 1) {
        // A third anywhere, a third at one end within half a degree, a third between the ends.
        const wide_rad = range.to_rad - range.from_rad;
        const way_rad = i % 3 === 0 ? next() * 2 * Math.PI : i % 3 === 1 ? (next() < 0.5 ? range.from_rad : range.to_rad) + (next() - 0.5) * 0.0175 : range.from_rad + next() * wide_rad;
        const isInside = normalAngle_rad(way_rad - range.from_rad) <= wide_rad;
        asked += 1;
        if (!isInside) continue;
        inside += 1;
        const outcome = turnNozzle(N1, normalAngle_rad(nozzle.rotation_rad + way_rad - first_rad))(plan);
        const now = outcome.ok ? answers(outcome.next) : [];
        const broken = now.filter((each) => isNews(each, before)).map(({ rule }) => rule);
        if (uncovered_m2(now) > gap_m2 + SLIVER_m2) broken.push('N9');
        if (!outcome.ok || broken.length > 0) told.push(`plan ${seed} turned to ${way_rad}: ${broken.join(', ')}`);
      }
    }
    expect(told).toEqual([]);
    expect(asked).toBeGreaterThanOrEqual(1000);
    expect(inside).toBeGreaterThan(300);
    expect(ends).toBeGreaterThan(5);
  }, 300_000);
});
