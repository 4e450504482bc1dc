import { describe, expect, test } from 'vitest';
import { ACTIONS } from '../../../src-renderer/actions/actions.ts';
import { findByKey, shortcutOf, shortcutText, worksInFields } from '../../../src-renderer/actions/shortcuts.ts';

const press = (key: string, held: { ctrl?: boolean; meta?: boolean; shift?: boolean; alt?: boolean } = {}) => ({
  key,
  ctrlKey: held.ctrl ?? false,
  metaKey: held.meta ?? false,
  shiftKey: held.shift ?? false,
  altKey: held.alt ?? false,
});

describe('shortcuts', () => {
  test.each([
    [press('n'), 'N'],
    [press('S', { ctrl: true, shift: true }), 'Mod+Shift+S'],
    [press('s', { meta: true }), 'Mod+S'],
    [press('ArrowLeft', { alt: true }), 'Alt+Left'],
    [press('+', { shift: true }), '+'],
    [press('F2'), 'F2'],
  ])('a press is written as shortcuts are', (given, written) => {
    expect(shortcutOf(given)).toBe(written);
  });

  test('no two actions want the same key', () => {
    const keys = ACTIONS.flatMap((action) => action.keys ?? []);
    expect(keys.filter((key, i) => keys.indexOf(key) !== i)).toEqual([]);
  });

  test('no two actions have the same id or the same name', () => {
    for (const names of [ACTIONS.map(({ id }) => id), ACTIONS.map(({ name }) => name)]) expect(new Set(names).size).toBe(names.length);
  });

  test('a press finds its action', () => {
    expect(findByKey(ACTIONS, press('z', { ctrl: true }))?.id).toBe('undo');
    expect(findByKey(ACTIONS, press('n'))?.id).toBe('tool-nozzle');
    expect(findByKey(ACTIONS, press('n', { ctrl: true }))).toBeUndefined();
  });

  test('while text is typed, letters and the field’s own editing keys stay with the field', () => {
    expect(worksInFields(press('n'))).toBe(false);
    expect(worksInFields(press('z', { ctrl: true }))).toBe(false);
    expect(worksInFields(press('v', { ctrl: true }))).toBe(false);
    expect(worksInFields(press('ArrowLeft', { ctrl: true }))).toBe(false);
    expect(worksInFields(press('s', { ctrl: true }))).toBe(true);
    expect(worksInFields(press('F2'))).toBe(true);
  });

  test('keys read as the keyboard has them', () => {
    expect(shortcutText('Mod+Shift+S', false)).toBe('Ctrl+Shift+S');
    expect(shortcutText('Mod+K', true)).toBe('⌘+K');
  });
});
