import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { findElectron, isInstalled, sourcesDigest } from '../../../src-main/launch/ensure.mjs';
import { tempFolder } from '../../support/temp-folder.ts';

const put = (folder: string, path: string, content: unknown): void => {
  mkdirSync(join(folder, path, '..'), { recursive: true });
  writeFileSync(join(folder, path), typeof content === 'string' ? content : JSON.stringify(content));
};

describe('whether the packages are those of the lock file', () => {
  const wanted = { packages: { '': {}, 'node_modules/a': { version: '1.0.0' }, 'node_modules/b': { version: '2.0.0', optional: true } } };
  test.each([
    ['nothing installed', undefined, false],
    ['the same', wanted, true],
    ['an optional one of another system missing', { packages: { 'node_modules/a': { version: '1.0.0' } } }, true],
    ['one missing', { packages: { 'node_modules/b': { version: '2.0.0' } } }, false],
    ['another version', { packages: { 'node_modules/a': { version: '1.0.1' } } }, false],
    ['another version of an optional one', { packages: { 'node_modules/a': { version: '1.0.0' }, 'node_modules/b': { version: '1.0.0' } } }, false],
    ['a damaged list', '{', false],
  ])('%s', (_, present, expected) => {
    const folder = tempFolder();
    put(folder, 'package-lock.json', wanted);
    if (present !== undefined) put(folder, 'node_modules/.package-lock.json', present);
    expect(isInstalled(folder)).toBe(expected);
  });
});

describe('whether a build is stale', () => {
  test('the digest follows names and contents of the sources, and nothing else', () => {
    const folder = tempFolder();
    put(folder, 'src-shared/a.ts', 'a');
    put(folder, 'package.json', '{}');
    const first = sourcesDigest(folder);
    expect(sourcesDigest(folder)).toBe(first);
    put(folder, 'README.md', 'text');
    put(folder, 'tests/a.test.ts', 'test');
    expect(sourcesDigest(folder)).toBe(first);
    put(folder, 'src-shared/a.ts', 'b');
    const second = sourcesDigest(folder);
    expect(second).not.toBe(first);
    put(folder, 'src-renderer/deep/b.ts', '');
    expect(sourcesDigest(folder)).not.toBe(second);
  });
});

test('the desktop runtime is there when the program that its package names is', () => {
  const folder = tempFolder();
  expect(findElectron(folder)).toBeUndefined();
  put(folder, 'node_modules/electron/path.txt', 'electron');
  expect(findElectron(folder)).toBeUndefined();
  put(folder, 'node_modules/electron/dist/electron', '');
  expect(findElectron(folder)).toBe(join(folder, 'node_modules', 'electron', 'dist', 'electron'));
});
