import { EncryptedPDFError, PDFDocument } from '@cantoo/pdf-lib';
import type { FieldCell, FieldEntry, FieldRecord } from '#shared/site/field-entries';
import { isIdentityField, readFieldName } from '#shared/site/field-names';
import { readIdentity } from '#shared/site/form-identity';
import { HostProblem } from '../host-problem.ts';
import { type FormValue, formOf, formValues, isXfaOnly } from './form-values.ts';

const BY_HAND = 'Fill in the form as it was printed by Nozzlewright and save it as a form, or type the values into the site panel.';

/** What a form is made of: a PDF that is not hostile has no more pages. */
const MOST_PAGES = 5000;

const PLANNED = /\((-?\d{1,9}(?:\.\d{1,6})?) mm\)/;

/**
 * Reads the fields of a filled field sheet.
 * @throws {HostProblem} it is no PDF, is locked, has no form, or the form of something else
 */
export async function readFieldPdf(bytes: Uint8Array, name: string): Promise<FieldRecord> {
  const head = new TextDecoder('latin1').decode(bytes.subarray(0, 1024));
  if (!head.includes('%PDF-')) throw new HostProblem('unreadable', 'This is not a PDF.', name, 'Choose the filled field sheet (PDF) or its table (CSV).');
  try {
    return recordOf(await PDFDocument.load(bytes, { updateMetadata: false, throwOnInvalidObject: false }), name);
  } catch (error) {
    if (error instanceof HostProblem) throw error;
    if (error instanceof EncryptedPDFError) throw new HostProblem('unsupported', 'The PDF is locked with a password.', name, 'Save it again without a password.');
    // What is broken inside a file comes out of the library in many ways.
    throw new HostProblem('damaged', 'The PDF is damaged and could not be read.', name, 'Have it saved and handed over again.');
  }
}

function recordOf(document: PDFDocument, name: string): FieldRecord {
  if (document.getPageCount() > MOST_PAGES) throw new HostProblem('too-large', `The PDF has more than ${MOST_PAGES} pages.`, name, 'Hand over the pages of the field sheet alone.');
  const form = formOf(document);
  if (form && isXfaOnly(form)) throw new HostProblem('unsupported', 'The form was saved in a way that only few programs can read (XFA).', name, BY_HAND);
  const values = form ? formValues(document, form) : [];
  if (values.length === 0) throw new HostProblem('unsupported', 'The PDF has no form fields: it was scanned, printed to PDF or flattened.', name, BY_HAND);
  const rows = rowsOf(values);
  if (rows.length === 0) throw new HostProblem('unsupported', 'The PDF is a form, but not one of a field sheet.', name, BY_HAND);
  const identities = values.filter((each) => isIdentityField(lastName(each.name))).flatMap(({ value }) => readIdentity(value) ?? []);
  const [identity] = identities;
  const others = identities.filter(({ digest }) => digest !== identity?.digest).length;
  return {
    rows,
    about: {
      source: 'pdf',
      project: identity?.project ?? null,
      revision: identity?.revision ?? null,
      digest: identity?.digest ?? null,
      count: identity?.count ?? null,
      remarks: others > 0 ? ['The file holds sheets of more than one form. Hand them over one by one if rows look wrong.'] : [],
    },
  };
}

/** Programs that join files put names of their own before those of the fields. */
const lastName = (name: string): string => name.slice(name.lastIndexOf('.') + 1);

/** Puts the fields of one dimension or hold point together; a field that comes twice begins another row. */
function rowsOf(values: readonly FormValue[]): FieldEntry[] {
  const byId = new Map<string, { id: string; where: string; cells: Partial<Record<FieldCell, string>> }[]>();
  for (const { name, value, tooltip, page } of values) {
    const field = readFieldName(lastName(name));
    if (!field) continue;
    const rows = byId.get(field.id) ?? [];
    byId.set(field.id, rows);
    let row = rows.find(({ cells }) => cells[field.cell] === undefined);
    if (!row) {
      row = { id: field.id, where: page === null ? 'no page' : `page ${page}`, cells: {} };
      rows.push(row);
    }
    row.cells[field.cell] = value;
    const planned = field.cell === 'measured' ? PLANNED.exec(tooltip)?.[1] : undefined;
    if (planned !== undefined) row.cells.planned = planned;
  }
  return [...byId.values()].flat();
}
