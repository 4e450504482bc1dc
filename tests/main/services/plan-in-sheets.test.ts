import { deflateSync } from 'node:zlib';
import { PDFArray, PDFDict, PDFDocument, PDFName, PDFString } from '@cantoo/pdf-lib';
import fc from 'fast-check';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, describe, expect, test } from 'vitest';
import { packPlan } from '#shared/model/pack-plan';
import { newPlan } from '#shared/model/plan';
import { text } from '#shared/sheets/marks';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { embeddedFiles } from '../../../src-main/services/embedded-files.ts';
import { packForSheets, readPlanBytes } from '../../../src-main/services/plan-files.ts';
import { planInSheets } from '../../../src-main/services/plan-in-sheets.ts';
import { printSheets } from '../../../src-main/services/sheet-printer.ts';
import { TEST_TIME } from '../../support/hosts.ts';
import { oneSheet } from '../../support/one-sheet.ts';
import { pdfFile, pdfPage, stream } from '../../support/pdf-file.ts';
import '../../support/property-seed.ts';

const isProblem = (code: string) => expect.objectContaining({ problem: expect.objectContaining({ code }) });
const latin1 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1');
const plan = newPlan('metric');
const packed = packPlan(plan, {});

/** A PDF with these streams attached in the simplest way. */
const attaching = (...files: { readonly content: string; readonly dictionary?: string }[]): Uint8Array =>
  pdfPage({ content: '', more: files.map(({ content, dictionary = '' }) => stream(content, `/Type /EmbeddedFile ${dictionary}`)) });

describe('a printed set', () => {
  let demo: Awaited<ReturnType<typeof buildDemo>>;
  let pdf: Uint8Array;
  beforeAll(async () => {
    demo = await buildDemo('F2');
    const find = async (sha256: string) => {
      return demo.assets.find((asset) => asset.sha256 === sha256);
    };
    pdf = await printSheets(oneSheet(text(20, 20, 'One', { height_mm: 5 })), { title: 'F2', createdAt: TEST_TIME, plan: await packForSheets(demo.plan, find) });
  });

  test('is enough to reopen the plan, with the floor plans under it', () => {
    const read = readPlanBytes(pdf, 'Ferry field sheets.pdf');
    expect(read.plan).toEqual(demo.plan);
    expect(read.assets.map(({ sha256 }) => sha256)).toEqual(Object.values(demo.plan.assets).map(({ sha256 }) => sha256));
    expect(read.isFromSheets).toBe(true);
    expect(read.remarks.join()).toContain('Save it as a plan file');
  });

  // Independent reader: pdf.js follows the tree of attached files, and knows nothing of ours.
  test('lists the plan among its attached files, as the source of the whole document', async () => {
    const document = await getDocument({ data: pdf.slice(), verbosity: 0 }).promise;
    const files: Record<string, { filename: string; content: Uint8Array }> = await document.getAttachments();
    expect(Object.keys(files)).toEqual(['plan.nzw']);
    expect(new Uint8Array(files['plan.nzw']?.content ?? [])).toEqual(planInSheets(pdf, 'x'));
    const { catalog, context } = await PDFDocument.load(pdf, { updateMetadata: false });
    const associated = catalog.lookup(PDFName.of('AF'), PDFArray);
    expect(associated.size()).toBe(1);
    const file = associated.lookup(0, PDFDict);
    expect(file.get(PDFName.of('AFRelationship'))).toBe(PDFName.of('Source'));
    expect(file.lookup(PDFName.of('UF'), PDFString).decodeText()).toBe('plan.nzw');
    expect(context.trailerInfo.Encrypt).toBeUndefined();
  });

  test('still holds it after another program has saved it in its own way', async () => {
    for (const useObjectStreams of [true, false]) {
      const saved = await (await PDFDocument.load(pdf)).save({ useObjectStreams });
      expect(readPlanBytes(saved, 'x.pdf').plan).toEqual(demo.plan);
    }
  });

  test('holds no sets that were issued before: they would grow from issue to issue', async () => {
    const { plan: hut, assets } = await buildDemo('F1');
    const asked: string[] = [];
    const [floor] = Object.values(hut.assets);
    const kept = { id: 'kept', name: 'Issue 1', file: 'issue-1.pdf', sha256: 'a'.repeat(64) };
    const issue = { id: 'i', number: 1, mark: 'A', date: '', by: 'M. Orrin', purpose: '', sha256: 'b'.repeat(64), plan: null, sheets: 'kept', approved: null };
    const bytes = await packForSheets({ ...hut, assets: { ...hut.assets, kept }, issuedSets: [issue] }, async (sha256) => {
      asked.push(sha256);
      return assets.find((asset) => asset.sha256 === sha256);
    });
    expect(asked).toEqual([floor?.sha256]);
    expect(readPlanBytes(bytes, 'x').plan.issuedSets).toEqual([issue]);
  });

  test('is printed without a floor plan that is not at hand', async () => {
    const bytes = await packForSheets(demo.plan, async () => {
      throw new Error('gone');
    });
    expect(readPlanBytes(bytes, 'x')).toMatchObject({ plan: demo.plan, assets: [], isFromSheets: false });
  });
});

describe('what is attached to a PDF', () => {
  test('is found packed and bare, with its length told at once or elsewhere', () => {
    const flate = latin1(deflateSync(packed));
    expect(planInSheets(attaching({ content: latin1(packed) }), 'x')).toEqual(packed);
    for (const filter of ['/Filter /FlateDecode', '/Filter [ /FlateDecode ]', '/Filter/Fl']) expect(planInSheets(attaching({ content: flate, dictionary: filter }), 'x')).toEqual(packed);
    const elsewhere = pdfFile(['<< /Type /Catalog >>', `<< /Filter /FlateDecode /Length 3 0 R /Type /EmbeddedFile >>\nstream\r\n${flate}\nendstream`, String(flate.length)]);
    expect(planInSheets(elsewhere, 'x')).toEqual(packed);
  });

  test('the same plan twice is one, two different plans are refused', () => {
    const twice = { content: latin1(packed) };
    const other = { content: latin1(packPlan({ ...plan, nextSerial: 7 }, {})) };
    expect(planInSheets(attaching(twice, twice), 'x')).toEqual(packed);
    expect(() => planInSheets(attaching(twice, other), 'x')).toThrow(isProblem('refused'));
  });

  test('other files beside the plan do no harm', () => {
    expect(planInSheets(attaching({ content: 'notes' }, { content: latin1(packed) }, { content: 'x', dictionary: '/Filter /LZWDecode' }), 'x')).toEqual(packed);
  });

  test('a plan inside an attached PDF is not that PDF\'s own', () => {
    const inner = latin1(attaching({ content: latin1(packed) }));
    expect(() => planInSheets(attaching({ content: inner }), 'x')).toThrow(isProblem('unsupported'));
  });
});

describe('a PDF that nobody vouches for', () => {
  test.each([
    ['without a plan', pdfPage({ content: '' }), 'This PDF holds no plan.'],
    ['that only lists attached files', pdfPage({ content: '', catalogue: '/Names << /EmbeddedFiles << /Names [] >> >>' }), 'This PDF holds no plan.'],
    ['with a password', pdfFile(['<< /Type /Catalog >>'], { trailer: '/Encrypt << >>' }), 'protected by a password'],
    ['that ends within the plan', attaching({ content: latin1(deflateSync(packed)), dictionary: '/Filter /FlateDecode' }).slice(0, 700), 'damaged'],
  ])('%s is one clear message', (_, bytes, words) => {
    expect(() => readPlanBytes(bytes, 'sheets.pdf')).toThrow(words);
  });

  test('an attached file that swells without end is not unpacked', () => {
    const head = Buffer.from(packed.subarray(0, 60));
    const swollen = deflateSync(Buffer.concat([head, Buffer.alloc(30_000_000)]));
    const [file] = embeddedFiles(attaching({ content: latin1(swollen), dictionary: '/Filter /FlateDecode' }));
    expect(() => file?.unpack(1_000_000)).toThrow(RangeError);
    expect(file?.head.length).toBeLessThan(20_000);
  });

  test('never ends in anything but a plan or a problem, whatever was changed in it', () => {
    const good = attaching({ content: latin1(deflateSync(packed)), dictionary: '/Filter /FlateDecode' });
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(good.length - 1), fc.nat(255)), { maxLength: 6 }), fc.nat(good.length), (changes, length) => {
        const bytes = good.slice(0, length);
        for (const [at, to] of changes) if (at < bytes.length) bytes[at] = to;
        try {
          return readPlanBytes(bytes, 'x').plan.format === 'nozzlewright-plan';
        } catch (error) {
          return error instanceof Error && 'problem' in error;
        }
      }),
      { numRuns: 200 },
    );
  });
});
