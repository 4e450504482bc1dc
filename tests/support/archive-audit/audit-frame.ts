import { PDFArray, PDFHexString, PDFString } from '@cantoo/pdf-lib';
import { type Audit, arrayAt, has, nameAt, numberAt } from './archive-file.ts';

const FILTERS = new Set(['ASCIIHexDecode', 'ASCII85Decode', 'FlateDecode', 'RunLengthDecode', 'CCITTFaxDecode', 'DCTDecode', 'JPXDecode', 'JBIG2Decode']);
/** Sides of a page [pt]; sizes of strings and names [bytes]. ISO 19005-3, 6.1.13. */
const SIDE = { least: 3, most: 14_400 };
const LONGEST_STRING = 32_767;
const LONGEST_NAME = 127;
const MOST_OBJECTS = 8_388_607;

/** How the file is put together: header, trailer, streams, limits, pages (6.1). */
export const auditFrame: Audit = ({ bytes, document, dictionaries, streams, strings, names }) => {
  const faults: string[] = [];
  const must = (isMet: boolean, fault: string): void => {
    if (!isMet) faults.push(fault);
  };
  const start = Buffer.from(bytes.subarray(0, 32));
  must(/^%PDF-1\.[0-7](\r\n|\n|\r)/.test(start.toString('latin1')), '6.1.2: the file does not begin with %PDF-1.n and the end of that line');
  const second = start.subarray(start.indexOf(0x25, 1));
  must(second[0] === 0x25 && [1, 2, 3, 4].every((at) => (second[at] ?? 0) > 127), '6.1.2: the second line is no comment of at least four bytes above 127');
  const { ID, Encrypt } = document.context.trailerInfo;
  const parts = ID instanceof PDFArray ? ID.asArray() : [];
  must(parts.length === 2 && parts.every((part) => (part instanceof PDFHexString || part instanceof PDFString) && part.asBytes().length > 0), '6.1.3: the trailer has no identifier of two parts');
  must(Encrypt === undefined && !/\/Encrypt\s/.test(Buffer.from(bytes.subarray(-2048)).toString('latin1')), '6.1.3: the file is encrypted');
  must(/%%EOF(\r\n|\n|\r)?$/.test(Buffer.from(bytes.subarray(-16)).toString('latin1')), '6.1.3: something stands behind the end of the file');
  for (const { dict } of streams) {
    for (const outside of ['F', 'FFilter', 'FDecodeParms']) must(!has(dict, outside), `6.1.7.1: a stream has its bytes in another file (${outside})`);
    const filters = nameAt(dict, 'Filter') ?? arrayAt(dict, 'Filter').map((each) => String(each).slice(1));
    for (const filter of [filters].flat()) must(FILTERS.has(filter), `6.1.7.2: a stream is packed by ${filter}`);
  }
  must(strings.every((string) => string.asBytes().length <= LONGEST_STRING), `6.1.13: a text is longer than ${LONGEST_STRING} bytes`);
  must(names.every((name) => Buffer.byteLength(name.decodeText()) <= LONGEST_NAME), `6.1.13: a name is longer than ${LONGEST_NAME} bytes`);
  must(document.context.largestObjectNumber <= MOST_OBJECTS, '6.1.13: there are too many objects');
  for (const [i, page] of document.getPages().entries()) {
    for (const box of ['MediaBox', 'CropBox', 'BleedBox', 'TrimBox', 'ArtBox']) {
      const sides = arrayAt(page.node, box).map((each) => Number(String(each)));
      if (box === 'MediaBox' && sides.length !== 4 && !page.node.MediaBox()) faults.push(`6.1.13: page ${i + 1} has no size`);
      if (sides.length !== 4) continue;
      const [left = 0, bottom = 0, right = 0, top = 0] = sides;
      for (const side of [Math.abs(right - left), Math.abs(top - bottom)]) must(side >= SIDE.least && side <= SIDE.most, `6.1.13: a side of the ${box} of page ${i + 1} is ${side} points`);
    }
    must(!has(page.node, 'PresSteps'), '6.11: a page has steps of a presentation');
  }
  for (const dict of dictionaries) {
    must(!has(dict, 'XFA'), '6.4.2: there is a form in XML');
    must(!has(dict, 'AlternatePresentations'), '6.11: there are other presentations');
    must(nameAt(dict, 'Type') !== 'Catalog' || (!has(dict, 'NeedsRendering') && !has(dict, 'Requirements')), '6.4.2, 6.12: the catalogue asks something of the reader');
    must(nameAt(dict, 'Type') !== 'ObjStm' || numberAt(dict, 'N') !== undefined, '6.1.7: a stream of objects does not say how many');
  }
  return faults;
};
