import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { makePreferences } from '../../../src-main/services/preferences.ts';
import { makeRecentPlans } from '../../../src-main/services/recent-plans.ts';
import { tempFolder } from '../../support/temp-folder.ts';

describe('small files of the program', () => {
  test.each(['', '{', '[1]', '{"theme":{"deep":1}}'])('preferences that read %j begin anew', async (text) => {
    const folder = tempFolder();
    await writeFile(join(folder, 'preferences.json'), text);
    const preferences = makePreferences(folder);
    expect(await preferences.read()).toEqual({});
    await preferences.change((now) => ({ ...now, theme: 'dark' }));
    expect(await preferences.read()).toEqual({ theme: 'dark' });
  });

  test('changes at the same moment are all kept, from two holders of the file too', async () => {
    const folder = tempFolder();
    const [first, second] = [makePreferences(folder), makePreferences(folder)];
    await Promise.all(Array.from({ length: 20 }, (_, i) => (i % 2 ? first : second).change((now) => ({ ...now, [`key${i}`]: i }))));
    expect(Object.keys(await first.read())).toHaveLength(20);
  });

  test('recent plans are newest first, each once, twenty at most', async () => {
    const recent = makeRecentPlans(tempFolder());
    for (let i = 0; i < 25; i += 1) await recent.add(`/plan-${i}.nzw`);
    await recent.add('/plan-10.nzw');
    const list = await recent.list();
    expect(list).toHaveLength(20);
    expect(list.slice(0, 2)).toEqual(['/plan-10.nzw', '/plan-24.nzw']);
    await recent.forget('/plan-10.nzw');
    expect(await recent.list()).not.toContain('/plan-10.nzw');
  });
});
