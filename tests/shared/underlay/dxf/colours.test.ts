import palette from 'dxf-parser/dist/AutoCadColorIndex.js';
import { expect, test } from 'vitest';
import { hexColour, indexedColour } from '#shared/underlay/dxf/colours';

test('the hues agree with the table of the library dxf-parser within one step of 255', () => {
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
