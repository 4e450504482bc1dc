import { readdir, utimes } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { newPlan } from '#shared/model/plan';
import { makeAssetStore } from '../../../src-main/services/asset-store.ts';
import { tidyUserData } from '../../../src-main/services/tidy.ts';
import { TEST_TIME, goodOf, hostIn } from '../../support/hosts.ts';
import { tempFolder } from '../../support/temp-folder.ts';

test('floor plans that nothing unsaved needs go after two months without use', async () => {
  const folder = tempFolder();
  const own = join(folder, 'own');
  const kept = join(own, 'floor-plans');
  const store = makeAssetStore(kept, () => TEST_TIME);
  const [stale, unsaved, recent] = await Promise.all(['1', '2', '3'].map((text) => store.keep(`${text}.dxf`, new TextEncoder().encode(text))));
  const before = new Date(TEST_TIME.getTime() - 61 * 24 * 60 * 60 * 1000);
  for (const sha256 of [stale, unsaved]) await utimes(join(kept, sha256 ?? ''), before, before);
  await utimes(join(kept, recent ?? ''), TEST_TIME, TEST_TIME);
  const host = hostIn(folder);
  const plan = { ...newPlan(), assets: { a: { id: 'a', name: '2.dxf', file: '2.dxf', sha256: unsaved ?? '' } } };
  goodOf(await host.keepRecovery({ session: 's1', ref: null, name: 'x', steps: 1, plan }));
  await tidyUserData(own, () => TEST_TIME);
  expect((await readdir(kept)).filter((name) => !name.endsWith('.name')).sort()).toEqual([unsaved, recent].sort());
});
