import { createHash } from 'node:crypto';

/** What pdfkit keeps of a document; it has no public way to any of it. */
interface Innards {
  readonly info: { readonly Title: string; readonly Creator: string; readonly Producer: string; readonly CreationDate: Date; readonly ModDate: Date };
  appendXML(xml: string): void;
  _addInfo(): void;
  _write(data: string | Uint8Array): void;
}

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&apos;' };
/** Signs that XML 1.0 cannot hold at all. */
const UNWRITABLE = /[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu;
const xmlText = (words: string): string => words.replace(UNWRITABLE, ' ').replace(/[&<>"']/g, (sign) => ESCAPES[sign] ?? sign);
const xmlDate = (at: Date): string => `${at.toISOString().slice(0, 19)}Z`;

/**
 * Makes a document that pdfkit writes as PDF/A-3b what that standard asks for beyond pdfkit: properties in XMP that are
 * sound XML and say the same as the information dictionary (ISO 19005-3, 6.6), and an identifier that follows from
 * nothing but what is in the file, so that the same input gives the same bytes (ISO 32000-1, 14.4).
 */
export function archivePdf(document: PDFKit.PDFDocument): void {
  const inside = document as unknown as Innards;
  inside._addInfo = () => {
    const { Title, Creator, Producer, CreationDate, ModDate } = inside.info;
    inside.appendXML(
      `<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
<dc:format>application/pdf</dc:format>
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">${xmlText(Title)}</rdf:li></rdf:Alt></dc:title>
<xmp:CreateDate>${xmlDate(CreationDate)}</xmp:CreateDate>
<xmp:ModifyDate>${xmlDate(ModDate)}</xmp:ModifyDate>
<xmp:CreatorTool>${xmlText(Creator)}</xmp:CreatorTool>
<pdf:Producer>${xmlText(Producer)}</pdf:Producer>
</rdf:Description>`,
    );
  };
  const written = createHash('md5');
  const write = inside._write.bind(inside);
  inside._write = (data) => {
    written.update(typeof data === 'string' ? Buffer.from(data, 'latin1') : data);
    write(data);
  };
  // Asked for once or twice in the trailer, when all else is written.
  Object.defineProperty(document, '_id', { get: () => new Uint8Array(written.copy().digest()) });
}
