import { constants, inflateSync } from 'node:zlib';

/** Files attached to a PDF are looked for up to this many. */
const MOST_FILES = 200;
/** Longest dictionary before an attached file's bytes, and longest way back to where its object begins [bytes]. */
const LONGEST_HEAD = 8192;
/** Packed bytes that are unpacked to see how a file begins. */
const PEEK_bytes = 16_384;

/** A file attached to a PDF, still packed. */
export interface EmbeddedFile {
  /** How it begins; empty when it is packed in a way that is not read. */
  readonly head: Uint8Array;
  /** @throws {RangeError} it unpacks to more than `most_bytes` */
  unpack(most_bytes: number): Uint8Array;
}

const NAME = Buffer.from('/EmbeddedFile', 'latin1');
const isNameSign = (byte: number | undefined): boolean => byte !== undefined && /[^\s()<>[\]{}/%]/.test(String.fromCharCode(byte));

/** Whether bytes begin like a PDF: its mark stands among the first kilobyte. */
export const looksLikePdf = (bytes: Uint8Array): boolean => bufferOf(bytes.subarray(0, 1024)).includes('%PDF-');

const bufferOf = ({ buffer, byteOffset, byteLength }: Uint8Array): Buffer => Buffer.from(buffer, byteOffset, byteLength);

/**
 * Finds the files attached to a PDF that nobody vouches for. Looks for their own objects one after the other and
 * follows nothing else of the file, so that whatever is wrong elsewhere in it neither harms nor hinders. Nothing is
 * unpacked but how each begins.
 */
export function embeddedFiles(bytes: Uint8Array): EmbeddedFile[] {
  const pdf = bufferOf(bytes);
  const files: EmbeddedFile[] = [];
  let from = 0;
  while (files.length < MOST_FILES) {
    const at = pdf.indexOf(NAME, from);
    if (at < 0) break;
    from = at + NAME.length;
    if (isNameSign(pdf[from])) continue;
    const found = fileAround(pdf, at);
    if (!found) continue;
    files.push(found.file);
    // What a file holds is its own: another PDF in it may have files attached as well.
    from = Math.max(from, found.end);
  }
  return files;
}

function fileAround(pdf: Buffer, at: number): { readonly file: EmbeddedFile; readonly end: number } | undefined {
  const before = pdf.subarray(Math.max(0, at - LONGEST_HEAD), at).toString('latin1');
  const begins = [...before.matchAll(/\d+\s+\d+\s+obj\b/g)].at(-1);
  const after = pdf.subarray(at, at + LONGEST_HEAD).toString('latin1');
  const stream = /\bstream(\r\n|\n|\r)/.exec(after);
  if (!begins || !stream || after.slice(0, stream.index).includes('endobj')) return undefined;
  const head = before.slice(begins.index) + after.slice(0, stream.index);
  const start = at + stream.index + stream[0].length;
  const end = endOf(pdf, start, head);
  const packed = pdf.subarray(start, end);
  const filter = /\/Filter\s*(\[[^\]]*\]|\/[^\s/<>[\]()]+)/.exec(head)?.[1]?.replace(/[[\]\s]/g, '') ?? '';
  if (filter !== '' && filter !== '/FlateDecode' && filter !== '/Fl') return { file: { head: new Uint8Array(), unpack: () => new Uint8Array() }, end };
  const isPacked = filter !== '';
  return { file: { head: isPacked ? headOf(packed) : packed.subarray(0, PEEK_bytes), unpack: (most_bytes) => unpackBytes(packed, isPacked, most_bytes) }, end };
}

/** Where an attached file's bytes end: by its length where that can be believed, else where its object does. */
function endOf(pdf: Buffer, start: number, head: string): number {
  const direct = /\/Length\s+(\d{1,10})(?!\s+\d+\s+R)(?!\d)/.exec(head)?.[1];
  const told = direct === undefined ? undefined : start + Number(direct);
  if (told !== undefined && pdf.subarray(told, told + 16).toString('latin1').trimStart().startsWith('endstream')) return told;
  const found = pdf.indexOf('endstream', start);
  return found < 0 ? pdf.length : found;
}

function headOf(packed: Buffer): Uint8Array {
  try {
    // What has come so far is given, although the end is missing.
    return new Uint8Array(inflateSync(packed.subarray(0, PEEK_bytes), { finishFlush: constants.Z_SYNC_FLUSH }).subarray(0, PEEK_bytes));
  } catch {
    return new Uint8Array();
  }
}

function unpackBytes(packed: Buffer, isPacked: boolean, most_bytes: number): Uint8Array {
  if (!isPacked) {
    if (packed.length > most_bytes) throw new RangeError('The attached file is too large.');
    return new Uint8Array(packed);
  }
  return new Uint8Array(inflateSync(packed, { maxOutputLength: most_bytes }));
}
