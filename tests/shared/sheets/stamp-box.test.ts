import { describe, expect, test } from 'vitest';
import { PAPERS } from '#shared/paper/papers';
import { typeSizesOf } from '#shared/paper/type-sizes';
import type { TextMark } from '#shared/sheets/marks';
import type { Mark } from '#shared/sheets/sheet';
import { STAMP_mm, stampBox, stampTable } from '#shared/sheets/stamp-box';

const SIZES = typeSizesOf(PAPERS['ANSI-B']);
const words = (marks: readonly Mark[]): string => marks.filter((mark): mark is TextMark => mark.kind === 'text').map(({ text }) => text).join(' ');
const room = (right: number, bottom: number) => ({ left: 0, top: 0, right, bottom });

// 4 × 6 in: common practice.
describe('stamp box', () => {
  test('with room it is 4 × 6 in and names no other sheet', () => {
    expect(words(stampBox(room(110, 180), SIZES, 'NW-00.3'))).toBe('Stamp and signature, 4 × 6 in clear');
  });

  test('a smaller one says its size and where the full one is', () => {
    expect(words(stampBox(room(84, 125), SIZES, 'NW-00.3'))).toMatch(/mm clear, 4 × 6 in on sheet NW-00\.3$/);
    expect(words(stampBox(room(84, 125), SIZES))).toMatch(/less than 4 × 6 in$/);
  });

  test('without room for any, only where the full one is', () => {
    expect(words(stampBox(room(84, 30), SIZES, 'NW-00.3'))).toBe('Stamp and signature: sheet NW-00.3');
    expect(stampBox(room(84, 30), SIZES)).toEqual([]);
  });

  test('the box of the cover has its full size, or is left out', () => {
    const [foot] = stampTable(room(150, 250), SIZES)?.foot ?? [];
    const drawing = foot?.kind === 'drawings' ? foot.drawings[0] : undefined;
    expect([drawing?.width_mm, drawing?.height_mm]).toEqual([STAMP_mm.width, STAMP_mm.height]);
    expect(stampTable(room(100, 250), SIZES)).toBeUndefined();
    expect(stampTable(room(150, 150), SIZES)).toBeUndefined();
  });
});
