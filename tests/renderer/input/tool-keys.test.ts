import { describe, expect, test } from 'vitest';
import { meaningOf } from '../../../src-renderer/input/tool-keys.ts';

const press = (key: string, change = {}) => ({ key, ctrlKey: false, metaKey: false, altKey: false, ...change });
const drawing = { tool: 'enclosure' as const, dialog: null, isDragging: false };
const picking = { tool: 'select' as const, dialog: null, isDragging: false };
const idle = { sketch: {}, asks: [] };
const atWork = { sketch: { lines: [{ places: [{ x: 0, y: 0 }] }] }, asks: ['length', 'angle'] as const };

describe('keys of the tool at work', () => {
  test('Escape, Enter and Backspace step it', () => {
    expect(meaningOf(press('Escape'), drawing, atWork)).toEqual({ kind: 'tool', event: { kind: 'cancel' } });
    expect(meaningOf(press('Enter'), drawing, atWork)).toEqual({ kind: 'tool', event: { kind: 'enter' } });
    expect(meaningOf(press('Backspace'), drawing, atWork)).toEqual({ kind: 'tool', event: { kind: 'back' } });
  });

  test('Backspace is left to the window while nothing is drawn: it deletes what is selected', () => {
    expect(meaningOf(press('Backspace'), picking, idle)).toBeNull();
    expect(meaningOf(press('Backspace'), picking, atWork)).toBeNull();
  });

  test('what begins a figure opens the field only while the tool asks for one', () => {
    for (const key of ['1', '0', '.', '-', "'"]) expect(meaningOf(press(key), drawing, atWork)).toEqual({ kind: 'type', text: key });
    expect(meaningOf(press('1'), drawing, idle)).toBeNull();
    expect(meaningOf(press('a'), drawing, atWork)).toBeNull();
  });

  test('Tab opens the field empty while something is half drawn, else it goes on to the next control', () => {
    expect(meaningOf(press('Tab'), drawing, atWork)).toEqual({ kind: 'type', text: '' });
    expect(meaningOf(press('Tab', { shiftKey: true }), drawing, atWork)).toBeNull();
    expect(meaningOf(press('Tab'), drawing, { sketch: {}, asks: ['height'] })).toBeNull();
    expect(meaningOf(press('Tab'), drawing, { ...atWork, asks: [] })).toBeNull();
  });

  test('shortcuts and open dialogs keep their keys', () => {
    expect(meaningOf(press('1', { ctrlKey: true }), drawing, atWork)).toBeNull();
    expect(meaningOf(press('Escape'), { ...drawing, dialog: 'print' }, atWork)).toBeNull();
  });
});
