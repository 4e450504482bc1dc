import { constants, createInflate } from 'node:zlib';
import { type ReadProgress, UnderlayProblem } from '#shared/underlay/drawing';

/** How far before its data the description of a stream is looked for. */
const DESCRIPTION_WITHIN = 2000;
/** A stream of painting steps that unpacks into more is no floor plan. */
const LARGEST_bytes = 150 * 1024 * 1024;
/** After this much the rest is taken on trust. */
const MOST_CHECKED_bytes = 400 * 1024 * 1024;

/**
 * Counts the packed streams of a PDF whose check sum (Adler-32, RFC 1950) is wrong. The PDF library ignores it and
 * paints whatever comes out. Pictures, attached files and encrypted documents are not checked.
 * @throws {UnderlayProblem} when a few bytes unpack into more than a floor plan ever holds
 */
export async function countDamagedStreams(bytes: Uint8Array, progress: ReadProgress): Promise<number> {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (file.includes('/Encrypt')) return 0;
  let damaged = 0;
  let checked = 0;
  for (let at = file.indexOf('stream'); at >= 0 && checked < MOST_CHECKED_bytes; at = file.indexOf('stream', at)) {
    const start = at + 'stream'.length;
    if (file.subarray(Math.max(0, at - 3), at).toString('latin1') === 'end') {
      at = start;
      continue;
    }
    const end = file.indexOf('endstream', start);
    if (end < 0) break;
    at = end + 'endstream'.length;
    const description = descriptionBefore(file, start - 'stream'.length);
    if (!/\/Filter\s*\[?\s*\/(FlateDecode|Fl)\b/.test(description) || /\/Subtype\s*\/Image\b|\/EmbeddedFile\b/.test(description)) continue;
    progress(0, 'Checking the PDF');
    const data = file.subarray(file[start] === 13 ? start + 2 : start + 1, end);
    checked += data.length;
    const unpacked = await unpackedSize(data);
    if (unpacked === undefined) damaged += 1;
    else checked += unpacked;
  }
  return damaged;
}

function descriptionBefore(file: Buffer, at: number): string {
  const text = file.subarray(Math.max(0, at - DESCRIPTION_WITHIN), at).toString('latin1');
  return text.slice(text.lastIndexOf(' obj') + 1);
}

/** Size of unpacked data; undefined when it is damaged. */
async function unpackedSize(data: Buffer): Promise<number | undefined> {
  // Writers that leave the check sum out altogether are forgiven.
  const inflate = createInflate({ finishFlush: constants.Z_SYNC_FLUSH });
  inflate.end(data);
  let size = 0;
  try {
    for await (const part of inflate) {
      size += Buffer.isBuffer(part) ? part.length : 0;
      if (size > LARGEST_bytes) {
        throw new UnderlayProblem(
          `A part of the PDF unpacks into more than ${LARGEST_bytes / 1024 / 1024} MB.`,
          '',
          'Export only the floor you need, without furniture and hatching, and import that.',
        );
      }
    }
    return size;
  } catch (error) {
    if (error instanceof UnderlayProblem) throw error;
    return undefined;
  }
}
