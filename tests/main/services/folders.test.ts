import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { foldersIn, usualFolders } from '../../../src-main/services/folders.ts';
import { tempFolder } from '../../support/temp-folder.ts';

test('each system has its own place for the program\'s things', () => {
  const home = tempFolder();
  expect(usualFolders({}, 'linux', home).userDataFolder).toBe(join(home, '.local', 'share', 'nozzlewright'));
  expect(usualFolders({ XDG_DATA_HOME: '/data' }, 'linux', home).userDataFolder).toBe(join('/data', 'nozzlewright'));
  expect(usualFolders({}, 'darwin', home).userDataFolder).toBe(join(home, 'Library', 'Application Support', 'Nozzlewright'));
  expect(usualFolders({ APPDATA: '/roaming' }, 'win32', home).userDataFolder).toBe(join('/roaming', 'Nozzlewright'));
});

test('plans are kept in the documents where there are any', () => {
  const home = tempFolder();
  expect(usualFolders({}, 'linux', home).plansFolder).toBe(join(home, 'Nozzlewright'));
  mkdirSync(join(home, 'Documents'));
  expect(usualFolders({}, 'linux', home).plansFolder).toBe(join(home, 'Documents', 'Nozzlewright'));
});

test('a folder that the user named holds everything', () => {
  expect(foldersIn('/jobs')).toEqual({ userDataFolder: join('/jobs', '.nozzlewright'), plansFolder: '/jobs' });
});
