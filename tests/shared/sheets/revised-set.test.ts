import { describe, expect, test } from 'vitest';
import { evaluate } from '#shared/evaluate';
import { comparePlans } from '#shared/revisions/compare-plans';
import { changesTable } from '#shared/sheets/changes-table';
import { composeSheets } from '#shared/sheets/compose-sheets';
import { supersededWords } from '#shared/sheets/superseded-stamp';
import { marksBox } from '#shared/sheets/text-box';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { refsOf } from '../../support/random-commands.ts';
import { done } from '../../support/try-command.ts';

const { plan } = planBuilder().room(4, 3, 2.6).network().run([place3(1, 1, 2), place3(1, 1, 2.4), place3(2, 1, 2.4), place3(2, 1, 2.2)]).nozzle(2, 1, 2.2);
const nozzle = refsOf(plan).flatMap((ref) => (ref.kind === 'nozzle' ? [ref] : []))[0] ?? { kind: 'nozzle' as const, network: '', id: '' };
const list = comparePlans(plan, done(plan, moveNozzle(nozzle, { x: 2.5, y: 1, z: 2.2 })).next);
const OPTIONS = { paper: 'A3', scale: 'auto', set: 'submittal', printedAt: 'today' } as const;

describe('a superseded set', () => {
  test.each(['B', 'AB12', 'W'.repeat(40)])('replaced by %s says so on every sheet, under everything and inside the paper', (mark) => {
    for (const { marks, paper } of composeSheets(evaluate(plan), new Map(), { ...OPTIONS, supersededBy: mark })) {
      const at = marks.findIndex((each) => each.kind === 'text' && each.text === supersededWords(mark));
      const stamp = marks[at];
      if (stamp?.kind !== 'text') throw new Error('No stamp.');
      // Only the other stamp may lie under it.
      expect(at).toBeLessThan(2);
      const { left, top, right, bottom } = marksBox([stamp]);
      expect([left > 0, top > 0, right < paper.width_mm, bottom < paper.height_mm]).toEqual([true, true, true, true]);
    }
  });
  test('a current set has none', () => {
    for (const { marks } of composeSheets(evaluate(plan), new Map(), OPTIONS)) expect(JSON.stringify(marks)).not.toContain('SUPERSEDED');
  });
});

describe('what a revision changed', () => {
  test('is a table of words', () => {
    const { title, rows } = changesTable({ since: 'A', mark: 'B', list }, 'metric');
    expect(title).toBe('What revision B changed since A');
    expect(rows[0]).toEqual(['Moved', 'Nozzle N1', expect.any(String), 'Moved 500 mm east']);
    expect(changesTable({ since: 'A', mark: 'B', list: [] }, 'metric').rows).toEqual([]);
  });
  test('a very long list is cut, and says how much is not listed', () => {
    const [one] = list;
    if (!one) throw new Error('Nothing changed.');
    const { rows, foot } = changesTable({ since: 'A', mark: 'B', list: Array.from({ length: 301 }, () => one) }, 'metric');
    expect([rows.length, JSON.stringify(foot)]).toEqual([300, expect.stringContaining('1 further')]);
  });
  test('stands on the sheets of a revised set only', () => {
    const words = (changes?: Parameters<typeof changesTable>[0]): string => JSON.stringify(composeSheets(evaluate(plan), new Map(), { ...OPTIONS, changes }));
    expect(words({ since: 'A', mark: 'B', list })).toContain('What revision B changed since A');
    expect(words()).not.toContain('changed since');
  });
});
