/** What pdfkit's embedded font keeps of one laid-out run; all in thousandths of the font size. */
interface LaidRun {
  readonly glyphs: readonly FontGlyph[];
  readonly positions: readonly { readonly xAdvance: number; readonly yAdvance: number; readonly xOffset: number; readonly yOffset: number; readonly advanceWidth: number }[];
  readonly advanceWidth: number;
}
interface FontGlyph {
  readonly advanceWidth: number;
}
interface EmbeddedFont {
  readonly widths: number[];
  readonly scale: number;
  readonly font: { getGlyph(id: number): FontGlyph; glyphForCodePoint(code: number): FontGlyph };
  layoutRun(text: string, features?: unknown): LaidRun;
}

/**
 * Makes the document's current font set one glyph per character, each by its own advance width: no kerning, no
 * ligatures. Sheets are composed with exactly these widths, and a set of sheets prints many times faster.
 */
export function setTextAsMeasured(document: PDFKit.PDFDocument): void {
  // pdfkit has no public way to switch its shaping off for a whole font; its version is pinned, and a test measures the result.
  const { _font: embedded } = document as unknown as { _font: EmbeddedFont };
  // pdfkit states the width of the missing glyph in units of the font, all others in thousandths.
  embedded.widths[0] = embedded.font.getGlyph(0).advanceWidth * embedded.scale;
  const glyphs = new Map<string, FontGlyph>();
  const glyphOf = (character: string): FontGlyph => {
    const known = glyphs.get(character) ?? embedded.font.glyphForCodePoint(character.codePointAt(0) ?? 0);
    glyphs.set(character, known);
    return known;
  };
  embedded.layoutRun = (text) => {
    const run = [...text].map(glyphOf);
    const positions = run.map(({ advanceWidth }) => {
      const width = advanceWidth * embedded.scale;
      return { xAdvance: width, yAdvance: 0, xOffset: 0, yOffset: 0, advanceWidth: width };
    });
    return { glyphs: run, positions, advanceWidth: positions.reduce((sum, { advanceWidth }) => sum + advanceWidth, 0) };
  };
}
