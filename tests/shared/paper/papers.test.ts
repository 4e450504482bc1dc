import { describe, expect, test } from 'vitest';
import { sheetLayout } from '#shared/sheets/frame';
import { PAPER_IDS } from '#shared/model/paper-ids';
import { PAPERS, isPaperId, ordinaryPapers } from '#shared/paper/papers';
import { typeSizesOf } from '#shared/paper/type-sizes';

describe('papers', () => {
  // ISO 216 and ASME Y14.1 in check-values.md § 12, from memory; each A size is √2 wide and half the next.
  test('sizes are those of their standards, all landscape', () => {
    for (const paper of Object.values(PAPERS)) expect(paper.width_mm).toBeGreaterThan(paper.height_mm);
    for (const [larger, smaller] of [['A1', 'A2'], ['A2', 'A3'], ['A3', 'A4']] as const) {
      expect(PAPERS[larger].height_mm).toBe(PAPERS[smaller].width_mm);
      expect(PAPERS[smaller].width_mm / PAPERS[smaller].height_mm).toBeCloseTo(Math.SQRT2, 2);
    }
    expect([PAPERS['ANSI-B'].width_mm / 25.4, PAPERS['ANSI-B'].height_mm / 25.4]).toEqual([17, 11]);
    expect([PAPERS['ANSI-D'].width_mm / 25.4, PAPERS['ANSI-D'].height_mm / 25.4]).toEqual([34, 22]);
    expect(PAPERS['ARCH-D'].width_mm / 25.4).toBeCloseTo(36, 10);
    expect(PAPERS['ARCH-D'].height_mm / 25.4).toBeCloseTo(24, 10);
  });

  test('ids are known, others are not', () => {
    expect(PAPER_IDS).toHaveLength(10);
    expect(isPaperId('A3')).toBe(true);
    expect(isPaperId('toString')).toBe(false);
    expect(ordinaryPapers('feet').map(({ id }) => id)).toEqual(['ANSI-B', 'ARCH-C', 'ARCH-D']);
  });

  test('text is 2.5 mm at least in the hand, and 3/32 in at half size on a large sheet', () => {
    for (const paper of Object.values(PAPERS)) {
      const { note_mm, text_mm } = typeSizesOf(paper);
      expect(note_mm).toBeGreaterThanOrEqual(2.5);
      if (paper.width_mm > 450) expect(text_mm / 2).toBeGreaterThanOrEqual((3 / 32) * 25.4);
    }
  });

  test('the frame keeps 20 mm for filing and 10 mm elsewhere, and the column lies in it', () => {
    for (const paper of Object.values(PAPERS)) {
      const { frame, area, column } = sheetLayout(paper);
      expect([frame.left, frame.top, paper.width_mm - frame.right, paper.height_mm - frame.bottom].map((mm) => Math.round(mm * 1e6) / 1e6)).toEqual([20, 10, 10, 10]);
      expect(area.right).toBeLessThan(column.left);
      expect(column.right).toBe(frame.right);
      expect(area.right - area.left).toBeGreaterThan(column.right - column.left);
    }
  });

  test('a large sheet has a clear space of 4 × 6 in for the stamp', () => {
    const { column } = sheetLayout(PAPERS['ARCH-D']);
    expect(column.right - column.left).toBeGreaterThan(6 * 25.4);
  });
});
