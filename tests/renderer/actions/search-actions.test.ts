import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ACTIONS } from '../../../src-renderer/actions/actions.ts';
import { matchScore, searchActions } from '../../../src-renderer/actions/search-actions.ts';

const first = (typed: string): string | undefined => searchActions(typed, ACTIONS)[0]?.id;

describe('finding an action', () => {
  test.each([
    ['save', 'save'],
    ['save as', 'save-as'],
    ['nozzle', 'tool-nozzle'],
    ['print', 'print'],
    ['room', 'tool-enclosure'],
    ['metric', 'units'],
    ['pdf', 'print'],
    ['rotate', 'turn-left'],
  ])('“%s” leads to %s', (typed, id) => {
    expect([first(typed), searchActions(typed, ACTIONS)[1]?.id]).toContain(id);
  });

  test('an empty text shows everything in its order', () => {
    expect(searchActions('', ACTIONS).map(({ id }) => id)).toEqual(ACTIONS.map(({ id }) => id));
  });

  test('what nothing answers to finds nothing', () => {
    expect(searchActions('qqqxyzzy', ACTIONS)).toEqual([]);
  });

  test('a beginning counts more than a middle, a middle more than scattered letters', () => {
    expect(matchScore('sav', 'Save plan')).toBeGreaterThan(matchScore('pla', 'Save plan'));
    expect(matchScore('pla', 'Save plan')).toBeGreaterThan(matchScore('spn', 'Save plan'));
    expect(matchScore('spn', 'Save plan')).toBeGreaterThan(0);
  });

  test('every action is found by its own name', () => {
    fc.assert(
      fc.property(fc.constantFrom(...ACTIONS), (action) => {
        expect(searchActions(action.name, ACTIONS).map(({ id }) => id)).toContain(action.id);
      }),
    );
  });
});
