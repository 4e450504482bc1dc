import { describe, expect, test } from 'vitest';
import { readTyped } from '../../../src-renderer/tools/typed-entry.ts';
import { isInWords, readWords } from '../../../src-renderer/tools/typed-words.ts';

const FOOT_m = 0.3048;
const ASKS = ['length', 'angle', 'height', 'words'] as const;
const near = (value: number) => expect.closeTo(value, 9);

describe('words of a fitter', () => {
  test('up, down, and a height of its own', () => {
    expect(readWords('up 1-6', 'feet')).toMatchObject({ rise_m: near(1.5 * FOOT_m), height_m: null });
    expect(readWords('down 3"', 'feet')).toMatchObject({ rise_m: near(-0.0762) });
    expect(readWords('at 9-2', 'feet')).toMatchObject({ height_m: near((9 + 2 / 12) * FOOT_m), rise_m: null });
    expect(readWords('z -0-4', 'feet')).toMatchObject({ height_m: near(-0.1016) });
    expect(readWords('UP 450 mm', 'feet')).toMatchObject({ rise_m: near(0.45) });
  });
  test('directions, places, turns', () => {
    expect(readWords('west 24-6', 'feet')).toMatchObject({ length_m: near(24.5 * FOOT_m), angle_rad: near(Math.PI) });
    expect(readWords('24-6 west', 'feet')).toMatchObject({ length_m: near(24.5 * FOOT_m), angle_rad: near(Math.PI) });
    expect(readWords('x 30-9 y 10-0', 'feet')).toMatchObject({ x_m: near(30.75 * FOOT_m), y_m: near(10 * FOOT_m), length_m: null });
    expect(readWords('left 3', 'metric')).toMatchObject({ length_m: 3, turn_rad: near(Math.PI / 2) });
    expect(readWords('up 1-4, north 9', 'feet')).toMatchObject({ rise_m: near((16 / 12) * FOOT_m), length_m: near(9 * FOOT_m), angle_rad: near(Math.PI / 2) });
  });
  test('offsets, rolling ones too', () => {
    expect(readWords('offset 12" left', 'feet')).toMatchObject({ offset: { plain_m: null, left_m: near(FOOT_m), up_m: 0 } });
    expect(readWords('offset right 12" and down 9"', 'feet')).toMatchObject({ offset: { left_m: near(-FOOT_m), up_m: near(-0.2286) } });
    expect(readWords('offset 12" left 9" up then at 9-2', 'feet')).toMatchObject({ offset: { left_m: near(FOOT_m), up_m: near(0.2286) }, height_m: near((9 + 2 / 12) * FOOT_m) });
    expect(readWords('offset 12"', 'feet')).toMatchObject({ offset: { plain_m: near(FOOT_m) } });
    expect(readWords('offset 12" north', 'feet')).toMatchObject({ offset: { north_m: near(FOOT_m) } });
  });
  test('what is not understood is said', () => {
    expect(readWords('up', 'feet')).toBe('Say how far “up”.');
    expect(readWords('offset', 'feet')).toContain('how far');
    expect(readWords('up high', 'feet')).toContain('not a length');
    expect(readWords('x 1 x 2', 'feet')).toContain('twice');
    expect(readWords('up 1 at 9', 'feet')).toContain('either');
    expect(readWords('north 1 south 2', 'feet')).toContain('Only one length');
  });
  test('units are no words', () => {
    expect(isInWords('12 in')).toBe(false);
    expect(isInWords('3460 mm')).toBe(false);
    expect(isInWords('up 3')).toBe(true);
  });
  test('stand in any part of the field where the tool takes them, nowhere else', () => {
    expect(readTyped({ length: 'up 1-6' }, ASKS, 'feet')).toMatchObject({ ok: true, event: { length_m: null, run: { rise_m: near(1.5 * FOOT_m) } } });
    expect(readTyped({ length: '5', height: 'down 3"' }, ASKS, 'feet')).toMatchObject({ ok: true, event: { length_m: near(5 * FOOT_m), height_m: null, run: { rise_m: near(-0.0762) } } });
    expect(readTyped({ length: '5', words: 'north 4' }, ASKS, 'feet')).toMatchObject({ ok: false, field: 'words' });
    expect(readTyped({ height: '9', words: 'up 4' }, ASKS, 'feet')).toMatchObject({ ok: false });
    expect(readTyped({ length: 'up 1-6' }, ['length'], 'feet')).toMatchObject({ ok: false });
  });
});
