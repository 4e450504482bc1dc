import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, describe, expect, test } from 'vitest';
import { pen, text } from '#shared/sheets/marks';
import { placeName } from '#shared/sheets/place-name';
import type { Mark } from '#shared/sheets/sheet';
import { printSheets } from '../../../src-main/services/sheet-printer.ts';
import { readPdf } from '../../support/pdf-reading.ts';
import { sheetWith } from '../../support/one-sheet.ts';

const POINTS_PER_MM = 72 / 25.4;
const ABOUT = { title: 'Test', createdAt: new Date('2026-03-04T15:20:00Z') };
const view = (title: string) => ({ key: title, title, box: { left: 30, top: 40, right: 130, bottom: 90 }, corner: { x_mm: 30, y_mm: 40 }, scale: 50, shown: null });
const row = text(30, 100, 'Stop: N2', { height_mm: 3, goesTo: placeName('finding', 1), place: placeName('finding-row', 1) });
const mark = text(150, 60, '1', { height_mm: 3, goesTo: placeName('finding-row', 1), place: placeName('finding', 1) });
const lost = text(30, 120, 'Stop: N9', { height_mm: 3, goesTo: placeName('finding', 2) });

/** Read back with pdf.js, which knows nothing of how it was written. */
describe('a set on a screen', () => {
  let pdf: Awaited<ReturnType<typeof getDocument>['promise']>;
  beforeAll(async () => {
    const sheets = [
      sheetWith({ number: 'N-1', title: 'Index', marks: [text(30, 30, 'N-2', { height_mm: 3, goesTo: placeName('sheet', 'N-2') }), row, lost] }),
      sheetWith({ number: 'N-2', title: 'Pläne', views: [view('Plan: Hut'), view('Section A')], marks: [{ kind: 'clip', x: 0, y: 0, width_mm: 200, height_mm: 200, marks: [mark] }] }),
    ];
    pdf = await getDocument({ data: (await printSheets(sheets, ABOUT)).slice(), verbosity: 0 }).promise;
  });
  const indexOf = async (place: unknown): Promise<number> => pdf.getPageIndex((place as [Parameters<typeof pdf.getPageIndex>[0]])[0]);

  test('lists its sheets, and below each its views', async () => {
    const outline = await pdf.getOutline();
    expect(outline.map(({ title, items }) => [title, items.map((item) => item.title)])).toEqual([
      ['N-1  Index', []],
      ['N-2  Pläne', ['Plan: Hut', 'Section A']],
    ]);
    const dest = outline[1]?.items[0]?.dest as unknown[];
    expect(await indexOf(dest)).toBe(1);
    // The view with 4 mm of paper around it; A4 lies 210 mm high, from below.
    expect(dest.slice(2).map((value) => Math.round(Number(value) / POINTS_PER_MM))).toEqual([26, 210 - 94, 134, 210 - 36]);
  });

  test('a row of the index leads to its sheet, a finding to its mark and the mark back; what is not there leads nowhere', async () => {
    const [first, second] = await Promise.all([1, 2].map(async (page) => (await pdf.getPage(page)).getAnnotations()));
    expect([first?.length, second?.length]).toEqual([2, 1]);
    const [toSheet, toMark] = await Promise.all((first ?? []).map(({ dest }) => pdf.getDestination(dest)));
    expect(await Promise.all([toSheet, toMark].map(indexOf))).toEqual([1, 1]);
    expect(toSheet?.[1]).toMatchObject({ name: 'Fit' });
    const [west = 0, south = 0, east = 0, north = 0] = (toMark ?? []).slice(2).map((value) => Number(value) / POINTS_PER_MM);
    expect(west < 150 && east > 150 && 210 - north < 60 && 210 - south > 60).toBe(true);
    expect(await indexOf(await pdf.getDestination(second?.[0]?.dest))).toBe(0);
    const box = ((first?.[1]?.rect ?? []) as number[]).map((value) => value / POINTS_PER_MM);
    expect((box[0] ?? 0) <= 30 && (box[2] ?? 0) > 35 && (box[1] ?? 0) <= 110 && (box[3] ?? 0) >= 113).toBe(true);
  });
});

describe('layers', () => {
  const stroke = pen(0.35);
  const marks: Mark[] = [
    { kind: 'line', places: [10, 10, 20, 10], stroke, layer: 'building' },
    { kind: 'line', places: [10, 20, 20, 20], stroke, layer: 'building' },
    { kind: 'clip', x: 0, y: 0, width_mm: 100, height_mm: 100, layer: 'underlay', marks: [{ kind: 'line', places: [10, 30, 20, 30], stroke }] },
    { ...text(10, 50, 'N1', { height_mm: 3 }), layer: 'nozzles' },
    { kind: 'line', places: [10, 40, 20, 40], stroke },
  ];

  test('are listed in their order, and all shown', async () => {
    const pdf = await getDocument({ data: (await printSheets([sheetWith({ marks })], ABOUT)).slice(), verbosity: 0 }).promise;
    const config = await pdf.getOptionalContentConfig();
    const order = config.getOrder() as string[];
    const groups = order.map((id) => config.getGroup(id));
    expect(groups.map((group) => [group.name, group.visible])).toEqual([
      ['Imported floor plan', true],
      ['Walls and what stands between them', true],
      ['Nozzles and their jets', true],
    ]);
  });

  test('hold what belongs to them, each run once, and end where they should', async () => {
    const plain = Buffer.from(await printSheets([sheetWith({ marks })], { ...ABOUT, isPlain: true })).toString('latin1');
    const steps = [...plain.matchAll(/\/OC \/L(\d) BDC|\bEMC\b|(\d+) \d+ m\b/g)].map(([all]) => all.replace(/^.* (\d+) m$/, 'at $1'));
    expect(steps.filter((step) => step.startsWith('/OC'))).toHaveLength(3);
    expect(steps.filter((step) => step === 'EMC')).toHaveLength(3);
    expect(steps.at(-1)).toBe('at 40');
  });

  test('a set without any has none, and texts are found in them all the same', async () => {
    const none = Buffer.from(await printSheets([sheetWith({ marks: [text(10, 10, 'x', { height_mm: 3 })] })], ABOUT)).toString('latin1');
    expect(none).not.toContain('OCProperties');
    const [page] = await readPdf(await printSheets([sheetWith({ marks })], ABOUT));
    expect(page?.texts).toContain('N1');
    expect(page?.pieces).toHaveLength(4);
  });
});
