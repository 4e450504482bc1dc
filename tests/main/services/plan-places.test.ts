import { mkdir, symlink, utimes, writeFile } from 'node:fs/promises';
import { join, sep } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fileNameOf, makePlanPlaces } from '../../../src-main/services/plan-places.ts';
import { makeRecentPlans } from '../../../src-main/services/recent-plans.ts';
import { tempFolder } from '../../support/temp-folder.ts';

async function placesIn(folder: string) {
  const home = join(folder, 'plans');
  await mkdir(home, { recursive: true });
  const recent = makeRecentPlans(join(folder, 'own'));
  return { home, recent, places: makePlanPlaces(home, recent) };
}

describe('file names from plan names', () => {
  test.each([
    ['Tallowmere Signal Hut', 'Tallowmere Signal Hut'],
    ['hut.nzw', 'hut'],
    ['a/b\\c:d*e?f"g<h>i|j', 'a b c d e f g h i j'],
    ['../../etc/passwd', 'etc passwd'],
    ['  .hidden. ', 'hidden'],
    ['', 'Plan'],
    ['...', 'Plan'],
    ['CON', 'Plan CON'],
    ['lpt1.nzw', 'Plan lpt1'],
    ['Über-Raum ½', 'Über-Raum ½'],
    ['ü'.repeat(300), 'ü'.repeat(90)],
    ['😀'.repeat(300), '😀'.repeat(45)],
    ['tab\there\nline', 'tab here line'],
    ['hut\u202ewzn.exe', 'hut wzn.exe'],
  ])('%j becomes %j', (name, expected) => expect(fileNameOf(name)).toBe(expected));

  test('no name leads out of its folder', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (name) => {
        const made = fileNameOf(name);
        expect(made.length).toBeGreaterThan(0);
        expect(Buffer.byteLength(made)).toBeLessThanOrEqual(200);
        expect(made).not.toMatch(/[/\\:*?"<>|\0]|^\.|\.$/);
      }),
    );
  });
});

describe('places the window may name', () => {
  test('a plan in the plans folder, below it too', async () => {
    const { home, places } = await placesIn(tempFolder());
    expect(await places.pathOf(join(home, 'a.nzw'))).toBe(join(home, 'a.nzw'));
    expect(await places.pathOf(join(home, 'job', 'a.json'))).toBe(join(home, 'job', 'a.json'));
  });

  test.each([
    ['outside', (home: string) => join(home, '..', 'a.nzw')],
    ['outside by dots', (home: string) => `${home}${sep}..${sep}a.nzw`],
    ['a folder whose name begins alike', (home: string) => `${home}-other${sep}a.nzw`],
    ['the folder itself', (home: string) => home],
    ['not a plan', (home: string) => join(home, 'a.exe')],
    ['a zero in the name', (home: string) => join(home, 'a\0.nzw')],
    ['relative', () => 'a.nzw'],
    ['one of the program\'s own files', (home: string) => join(home, '.nozzlewright', 'recent-plans.json')],
    ['the system', () => '/etc/passwd'],
  ])('%s is refused', async (_, ref) => {
    const { home, places } = await placesIn(tempFolder());
    await expect(places.pathOf(ref(home))).rejects.toEqual(expect.objectContaining({ problem: expect.objectContaining({ code: 'refused' }) }));
  });

  test('a link in the folder that leads outside is refused and not listed, one that stays inside is followed', async () => {
    const folder = tempFolder();
    const { home, places } = await placesIn(folder);
    await mkdir(join(folder, 'elsewhere'));
    await writeFile(join(folder, 'elsewhere', 'a.nzw'), 'x');
    await writeFile(join(home, 'own.nzw'), 'x');
    await symlink(join(folder, 'elsewhere'), join(home, 'job'));
    await symlink(join(folder, 'elsewhere', 'a.nzw'), join(home, 'linked.nzw'));
    await symlink(join(home, 'own.nzw'), join(home, 'same.nzw'));
    for (const ref of [join(home, 'job', 'a.nzw'), join(home, 'job', 'new.nzw'), join(home, 'linked.nzw')]) await expect(places.pathOf(ref)).rejects.toThrow('not picked');
    expect(await places.pathOf(join(home, 'same.nzw'))).toBe(join(home, 'same.nzw'));
    expect((await places.list()).map(({ name }) => name).sort()).toEqual(['own', 'same']);
  });

  test('a plan elsewhere once it was granted, or is a recent one', async () => {
    const folder = tempFolder();
    const { places, recent } = await placesIn(folder);
    const granted = join(folder, 'elsewhere', 'a.nzw');
    const recently = join(folder, 'elsewhere', 'b.nzw');
    places.grant(granted);
    expect(await places.pathOf(granted)).toBe(granted);
    await expect(places.pathOf(recently)).rejects.toThrow();
    await recent.add(recently);
    expect(await places.pathOf(recently)).toBe(recently);
    await recent.forget(recently);
    await expect(places.pathOf(recently)).rejects.toThrow();
  });

  test('the list has recent plans and those in the folder, newest first, each once', async () => {
    const folder = tempFolder();
    const { home, places, recent } = await placesIn(folder);
    for (const [name, day] of [['old.nzw', 1], ['new.nzw', 9], ['notes.txt', 5], ['new.nzw.bak', 5]] as const) {
      await writeFile(join(home, name), 'x');
      await utimes(join(home, name), new Date(2026, 0, day), new Date(2026, 0, day));
    }
    await recent.add(join(folder, 'gone.nzw'));
    await recent.add(join(home, 'old.nzw'));
    expect((await places.list()).map(({ name, isRecent, isMissing }) => [name, isRecent, isMissing])).toEqual([
      ['new', false, false],
      ['old', true, false],
      ['gone', true, true],
    ]);
  });
});
