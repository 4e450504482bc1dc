import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { MENU } from '../../../src-main/electron/menu.ts';

const ACTIONS = join(import.meta.dirname, '..', '..', '..', 'src-renderer', 'actions');

test('every entry of the menu is an action that the window has, under the same id', () => {
  const source = readdirSync(ACTIONS)
    .map((name) => readFileSync(join(ACTIONS, name), 'utf8'))
    .join('\n');
  const known = new Set([...source.matchAll(/\bid: '([a-z-]+)'/g)].map(([, id]) => id));
  const entries = MENU.flatMap(({ lines }) => lines).filter((line) => line !== 'line');
  expect(entries.map(({ action }) => action).filter((action) => !known.has(action))).toEqual([]);
});
