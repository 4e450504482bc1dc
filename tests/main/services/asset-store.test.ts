import { readdir, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { makeAssetStore, sha256Of } from '../../../src-main/services/asset-store.ts';
import { tempFolder } from '../../support/temp-folder.ts';

const DAY_ms = 24 * 60 * 60 * 1000;
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

test('the digest is SHA-256 (FIPS 180-4: the digest of "abc")', () => {
  expect(sha256Of(bytes('abc'))).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
});

describe('floor plans that are kept', () => {
  test('come back under their digest with their first name', async () => {
    const store = makeAssetStore(join(tempFolder(), 'kept'), () => new Date());
    const sha256 = await store.keep('ground floor.dxf', bytes('drawing'));
    await store.keep('copy.dxf', bytes('drawing'));
    expect(await store.read(sha256)).toEqual({ name: 'ground floor.dxf', bytes: bytes('drawing') });
  });

  test('that are not there, or no longer what they were, are not found', async () => {
    const folder = tempFolder();
    const store = makeAssetStore(folder, () => new Date());
    expect(await store.find('0'.repeat(64))).toBeUndefined();
    const sha256 = await store.keep('a.dxf', bytes('drawing'));
    await writeFile(join(folder, sha256), 'changed');
    expect(await store.find(sha256)).toBeUndefined();
    await expect(store.read(sha256)).rejects.toEqual(expect.objectContaining({ problem: expect.objectContaining({ code: 'not-found' }) }));
    await store.keep('a.dxf', bytes('drawing'));
    expect((await store.read(sha256)).bytes).toEqual(bytes('drawing'));
  });

  test('are dropped when long unused and not needed', async () => {
    const folder = tempFolder();
    const start = new Date('2026-01-01T00:00:00Z');
    const store = makeAssetStore(folder, () => start);
    const [old, needed, fresh] = [await store.keep('old', bytes('1')), await store.keep('needed', bytes('2')), await store.keep('fresh', bytes('3'))];
    const past = new Date(start.getTime() - 100 * DAY_ms);
    for (const sha256 of [old, needed]) await utimes(join(folder, sha256), past, past);
    await utimes(join(folder, fresh), start, start);
    await store.prune(new Date(start.getTime() - 60 * DAY_ms), new Set([needed]));
    expect((await readdir(folder)).sort()).toEqual([fresh, `${fresh}.name`, needed, `${needed}.name`].sort());
  });

  test('that are used stay young', async () => {
    const folder = tempFolder();
    const store = makeAssetStore(folder, () => new Date('2026-06-01T00:00:00Z'));
    const sha256 = await store.keep('a', bytes('1'));
    await utimes(join(folder, sha256), new Date(0), new Date(0));
    await store.read(sha256);
    await store.prune(new Date('2026-05-01T00:00:00Z'), new Set());
    expect(await store.find(sha256)).toBeDefined();
  });
});
