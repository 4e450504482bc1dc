import type { FieldCell, FieldEntry } from './field-entries.ts';

/** Longest name, time or instrument that a plan keeps, and longest reason. */
const LONGEST = 200;
const LONGEST_REASON = 2000;

/** A cell as a plan keeps it: one line, no signs that cannot be seen, not too long. */
export function cellText({ cells }: Pick<FieldEntry, 'cells'>, cell: FieldCell): string {
  const text = (cells[cell] ?? '').replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\s]+/gu, ' ').trim();
  // A sign of two halves is not cut in the middle.
  return text.slice(0, cell === 'reason' ? LONGEST_REASON : LONGEST).replace(/[\ud800-\udbff]$/, '').trimEnd();
}

/** A text as it is quoted in a sentence. */
export const quoted = (text: string): string => {
  const signs = [...text.replace(/\s+/g, ' ').trim()];
  return `“${signs.length > 40 ? `${signs.slice(0, 40).join('')}…` : signs.join('')}”`;
};

/** Whether a text was read in another encoding than it was written in. */
export const isDamaged = (text: string): boolean => /�|Â[¼-¾°²³´]|â€|Ã[\u0080-\u00bf]/.test(text);
