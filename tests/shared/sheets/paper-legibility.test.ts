import { describe, expect, test } from 'vitest';
import { PAPERS } from '#shared/paper/papers';
import { typeSizesOf } from '#shared/paper/type-sizes';
import { viewBar } from '#shared/sheets/scale-bars';
import type { Mark, Sheet, SheetView } from '#shared/sheets/sheet';
import { markBox } from '#shared/sheets/text-box';
import { formatLength } from '#shared/units/length-text';
import { allMarks, composedDemo, textsOf } from '../../support/sheet-set.ts';

const INCH_mm = 25.4;
/** Least letters on a print at half size, 3/32 in. Common practice. */
const HALF_SIZE_LETTERS_mm = (3 / 32) * INCH_mm;
const SETS = [
  ['F1', 'submittal', 'ANSI-B'],
  ['F1', 'field', 'A4'],
  ['F2', 'submittal', 'ANSI-B'],
  ['F2', 'field', 'A3'],
  ['F3', 'submittal', 'ARCH-D'],
  ['F3', 'field', 'ARCH-D'],
] as const;

/** Outlines of bars that are 4 in long, within the paper of a view. */
function barsIn(marks: readonly Mark[], { box }: SheetView): Mark[] {
  return marks.filter((mark) => {
    if (mark.kind !== 'line' || !mark.closed || mark.fill) return false;
    const xs = mark.places.filter((_, i) => i % 2 === 0);
    const ys = mark.places.filter((_, i) => i % 2 === 1);
    const [left, right] = [Math.min(...xs), Math.max(...xs)];
    const isLong = Math.abs(right - left - 4 * INCH_mm) < 1e-6;
    return isLong && left >= box.left - 1e-6 && right <= box.right + 1e-6 && Math.min(...ys) >= box.top - 1e-6 && Math.max(...ys) <= box.bottom + 1e-6;
  });
}

describe.each(SETS)('%s, %s set on %s', (name, set, paper) => {
  const sheets = (): Promise<Sheet[]> => composedDemo(name, { set, paper });

  test('every view to scale has a bar of 4 in, whose words say what it is on site, and its sheet one of 100 mm', async () => {
    let count = 0;
    for (const sheet of await sheets()) {
      const scaled = sheet.views.filter(({ scale }) => scale !== null);
      const marks = allMarks(sheet.marks);
      for (const view of scaled) {
        count += 1;
        expect(barsIn(marks, view), `${sheet.number}: ${view.title}`).toHaveLength(1);
        // 4 in at 1:scale, from the definition of a scale.
        const words = `4 in = ${formatLength((0.1016 * (view.scale ?? 0)), 'feet')}`;
        expect(textsOf(sheet).some(({ text, x, y }) => text === words && x >= view.box.left && y <= view.box.bottom && y >= view.box.top), `${sheet.number}: ${words}`).toBe(true);
      }
      if (scaled.length > 0) expect(textsOf(sheet).map(({ text }) => text)).toEqual(expect.arrayContaining(['100 mm', '4 in']));
    }
    expect(count).toBeGreaterThan(1);
  });

  test('every drawing with its plan north is a view', async () => {
    for (const sheet of await sheets()) {
      if (textsOf(sheet).some(({ text }) => text === 'plan north')) expect(sheet.views.some(({ scale }) => scale !== null), sheet.number).toBe(true);
    }
  });
});

describe('letters', () => {
  test.each(Object.values(PAPERS).filter(({ width_mm }) => width_mm >= PAPERS.A1.width_mm))('on $id are 3/32 in high on a print at half size, captions and notes too', (paper) => {
    const { note_mm, text_mm, heading_mm, title_mm } = typeSizesOf(paper);
    for (const height of [note_mm, text_mm, heading_mm, title_mm]) expect(height / 2).toBeGreaterThanOrEqual(HALF_SIZE_LETTERS_mm);
  });

  test.each(['submittal', 'field'] as const)('so it is of every text of the %s set of F3', async (set) => {
    for (const sheet of await composedDemo('F3', { set, paper: 'ARCH-D' })) {
      expect(textsOf(sheet).filter(({ height_mm }) => height_mm / 2 < HALF_SIZE_LETTERS_mm).map(({ text }) => text), sheet.number).toEqual([]);
    }
  });
});

describe('the bar of a view', () => {
  const sizes = typeSizesOf(PAPERS.A3);
  const lengthOf = ([outline]: readonly Mark[]): number => {
    if (outline?.kind !== 'line') throw new Error('A bar begins with its outline.');
    const { left, right } = markBox({ ...outline, stroke: { ...outline.stroke, width_mm: 0 } });
    return right - left;
  };

  test.each([20, 25, 48, 50, 75, 100, 200])('is 100 mm or 4 in long on paper at 1:%i', (scale) => {
    expect(lengthOf(viewBar(0, 0, scale, 'metric', sizes).marks)).toBeCloseTo(100, 9);
    expect(lengthOf(viewBar(0, 0, scale, 'feet', sizes).marks)).toBeCloseTo(101.6, 9);
  });
});

test('small rooms share sheets: the field set of six rooms has no sheet for one room alone', async () => {
  const field = (await composedDemo('F3', { set: 'field', paper: 'ARCH-D' })).filter(({ views }) => views.some(({ key }) => key.startsWith('field/')));
  expect(field.map(({ views }) => views.filter(({ key }) => key.startsWith('field/')).length)).toEqual([2, 2, 2]);
  // The table of the first room begins on the sheet that it is drawn on.
  for (const sheet of field) expect(textsOf(sheet).some(({ text }) => text.startsWith('Field verification: Room'))).toBe(true);
});
