/** Length of the head of a font file and of one entry of its directory [bytes]. */
const HEAD_bytes = 12;
const ENTRY_bytes = 16;
/** What the checksum of a whole font comes to, once `head` is adjusted. Source: OpenType, table `head`. */
const WHOLE = 0xb1b0afba;

const padded = (length: number): number => Math.ceil(length / 4) * 4;

function checksumOf(bytes: Buffer): number {
  let sum = 0;
  for (let at = 0; at < padded(bytes.length); at += 4) sum = (sum + (((bytes[at] ?? 0) << 24) | ((bytes[at + 1] ?? 0) << 16) | ((bytes[at + 2] ?? 0) << 8) | (bytes[at + 3] ?? 0))) >>> 0;
  return sum;
}

/** Table `cmap` with one list of Unicode characters for Windows (3, 1) in format 4. */
function cmapOf(glyphs: ReadonlyMap<number, number>): Buffer {
  const segments: { first: number; last: number; delta: number }[] = [];
  for (const [code, glyph] of [...glyphs].sort(([a], [b]) => a - b)) {
    const delta = (glyph - code) & 0xffff;
    const open = segments.at(-1);
    if (open && open.last === code - 1 && open.delta === delta) open.last = code;
    else segments.push({ first: code, last: code, delta });
  }
  // The list ends with a segment of its own, which leads to the missing glyph.
  segments.push({ first: 0xffff, last: 0xffff, delta: 1 });
  const count = segments.length;
  const power = 2 ** Math.floor(Math.log2(count));
  const words = [
    ...[0, 1, 3, 1, 0, 12],
    ...[4, 16 + 8 * count, 0, 2 * count, 2 * power, Math.log2(power), 2 * (count - power)],
    ...segments.map(({ last }) => last),
    0,
    ...segments.map(({ first }) => first),
    ...segments.map(({ delta }) => delta),
    ...segments.map(() => 0),
  ];
  const table = Buffer.alloc(2 * words.length);
  for (const [i, word] of words.entries()) table.writeUInt16BE(word, 2 * i);
  return table;
}

/**
 * Adds a list of characters to a part of a TrueType font, which comes without one: a font that a reader types with is
 * asked for characters, not for glyphs. Source: OpenType, tables `cmap` and `head`.
 * @param font    font file without a table `cmap`
 * @param glyphs  glyph of each character, by its Unicode number below FFFF
 */
export function fontWithCmap(font: Uint8Array, glyphs: ReadonlyMap<number, number>): Uint8Array {
  const given = Buffer.from(font.buffer, font.byteOffset, font.byteLength);
  const tables = Array.from({ length: given.readUInt16BE(4) }, (_, i) => {
    const at = HEAD_bytes + i * ENTRY_bytes;
    const start = given.readUInt32BE(at + 8);
    return { tag: given.toString('latin1', at, at + 4), bytes: Buffer.from(given.subarray(start, start + given.readUInt32BE(at + 12))) };
  });
  const all = [...tables.filter(({ tag }) => tag !== 'cmap'), { tag: 'cmap', bytes: cmapOf(glyphs) }].sort((a, b) => (a.tag < b.tag ? -1 : 1));
  const power = 2 ** Math.floor(Math.log2(all.length));
  const head = Buffer.alloc(HEAD_bytes + all.length * ENTRY_bytes);
  head.writeUInt32BE(0x00010000, 0);
  for (const [i, word] of [all.length, 16 * power, Math.log2(power), 16 * (all.length - power)].entries()) head.writeUInt16BE(word, 4 + 2 * i);
  const parts: Buffer[] = [head];
  let start = head.length;
  let headAt: number | undefined;
  for (const [i, { tag, bytes }] of all.entries()) {
    if (tag === 'head') {
      bytes.writeUInt32BE(0, 8);
      headAt = start;
    }
    const at = HEAD_bytes + i * ENTRY_bytes;
    head.write(tag, at, 'latin1');
    for (const [k, word] of [checksumOf(bytes), start, bytes.length].entries()) head.writeUInt32BE(word, at + 4 + 4 * k);
    parts.push(bytes, Buffer.alloc(padded(bytes.length) - bytes.length));
    start += padded(bytes.length);
  }
  const whole = Buffer.concat(parts);
  if (headAt !== undefined) whole.writeUInt32BE((WHOLE - checksumOf(whole)) >>> 0, headAt + 8);
  return new Uint8Array(whole);
}
