import { PDFArray, PDFDict, PDFDocument, PDFName, PDFNumber, type PDFObject, PDFRawStream, PDFStream, PDFString } from '@cantoo/pdf-lib';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, describe, expect, test } from 'vitest';
import { fieldDimensionsOf } from '#shared/derived/field-dimensions';
import { evaluate } from '#shared/evaluate';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import type { Plan } from '#shared/model/plan';
import { pen, text } from '#shared/sheets/marks';
import { placeName } from '#shared/sheets/place-name';
import type { Mark, SheetField } from '#shared/sheets/sheet';
import { printSheets } from '../../../src-main/services/sheet-printer.ts';
import { auditArchive } from '../../support/archive-audit/audit-archive.ts';
import { sheetWith } from '../../support/one-sheet.ts';
import { demoSheets, sheetsOf } from '../../support/sheet-set.ts';

const ABOUT = { title: 'Hut & <yard>', createdAt: new Date('2026-03-04T15:20:00Z'), plan: new Uint8Array(100) };
const name = PDFName.of;

/** The hut with all of it measured, a finger off. */
async function builtHut(): Promise<Plan> {
  const { plan } = await buildDemo('F1');
  const measured = fieldDimensionsOf(evaluate(plan).derived).map(({ id, planned_m }) => [id, { value_m: planned_m + 0.012, by: 'AB', at: '2026-03-04 10:00', instrument: 'tape', reason: 'wall out of line', approvedBy: '', photos: [] }]);
  return { ...plan, siteRecord: { ...plan.siteRecord, measurements: Object.fromEntries(measured) } };
}

describe('what is printed is a file of PDF/A-3b', () => {
  test.each([
    ['the submittal set of the hut', () => demoSheets('F1')],
    ['the field set of the annex, with its form', () => demoSheets('F2', { set: 'field' })],
    ['the set of a hut as built', async () => sheetsOf(await builtHut())],
  ])('%s', async (_, sheets) => expect(await auditArchive(await printSheets(await sheets(), ABOUT))).toEqual([]), 120_000);
});

describe('the audit finds what is wrong', () => {
  let good: Uint8Array;
  beforeAll(async () => {
    const box = { tooltip: 'Measured', x: 20, width_mm: 30, height_mm: 8 };
    const fields: SheetField[] = [
      { ...box, kind: 'text', name: 'a', value: '3.000 m', y: 60 },
      { ...box, kind: 'text', name: 'b', value: '', y: 70 },
      { ...box, kind: 'tick', name: 'c', value: '', y: 80 },
    ];
    const marks: Mark[] = [
      { ...text(20, 20, 'leads on', { height_mm: 3, goesTo: placeName('sheet', '2') }), layer: 'notes' },
      { kind: 'area', rings: [[0, 0, 10, 0, 10, 10]], fill: '#ff0000', opacity: 0.5 },
      { kind: 'clip', x: 0, y: 0, width_mm: 50, height_mm: 50, marks: [{ kind: 'line', places: [0, 0, 10, 10], stroke: pen(0.35), layer: 'building' }] },
    ];
    good = await printSheets([sheetWith({ marks, fields }), sheetWith({ number: '2', marks: [text(20, 20, 'Bold Ж', { height_mm: 3, font: 'bold' })] })], ABOUT);
  });

  const clausesOf = (faults: readonly string[]): string[] => faults.map((fault) => /^[\d.]+\d/.exec(fault)?.[0] ?? fault);
  const broken = async (spoil: (file: PDFDocument) => void): Promise<string[]> => {
    const file = await PDFDocument.load(good, { updateMetadata: false });
    spoil(file);
    return auditArchive(await file.save({ useObjectStreams: false, updateFieldAppearances: false, addDefaultPage: false }));
  };
  const objects = (file: PDFDocument): PDFObject[] => file.context.enumerateIndirectObjects().map(([, object]) => object);
  const streams = (file: PDFDocument): PDFStream[] => objects(file).filter((object) => object instanceof PDFStream);
  const dicts = (file: PDFDocument, is: (dict: PDFDict) => boolean): PDFDict[] => [...objects(file).filter((object) => object instanceof PDFDict), ...streams(file).map(({ dict }) => dict)].filter(is);
  const typed = (file: PDFDocument, key: string, value: string): PDFDict => {
    const [found] = dicts(file, (dict) => dict.get(name(key)) === name(value));
    if (!found) throw new Error(`No ${value}.`);
    return found;
  };
  const metadata = (file: PDFDocument, change: (xml: string) => string): void => {
    const stream = file.catalog.lookup(name('Metadata'), PDFStream);
    file.catalog.set(name('Metadata'), file.context.register(PDFRawStream.of(stream.dict, Buffer.from(change(Buffer.from(stream.getContents()).toString('utf8'))))));
  };
  const page = (file: PDFDocument): PDFDict => file.getPage(0).node;
  const painted = (file: PDFDocument, operators: string): void => page(file).set(name('Contents'), file.context.register(file.context.stream(operators)));
  const layers = (file: PDFDocument): PDFDict => file.catalog.lookup(name('OCProperties'), PDFDict);

  test('nothing in a copy that is only written anew', async () => expect(await broken(() => undefined)).toEqual([]));

  test.each<[string, string, (file: PDFDocument) => void]>([
    ['6.1.3', 'no identifier', ({ context }) => { context.trailerInfo.ID = undefined; }],
    ['6.1.7.1', 'bytes in another file', (file) => streams(file)[0]?.dict.set(name('F'), PDFString.of('other.bin'))],
    ['6.1.7.2', 'an unknown way of packing', (file) => file.context.register(file.context.stream('x', { Filter: 'LZWDecode' }))],
    ['6.1.13', 'a page that is too large', (file) => page(file).set(name('MediaBox'), file.context.obj([0, 0, 20_000, 100]))],
    ['6.1.13', 'a text that is too long', (file) => file.context.register(PDFString.of('x'.repeat(40_000)))],
    ['6.4.2', 'a form in XML', (file) => file.catalog.lookup(name('AcroForm'), PDFDict).set(name('XFA'), PDFString.of(''))],
    ['6.6.2.1', 'no properties', (file) => file.catalog.delete(name('Metadata'))],
    ['6.6.2.1', 'properties that are no XML', (file) => metadata(file, (xml) => xml.replace('&amp;', '&'))],
    ['6.6.2.1', 'an element that is never closed', (file) => metadata(file, (xml) => xml.replace('</dc:title>', ''))],
    ['6.6.2.3', 'properties of a kind that is not described', (file) => metadata(file, (xml) => xml.replace(/dc:format/g, 'my:format'))],
    ['6.6.4', 'another part', (file) => metadata(file, (xml) => xml.replace('<pdfaid:part>3', '<pdfaid:part>2'))],
    ['6.6.4', 'another level', (file) => metadata(file, (xml) => xml.replace('<pdfaid:conformance>B', '<pdfaid:conformance>X'))],
    ['6.6.3', 'another title', (file) => file.setTitle('Another')],
    ['6.6.3', 'another date', (file) => file.setCreationDate(new Date(0))],
    ['6.2.3', 'no output intent', (file) => file.catalog.delete(name('OutputIntents'))],
    ['6.2.3', 'another number of colours', (file) => file.catalog.lookup(name('OutputIntents'), PDFArray).lookup(0, PDFDict).lookup(name('DestOutputProfile'), PDFStream).dict.set(name('N'), PDFNumber.of(4))],
    ['6.2.11.4.1', 'a font that is not embedded', (file) => { for (const dict of dicts(file, (each) => each.has(name('FontFile2')))) dict.delete(name('FontFile2')); }],
    ['6.2.11.4.1', 'a typing font that is not embedded', (file) => typed(file, 'Subtype', 'TrueType').delete(name('FontDescriptor'))],
    ['6.2.11.5', 'a width that is not that of the glyph', (file) => typed(file, 'Subtype', 'CIDFontType2').set(name('W'), file.context.obj([1, [1000]]))],
    ['6.2.11.5', 'a typing width that is not that of the glyph', (file) => typed(file, 'Subtype', 'TrueType').lookup(name('Widths'), PDFArray).set(40, PDFNumber.of(1))],
    ['6.2.11.3.2', 'codes that lead to no glyph', (file) => typed(file, 'Subtype', 'CIDFontType2').delete(name('CIDToGIDMap'))],
    ['6.2.11.6', 'codes that mean no character', (file) => typed(file, 'Subtype', 'TrueType').delete(name('Encoding'))],
    ['6.2.11.7', 'text that cannot be found', (file) => typed(file, 'Subtype', 'Type0').delete(name('ToUnicode'))],
    ['6.2.11.8', 'a character that is missing', (file) => painted(file, `BT /${[...page(file).lookup(name('Resources'), PDFDict).lookup(name('Font'), PDFDict).keys()][0]?.decodeText()} 9 Tf <0000> Tj ET`)],
    ['6.2.2', 'a font that is not named', (file) => painted(file, 'BT /Nobody 9 Tf <0001> Tj ET')],
    ['6.2.2', 'an unknown operator', (file) => painted(file, '1 2 qq')],
    ['6.2.2', 'a state that is never taken back', (file) => painted(file, 'q 1 0 0 rg')],
    ['6.1.13', 'states that lie too deep', (file) => painted(file, `${'q '.repeat(40)}${'Q '.repeat(40)}`)],
    ['6.2.4.3', 'printing colours', (file) => painted(file, '0 0 0 1 k')],
    ['6.2.5', 'tones that are changed', (file) => file.context.register(file.context.obj({ Type: 'ExtGState', TR: 'Identity' }))],
    ['6.2.10', 'an unknown way of mixing colours', (file) => file.context.register(file.context.obj({ Type: 'ExtGState', BM: 'Mine' }))],
    ['6.2.10', 'seeing through without stated colours', (file) => { file.catalog.delete(name('OutputIntents')); file.context.register(file.context.obj({ Type: 'ExtGState', ca: 0.5 })); }],
    ['6.2.9', 'PostScript', (file) => file.context.register(file.context.stream('', { Type: 'XObject', Subtype: 'PS' }))],
    ['6.2.8', 'a picture that is smoothed', (file) => file.context.register(file.context.stream('', { Subtype: 'Image', Interpolate: true }))],
    ['6.3.1', 'a film', (file) => typed(file, 'Subtype', 'Widget').set(name('Subtype'), name('Movie'))],
    ['6.3.2', 'a field that is not printed', (file) => typed(file, 'Subtype', 'Widget').set(name('F'), PDFNumber.of(0))],
    ['6.3.2', 'a field that is hidden', (file) => typed(file, 'Subtype', 'Widget').set(name('F'), PDFNumber.of(6))],
    ['6.3.3', 'a field without a look', (file) => typed(file, 'Subtype', 'Widget').delete(name('AP'))],
    ['6.3.3', 'a box without a look for its state', (file) => typed(file, 'FT', 'Btn').set(name('AS'), name('Maybe'))],
    ['6.4.1', 'looks that are left to the reader', (file) => file.catalog.lookup(name('AcroForm'), PDFDict).set(name('NeedAppearances'), file.context.obj(true))],
    ['6.4.1', 'a field that does something', (file) => typed(file, 'Subtype', 'Widget').set(name('A'), file.context.obj({ S: 'GoTo' }))],
    ['6.5.1', 'a script', (file) => file.catalog.set(name('OpenAction'), file.context.obj({ S: 'JavaScript', JS: PDFString.of('1') }))],
    ['6.5.1', 'a program that is started', (file) => page(file).set(name('A'), file.context.obj({ S: 'Launch' }))],
    ['6.9', 'an arrangement of layers without a name', (file) => layers(file).lookup(name('D'), PDFDict).delete(name('Name'))],
    ['6.9', 'layers that change by themselves', (file) => layers(file).lookup(name('D'), PDFDict).set(name('AS'), file.context.obj([]))],
    ['6.9', 'a layer that the arrangement leaves out', (file) => layers(file).lookup(name('D'), PDFDict).set(name('Order'), file.context.obj([]))],
    ['6.9', 'a layer that nobody names', (file) => painted(file, '/OC /L99 BDC EMC')],
    ['6.8', 'an attachment that is nothing to the sheets', (file) => typed(file, 'AFRelationship', 'Source').delete(name('AFRelationship'))],
    ['6.8', 'an attachment that belongs to nothing', (file) => file.catalog.delete(name('AF'))],
    ['6.8', 'an attachment with one name', (file) => typed(file, 'AFRelationship', 'Source').delete(name('UF'))],
    ['6.8', 'an attachment of no kind', (file) => typed(file, 'Type', 'EmbeddedFile').delete(name('Subtype'))],
    ['6.8', 'an attachment of no date', (file) => typed(file, 'Type', 'EmbeddedFile').delete(name('Params'))],
    ['6.8', 'no list of attachments', (file) => file.catalog.delete(name('Names'))],
  ])('%s: %s', async (clause, _, spoil) => expect(clausesOf(await broken(spoil))).toContain(clause));

  test.each<[string, string, (bytes: Buffer) => Buffer]>([
    ['6.1.2', 'something before the header', (bytes) => Buffer.concat([Buffer.from('\n'), bytes])],
    ['6.1.2', 'no binary mark', (bytes) => Buffer.concat([bytes.subarray(0, 9), Buffer.from('%abcd'), bytes.subarray(14)])],
    ['6.1.3', 'something behind the end', (bytes) => Buffer.concat([bytes, Buffer.from('more')])],
    ['6.1.3', 'a password', (bytes) => Buffer.from(bytes.toString('latin1').replace(/\/ID \[/, '/Encrypt 99 0 R /ID ['), 'latin1')],
  ])('%s: %s', async (clause, _, spoil) => expect(clausesOf(await auditArchive(new Uint8Array(spoil(Buffer.from(good)))))).toContain(clause));

  test('what a reader types into the form is written with the font in it, and the file stays as it should be', async () => {
    const task = getDocument({ data: good.slice(), verbosity: 0 });
    const document = await task.promise;
    const fields = (await document.getFieldObjects()) as Record<string, { id: string; type: string }[]>;
    const [typedName, [field] = []] = Object.entries(fields).find(([, [each]]) => each?.type === 'text') ?? [''];
    document.annotationStorage.setValue(field?.id ?? '', { value: `11' 4 1/2" Ä ½` });
    const filled = await document.saveDocument();
    await task.destroy();
    const read = await PDFDocument.load(filled, { updateMetadata: false });
    expect(read.getForm().getTextField(typedName).getText()).toBe(`11' 4 1/2" Ä ½`);
    const widget = read.getForm().getTextField(typedName).acroField.getWidgets()[0]?.dict;
    const look = widget?.lookup(name('AP'), PDFDict).lookup(name('N'), PDFStream);
    expect(String(look?.dict.lookup(name('Resources'), PDFDict))).toContain('/Typed');
    expect((await auditArchive(filled)).filter((fault) => /6\.2\.11|6\.3|6\.4/.test(fault))).toEqual([]);
  });
});
