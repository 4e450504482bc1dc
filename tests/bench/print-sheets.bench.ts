import PDFDocument from 'pdfkit';
import { bench, describe } from 'vitest';
import { CAP_HEIGHT } from '#shared/sheets/font-widths';
import { pen, text } from '#shared/sheets/marks';
import { PAPERS } from '#shared/paper/papers';
import type { Mark, Sheet } from '#shared/sheets/sheet';
import { printSheets } from '../../src-main/services/sheet-printer.ts';
import { FONT_FILES } from '../support/font-width-source.ts';
import { sheetWith } from '../support/one-sheet.ts';

const SHEETS = 40;
const LINES = 3000;
const LABELS = 300;

/** Forty sheets of 3 000 lines and 300 labels: what the budget counts, the same for both. */
const marks: Mark[] = [
  ...Array.from({ length: LINES }, (_, i): Mark => ({ kind: 'line', places: [20 + (i % 60) * 6, 20 + (i % 47) * 5, 24 + (i % 60) * 6, 22 + (i % 47) * 5], stroke: pen(i % 2 ? 0.25 : 0.35) })),
  ...Array.from({ length: LABELS }, (_, i): Mark => text(20 + (i % 20) * 18, 20 + Math.floor(i / 20) * 16, `N${i} ${i % 12}'-6 1/2"`, { height_mm: 2.5 })),
];
const sheets: Sheet[] = Array.from({ length: SHEETS }, (_, i) => sheetWith({ number: String(i + 1), title: '', paper: PAPERS.A3, marks }));

/** The same lines and texts by plain calls of the library. */
function printPlainly(): Promise<void> {
  const document = new PDFDocument({ autoFirstPage: false, font: FONT_FILES.plain });
  document.resume();
  const done = new Promise<void>((resolve) => document.on('end', () => resolve()));
  for (let sheet = 0; sheet < SHEETS; sheet += 1) {
    document.addPage({ size: [1190.55, 841.89], margin: 0 });
    document.scale(72 / 25.4);
    for (const mark of marks) {
      if (mark.kind === 'line') {
        const [ax = 0, ay = 0, bx = 0, by = 0] = mark.places;
        document.lineWidth(mark.stroke.width_mm).moveTo(ax, ay).lineTo(bx, by).stroke(mark.stroke.colour);
      } else if (mark.kind === 'text') {
        document.fontSize(mark.height_mm / CAP_HEIGHT).fillColor(mark.colour).text(mark.text, mark.x, mark.y, { lineBreak: false, baseline: 'alphabetic' });
      }
    }
  }
  document.end();
  return done;
}

describe('40 sheets; the budget is 1.5 times the library alone', () => {
  bench('composed marks through the sheet printer', async () => {
    await printSheets(sheets, { title: 'Bench', createdAt: new Date(0) });
  }, { iterations: 5, warmupIterations: 1, time: 0 });
  bench('the library alone', async () => {
    await printPlainly();
  }, { iterations: 5, warmupIterations: 1, time: 0 });
});
