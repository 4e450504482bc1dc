import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Sheet } from '#shared/sheets/sheet';
import { printSheets } from '../../../src-main/services/sheet-printer.ts';
import { demoSheets, textsOf } from '../../support/sheet-set.ts';

const ABOUT = { title: 'Layers', createdAt: new Date('2026-03-04T15:20:00Z') };
const WALLS = 'Walls and what stands between them';
const PIPE = 'Pipe and fittings';
const CYLINDERS = 'Cylinders and discharge assembly';
const NOZZLES = 'Nozzles and their jets';
const SUPPORTS = 'Supports';
const DEVICES = 'Detectors, switches, alarms and wiring';

describe('every view can be taken apart by trade', () => {
  let sheets: Sheet[];
  let bytes: Uint8Array;
  /** Names of the layers that each sheet paints in, read back with pdf.js. */
  let painted: Set<string>[];
  beforeAll(async () => {
    sheets = await demoSheets('F2');
    bytes = await printSheets(sheets, ABOUT);
    const task = getDocument({ data: bytes.slice(), verbosity: 0 });
    const pdf = await task.promise;
    const config = await pdf.getOptionalContentConfig();
    painted = [];
    for (let page = 1; page <= pdf.numPages; page += 1) {
      const { fnArray, argsArray } = await (await pdf.getPage(page)).getOperatorList();
      const ids = fnArray.flatMap((operator, i) => (operator === OPS.beginMarkedContentProps && argsArray[i]?.[0] === 'OC' ? [String(argsArray[i][1]?.id)] : []));
      painted.push(new Set(ids.map((id) => String(config.getGroup(id)?.name))));
    }
    await task.destroy();
  }, 120_000);

  test.each<[string, readonly string[]]>([
    ['Nozzle and pipe plan: Ground floor', [WALLS, PIPE, SUPPORTS, CYLINDERS, NOZZLES, 'Dimensions', 'Notes and names']],
    ['Reflected ceiling plan', [WALLS, NOZZLES, DEVICES, 'Notes and names']],
    ['Section A', [WALLS, PIPE, SUPPORTS, CYLINDERS, NOZZLES, 'Dimensions']],
    ['Cylinder wall', [WALLS, PIPE, SUPPORTS, CYLINDERS, 'Dimensions']],
    ['Isometric', [PIPE, SUPPORTS, CYLINDERS, NOZZLES]],
    ['Electrical and safety plan', [WALLS, CYLINDERS, DEVICES]],
    ['Field sheet', [WALLS, PIPE, CYLINDERS, NOZZLES, 'Dimensions']],
  ])('%s', (title, names) => {
    const i = sheets.findIndex((sheet) => sheet.title.toLowerCase().includes(title.toLowerCase()));
    expect(i, `no sheet ${title}`).toBeGreaterThanOrEqual(0);
    expect([...(painted[i] ?? [])]).toEqual(expect.arrayContaining([...names]));
  });

  test('names of nozzles are hidden with the nozzles, on every drawing', () => {
    for (const sheet of sheets.filter(({ views }) => views.length > 0)) {
      const names = textsOf({ marks: sheet.marks.filter(({ layer }) => layer !== undefined) }).filter(({ text }) => /^[NU]\d$/.test(text));
      for (const mark of names) expect(mark.layer, `${mark.text} on ${sheet.title}`).toBe('nozzles');
    }
  });

  test('the same sheets give the same bytes', async () => expect(Buffer.compare(bytes, await printSheets(await demoSheets('F2'), ABOUT))).toBe(0), 60_000);
});
