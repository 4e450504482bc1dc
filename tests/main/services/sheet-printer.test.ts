import { deflateSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { pen, text } from '#shared/sheets/marks';
import { WEIGHT } from '#shared/sheets/print-ink';
import type { Mark } from '#shared/sheets/sheet';
import { isSoundPng } from '../../../src-main/services/picture-check.ts';
import { printSheets } from '../../../src-main/services/sheet-printer.ts';
import { oneSheet } from '../../support/one-sheet.ts';
import { type ReadPage, lengthOf, readPdf } from '../../support/pdf-reading.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { demoSheets, sheetsOf, wordsOf } from '../../support/sheet-set.ts';

const ABOUT = { title: 'Test', createdAt: new Date('2026-03-04T15:20:00Z') };
const latin1 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1');

/** A smallest true PNG: one red pixel. Source: PNG (ISO/IEC 15948), made with zlib. */
const RED_PNG = Buffer.from('iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAIAAACQd1PeAAAADElEQVR4nGP4z8AAAAMBAQDJ/pLvAAAAAElFTkSuQmCC', 'base64');

const chunk = (type: string, body: Buffer): Buffer => {
  const head = Buffer.alloc(4);
  head.writeUInt32BE(body.length);
  return Buffer.concat([head, Buffer.from(type), body, Buffer.alloc(4)]);
};

/** All sheets of a set as one: what is asked of it stands on whichever sheet shows the plan. */
async function wholeSet(bytes: Uint8Array): Promise<ReadPage> {
  const pages = await readPdf(bytes);
  return { width_mm: pages[0]?.width_mm ?? 0, height_mm: pages[0]?.height_mm ?? 0, texts: pages.flatMap(({ texts }) => texts), pieces: pages.flatMap(({ pieces }) => pieces) };
}

describe('true size, read back with pdf.js', () => {
  const hall = () => planBuilder('metric').room(5, 4, 2.6).network().run([place3(1, 1, 2.5), place3(3, 1, 2.5)]).nozzle(3, 1, 2.4).plan;

  test.each([
    [50, 100],
    [25, 200],
    [20, 250],
  ])('a wall of 5.000 m at 1:%i is %f mm long', async (scale, length_mm) => {
    const page = await wholeSet(await printSheets(sheetsOf(hall(), { paper: 'A3', scale }), ABOUT));
    const walls = page.pieces.filter(({ width_mm }) => Math.abs(width_mm - WEIGHT.heavy) < 0.001).map(lengthOf);
    // North and south wall of the plan; its section has a floor and a ceiling as long where it is on the same sheet.
    expect(walls.filter((length) => Math.abs(length - length_mm) <= 0.05).length).toBeGreaterThanOrEqual(2);
    expect(page.width_mm).toBeCloseTo(420, 3);
    expect(page.height_mm).toBeCloseTo(297, 3);
  });

  test('the dimension line of a nozzle is as long as it says', async () => {
    const page = await wholeSet(await printSheets(sheetsOf(hall(), { paper: 'A3', scale: 50 }), ABOUT));
    expect(page.texts).toContain('N1: 3.000 m');
    const lines = page.pieces.filter(({ width_mm }) => Math.abs(width_mm - WEIGHT.thin) < 0.001).map(lengthOf);
    expect(lines.some((length) => Math.abs(length - 60) <= 0.05)).toBe(true);
  });

  test.each(['A4', 'A3', 'A1', 'ANSI-B', 'ARCH-D'] as const)('the check bar is 100 mm and 4 in on %s', async (paper) => {
    const page = await wholeSet(await printSheets(sheetsOf(hall(), { paper }), ABOUT));
    const level = page.pieces.filter(({ ay, by }) => Math.abs(ay - by) < 1e-3).map(lengthOf);
    expect(level.some((length) => Math.abs(length - 100) <= 0.01)).toBe(true);
    expect(level.some((length) => Math.abs(length - 101.6) <= 0.01)).toBe(true);
    expect(page.texts).toEqual(expect.arrayContaining(['100 mm', '4 in']));
  });
});

describe('the file', () => {
  test('the same sheets and date give the same bytes, another date others', async () => {
    const sheets = await demoSheets('F2');
    const first = await printSheets(sheets, ABOUT);
    expect(Buffer.compare(first, await printSheets(sheets, ABOUT))).toBe(0);
    expect(Buffer.compare(first, await printSheets(sheets, { ...ABOUT, createdAt: new Date(0) }))).not.toBe(0);
  });

  test('every text of every sheet can be found in it', async () => {
    const sheets = await demoSheets('F2-faults');
    const pages = await readPdf(await printSheets(sheets, ABOUT));
    expect(pages).toHaveLength(sheets.length);
    sheets.forEach((sheet, i) => {
      // Signs that pdf.js reports beside the text they stand at are joined before comparing.
      const read = (pages[i]?.texts ?? []).join('').replace(/\s/g, '');
      for (const words of wordsOf(sheet)) expect(read).toContain(words.replace(/\s/g, ''));
    });
  });

  test('fonts are embedded, printing is asked for at true size, and the title is told', async () => {
    const plain = latin1(await printSheets(await demoSheets('F1'), { ...ABOUT, isPlain: true }));
    // Plain, bold, and the one that a form is typed with.
    expect(plain.match(/\/FontFile2 /g)).toHaveLength(plain.includes('/AcroForm') ? 3 : 2);
    expect(plain).toContain('/PrintScaling /None');
    expect(plain).toContain('(Test)');
    expect(plain).not.toContain('/Helvetica');
    expect(plain).not.toContain(process.cwd());
  });

  test('accents, fractions and signs come out as they went in', async () => {
    const words = 'Ä é ñ ½ ≥ ° Δ × Ω Ж fi AV';
    const [page] = await readPdf(await printSheets(oneSheet(text(20, 20, words, { height_mm: 5, font: 'bold' })), ABOUT));
    expect(page?.texts.join(' ')).toBe(words);
  });

  test('pictures, clips, areas and arcs are painted', async () => {
    const stroke = pen(0.5);
    const sheets = oneSheet(
      { kind: 'image', bytes: new Uint8Array(RED_PNG), mime: 'image/png', matrix: [40, 0, 0, -30, 20, 60], opacity: 0.5 },
      { kind: 'clip', x: 10, y: 10, width_mm: 50, height_mm: 50, marks: [{ kind: 'line', places: [0, 0, 100, 100], stroke }] },
      { kind: 'area', rings: [[0, 0, 10, 0, 10, 10]], fill: '#ff0000', opacity: 0.5 },
      { kind: 'area', rings: [[0, 0, 10, 0, 10, 10]], fill: '#00ff00' },
      { kind: 'arc', x: 50, y: 50, radius_mm: 10, from_rad: 0, to_rad: 4, stroke },
      { kind: 'circle', x: 50, y: 50, radius_mm: 10, stroke: pen(0.2, '#000000', [1, 2]), fill: '#eeeeee' },
      { kind: 'segments', places: new Float64Array([0, 0, 5, 5, 6, 6, 7, 7]), stroke },
    );
    const plain = latin1(await printSheets(sheets, { ...ABOUT, isPlain: true }));
    expect(plain).toContain('/Subtype /Image');
    expect(plain).toMatch(/10 10 50 50 re\s+W n/);
    expect(plain).toMatch(/\bf\*/);
    expect(plain).toContain('[1 2] 0 d');
    const [page] = await readPdf(await printSheets(sheets, ABOUT));
    expect(page?.pieces.some((piece) => Math.abs(lengthOf(piece) - Math.hypot(100, 100)) < 0.01)).toBe(true);
  });

  test('a picture that is no picture is said on the sheet and spoils nothing else', async () => {
    const sheets = oneSheet(
      { kind: 'image', bytes: new Uint8Array([1, 2, 3]), mime: 'image/png', matrix: [40, 0, 0, -30, 20, 60], opacity: 1 },
      text(20, 100, 'still here', { height_mm: 3 }),
    );
    const [page] = await readPdf(await printSheets(sheets, ABOUT));
    expect(page?.texts.join(' ')).toContain('This picture could not be printed.');
    expect(page?.texts).toContain('still here');
  });

  test('a PNG whose pixels are damaged or swell without end is not trusted', () => {
    expect(isSoundPng(new Uint8Array(RED_PNG))).toBe(true);
    const damaged = new Uint8Array(RED_PNG);
    damaged[45] = (damaged[45] ?? 0) ^ 255;
    expect(isSoundPng(damaged)).toBe(false);
    const bomb = Buffer.concat([RED_PNG.subarray(0, 33), chunk('IDAT', deflateSync(Buffer.alloc(5_000_000))), RED_PNG.subarray(-12)]);
    expect(isSoundPng(new Uint8Array(bomb))).toBe(false);
  });

  test('a picture on many sheets is kept once', async () => {
    const bytes = new Uint8Array(RED_PNG);
    const picture: Mark = { kind: 'image', bytes, mime: 'image/png', matrix: [40, 0, 0, -30, 20, 60], opacity: 1 };
    const plain = latin1(await printSheets([...oneSheet(picture), ...oneSheet(picture)], { ...ABOUT, isPlain: true }));
    expect(plain.match(/\/Subtype \/Image/g)).toHaveLength(1);
  });

  test('a mark that is not on any paper is refused rather than printed wrong', async () => {
    const wrong = oneSheet({ kind: 'line', places: [0, 0, Number.NaN, 1], stroke: pen(1) });
    await expect(async () => printSheets(wrong, ABOUT)).rejects.toThrow(RangeError);
  });
});
