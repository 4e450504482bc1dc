import type { FieldCell } from './field-entries.ts';

const isCell = (word: string): word is FieldCell => ['measured', 'by', 'when', 'instrument', 'reason', 'done', 'witness'].includes(word);

/** Name of the form field for one cell of a dimension or hold point. Forms take a dot as a step down, so that ids with dots are written otherwise. */
export const fieldNameOf = (id: string, cell: FieldCell): string => `${id.replaceAll('.', '~')}#${cell}`;

/** The dimension or hold point and the cell that a form field is for, whichever copy of it; undefined: none of ours. */
export function readFieldName(name: string): { readonly id: string; readonly cell: FieldCell } | undefined {
  const at = name.lastIndexOf('#');
  const cell = name.slice(at + 1).replace(/!\d{1,6}$/, '');
  return at > 0 && isCell(cell) ? { id: name.slice(0, at).replaceAll('~', '.'), cell } : undefined;
}

/** Name of the field that says which form it is; on further sheets with a number behind it. */
export const IDENTITY_FIELD = 'form#identity';

/** Whether a form field says which form it is. */
export const isIdentityField = (name: string): boolean => name === IDENTITY_FIELD || name.startsWith(`${IDENTITY_FIELD}!`);
