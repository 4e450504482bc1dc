import fc from 'fast-check';
import { expect, test } from 'vitest';
import { record, redo, startHistory, undo } from '#shared/commands/history';
import { Dice, MAKERS, refsOf, smallStart } from '../../support/random-commands.ts';
import { expectSound } from '../../support/try-command.ts';

test('whatever is done in whatever order, the plan stays sound, and undoing and redoing all leads to the start and the end', () => {
  const counts = new Map<number, { done: number; refused: number }>();
  const step = fc.record({ maker: fc.nat(MAKERS.length - 1), dice: fc.array(fc.nat(1_000_000), { minLength: 24, maxLength: 24 }) });
  fc.assert(
    fc.property(fc.array(step, { minLength: 5, maxLength: 40 }), (steps) => {
      let history = startHistory(smallStart());
      for (const { maker, dice } of steps) {
        const { present } = history;
        const outcome = MAKERS[maker]?.(present, new Dice(dice))(present);
        const count = counts.get(maker) ?? { done: 0, refused: 0 };
        counts.set(maker, count);
        if (!outcome?.ok) {
          expect(outcome?.reason).toMatch(/^[A-Z“].*\.$/s);
          count.refused += 1;
          continue;
        }
        count.done += 1;
        expectSound(outcome.next);
        history = record(history, outcome);
        const there = new Set(refsOf(outcome.next).map((ref) => JSON.stringify(Object.entries(ref).sort())));
        for (const ref of outcome.created) expect(there).toContain(JSON.stringify(Object.entries(ref).sort()));
      }
      let back = history;
      while (back.past.length > 0) back = undo(back);
      expect(back.present).toEqual(smallStart());
      let forth = back;
      while (forth.future.length > 0) forth = redo(forth);
      expect(forth.present).toEqual(history.present);
    }),
    { numRuns: 150 },
  );
  // Nearly every command was carried out, and refusals came often enough to mean something.
  const idle = MAKERS.flatMap((maker, i) => ((counts.get(i)?.done ?? 0) > 0 ? [] : [String(maker)]));
  expect(idle.length, idle.join('\n')).toBeLessThan(4);
  expect([...counts.values()].reduce((sum, { refused }) => sum + refused, 0)).toBeGreaterThan(100);
});
