import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { deflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { unzipSync, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { PlanTooLarge, looksLikePlanFile, packPlan, unpackPlan } from '#shared/model/pack-plan';
import { printPlan } from '#shared/model/print-plan';
import { readZip } from '#shared/model/zip-entries';
import { planBuilder } from '../../support/plan-builder.ts';

const text = (value: string): Uint8Array => new TextEncoder().encode(value);
const { plan } = planBuilder().room(6, 4, 2.7).underlay().underlay('second.png');
const [firstFile = '', secondFile = ''] = Object.values(plan.assets).map(({ file }) => file);
const assets = { [firstFile]: text('0\nSECTION\n'.repeat(500)), [secondFile]: Uint8Array.from({ length: 5000 }, (_, i) => (i * 7919) % 251) };
const packed = packPlan(plan, assets);

const problemOf = (bytes: Uint8Array) => {
  const unpacked = unpackPlan(bytes);
  if (unpacked.ok) throw new Error('It was unpacked.');
  expect(unpacked.problem.where).not.toBe('');
  return unpacked.problem;
};

interface Entry {
  readonly name: string;
  readonly content?: Uint8Array;
  readonly packed?: Uint8Array;
  readonly method?: number;
  readonly flags?: number;
  readonly size?: number;
  readonly crc?: number;
  readonly header?: number;
}

/** A ZIP archive made by hand from the published layout (PKWARE APPNOTE 6.3.3, 4.3), with any field wrong on demand. */
function archive(entries: readonly Entry[], change: { count?: number; start?: number } = {}): Uint8Array {
  const parts: Uint8Array[] = [];
  const list: Uint8Array[] = [];
  let offset = 0;
  for (const { name, content = text('x'), method = 8, flags = 0, ...over } of entries) {
    const data = over.packed ?? (method === 8 ? deflateRawSync(content) : content);
    const crc = over.crc ?? new DataView(zipSync({ a: content }).buffer).getUint32(14, true);
    const size = over.size ?? content.length;
    const fields = (head: number[]): Buffer => {
      const bytes = Buffer.alloc(head.length * 4);
      for (const [i, value] of head.entries()) bytes.writeUInt32LE(value >>> 0, i * 4);
      return bytes;
    };
    const label = Buffer.from(name, 'latin1');
    const middle = Buffer.alloc(26);
    middle.writeUInt16LE(20, 0);
    middle.writeUInt16LE(flags, 2);
    middle.writeUInt16LE(method, 4);
    middle.writeUInt32LE(crc, 10);
    middle.writeUInt32LE(data.length, 14);
    middle.writeUInt32LE(size, 18);
    middle.writeUInt16LE(label.length, 22);
    const local = Buffer.concat([fields([0x04034b50]), middle, label, data]);
    const tail = Buffer.alloc(14);
    tail.writeUInt32LE(over.header ?? offset, 10);
    list.push(Buffer.concat([fields([0x02014b50]), Buffer.from([20, 0]), middle, tail, label]));
    parts.push(local);
    offset += local.length;
  }
  const directory = Buffer.concat(list);
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(change.count ?? entries.length, 8);
  end.writeUInt16LE(change.count ?? entries.length, 10);
  end.writeUInt32LE(directory.length, 12);
  end.writeUInt32LE(change.start ?? offset, 16);
  return new Uint8Array(Buffer.concat([...parts, directory, end]));
}
const planEntry: Entry = { name: 'plan.json', content: text(printPlan(plan)) };

describe('packing', () => {
  test('what is packed is unpacked as it was', () => {
    expect(unpackPlan(packed)).toEqual({ ok: true, plan, assets, absent: [], remarks: [] });
  });

  test('the same plan packs to the same bytes', () => {
    expect(packPlan(structuredClone(plan), { ...assets })).toEqual(packed);
  });

  test('another ZIP program finds the same files', () => {
    const files = unzipSync(packed);
    expect(Object.keys(files)).toEqual(['plan.json', `assets/${firstFile}`, `assets/${secondFile}`]);
    expect(new TextDecoder().decode(files['plan.json'])).toBe(printPlan(plan));
  });

  test.runIf(existsSync('/usr/bin/python3'))('Python’s zipfile finds nothing wrong with it', () => {
    const program = 'import sys,io,zipfile; z=zipfile.ZipFile(io.BytesIO(sys.stdin.buffer.read())); print(z.testzip(), z.namelist()[0])';
    expect(execFileSync('/usr/bin/python3', ['-c', program], { input: packed }).toString().trim()).toBe('None plan.json');
  });

  test('files that the plan does not name are left out, absent ones are named', () => {
    const less = packPlan(plan, { [firstFile]: assets[firstFile] ?? text(''), 'other.dxf': text('x') });
    expect(unpackPlan(less)).toMatchObject({ ok: true, absent: ['second.png'], assets: { [firstFile]: assets[firstFile] } });
    expect(Object.keys(unzipSync(less))).not.toContain('assets/other.dxf');
  });

  test('what could not be opened again is not packed', () => {
    expect(() => packPlan(plan, { ...assets, [firstFile]: new Uint8Array(200 * 1024 * 1024 + 1) })).toThrow(PlanTooLarge);
    const written = structuredClone(plan);
    const level = written.levels['level-0'];
    for (let i = 0; level && i < 900; i += 1) level.notes[`note-${i}`] = { id: `note-${i}`, at: { x: 0, y: 0 }, text: 'x'.repeat(20_000) };
    expect(() => packPlan(written, {})).toThrow('too large for one plan file');
  });

  test('an archive from elsewhere is read when it is sound', () => {
    expect(unpackPlan(archive([{ name: 'assets/', content: text(''), method: 0 }, planEntry]))).toMatchObject({ ok: true });
    expect(unpackPlan(archive([{ ...planEntry, method: 0 }]))).toMatchObject({ ok: true });
  });
});

describe('a bare plan.json', () => {
  test('is read wherever a plan file is', () => {
    expect(unpackPlan(text(printPlan(plan)))).toMatchObject({ ok: true, plan, assets: {}, absent: ['floor.dxf', 'second.png'] });
  });
  test.each([['nothing', ''], ['a drawing', '0\nSECTION'], ['a picture', '\x89PNG\r\n\x1a\n\0\0']])('%s is no plan', (_, content) => {
    expect(['damaged', 'unsupported']).toContain(problemOf(text(content)).code);
  });
  test('bytes that are no text are no plan', () => {
    expect(problemOf(Uint8Array.of(0xff, 0xfe, 0x7b, 0x00)).code).toBe('unsupported');
    expect(problemOf(Uint8Array.of(0x7b, 0xc3, 0x28, 0xa0, 0xa1)).code).toMatch(/unsupported|damaged/);
  });
});

test('a plan file is known by its first bytes', () => {
  expect(looksLikePlanFile(packed)).toBe(true);
  expect(looksLikePlanFile(text(printPlan(plan)))).toBe(true);
  expect(looksLikePlanFile(text(`\ufeff\n ${printPlan(plan)}`))).toBe(true);
  expect(looksLikePlanFile(zipSync({ 'word/document.xml': text('x') }))).toBe(false);
  expect(looksLikePlanFile(text('{"format":"other"}'))).toBe(false);
  expect(looksLikePlanFile(new Uint8Array())).toBe(false);
});

describe('hostile archives', () => {
  test.each(['../plan.json', 'assets/../../x', '/etc/passwd', 'C:/x', 'assets\\x', 'assets/.hidden', 'assets//x', 'a/b/c/d/e', 'assets/\x00x', '', 'x'.repeat(300)])('the name %j is refused', (name) => {
    expect(problemOf(archive([planEntry, { name }]))).toMatchObject({ code: 'damaged', what: expect.stringContaining('name that is not allowed') });
  });

  test('two files of one name are refused', () => {
    expect(problemOf(archive([planEntry, planEntry])).what).toContain('same name');
  });

  test('a locked file, and an unknown way of packing, are refused', () => {
    expect(problemOf(archive([{ ...planEntry, flags: 1 }])).what).toContain('password');
    expect(problemOf(archive([{ ...planEntry, method: 12 }])).code).toBe('unsupported');
  });

  test('too many files are refused by their count', () => {
    expect(problemOf(archive(Array.from({ length: 1001 }, (_, i) => ({ name: `assets/${i}` })))).code).toBe('too-large');
  });

  test('a declared size beyond the limit is refused before anything is unpacked', () => {
    expect(problemOf(archive([{ ...planEntry, size: 0xfffffff0 }])).code).toBe('too-large');
    const large = Array.from({ length: 3 }, (_, i) => ({ name: `assets/${i}`, size: 190 * 1024 * 1024 }));
    expect(problemOf(archive([planEntry, ...large])).what).toContain('together');
  });

  test('a bomb is stopped while it unpacks, whatever it declares', () => {
    const bomb = deflateRawSync(new Uint8Array(100 * 1024 * 1024), { level: 9 });
    expect(problemOf(archive([planEntry, { name: 'assets/honest', packed: bomb, size: 100 * 1024 * 1024, crc: 0 }])).what).toContain('far more');
    expect(problemOf(archive([planEntry, { name: 'assets/liar', packed: bomb, size: 1000, crc: 0 }])).what).toContain('larger than the plan file says');
  });

  test('files that share their bytes are refused', () => {
    expect(problemOf(archive([planEntry, { name: 'assets/a', content: text('yy') }, { name: 'assets/b', content: text('yy'), header: 0 }])).what).toMatch(/over each other|damaged/);
  });

  test('a wrong checksum, size or place is damage', () => {
    expect(problemOf(archive([{ ...planEntry, crc: 1 }])).what).toContain('checksum');
    expect(problemOf(archive([{ ...planEntry, size: 9_000_000 }])).what).toContain('shorter');
    expect(problemOf(archive([{ ...planEntry, header: 0xffff_0000 }])).what).toContain('cut short');
    expect(problemOf(archive([planEntry], { count: 2 })).code).toBe('damaged');
    expect(problemOf(archive([planEntry], { start: 5 })).code).toBe('damaged');
    expect(problemOf(archive([{ name: 'plan.json', packed: Uint8Array.of(0xff, 0xff, 0xff), size: 30, crc: 0 }])).what).toContain('damaged');
  });

  test('an archive without a plan says so', () => {
    expect(problemOf(archive([{ name: 'readme.txt' }])).what).toContain('no plan');
  });

  test('a file cut anywhere, or with any byte changed, is answered', () => {
    fc.assert(fc.property(fc.nat(packed.length - 1), (length) => !unpackPlan(packed.slice(0, length)).ok), { numRuns: 200 });
    fc.assert(
      fc.property(fc.nat(packed.length - 1), fc.integer({ min: 1, max: 255 }), (at, change) => {
        const bytes = packed.slice();
        bytes[at] = (bytes[at] ?? 0) ^ change;
        const unpacked = unpackPlan(bytes);
        // Dates and the like carry nothing; whatever does carry something is either as it was or refused.
        if (unpacked.ok) expect(unpacked.plan).toEqual(plan);
      }),
      { numRuns: 500 },
    );
  });

  test('limits hold for their reader alone', () => {
    const limits = { entries: 1, archive_bytes: 10_000_000, total_bytes: 5, entry_bytes: () => 10 };
    expect(readZip(zipSync({ a: text('12345') }), limits)).toMatchObject({ ok: true, entries: [{ name: 'a' }] });
    expect(readZip(zipSync({ a: text('123456') }), limits).ok).toBe(false);
    expect(readZip(zipSync({ a: text('1'), b: text('2') }), limits).ok).toBe(false);
  });
});
