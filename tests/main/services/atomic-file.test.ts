import * as fs from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type FileSteps, replaceFile } from '../../../src-main/services/atomic-file.ts';
import { tempFolder } from '../../support/temp-folder.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const OLD = 'old '.repeat(5000);
const NEW = 'new '.repeat(9000);
const readOr = (path: string): Promise<string | null> => fs.readFile(path, 'utf8').catch(() => null);

/** File operations that end with step number `last`: it and all after it fail, as for a process that was killed there. */
function killedAfter(last: number): FileSteps & { count: number } {
  const steps = { count: 0 } as FileSteps & { count: number };
  const { open, rename, link, copyFile, unlink, realpath, readdir, mkdir } = fs;
  for (const [name, step] of Object.entries({ open, rename, link, copyFile, unlink, realpath, readdir, mkdir })) {
    const through = step as (...words: unknown[]) => Promise<unknown>;
    Object.assign(steps, {
      [name]: async (...words: unknown[]) => {
        steps.count += 1;
        if (steps.count > last) throw new Error('killed');
        return through(...words);
      },
    });
  }
  return steps;
}

const failing = (change: Partial<Record<keyof FileSteps, (...words: never[]) => Promise<unknown>>>): FileSteps => ({ ...fs, ...change }) as unknown as FileSteps;
const systemError = (code: string): Error => Object.assign(new Error(code), { code });

describe('replacing a file', () => {
  test('killed between any two steps, the name leads to the whole old or the whole new file', async () => {
    let sawOld = 0;
    let sawNew = 0;
    for (let last = 0; ; last += 1) {
      const folder = tempFolder();
      const path = join(folder, 'plan.nzw');
      await fs.writeFile(path, OLD);
      const steps = killedAfter(last);
      const isDone = await replaceFile(path, bytes(NEW), { keepPrevious: true, steps }).then(
        () => true,
        () => false,
      );
      const found = await readOr(path);
      expect([OLD, NEW]).toContain(found);
      expect([null, OLD]).toContain(await readOr(`${path}.bak`));
      if (found === NEW) expect(await readOr(`${path}.bak`)).toBe(OLD);
      sawOld += found === OLD ? 1 : 0;
      sawNew += found === NEW ? 1 : 0;
      if (isDone && steps.count <= last) break;
    }
    expect(sawOld).toBeGreaterThan(3);
    expect(sawNew).toBeGreaterThan(0);
  });

  test('a write that fails leaves the old file, and nothing beside it', async () => {
    const folder = tempFolder();
    const path = join(folder, 'plan.nzw');
    await fs.writeFile(path, OLD);
    const open = async (name: string, flags: string) => {
      const file = await fs.open(name, flags);
      return flags === 'wx' ? Object.assign(file, { writeFile: () => Promise.reject(systemError('ENOSPC')) }) : file;
    };
    await expect(replaceFile(path, bytes(NEW), { keepPrevious: true, steps: failing({ open }) })).rejects.toThrow('ENOSPC');
    expect(await readOr(path)).toBe(OLD);
    expect(await fs.readdir(folder)).toEqual(['plan.nzw']);
  });

  test('the new bytes are flushed to the disk before they take the name, and the name after', async () => {
    const path = join(tempFolder(), 'plan.nzw');
    const seen: string[] = [];
    const open = async (name: string, flags: string) => {
      const file = await fs.open(name, flags);
      return new Proxy(file, {
        get(target, part) {
          const value: unknown = Reflect.get(target, part, target);
          if (typeof value !== 'function') return value;
          return (...words: unknown[]) => {
            if (part === 'writeFile' || part === 'sync') seen.push(`${String(part)} ${flags === 'wx' ? 'bytes' : 'folder'}`);
            return value.apply(target, words);
          };
        },
      });
    };
    const rename = (from: string, to: string) => {
      seen.push('rename');
      return fs.rename(from, to);
    };
    await replaceFile(path, bytes(NEW), { steps: failing({ open, rename }) });
    expect(seen).toEqual(['writeFile bytes', 'sync bytes', 'rename', 'sync folder']);
  });

  test('what was there before stays beside it', async () => {
    const path = join(tempFolder(), 'plan.nzw');
    await replaceFile(path, bytes('1'), { keepPrevious: true });
    expect(await readOr(`${path}.bak`)).toBeNull();
    await replaceFile(path, bytes('2'), { keepPrevious: true });
    await replaceFile(path, bytes('3'), { keepPrevious: true });
    expect([await readOr(path), await readOr(`${path}.bak`)]).toEqual(['3', '2']);
  });

  test('nothing is left beside it either where the .bak is that very file already', async () => {
    const folder = tempFolder();
    const path = join(folder, 'plan.nzw');
    await fs.writeFile(path, OLD);
    await fs.link(path, `${path}.bak`);
    await replaceFile(path, bytes(NEW), { keepPrevious: true });
    expect((await fs.readdir(folder)).sort()).toEqual(['plan.nzw', 'plan.nzw.bak']);
    expect([await readOr(path), await readOr(`${path}.bak`)]).toEqual([NEW, OLD]);
  });

  test('a disk without second names keeps a copy', async () => {
    const path = join(tempFolder(), 'plan.nzw');
    await fs.writeFile(path, OLD);
    await replaceFile(path, bytes(NEW), { keepPrevious: true, steps: failing({ link: () => Promise.reject(systemError('EPERM')) }) });
    expect([await readOr(path), await readOr(`${path}.bak`)]).toEqual([NEW, OLD]);
  });

  test('a file that another program holds for a moment is tried again', async () => {
    const path = join(tempFolder(), 'plan.nzw');
    let busy = 2;
    const rename = (from: string, to: string) => (busy-- > 0 ? Promise.reject(systemError('EBUSY')) : fs.rename(from, to));
    await replaceFile(path, bytes(NEW), { steps: failing({ rename }) });
    expect(await readOr(path)).toBe(NEW);
  });

  test('a refusal before the swap changes nothing', async () => {
    const folder = tempFolder();
    const path = join(folder, 'plan.nzw');
    await fs.writeFile(path, OLD);
    const beforeSwap = () => Promise.reject(new Error('conflict'));
    await expect(replaceFile(path, bytes(NEW), { keepPrevious: true, beforeSwap })).rejects.toThrow('conflict');
    expect(await fs.readdir(folder)).toEqual(['plan.nzw']);
    expect(await readOr(path)).toBe(OLD);
  });

  test('a link is followed, not replaced', async () => {
    const folder = tempFolder();
    await fs.mkdir(join(folder, 'real'));
    await fs.writeFile(join(folder, 'real', 'plan.nzw'), OLD);
    await fs.symlink(join(folder, 'real', 'plan.nzw'), join(folder, 'plan.nzw'));
    await replaceFile(join(folder, 'plan.nzw'), bytes(NEW));
    expect((await fs.lstat(join(folder, 'plan.nzw'))).isSymbolicLink()).toBe(true);
    expect(await readOr(join(folder, 'real', 'plan.nzw'))).toBe(NEW);
  });

  test('what a killed program left is cleared, what a running one writes is not', async () => {
    const folder = tempFolder();
    const id = '0-0-0';
    // No process has this number: the largest that Linux gives out is 4,194,304.
    await fs.writeFile(join(folder, `.nzw-4194999-${id}.part`), 'left');
    await fs.writeFile(join(folder, `.nzw-${process.pid}-${id}.part`), 'being written');
    await replaceFile(join(folder, 'plan.nzw'), bytes(NEW));
    expect((await fs.readdir(folder)).sort()).toEqual([`.nzw-${process.pid}-${id}.part`, 'plan.nzw']);
  });

  test('a folder that is not there is made', async () => {
    const path = join(tempFolder(), 'a', 'b', 'plan.nzw');
    await replaceFile(path, bytes(NEW));
    expect(await readOr(path)).toBe(NEW);
  });
});
