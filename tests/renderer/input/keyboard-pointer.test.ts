import { expect, test } from 'vitest';
import { steppedPlace } from '../../../src-renderer/input/keyboard-pointer.ts';

const press = (key: string, shiftKey = false) => ({ key, shiftKey });

test('arrow keys go from grid line to grid line, with Shift ten at once', () => {
  expect(steppedPlace({ x: 0.13, y: 0.5 }, press('ArrowRight'), 0.1)).toEqual({ x: 0.2, y: 0.5 });
  expect(steppedPlace({ x: 0.13, y: 0.5 }, press('ArrowUp', true), 0.1)).toEqual({ x: 0.13, y: 1.5 });
  expect(steppedPlace({ x: 1, y: 1 }, press('ArrowDown'), 0.25)).toEqual({ x: 1, y: 0.75 });
  expect(steppedPlace({ x: 1, y: 1 }, press('ArrowLeft'), 0.25)).toEqual({ x: 0.75, y: 1 });
});

test('any other key is none of its business', () => {
  expect(steppedPlace({ x: 1, y: 1 }, press('a'), 0.25)).toBeUndefined();
});
