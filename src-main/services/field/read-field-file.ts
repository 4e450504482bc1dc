import type { FieldRecord } from '#shared/site/field-entries';
import { parseFieldTable } from '#shared/site/parse-field-table';
import { MOST_ROWS } from '#shared/site/read-entries';
import { HostProblem } from '../host-problem.ts';
import { decodeTable } from './decode-table.ts';
import { readFieldPdf } from './read-field-pdf.ts';

/** Largest form and table that are read [bytes]. */
const LARGEST_FORM_bytes = 100e6;
const LARGEST_TABLE_bytes = 20e6;

const isPdf = (bytes: Uint8Array): boolean => new TextDecoder('latin1').decode(bytes.subarray(0, 1024)).includes('%PDF-');
/** A compressed spreadsheet or another archive. */
const isArchive = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b;

/**
 * Reads what came back from the site, a filled form or a table, in the calling thread.
 * @param name  of the file, for messages
 * @throws {HostProblem} anything that a file can do wrong
 */
export async function readFieldFile(bytes: Uint8Array, name: string): Promise<FieldRecord> {
  if (bytes.length === 0) throw new HostProblem('unreadable', 'The file is empty.', name, 'Have it handed over again.');
  if (isPdf(bytes) || /\.pdf$/i.test(name)) {
    if (bytes.length > LARGEST_FORM_bytes) throw new HostProblem('too-large', 'The PDF is larger than 100 MB.', name, 'Hand over the pages of the field sheet alone.');
    return readFieldPdf(bytes, name);
  }
  if (isArchive(bytes)) throw new HostProblem('unsupported', 'This is a spreadsheet file, not a table as text.', name, 'Save it from the spreadsheet as CSV and hand that over.');
  if (bytes.length > LARGEST_TABLE_bytes) throw new HostProblem('too-large', 'The table is larger than 20 MB.', name, 'Hand over the rows of this plan alone.');
  const { text, remarks } = decodeTable(bytes);
  const parsed = parseFieldTable(text, MOST_ROWS, remarks);
  if (!parsed.ok) throw new HostProblem('unreadable', parsed.what, name, parsed.remedy);
  return parsed.record;
}
