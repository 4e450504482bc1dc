import { describe, expect, test } from 'vitest';
import { evaluate } from '#shared/evaluate';
import { VERDICTS } from '#shared/rules/finding';
import { ARRANGEMENTS, groupFindings, matchesWords, partsIn } from '../../../src-renderer/panels/findings/finding-groups.ts';
import { today } from '../../../src-renderer/panels/findings/today.ts';
import { at3, layout } from '../../support/layout.ts';

const plan = layout({ nozzles: [{ at: at3(0.2, 2, 2.4) }, { at: at3(3, 2, 1.9) }] });
const { findings } = evaluate(plan);

describe('findings in groups', () => {
  test.each(ARRANGEMENTS)('%s: gravest first, each finding once', (arrangement) => {
    const groups = groupFindings(findings, arrangement, plan);
    expect(groups.map(({ verdict }) => verdict)).toEqual(VERDICTS.filter((verdict) => findings.some((finding) => finding.verdict === verdict)));
    const listed = groups.flatMap((group) => group.groups.flatMap((each) => each.findings));
    expect(listed).toHaveLength(findings.length);
    expect(new Set(listed).size).toBe(findings.length);
    for (const group of groups) expect(group.groups.reduce((sum, each) => sum + each.findings.length, 0)).toBe(group.count);
  });
  test('by thing: what is about one nozzle stands together', () => {
    const nozzles = groupFindings(findings, 'thing', plan).flatMap(({ groups }) => groups.filter(({ title }) => title === 'Nozzles'));
    for (const { findings: list } of nozzles) {
      const names = list.map(({ name }) => name);
      expect(names.filter((name, i) => name !== names[i - 1])).toHaveLength(new Set(names).size);
    }
  });
  test('by level: what has no place belongs to the whole plan', () => {
    const titles = groupFindings(findings, 'place', plan).flatMap(({ groups }) => groups.map(({ title }) => title));
    expect(new Set(titles)).toEqual(new Set(['Level 1', 'Whole plan']));
  });
});

describe('finding findings', () => {
  const [first] = findings;
  if (!first) throw new Error('Nothing was asked.');
  test('by words in any order, whatever their case; no words let all through', () => {
    const [name, title] = [first.name, first.title.toUpperCase()];
    expect(matchesWords(first, `${title} ${name}`)).toBe(true);
    expect(matchesWords(first, '')).toBe(true);
    expect(matchesWords(first, 'zebra')).toBe(false);
  });
  test('parts of the catalogue are those that occur', () => {
    const parts = partsIn(findings);
    expect(parts.reduce((sum, { count }) => sum + count, 0)).toBe(findings.length);
    expect(parts[0]).toMatchObject({ letter: 'N', name: 'Nozzles' });
  });
});

test('today is a date as it is printed', () => {
  expect(today(new Date(2026, 0, 5, 23, 59))).toBe('2026-01-05');
});
