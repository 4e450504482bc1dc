import { PDFArray, PDFDict, PDFDocument, PDFHexString, PDFName, PDFNumber, PDFRawStream, PDFRef, PDFStream, decodePDFRawStream } from '@cantoo/pdf-lib';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Mark, SheetField } from '#shared/sheets/sheet';
import { pen, text } from '#shared/sheets/marks';
import { placeName } from '#shared/sheets/place-name';
import { printSheets } from '../../../src-main/services/sheet-printer.ts';
import { sheetWith } from '../../support/one-sheet.ts';

const CREATED = new Date('2026-03-04T15:20:00Z');
const TITLE = 'Müller & "Söhne" <Halle 1>';
const field: SheetField = { kind: 'text', name: 'a', tooltip: 'Measured', value: '3.000 m', x: 20, y: 60, width_mm: 30, height_mm: 8 };
const marks: Mark[] = [
  { ...text(20, 20, 'leads on', { height_mm: 3, goesTo: placeName('sheet', '2') }), layer: 'notes' },
  { kind: 'area', rings: [[0, 0, 10, 0, 10, 10]], fill: '#ff0000', opacity: 0.5 },
  { kind: 'line', places: [0, 0, 10, 10], stroke: pen(0.35), layer: 'building' },
];

/** What ISO 19005-3 asks of a file of level B, as far as it can be read without a validator. Clauses are cited from memory. */
describe('the archival form of a set', () => {
  let bytes: Uint8Array;
  let file: PDFDocument;
  const name = PDFName.of;
  const objects = () => file.context.enumerateIndirectObjects().map(([, object]) => object);
  const dictionaries = () => objects().flatMap((object) => (object instanceof PDFDict ? [object] : object instanceof PDFStream ? [object.dict] : []));
  beforeAll(async () => {
    bytes = await printSheets([sheetWith({ marks, fields: [field] }), sheetWith({ number: '2', marks: [text(20, 20, 'Bold Ж', { height_mm: 3, font: 'bold' })] })], { title: TITLE, createdAt: CREATED, plan: new Uint8Array(100) });
    file = await PDFDocument.load(bytes, { updateMetadata: false });
  });

  test('says that it is PDF/A-3b, in sound XML, and the same as the information dictionary (6.6)', () => {
    const metadata = file.catalog.lookup(name('Metadata'), PDFStream);
    expect(metadata.dict.get(name('Filter'))).toBeUndefined();
    const xml = Buffer.from(metadata.getContents()).toString('utf8');
    expect(xml).toMatch(/<pdfaid:part>3<\/pdfaid:part>\s*<pdfaid:conformance>B<\/pdfaid:conformance>/);
    expect(xml).toContain('Müller &amp; &quot;Söhne&quot; &lt;Halle 1&gt;');
    expect(file.getTitle()).toBe(TITLE);
    expect(xml).toContain('<xmp:CreateDate>2026-03-04T15:20:00Z</xmp:CreateDate>');
    expect([file.getCreationDate(), file.getModificationDate()]).toEqual([CREATED, CREATED]);
    // Every element that is opened is closed, in turn.
    const open: string[] = [];
    for (const [, close, tag, self] of xml.matchAll(/<(\/?)([\w:]+)[^>]*?(\/?)>/g)) {
      if (close) expect(open.pop()).toBe(tag);
      else if (!self && tag) open.push(tag);
    }
    expect(open).toEqual([]);
  });

  test('states its colours by an embedded profile of three components (6.2.3)', () => {
    const intent = file.catalog.lookup(name('OutputIntents'), PDFArray).lookup(0, PDFDict);
    expect(intent.get(name('S'))).toBe(name('GTS_PDFA1'));
    const profile = intent.lookup(name('DestOutputProfile'), PDFStream);
    expect(profile.dict.lookup(name('N'), PDFNumber).asNumber()).toBe(3);
    const content = Buffer.from(profile instanceof PDFRawStream ? decodePDFRawStream(profile).decode() : []);
    // ICC.1:2010: the size stands first, the space of colours at 16, the signature at 36.
    expect(content.readUInt32BE(0)).toBe(content.length);
    expect([content.toString('latin1', 16, 20), content.toString('latin1', 36, 40)]).toEqual(['RGB ', 'acsp']);
    const text = Buffer.from(bytes).toString('latin1');
    expect(text).not.toContain('DeviceCMYK');
  });

  test('has an identifier, a binary mark after its first line, and no password (6.1.2, 6.1.3)', () => {
    const { ID, Encrypt } = file.context.trailerInfo;
    expect(Encrypt).toBeUndefined();
    expect(ID instanceof PDFArray && ID.size()).toBe(2);
    const [first, second] = ID instanceof PDFArray ? [ID.lookup(0, PDFHexString), ID.lookup(1, PDFHexString)] : [];
    expect(first?.asBytes()).toHaveLength(16);
    expect(second?.toString()).toBe(first?.toString());
    expect(Buffer.from(bytes.subarray(0, 9)).toString('latin1')).toBe('%PDF-1.7\n');
    expect([...bytes.subarray(10, 14)].every((byte) => byte > 127)).toBe(true);
  });

  test('embeds every font that writes something, and the one that is typed with (6.2.11.4)', () => {
    const descriptors = dictionaries().filter((dict) => dict.get(name('Type')) === name('FontDescriptor'));
    expect(descriptors).toHaveLength(3);
    for (const descriptor of descriptors) expect(descriptor.get(name('FontFile2'))).toBeInstanceOf(PDFRef);
    expect(dictionaries().filter((dict) => dict.get(name('Subtype')) === name('Type1'))).toEqual([]);
  });

  test('uses no way of packing, no action and no annotation that is forbidden (6.1.7, 6.3, 6.6.1)', () => {
    const filters = new Set(dictionaries().map((dict) => String(dict.get(name('Filter')))));
    expect([...filters].sort()).toEqual(['/FlateDecode', 'undefined']);
    for (const dict of dictionaries()) {
      for (const forbidden of ['JS', 'AA', 'OpenAction', 'XFA', 'NeedAppearances', 'TR', 'PS']) expect(dict.get(name(forbidden)), forbidden).toBeUndefined();
      if (!(dict.get(name('Rect')) instanceof PDFArray)) continue;
      // Printed, and neither hidden, invisible nor kept from view: bits 3 and 1, 2, 6 of table 165.
      const flags = dict.lookup(name('F'), PDFNumber).asNumber();
      expect(flags & 0b100111).toBe(0b100);
      if (dict.get(name('Subtype')) === name('Widget')) expect(dict.get(name('AP'))).toBeDefined();
    }
  });

  test('says of the attached plan what it is to the sheets (6.8)', () => {
    const spec = file.catalog.lookup(name('AF'), PDFArray).lookup(0, PDFDict);
    expect(spec.get(name('AFRelationship'))).toBe(name('Source'));
    for (const key of ['F', 'UF', 'Desc']) expect(spec.get(name(key)), key).toBeDefined();
    const embedded = spec.lookup(name('EF'), PDFDict).lookup(name('F'), PDFStream).dict;
    expect(embedded.get(name('Subtype'))?.toString()).toBe('/application#2Fzip');
    expect(embedded.lookup(name('Params'), PDFDict).get(name('ModDate'))).toBeDefined();
  });

  test('names its layers in one arrangement that holds them all (6.9)', () => {
    const properties = file.catalog.lookup(name('OCProperties'), PDFDict);
    const usual = properties.lookup(name('D'), PDFDict);
    expect(usual.get(name('Name'))).toBeDefined();
    expect(usual.get(name('AS'))).toBeUndefined();
    expect(String(usual.get(name('Order')))).toBe(String(properties.get(name('OCGs'))));
  });

  test('the same input gives the same bytes, another date another identifier', async () => {
    const sheet = sheetWith({ marks });
    const first = await printSheets([sheet], { title: TITLE, createdAt: CREATED });
    expect(Buffer.compare(first, await printSheets([structuredClone(sheet)], { title: TITLE, createdAt: CREATED }))).toBe(0);
    const idOf = (pdf: Uint8Array): string | undefined => /\/ID \[<(\w+)>/.exec(Buffer.from(pdf).toString('latin1'))?.[1];
    const moved = await printSheets([sheetWith({ marks: [text(21, 20, 'leads on', { height_mm: 3 })] })], { title: TITLE, createdAt: CREATED });
    expect(idOf(moved)).not.toBe(idOf(first));
  });
});
