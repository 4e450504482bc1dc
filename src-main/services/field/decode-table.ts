/** The text of a table and how it was told apart, in sentences where that could be doubted. */
export interface DecodedTable {
  readonly text: string;
  readonly remarks: readonly string[];
}

/** Bytes that are looked at for a guess. */
const LOOKED_bytes = 4000;

/** Whether most of every second byte is zero, as in two-byte text of Western letters. @param odd  which of the two */
function isMostlyZero(bytes: Uint8Array, odd: 0 | 1): boolean {
  const looked = bytes.subarray(0, LOOKED_bytes);
  const zeros = looked.filter((byte, i) => i % 2 === odd && byte === 0).length;
  return looked.length >= 4 && zeros > looked.length * 0.3;
}

function twoByteEncoding(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | undefined {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  if (isMostlyZero(bytes, 1)) return 'utf-16le';
  return isMostlyZero(bytes, 0) ? 'utf-16be' : undefined;
}

/** Decodes the text of a table: UTF-8 or UTF-16 with or without a mark, else Windows-1252. */
export function decodeTable(bytes: Uint8Array): DecodedTable {
  const twoByte = twoByteEncoding(bytes);
  if (twoByte) return { text: new TextDecoder(twoByte).decode(bytes), remarks: [] };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), remarks: [] };
  } catch {
    return { text: new TextDecoder('windows-1252').decode(bytes), remarks: ['The table is not in UTF-8. It was read as Windows-1252: look whether accents and fractions are right.'] };
  }
}
