import { constants, inflateSync } from 'node:zlib';
import type { ReadProgress } from '#shared/underlay/drawing';

/** How far before its data the description of a stream is looked for. */
const DESCRIPTION_WITHIN = 2000;
/** Streams that unpack into more are not checked. */
const LARGEST_CHECKED = 64 * 1024 * 1024;
/** After this much the rest is taken on trust. */
const MOST_CHECKED = 400 * 1024 * 1024;

/**
 * Counts the packed streams of a PDF whose check sum (Adler-32, RFC 1950) is wrong. The PDF library ignores it and
 * paints whatever comes out. Pictures and encrypted documents are not checked.
 */
export function countDamagedStreams(bytes: Uint8Array, progress: ReadProgress): number {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (file.includes('/Encrypt')) return 0;
  let damaged = 0;
  let checked = 0;
  for (let at = file.indexOf('stream'); at >= 0 && checked < MOST_CHECKED; at = file.indexOf('stream', at)) {
    const start = at + 'stream'.length;
    if (file.subarray(Math.max(0, at - 3), at).toString('latin1') === 'end') {
      at = start;
      continue;
    }
    const end = file.indexOf('endstream', start);
    if (end < 0) break;
    at = end + 'endstream'.length;
    const description = descriptionBefore(file, start - 'stream'.length);
    if (!/\/Filter\s*\[?\s*\/(FlateDecode|Fl)\b/.test(description) || /\/Subtype\s*\/Image\b/.test(description)) continue;
    progress(0, 'Checking the PDF');
    const data = file.subarray(file[start] === 13 ? start + 2 : start + 1, end);
    checked += data.length;
    const unpacked = unpackedSize(data);
    if (unpacked === undefined) damaged += 1;
    else checked += unpacked;
  }
  return damaged;
}

function descriptionBefore(file: Buffer, at: number): string {
  const text = file.subarray(Math.max(0, at - DESCRIPTION_WITHIN), at).toString('latin1');
  return text.slice(text.lastIndexOf(' obj') + 1);
}

/** Size of unpacked data; 0 when too large to be checked, undefined when damaged. */
function unpackedSize(data: Buffer): number | undefined {
  try {
    // Writers that leave the check sum out altogether are forgiven.
    return inflateSync(data, { maxOutputLength: LARGEST_CHECKED, finishFlush: constants.Z_SYNC_FLUSH }).length;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'ERR_BUFFER_TOO_LARGE' ? 0 : undefined;
  }
}
