import { describe, expect, test } from 'vitest';
import { evaluate } from '#shared/evaluate';
import type { Finding } from '#shared/rules/finding';
import { type BruteFault, bruteForceFaults } from '../support/brute-force/brute-force-faults.ts';
import { randomPlan } from '../support/brute-force/random-plan.ts';

const PLANS = 200;
/** A hole that N5 or N6 stops is not judged again by N7: turning it cures both. */
const STANDS_FOR: Readonly<Record<string, readonly string[]>> = { N7: ['N7', 'N5', 'N6'] };

/** Whether the program says something other than "kept" of a fault. */
function isFound({ rule, name }: BruteFault, findings: readonly Finding[]): boolean {
  return findings.some((finding) => finding.verdict !== 'ok' && (STANDS_FOR[rule] ?? [rule]).includes(finding.rule) && (finding.name === name || (rule === 'N12' && finding.name.split(' and ').includes(name)) || (rule === 'P27' && finding.text.includes(name))));
}

describe('200 random plans against plain sampling', () => {
  const told = new Map<string, number>();
  test.each(Array.from({ length: 8 }, (_, part) => part))('no fault is missed, part %i', (part) => {
    for (let seed = (PLANS / 8) * part; seed < (PLANS / 8) * (part + 1); seed += 1) {
      const plan = randomPlan(seed);
      const faults = bruteForceFaults(plan);
      const { findings } = evaluate(plan);
      for (const fault of faults) {
        told.set(fault.rule, (told.get(fault.rule) ?? 0) + 1);
        expect(isFound(fault, findings), `seed ${seed}: ${fault.rule} of ${fault.name} (${fault.by})`).toBe(true);
      }
    }
  });

  test('the sampling did find faults of every kind that it looks for', () => {
    const rules = ['C7', 'N1', 'N2', 'N3', 'N4', 'N5', 'N6', 'N7', 'N9', 'N12', 'N15', 'N22', 'P27', 'S5', 'S8'];
    for (const rule of rules) expect(told.get(rule) ?? 0, rule).toBeGreaterThan(3);
  });
});
