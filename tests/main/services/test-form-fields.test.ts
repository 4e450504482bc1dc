import { PDFCheckBox, PDFDocument, PDFTextField } from '@cantoo/pdf-lib';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Sheet, SheetField } from '#shared/sheets/sheet';
import { readFieldName } from '#shared/site/field-names';
import { readFieldPdf } from '../../../src-main/services/field/read-field-pdf.ts';
import { printSheets } from '../../../src-main/services/sheet-printer.ts';
import { auditArchive } from '../../support/archive-audit/audit-archive.ts';
import { armedPlan } from '../../support/armed-plan.ts';
import { sheetsOf } from '../../support/sheet-set.ts';

const ABOUT = { title: 'Tests', createdAt: new Date('2026-03-04T15:20:00Z') };

describe('test forms are filled in on a screen', () => {
  let sheets: Sheet[];
  let fields: SheetField[];
  let bytes: Uint8Array;
  beforeAll(async () => {
    sheets = sheetsOf(armedPlan().plan, { set: 'field' }).filter((sheet) => (sheet.fields ?? []).length > 0);
    fields = sheets.flatMap((sheet) => sheet.fields ?? []);
    bytes = await printSheets(sheets, ABOUT);
  }, 60_000);
  const tested = (): SheetField[] => fields.filter(({ name }) => name.includes('@'));

  test('every form has fields: pipe test, puff, circuits, last connection, functional test, service, pressures', () => {
    for (const start of ['H5/pipe-test/', 'H5/puff/', 'H9/insulation/', 'H9/alarm/', 'H12/panel-clear/', 'H12/pressure/', 'H11/', 'service/', 'pressure/']) {
      expect(tested().some(({ name }) => name.startsWith(start)), start).toBe(true);
    }
  });

  test('each has a name of its own, says what is written into it, and figures say their unit', () => {
    const names = tested().map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const { name, tooltip } of tested()) {
      expect(name).not.toMatch(/[.#]/);
      expect(tooltip, name).toMatch(/\S: \S/);
    }
    const tooltip = (end: string): string => tested().find(({ name }) => name.includes(end))?.tooltip ?? '';
    expect(tooltip('H9/insulation/')).toMatch(/must be at least 1\.00 MΩ.*such as 20\.00 MΩ/);
    expect(tooltip('H9/live/')).toMatch(/such as 20\.0 V/);
    expect(tooltip('H5/pipe-test/')).toMatch(/such as [\d.]+ (bar|psi)/);
    expect(tested().find(({ name }) => name.endsWith('@gauge'))?.tooltip).toMatch(/such as [\d.,]+ (bar|psi) gauge/);
    expect(tested().find(({ name }) => name.endsWith('@oxygen'))?.tooltip).toMatch(/such as 20\.9 ?%/);
  });

  test('no dimension or hold point is called like one of them', () => {
    for (const { name } of tested()) expect(readFieldName(name)).toBeUndefined();
  });

  test('fields lie on their sheets and not over each other', () => {
    for (const { fields: own = [], paper, number } of sheets) {
      own.forEach((a, i) => {
        expect(a.x >= 0 && a.y >= 0 && a.x + a.width_mm <= paper.width_mm && a.y + a.height_mm <= paper.height_mm, `${number}: ${a.name}`).toBe(true);
        for (const b of own.slice(i + 1)) {
          const isOver = a.x + a.width_mm > b.x + 0.01 && b.x + b.width_mm > a.x + 0.01 && a.y + a.height_mm > b.y + 0.01 && b.y + b.height_mm > a.y + 0.01;
          expect(isOver, `${number}: ${a.name} and ${b.name}`).toBe(false);
        }
      });
    }
  });

  test('a tablet fills them in; what is read back of dimensions and hold points is the same as without', async () => {
    const file = await PDFDocument.load(bytes, { updateMetadata: false });
    for (const { name } of tested()) {
      const field = file.getForm().getField(name);
      if (field instanceof PDFTextField) field.setText('20.0 V');
      else if (field instanceof PDFCheckBox) field.check();
    }
    const filled = await file.save();
    const again = await PDFDocument.load(filled);
    const [first] = tested().filter(({ kind }) => kind === 'text');
    expect(again.getForm().getTextField(first?.name ?? '').getText()).toBe('20.0 V');
    expect((await readFieldPdf(filled, 'f.pdf')).rows).toEqual((await readFieldPdf(bytes, 'f.pdf')).rows);
  });

  test('the set with them is a file of PDF/A-3b', async () => expect(await auditArchive(bytes)).toEqual([]));
});
