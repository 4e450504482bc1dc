import { describe, expect, test } from 'vitest';
import { readTyped } from '../../../src-renderer/tools/typed-entry.ts';

describe('the field at the pointer', () => {
  test('reads lengths of either system and directions in degrees', () => {
    expect(readTyped({ length: `12' 6"`, angle: '90' }, ['length', 'angle'], 'metric')).toEqual({
      ok: true,
      event: { kind: 'typed', length_m: expect.closeTo(3.81, 12), angle_rad: expect.closeTo(Math.PI / 2, 12), height_m: null },
    });
    expect(readTyped({ length: '3.46 m', height: '7-6' }, ['length', 'angle', 'height'], 'feet')).toMatchObject({
      ok: true,
      event: { length_m: 3.46, angle_rad: null, height_m: expect.closeTo(2.286, 12) },
    });
    expect(readTyped({ length: '3.46' }, ['length'], 'metric')).toMatchObject({ ok: true, event: { length_m: 3.46 } });
  });

  test('passes over parts that the tool does not take', () => {
    expect(readTyped({ length: '2', height: 'nonsense' }, ['length'], 'metric')).toMatchObject({ ok: true, event: { height_m: null } });
  });

  test('says which part was not understood and why', () => {
    expect(readTyped({ length: '3', angle: 'north' }, ['length', 'angle'], 'metric')).toMatchObject({ ok: false, field: 'angle', reason: expect.stringContaining('north') });
    expect(readTyped({ height: 'high' }, ['height'], 'feet')).toMatchObject({ ok: false, field: 'height' });
    expect(readTyped({ length: ' ' }, ['length', 'angle'], 'feet')).toEqual({ ok: false, field: 'length', reason: 'Type a length.' });
  });
});
