import { describe, expect, test } from 'vitest';
import { command, refuse, sequence } from '#shared/commands/command';
import { record, redo, startHistory, undo } from '#shared/commands/history';
import { newPlan } from '#shared/model/plan';
import { done, refusal } from '../../support/try-command.ts';

const rename = command('Rename', (draft, name: string) => {
  if (name === '') refuse('A name is needed.');
  draft.info.project = name;
});

describe('command', () => {
  test('makes the next plan and leaves the one it was given', () => {
    const outcome = done(newPlan(), rename('Hut'));
    expect(outcome).toMatchObject({ label: 'Rename', next: { info: { project: 'Hut' } }, created: [] });
  });

  test('answers the reason of a refusal, and lets any other fault through', () => {
    expect(refusal(newPlan(), rename(''))).toBe('A name is needed.');
    const broken = command('Broken', () => {
      throw new TypeError('fault');
    });
    expect(() => broken()(newPlan())).toThrow(TypeError);
  });

  test('names the thing in its label when asked', () => {
    const labelled = command((plan, name: string) => `Rename ${plan.info.sheetPrefix} to ${name}`, (draft, name) => {
      draft.info.project = name;
    });
    expect(done(newPlan(), labelled('Hut')).label).toBe('Rename NW to Hut');
  });
});

describe('sequence', () => {
  test('is one step of all its commands', () => {
    const outcome = done(newPlan(), sequence('Twice', [rename('Hut'), rename('Annex')]));
    expect(outcome).toMatchObject({ label: 'Twice', next: { info: { project: 'Annex' } } });
  });
  test('does nothing when one of them refuses', () => {
    expect(refusal(newPlan(), sequence('Twice', [rename('Hut'), rename('')]))).toBe('A name is needed.');
  });
});

describe('history', () => {
  const renamed = () => {
    const start = startHistory(newPlan());
    return record(record(start, done(start.present, rename('Hut'))), done(done(start.present, rename('Hut')).next, rename('Annex')));
  };
  test('takes steps back one by one and does them again', () => {
    const history = renamed();
    expect(undo(history).present.info.project).toBe('Hut');
    expect(undo(undo(history)).present).toEqual(newPlan());
    expect(undo(undo(undo(history)))).toEqual(undo(undo(history)));
    expect(redo(undo(undo(history))).present.info.project).toBe('Hut');
    expect(redo(redo(undo(undo(history))))).toEqual(history);
    expect(redo(history)).toBe(history);
  });
  test('a new step forgets what was undone', () => {
    const back = undo(renamed());
    expect(record(back, done(back.present, rename('Shed'))).future).toEqual([]);
  });
  test('a command that changed nothing leaves no step', () => {
    const start = startHistory(newPlan());
    expect(record(start, done(start.present, sequence('None', [])))).toBe(start);
  });
});
