import { PDFArray, PDFDict, PDFDocument, PDFName, PDFString } from '@cantoo/pdf-lib';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { fieldDimensionsOf } from '#shared/derived/field-dimensions';
import { fieldTableText } from '#shared/site/field-table';
import { fieldNameOf } from '#shared/site/field-names';
import { readEntries } from '#shared/site/read-entries';
import { FIELD_ROW_mm } from '#shared/sheets/cautions';
import { buildDemo } from '../../../../src-main/demos/build-demo.ts';
import { HostProblem } from '../../../../src-main/services/host-problem.ts';
import { readFieldRecord } from '../../../../src-main/services/field/read-field-record.ts';
import { printSheets } from '../../../../src-main/services/sheet-printer.ts';
import { TEST_TIME } from '../../../support/hosts.ts';
import { buildImportWorker } from '../../../support/import-worker.ts';
import { sheetsOf } from '../../../support/sheet-set.ts';

const { plan } = await buildDemo('F1');
const derived = derivePlan(plan);
const dimensions = fieldDimensionsOf(derived);
const sheets = sheetsOf(plan, { set: 'field' }).filter(({ fields }) => fields);
const printed = await printSheets(sheets, { title: 'Field', createdAt: TEST_TIME });
const idOf = (name: string): string => dimensions.find((dimension) => dimension.name === name)?.id ?? '';

/** Fills the form as a tablet would. */
async function filled(texts: Readonly<Record<string, string>>, ticks: readonly string[] = [], change: (document: PDFDocument) => void = () => undefined): Promise<Uint8Array> {
  const document = await PDFDocument.load(printed);
  const form = document.getForm();
  for (const [name, text] of Object.entries(texts)) form.getTextField(name).setText(text);
  for (const name of ticks) form.getCheckBox(name).check();
  change(document);
  return document.save();
}
const problemOf = async (bytes: Uint8Array, name = 'back.pdf') =>
  readFieldRecord(bytes, name, undefined).then(
    () => undefined,
    (error: unknown) => (error instanceof HostProblem ? error.problem : error),
  );

describe('the printed form', () => {
  test('has five fields for every dimension, four for every hold point, large enough for ink', async () => {
    const fields = sheets.flatMap((sheet) => sheet.fields ?? []);
    const names = fields.map(({ name }) => name);
    for (const { id } of dimensions) for (const cell of ['measured', 'by', 'when', 'instrument', 'reason'] as const) expect(names).toContain(fieldNameOf(id, cell));
    for (let i = 1; i <= 12; i += 1) expect(names).toEqual(expect.arrayContaining([`H${i}#done`, `H${i}#by`, `H${i}#witness`, `H${i}#when`]));
    // 3/8 in = 9.525 mm.
    expect(FIELD_ROW_mm).toBeGreaterThanOrEqual(9.525);
    for (const { kind, height_mm, width_mm } of fields) if (kind === 'text') expect([height_mm >= 9.525, width_mm >= 12]).toEqual([true, true]);
    for (const sheet of sheets) for (const { x, y, width_mm, height_mm } of sheet.fields ?? []) expect(x > 0 && y > 0 && x + width_mm < sheet.paper.width_mm && y + height_mm < sheet.paper.height_mm).toBe(true);
  });

  test('is a real form, told apart by its identity, the planned value in the tooltip', async () => {
    const document = await PDFDocument.load(printed);
    const form = document.getForm();
    expect(form.getFields().length).toBe(sheets.flatMap((sheet) => sheet.fields ?? []).length);
    // The hold points say it on their own sheet.
    expect(form.getTextField('form#identity!2').getText()).toBe(form.getTextField('form#identity').getText());
    expect(form.getTextField('form#identity').isReadOnly()).toBe(true);
    expect(form.getTextField('form#identity').getText()).toContain(plan.info.project);
    expect(sheets.flatMap((sheet) => sheet.fields ?? []).find(({ name }) => name === fieldNameOf(idOf('N1 a'), 'measured'))?.tooltip).toBe(
      `N1 a, from west face to orifice axis. Planned 8'-0" (2438.4 mm). Write feet and inches, such as 11' 4 1/2", or metric with its unit, such as 3467 mm; a number alone is feet.`,
    );
  });

  test('the same input gives the same bytes', async () => {
    expect(await printSheets(sheets, { title: 'Field', createdAt: TEST_TIME })).toEqual(printed);
  });
});

describe('a filled form', () => {
  test('comes back empty when nothing was filled in', async () => {
    const reading = readEntries(await readFieldRecord(printed, 'back.pdf', undefined), derived);
    expect(reading).toMatchObject({ match: 'same', remarks: [] });
    expect(new Set(reading.rows.map(({ kind }) => kind))).toEqual(new Set(['empty']));
    expect(new Set(reading.checks.map(({ kind }) => kind))).toEqual(new Set(['empty']));
  });

  test('gives an answer for every row', async () => {
    const bytes = await filled(
      {
        [fieldNameOf(idOf('N1 a'), 'measured')]: `8' 0 1/2"`,
        [fieldNameOf(idOf('N1 a'), 'by')]: 'A.B.',
        [fieldNameOf(idOf('N1 a'), 'when')]: '2026-03-05 10:00',
        [fieldNameOf(idOf('N1 a'), 'instrument')]: 'laser',
        [fieldNameOf(idOf('N1 a'), 'reason')]: 'conduit in the way',
        [fieldNameOf(idOf('N1 b'), 'measured')]: '1676 mm',
        [fieldNameOf(idOf('N1 c'), 'measured')]: 'by eye',
        [fieldNameOf(idOf('N1 d'), 'measured')]: '203',
        'H5#by': 'A.B.',
        'H5#witness': 'C.D.',
      },
      ['H5#done'],
    );
    const { rows, checks, match } = readEntries(await readFieldRecord(bytes, 'back.pdf', undefined), derived);
    const byName = new Map(rows.map((row) => [row.name, row]));
    expect(match).toBe('same');
    expect(byName.get('N1 a')).toMatchObject({ kind: 'taken', by: 'A.B.', at: '2026-03-05 10:00', instrument: 'laser', reason: 'conduit in the way', where: expect.stringMatching(/^page \d+$/) });
    expect(byName.get('N1 a')?.value_m).toBeCloseTo(2.4511, 9);
    expect(['N1 b', 'N1 c', 'N1 d'].map((name) => byName.get(name)?.kind)).toEqual(['taken', 'not-understood', 'implausible']);
    expect(checks.filter(({ kind }) => kind !== 'empty')).toMatchObject([{ id: 'H5', kind: 'taken', done: true, by: 'A.B.', witness: 'C.D.' }]);
  });

  test('of a plan that was changed since is told row by row', async () => {
    const bytes = await filled({ [fieldNameOf(idOf('N1 a'), 'measured')]: `8' 1"`, [fieldNameOf(idOf('N1 b'), 'measured')]: `5' 6"` });
    const moved = structuredClone(plan);
    for (const { nozzles, nodes } of Object.values(moved.networks)) {
      for (const { node } of Object.values(nozzles)) {
        const place = nodes[node];
        if (place) place.at.x += 0.3;
      }
    }
    const { rows, match, remarks } = readEntries(await readFieldRecord(bytes, 'back.pdf', undefined), derivePlan(moved));
    expect(match).toBe('other-revision');
    expect(remarks[0]).toContain('another state of this plan');
    expect(rows.find(({ name }) => name === 'N1 a')?.kind).toBe('other-revision');
    expect(rows.find(({ name }) => name === 'N1 b')?.kind).toBe('taken');
  });

  test('with a lost sheet says which dimensions are missing', async () => {
    const at = sheets.findIndex(({ fields }) => fields?.some(({ name }) => name === fieldNameOf(idOf('N1 a'), 'measured')));
    const bytes = await filled({}, [], (document) => {
      const form = document.getForm();
      for (const field of form.getFields()) if (sheets[at]?.fields?.some(({ name }) => name === field.getName())) form.removeField(field);
      document.removePage(at);
    });
    const { rows, remarks } = readEntries(await readFieldRecord(bytes, 'back.pdf', undefined), derived);
    expect(rows.find(({ name }) => name === 'N1 a')?.kind).toBe('missing');
    expect(remarks.join(' ')).toContain('Sheets may be missing');
  });
});

describe('a PDF that is no filled form', () => {
  test('flattened, scanned, of something else, locked, damaged, empty', async () => {
    expect(await problemOf(await filled({}, [], (document) => document.getForm().flatten()))).toMatchObject({ code: 'unsupported', what: expect.stringContaining('no form fields') });
    const scan = await PDFDocument.create();
    scan.addPage();
    expect(await problemOf(await scan.save())).toMatchObject({ what: expect.stringContaining('scanned') });
    scan.getForm().createTextField('tax.year').setText('2026');
    expect(await problemOf(await scan.save())).toMatchObject({ what: 'The PDF is a form, but not one of a field sheet.' });
    scan.encrypt({ userPassword: 'secret', ownerPassword: 'owner' });
    expect(await problemOf(await scan.save())).toMatchObject({ what: 'The PDF is locked with a password.' });
    expect(await problemOf(new TextEncoder().encode('%PDF-1.7 and no more'))).toMatchObject({ code: 'damaged', where: 'back.pdf' });
    expect(await problemOf(new Uint8Array())).toMatchObject({ what: 'The file is empty.' });
    expect(await problemOf(new TextEncoder().encode('PK\u0003\u0004'), 'back.xlsx')).toMatchObject({ what: expect.stringContaining('spreadsheet file') });
  });

  test('fields that go in a circle end somewhere', async () => {
    const document = await PDFDocument.load(printed);
    const { context } = document;
    const [one, other] = [context.nextRef(), context.nextRef()];
    context.assign(one, context.obj({ T: PDFString.of('a'), Kids: [other, one] }));
    context.assign(other, context.obj({ T: PDFString.of('b'), Kids: [one] }));
    document.catalog.lookup(PDFName.of('AcroForm'), PDFDict).lookup(PDFName.of('Fields'), PDFArray).push(one);
    const { rows } = await readFieldRecord(await document.save({ updateFieldAppearances: false }), 'back.pdf', undefined);
    expect(rows.length).toBe(dimensions.length + 12);
  });

  test('is read in a thread of its own, which is ended when it takes too long', async () => {
    const worker = await buildImportWorker('src-main/services/field/field-worker.ts');
    try {
      expect(await readFieldRecord(printed, 'back.pdf', worker.file)).toEqual(await readFieldRecord(printed, 'back.pdf', undefined));
      await expect(readFieldRecord(new Uint8Array(), 'back.pdf', worker.file)).rejects.toMatchObject({ problem: { code: 'unreadable', where: 'back.pdf' } });
      await expect(readFieldRecord(printed, 'back.pdf', worker.file, 1)).rejects.toMatchObject({ problem: { code: 'too-large' } });
    } finally {
      await worker.remove();
    }
  });

  test('broken anywhere is a record or a problem, never a fault', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.tuple(fc.nat(printed.length - 1), fc.nat(255)), { minLength: 1, maxLength: 60 }), fc.nat(printed.length), async (changes, cut) => {
        const bytes = printed.slice(0, Math.max(200, cut));
        for (const [at, byte] of changes) if (at < bytes.length) bytes[at] = byte;
        const result = await readFieldRecord(bytes, 'back.pdf', undefined).catch((error: unknown) => error);
        if (result instanceof Error) expect(result).toBeInstanceOf(HostProblem);
      }),
      { numRuns: 12 },
    );
  });
});

describe('a table', () => {
  const text = fieldTableText(derived).replace(/(?<=^|\n)([^\n]*?\/first,N1 a,.*?2438\.4),/, '$1,2451 mm');
  const twoBytes = (value: string, isBig: boolean): Uint8Array => {
    const bytes = new Uint8Array(value.length * 2);
    const view = new DataView(bytes.buffer);
    for (let i = 0; i < value.length; i += 1) view.setUint16(i * 2, value.charCodeAt(i), !isBig);
    return bytes;
  };
  test.each([
    ['UTF-8 with a mark', new TextEncoder().encode(text)],
    ['UTF-8 without', new TextEncoder().encode(text.slice(1))],
    ['UTF-16, little end first', twoBytes(text, false)],
    ['UTF-16, big end first', twoBytes(text, true)],
    ['UTF-16 without a mark', twoBytes(text.slice(1), false)],
  ])('in %s', async (_, bytes) => {
    const record = await readFieldRecord(bytes, 'back.csv', undefined);
    expect(record.about).toMatchObject({ source: 'csv', project: plan.info.project, remarks: [] });
    expect(readEntries(record, derived).rows.filter(({ kind }) => kind !== 'empty')).toMatchObject([{ name: 'N1 a', kind: 'taken', value_m: 2.451 }]);
  });

  test('in Windows-1252, fractions as one sign', async () => {
    const bytes = Uint8Array.from(`id;measured;by\r\n${idOf('N1 a')};8' 0½";J\u00fcrgen\r\n`, (sign) => sign.charCodeAt(0));
    const record = await readFieldRecord(bytes, 'back.csv', undefined);
    expect(record.about.remarks[0]).toContain('Windows-1252');
    const row = readEntries(record, derived).rows.find(({ kind }) => kind === 'taken');
    expect(row).toMatchObject({ name: 'N1 a', by: 'J\u00fcrgen' });
    expect(row?.value_m).toBeCloseTo(2.4511, 9);
  });
});
