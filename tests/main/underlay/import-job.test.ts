import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { deflateSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { decodeDrawing } from '#shared/underlay/encode-drawing';
import { startImport } from '../../../src-main/services/underlay/import-job.ts';
import { dxfBytes, insert, line, ring } from '../../support/dxf-file.ts';
import { buildImportWorker } from '../../support/import-worker.ts';
import { pdfFile, pdfPage, stream } from '../../support/pdf-file.ts';
import { jpegFile, pngFile } from '../../support/picture-file.ts';
import { hasPiece, problemIn, quiet } from '../../support/underlay.ts';

const options = { name: 'plan', page: 1 };
const room = dxfBytes({ header: [['$INSUNITS', [70, 4]]], layers: [{ name: 'Hidden', colour: -1 }], entities: [ring([[0, 0], [8000, 0], [8000, 5000], [0, 5000]], 'Walls'), line(0, 0, 1, 1, 'Hidden')] });
const svg = (body: string): Uint8Array => new TextEncoder().encode(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">${body}</svg>`);

let workerFile = '';
let scratch = '';
let removeWorker: () => Promise<void> = async () => undefined;
beforeAll(async () => {
  const built = await buildImportWorker();
  workerFile = built.file;
  removeWorker = built.remove;
  scratch = await mkdtemp(join(tmpdir(), 'import-job-'));
});
afterAll(async () => {
  await removeWorker();
  await rm(scratch, { recursive: true, force: true });
});

/** Runs a module as the reading thread. */
async function withWorker(source: string): Promise<string> {
  const file = join(scratch, `worker-${source.length}.mjs`);
  await writeFile(file, source);
  return file;
}

describe.each([
  ['in a thread', () => workerFile],
  ['in the calling thread', () => undefined],
])('%s', (_, file) => {
  test('a DXF: report and drawing', async () => {
    const heard: string[] = [];
    const { report, packed } = await startImport(room, options, (_done, doing) => heard.push(doing), { workerFile: file() }).result;
    expect(report).toMatchObject({ kind: 'dxf', metresPerUnit: 0.001, width: 8000, height: 5000, segments: 5, closedOutlines: 1, texts: 0, images: 0, unitsDoubt: null });
    expect(report.layers).toEqual([{ name: 'Hidden', visible: false, segments: 1 }, { name: 'Walls', visible: true, segments: 4 }]);
    expect(hasPiece(decodeDrawing(packed), 0, 0, 8000, 0)).toBe(true);
    expect(heard.length).toBeGreaterThan(0);
  });

  test.each([
    ['pdf', pdfPage({ content: '0 0 m 9 0 l S' })],
    ['svg', svg('<path d="M0 0h5" stroke="black"/>')],
    ['png', pngFile(30, 20)],
    ['jpeg', jpegFile(30, 20)],
  ])('a %s', async (kind, bytes) => {
    expect((await startImport(bytes, options, quiet, { workerFile: file() }).result).report.kind).toBe(kind);
  });

  test('the same file gives the same bytes, and the caller’s bytes stay whole', async () => {
    const first = await startImport(room, options, quiet, { workerFile: file() }).result;
    const second = await startImport(room, options, quiet, { workerFile: file() }).result;
    expect(second).toEqual(first);
    expect(room.length).toBeGreaterThan(100);
  });

  test('cancelled it ends with a word about it', async () => {
    const many = dxfBytes({ entities: Array.from({ length: 60_000 }, (_, i) => line(0, 0, i, 1)) });
    const job = startImport(many, options, () => job?.cancel(), { workerFile: file() });
    expect((await problemIn(job.result)).what).toMatch(/cancelled/);
  });
});

describe('hostile files end with one problem', () => {
  const repeated = dxfBytes({ blocks: [{ name: 'B', entities: [ring([[0, 0], [1, 0], [1, 1]])] }], entities: [insert('B', 0, 0, '0', [70, 32_767], [71, 32_767], [44, 1], [45, 1])] });
  const bomb = deflateSync(Buffer.alloc(200_000_000, 32));
  const doubling = Array.from({ length: 12 }, (_, i) => stream(i === 11 ? '0 0 m 9 9 l S' : `/F${i + 1} Do `.repeat(10), `/Type /XObject /Subtype /Form /BBox [0 0 99 99] /Resources << /XObject << /F${i + 1} ${6 + i} 0 R >> >>`));
  test.each<[string, Uint8Array, RegExp]>([
    ['an empty file', new Uint8Array(0), /empty/],
    ['a DWG', new TextEncoder().encode('AC1032\0\0\0\0\0'), /DWG/],
    ['a photograph from a phone', new TextEncoder().encode('\0\0\0\x18ftypheic'), /HEIC/],
    ['random bytes', Uint8Array.from({ length: 5000 }, (_, i) => (i * 7919) % 251), /not a floor plan/],
    ['a cut DXF', room.subarray(0, room.length - 9), /ends in the middle/],
    ['a symbol a thousand million times', repeated, /million/],
    ['a symbol in itself', dxfBytes({ blocks: [{ name: 'A', entities: [insert('A', 0, 0)] }], entities: [insert('A', 0, 0)] }), /contains itself/],
    ['a billion laughs', new TextEncoder().encode('<!DOCTYPE svg [<!ENTITY a "x"><!ENTITY b "&a;&a;">]><svg>&b;</svg>'), /unfold/],
    ['a PNG of 3.6 thousand million pixels', pngFile(60_000, 60_000, [], new Uint8Array(9)), /60000/],
    ['a cut PNG', pngFile(30, 20).subarray(0, 60), /ends in the middle/],
    ['a broken PDF', new TextEncoder().encode('%PDF-1.4\nxref\nnonsense\n%%EOF'), /damaged/],
    ['a cut PDF', pdfPage({ content: '0 0 m 9 0 l S' }).subarray(0, 400), /ends in the middle/],
    ['a PDF of white space without end', pdfFile(['<< /Type /Catalog /Pages 2 0 R >>', '<< /Type /Pages /Kids [3 0 R] /Count 1 >>', '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 9 9] /Contents 4 0 R >>', `<< /Length ${bomb.length} /Filter /FlateDecode >>\nstream\n${bomb.toString('latin1')}\nendstream`]), /unpacks into more/],
    ['a PDF of symbols that grow tenfold at every step', pdfPage({ content: '/F0 Do', resources: '/XObject << /F0 5 0 R >>', more: doubling }), /paints more/],
  ])('%s', async (_, bytes, what) => {
    const problem = await problemIn(startImport(bytes, options, quiet, { workerFile }).result);
    expect(problem.what).toMatch(what);
    expect(problem.where).not.toBe('');
    expect(problem.remedy).not.toBe('');
  });
});

describe('limits of the thread', () => {
  test('silence ends it', async () => {
    const file = await withWorker("import { parentPort } from 'node:worker_threads'; parentPort.postMessage({ kind: 'progress', done: 0, doing: '' }); setTimeout(() => { for (;;); }, 1);");
    expect((await problemIn(startImport(room, options, quiet, { workerFile: file, stall_ms: 200 }).result)).what).toMatch(/too long/);
  });

  test('so does progress without end', async () => {
    const file = await withWorker("import { parentPort } from 'node:worker_threads'; setInterval(() => parentPort.postMessage({ kind: 'progress', done: 0, doing: 'x' }), 20);");
    expect((await problemIn(startImport(room, options, quiet, { workerFile: file, longest_ms: 500 }).result)).what).toMatch(/too long/);
  });

  test('and hunger for memory, of objects or of plain bytes', async () => {
    const objects = await withWorker('const all = []; for (;;) all.push({ a: all.length, b: [all.length] });');
    expect((await problemIn(startImport(room, options, quiet, { workerFile: objects, memory_MB: 60 }).result)).what).toMatch(/more memory/);
    const bytes = await withWorker("const all = []; setInterval(() => all.push(Buffer.alloc(20e6, 1)), 5); // plain bytes");
    expect((await problemIn(startImport(room, options, quiet, { workerFile: bytes, memory_MB: 300 }).result)).what).toMatch(/more memory/);
  });

  test('a thread that ends without a word, or fails to start, is told', async () => {
    expect((await problemIn(startImport(room, options, quiet, { workerFile: await withWorker('process.exit(3)') }).result)).what).toMatch(/without a result/);
    expect((await problemIn(startImport(room, options, quiet, { workerFile: await withWorker('throw new Error("no luck today")') }).result)).where).toMatch(/no luck/);
  });
});
