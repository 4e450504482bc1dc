import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { expect, test } from './support/app.ts';
import { goToStage } from './support/by-hand.ts';

/** Printing takes its time on a busy machine. */
const PRINTED = { timeout: 120_000 };

async function issue(page: Page, mark: string): Promise<void> {
  await page.locator('.bench').getByRole('button', { name: 'Issue a set…' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Issued by').fill('R. Vale');
  await dialog.getByLabel('Issued for').fill('For approval');
  await dialog.getByRole('button', { name: /^Issue set/ }).click();
  await expect(page.locator(`.bench [data-set="${mark}"]`)).toBeVisible(PRINTED);
}

/** Saves by the menu what the plan is given out as. */
async function savedAs(page: Page, kind: string): Promise<Buffer> {
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('menuitem', { name: /^Save as drawing or table/ }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('As', { exact: true }).selectOption(kind);
  const download = page.waitForEvent('download', PRINTED);
  await dialog.getByRole('button', { name: 'Save', exact: true }).click();
  const bytes = await readFile(await (await download).path());
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
  return bytes;
}

test.use({ demo: 'F1' });

test('two issues are compared at the window, and drawing and tables are saved from the menu', async ({ nozzlewright: { page, complaints } }) => {
  test.setTimeout(300_000);
  await goToStage(page, 'Sheets');
  await issue(page, 'A');
  await issue(page, 'B');
  await page.locator('.bench [data-set="A"]').getByRole('button', { name: 'Compare…' }).click();
  const compare = page.locator('.bench [data-part="compare"]');
  await compare.getByLabel('To', { exact: true }).selectOption({ label: (await compare.getByLabel('To', { exact: true }).locator('option').allInnerTexts()).find((words) => words.startsWith('Set B')) ?? '' });
  await expect(compare.getByRole('status')).toContainText('Nothing differs between the two.');
  await compare.getByRole('button', { name: 'Stop comparing' }).click();

  const drawing = (await savedAs(page, 'dxf')).toString('latin1');
  expect(drawing).toContain('ENTITIES');
  expect(drawing.trimEnd().endsWith('EOF') || drawing.startsWith('PK')).toBe(true);
  const tables = await savedAs(page, 'csv');
  expect(tables.subarray(0, 2).toString('latin1')).toBe('PK');
  expect(tables.length).toBeGreaterThan(1000);
  expect(complaints).toEqual([]);
});
