/** What the audit needs of a TrueType font program. Source: OpenType, tables maxp, head, hhea, hmtx and cmap. */
export interface TrueType {
  readonly glyphCount: number;
  /** Advance of a glyph in thousandths of the font size. */
  readonly advance: (glyph: number) => number;
  /** Glyph of a Unicode character by the list (3, 1); 0 for none, undefined without such a list. */
  readonly glyphOf: (character: number) => number | undefined;
  readonly hasSymbolList: boolean;
}

/** Reads a font program. @throws {RangeError} it ends too early */
export function trueType(bytes: Buffer): TrueType {
  const tables = new Map(Array.from({ length: bytes.readUInt16BE(4) }, (_, i) => [bytes.toString('latin1', 12 + 16 * i, 16 + 16 * i), bytes.subarray(bytes.readUInt32BE(20 + 16 * i), bytes.readUInt32BE(20 + 16 * i) + bytes.readUInt32BE(24 + 16 * i))]));
  const table = (tag: string): Buffer => tables.get(tag) ?? Buffer.alloc(0);
  const unitsPerEm = table('head').readUInt16BE(18);
  const longMetrics = table('hhea').readUInt16BE(34);
  const glyphCount = table('maxp').readUInt16BE(4);
  const cmap = tables.get('cmap');
  const lists = cmap ? Array.from({ length: cmap.readUInt16BE(2) }, (_, i) => ({ platform: cmap.readUInt16BE(4 + 8 * i), encoding: cmap.readUInt16BE(6 + 8 * i), at: cmap.readUInt32BE(8 + 8 * i) })) : [];
  const unicode = lists.find(({ platform, encoding }) => platform === 3 && encoding === 1);
  return {
    glyphCount,
    hasSymbolList: lists.some(({ platform, encoding }) => platform === 3 && encoding === 0),
    advance: (glyph) => (table('hmtx').readUInt16BE(4 * Math.min(glyph, longMetrics - 1)) * 1000) / unitsPerEm,
    glyphOf(character) {
      if (!cmap || !unicode) return undefined;
      const list = cmap.subarray(unicode.at);
      if (list.readUInt16BE(0) !== 4) return undefined;
      const count = list.readUInt16BE(6) / 2;
      const at = (row: number, i: number): number => 14 + 2 * (row * count + i) + (row > 0 ? 2 : 0);
      for (let i = 0; i < count; i += 1) {
        if (list.readUInt16BE(at(0, i)) < character) continue;
        const first = list.readUInt16BE(at(1, i));
        if (first > character) return 0;
        const delta = list.readUInt16BE(at(2, i));
        const toGlyphs = list.readUInt16BE(at(3, i));
        if (toGlyphs === 0) return (character + delta) & 0xffff;
        const glyph = list.readUInt16BE(at(3, i) + toGlyphs + 2 * (character - first));
        return glyph === 0 ? 0 : (glyph + delta) & 0xffff;
      }
      return 0;
    },
  };
}
