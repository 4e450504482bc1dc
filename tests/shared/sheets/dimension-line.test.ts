import { describe, expect, test } from 'vitest';
import { type DimensionWish, addDimension, slotsOutward } from '#shared/sheets/dimension-line';
import type { Mark } from '#shared/sheets/sheet';
import { PAPERS } from '#shared/paper/papers';
import { typeSizesOf } from '#shared/paper/type-sizes';
import { marksOf, viewDraft, viewFrame } from '#shared/sheets/view-draft';

const view = () => viewDraft(viewFrame(50, 0, 0, 100, 100), typeSizesOf(PAPERS.A3), 'metric', { left: 0, top: 0, right: 300, bottom: 200 });
const wish: DimensionWish = {
  x: 100,
  y: 100,
  along_rad: 0,
  length_mm: 60,
  words: 'N1: 3.000 m',
  isBold: true,
  fromAside_mm: [0, 40],
  toAside_mm: [20],
  slots: slotsOutward(-10, -1, 5, 7, 0),
  fromDatum: true,
};
const texts = (marks: readonly Mark[]) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : []));
const lines = (marks: readonly Mark[]) => marks.flatMap((mark) => (mark.kind === 'line' ? [mark.places] : []));

describe('dimension line', () => {
  test('it is as long as it says, lies in the first slot, and its text stands on it', () => {
    const draft = view();
    expect(addDimension(draft, wish)).toBe(true);
    const marks = marksOf(draft);
    expect(lines(marks)).toContainEqual([100, 110, 160, 110]);
    const [words] = texts(marks);
    expect(words).toMatchObject({ text: 'N1: 3.000 m', font: 'bold', align: 'middle', x: 130 });
    expect(words?.y).toBeLessThan(110);
    expect(marks.filter(({ kind }) => kind === 'circle')).toHaveLength(1);
  });

  test('a second one of the same length takes the next slot, and texts stay apart', () => {
    const draft = view();
    addDimension(draft, wish);
    addDimension(draft, { ...wish, words: 'N2: 3.000 m' });
    const [first, second] = texts(marksOf(draft));
    expect(Math.abs((first?.y ?? 0) - (second?.y ?? 0))).toBeCloseTo(7, 6);
  });

  test('a text that is wider than its distance stands beyond the end', () => {
    const draft = view();
    addDimension(draft, { ...wish, length_mm: 5 });
    const [words] = texts(marksOf(draft));
    expect(words?.x).toBeGreaterThan(105);
  });

  test('an upright one reads from the right', () => {
    const draft = view();
    addDimension(draft, { ...wish, along_rad: Math.PI / 2, slots: slotsOutward(10, 1, 5, 7, 0) });
    const [words] = texts(marksOf(draft));
    expect(words?.rotation_rad).toBeCloseTo(Math.PI / 2, 9);
    expect(lines(marksOf(draft))).toContainEqual([90, 100, 90, 40].map((value) => expect.closeTo(value, 6)));
  });

  test('it keeps out of a neighbouring room, and draws nothing where there is no slot', () => {
    const draft = view();
    addDimension(draft, { ...wish, isForeign: (_, y) => y > 105 && y < 130, slots: slotsOutward(-10, -1, 8, 7, 0) });
    expect(texts(marksOf(draft))[0]?.y).toBeGreaterThan(128);
    const full = view();
    full.placer.block({ x: 150, y: 100, halfWidth: 150, halfHeight: 100, rotation_rad: 0 });
    expect(addDimension(full, wish)).toBe(false);
    expect(marksOf(full)).toEqual([]);
  });
});
