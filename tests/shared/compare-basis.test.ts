import { describe, expect, test } from 'vitest';
import { workedDischarge } from '#shared/calculations/discharge/worked-discharge';
import { compareBasis } from '#shared/compare-basis';
import { evaluate } from '#shared/evaluate';
import type { BasisOfDesign } from '#shared/model/basis-of-design';
import { findingKey } from '#shared/rules/finding';
import { wholePlan } from '../support/whole-plan.ts';

const { plan } = wholePlan();
const source = workedDischarge();
const compared = (change: Partial<BasisOfDesign>) => compareBasis(plan, { ...plan.basis, ...change }, source);

describe('comparing with another basis of design', () => {
  test('the same basis changes nothing', () => {
    expect(compared({})).toEqual({ choices: [], sums: [], findings: [] });
  });
  test('another method for leaks changes the hold time alone', () => {
    const { choices, sums } = compared({ leakFraction: 0.3 });
    expect(choices).toEqual(['leakFraction']);
    expect(new Set(sums.map(({ title }) => title)).size).toBe(1);
    expect(sums.every(({ before, now }) => before?.result !== now?.result)).toBe(true);
  });
  test('another design set shows old and new limit with their sources', () => {
    const { sums, findings } = compared({ designSet: 'nfpa-2001-2008' });
    expect(sums.find(({ label }) => label === 'Minimum design concentration')).toMatchObject({ before: { source: expect.stringContaining('14520') }, now: { source: expect.stringContaining('NFPA') } });
    expect(findings.length).toBeGreaterThan(0);
    for (const { key, before, now } of findings) expect([before && findingKey(before), now && findingKey(now)]).toContain(key);
  });
  test('lists exactly the findings that differ when the basis is applied, changed verdicts first', () => {
    const other = { ...plan.basis, designSet: 'nfpa-2001-2008' as const, supportTable: 'b31.1' as const, hottestCylinder_K: 340 };
    const { findings } = compareBasis(plan, other, source);
    const now = evaluate({ ...plan, basis: other }, source).findings;
    const was = new Map(evaluate(plan, source).findings.map((finding) => [findingKey(finding), finding]));
    const differing = now.filter((finding) => was.get(findingKey(finding))?.verdict !== finding.verdict).map(findingKey);
    expect(differing.length).toBeGreaterThan(0);
    expect(findings.filter(({ before, now: is }) => before?.verdict !== is?.verdict).map(({ key }) => key).toSorted()).toEqual(differing.toSorted());
    const first = findings.findIndex(({ before, now: is }) => before?.verdict === is?.verdict);
    expect(findings.slice(first < 0 ? findings.length : first).every(({ before, now: is }) => before?.verdict === is?.verdict)).toBe(true);
  });
  test('what rests on a discharge that nobody has run is not compared', () => {
    const { sums } = compareBasis(plan, { ...plan.basis, lossSet: 'ashrae' }, () => undefined);
    expect(sums.filter(({ title }) => /discharge/i.test(title)).every(({ isMain }) => !isMain)).toBe(true);
  });
});
