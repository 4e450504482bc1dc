import { PDFDict } from '@cantoo/pdf-lib';
import { type Audit, contentOf, has, nameAt, streamAt, textAt } from './archive-file.ts';

const unescaped = (xml: string): string => xml.replace(/&lt;/g, '<').replace(/&gt;/g, '>').replace(/&quot;/g, '"').replace(/&apos;/g, "'").replace(/&amp;/g, '&');
const PREFIXES = ['rdf', 'dc', 'xmp', 'pdf', 'pdfaid', 'x', 'xml', 'xmlns', 'xmpMM'];

/** Moment of a date, in seconds; undefined for none. */
const pdfSeconds = (words: string | undefined): number | undefined => {
  const [, year, month, day, hour, minute, second, sign, hours = '0', minutes = '0'] = /^D:(\d{4})(\d\d)(\d\d)(\d\d)(\d\d)(\d\d)(?:Z|([+-])(\d\d)'?(\d\d)?'?)?/.exec(words ?? '') ?? [];
  if (year === undefined) return undefined;
  const away = (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes)) * 60;
  return Date.UTC(Number(year), Number(month) - 1, Number(day), Number(hour), Number(minute), Number(second)) / 1000 - (sign ? away : 0);
};

const TAG = /<(\/?)([\w:]+)((?:\s+[\w:]+="[^"<]*")*)\s*(\/?)>/g;

/** Whether every element that is opened is closed in turn, and no sign stands bare. */
function isSound(xml: string): boolean {
  const open: string[] = [];
  for (const [, close, tag = '', , self] of xml.matchAll(TAG)) {
    if (close && open.pop() !== tag) return false;
    if (!close && !self) open.push(tag);
  }
  const bare = xml.replace(/<\?[^>]*\?>/g, '').replace(TAG, '');
  return open.length === 0 && !/[<>]/.test(bare) && !/&(?!(amp|lt|gt|quot|apos|#\d+|#x[\da-f]+);)/i.test(bare);
}

/** What the file says of itself, in XMP and in its information dictionary, which must agree (6.6). */
export const auditMetadata: Audit = ({ document }) => {
  const faults: string[] = [];
  const must = (isMet: boolean, fault: string): void => {
    if (!isMet) faults.push(fault);
  };
  const metadata = streamAt(document.catalog, 'Metadata');
  if (!metadata) return ['6.6.2.1: the catalogue has no properties in XMP'];
  must(nameAt(metadata.dict, 'Type') === 'Metadata' && nameAt(metadata.dict, 'Subtype') === 'XML', '6.6.2.1: the properties are not called XML');
  must(!has(metadata.dict, 'Filter'), '6.6.2.1: the properties are packed, so that plain readers do not find them');
  const xml = contentOf(metadata).toString('utf8');
  must(isSound(xml), '6.6.2.1: the properties are no sound XML');
  must(!/<\?xpacket begin[^>]*(bytes|encoding)=/.test(xml), '6.6.2.1: the head of the properties says its bytes or its encoding');
  const value = (tag: string): string | undefined => {
    const found = new RegExp(`<${tag}>([\\s\\S]*?)</${tag}>`).exec(xml)?.[1] ?? new RegExp(`\\s${tag}="([^"]*)"`).exec(xml)?.[1];
    return found === undefined ? undefined : unescaped(found.replace(/<[^>]*>/g, '').trim());
  };
  must(value('pdfaid:part') === '3', '6.6.4: it does not say that it keeps part 3');
  must(value('pdfaid:conformance') === 'B', '6.6.4: it does not say that it keeps level B');
  for (const [, prefix = ''] of xml.matchAll(/<([a-zA-Z]+):/g)) must(PREFIXES.includes(prefix), `6.6.2.3: properties of ${prefix} are not described`);
  const { Info } = document.context.trailerInfo;
  const info = Info === undefined ? undefined : document.context.lookup(Info);
  if (!(info instanceof PDFDict)) return faults;
  // Source of the pairs: ISO 19005-1, 6.7.3, table 1, which the later parts recommend.
  for (const [name, tag] of [['Title', 'dc:title'], ['Author', 'dc:creator'], ['Subject', 'dc:description'], ['Keywords', 'pdf:Keywords'], ['Creator', 'xmp:CreatorTool'], ['Producer', 'pdf:Producer']] as const) {
    if (has(info, name)) must(textAt(info, name) === value(tag), `6.6.3: ${name} is “${textAt(info, name)}” here and “${value(tag)}” there`);
  }
  for (const [name, tag] of [['CreationDate', 'xmp:CreateDate'], ['ModDate', 'xmp:ModifyDate']] as const) {
    if (has(info, name)) must(pdfSeconds(textAt(info, name)) === Date.parse(value(tag) ?? '') / 1000, `6.6.3: ${name} differs`);
  }
  return faults;
};
