import { describe, expect, test } from 'vitest';
import { editInfo } from '#shared/commands/edit-info';
import { record, redo, startHistory, undo } from '#shared/commands/history';
import { newPlan } from '#shared/model/plan';

const named = (project: string) => {
  const outcome = editInfo({ project })(newPlan());
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome;
};

describe('history', () => {
  test('a plan that it begins with can no longer be changed behind its back', () => {
    const { present } = startHistory(newPlan());
    expect(Object.isFrozen(present.levels['level-0']?.enclosures)).toBe(true);
  });

  test('undo leads back, redo forth again, and each step keeps its name', () => {
    const start = startHistory(newPlan());
    const done = record(start, named('Hut'));
    expect(done.past.at(-1)?.label).toBe(named('Hut').label);
    const undone = undo(done);
    expect(undone.present).toEqual(start.present);
    expect(redo(undone).present).toEqual(done.present);
  });

  test('a step after undo drops what could have been redone', () => {
    const undone = undo(record(startHistory(newPlan()), named('Hut')));
    expect(record(undone, named('Annex')).future).toEqual([]);
  });

  test('without a step there is nothing to undo or redo, and a change of nothing leaves none', () => {
    const start = startHistory(newPlan());
    expect(undo(start)).toBe(start);
    expect(redo(start)).toBe(start);
    expect(record(start, { ...named('Hut'), patches: [] })).toBe(start);
  });
});
