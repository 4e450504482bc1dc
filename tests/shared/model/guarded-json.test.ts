import { describe, expect, test } from 'vitest';
import { MOST_JSON_VALUES, parseGuardedJson } from '#shared/model/guarded-json';

describe('guarded JSON', () => {
  test('reads what JSON can hold', () => {
    expect(parseGuardedJson('{"a":[1,-2.5e3,null,true,"\\u00e4"]}', 'x')).toEqual({ ok: true, value: { a: [1, -2500, null, true, 'ä'] } });
  });
  test('names the text it speaks of', () => {
    expect(parseGuardedJson('{', 'profile.json')).toMatchObject({ ok: false, problem: { where: 'profile.json, line 1, character 2' } });
  });
  test('counts no brackets inside strings', () => {
    expect(parseGuardedJson(JSON.stringify(['[[[[', '\\"[', '{'.repeat(500)]), 'x').ok).toBe(true);
  });
  test('takes so many values and no more', () => {
    expect(parseGuardedJson(`[${'1,'.repeat(MOST_JSON_VALUES - 3)}1]`, 'x').ok).toBe(true);
    expect(parseGuardedJson(`[${'1,'.repeat(MOST_JSON_VALUES)}1]`, 'x')).toMatchObject({ ok: false, problem: { code: 'too-large' } });
  });
});
