import { readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { expect, test } from 'vitest';
import { hexColour, indexedColour } from '#shared/underlay/dxf/colours';

/** The table of the library dxf-parser: it lies in a file of its own. */
async function libraryTable(): Promise<number[]> {
  const folder = dirname(fileURLToPath(import.meta.resolve('dxf-parser')));
  const file = readdirSync(folder).find((name) => name.endsWith('ColorIndex.js'));
  if (file === undefined) throw new Error('the library has no table');
  const table: { default: number[] } = await import(pathToFileURL(join(folder, file)).href);
  return table.default;
}

test('the hues agree with the table of the library dxf-parser within one step of 255', async () => {
  const palette = await libraryTable();
  for (let index = 10; index < 250; index += 1) {
    for (const shift of [16, 8, 0]) {
      const ours = (indexedColour(index) >> shift) & 255;
      const theirs = ((palette[index] ?? 0) >> shift) & 255;
      expect(Math.abs(ours - theirs), `index ${index}`).toBeLessThanOrEqual(1);
    }
  }
});

test('the named ones are what everybody calls them', () => {
  expect([1, 2, 3, 4, 5, 6].map((index) => hexColour(indexedColour(index)))).toEqual(['#ff0000', '#ffff00', '#00ff00', '#00ffff', '#0000ff', '#ff00ff']);
  expect(hexColour(indexedColour(7))).toBe('#000000');
  expect(hexColour(indexedColour(255))).toBe('#ffffff');
  for (let index = 250; index < 255; index += 1) expect(indexedColour(index)).toBeLessThan(indexedColour(index + 1));
});
