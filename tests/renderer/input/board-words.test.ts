import { expect, test } from 'vitest';
import { selectionWords } from '../../../src-renderer/input/board-words.ts';
import { smallPlan } from '../canvas/support/small-plan.ts';

const plan = smallPlan();

test('what is selected is said by name', () => {
  expect(selectionWords(plan, [])).toBe('Nothing selected.');
  expect(selectionWords(plan, [{ kind: 'nozzle', network: 'net', id: 'z1' }])).toBe('Nozzle N1 selected.');
  const several = selectionWords(plan, [
    { kind: 'nozzle', network: 'net', id: 'z1' },
    { kind: 'cylinder', network: 'net', id: 'c1' },
  ]);
  expect(several).toBe('2 things selected: Nozzle N1, Cylinder C1.');
});
