import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { expect, test } from './support/app.ts';
import { clickOn, drag, enter, field, goToStage, pointTo, takeTool, undoName } from './support/by-hand.ts';
import { pagePlace } from './support/on-board.ts';
import { pdfTexts } from './support/pdf-text.ts';

/** Plan place given in feet. */
const ft = (x: number, y: number) => ({ x: x * 0.3048, y: y * 0.3048 });
const bench = (page: Page) => page.locator('.bench');
const tab = (page: Page) => page.locator('.bench-tab[aria-selected="true"]');
const supports = (page: Page) => bench(page).locator('[data-part="supports"]');

/** Words of the printed sheets. */
async function printedWords(page: Page): Promise<string> {
  await goToStage(page, 'Sheets');
  await expect(page.getByRole('img', { name: /^Sheet/ }).first()).toBeVisible();
  const download = page.waitForEvent('download');
  await bench(page).getByRole('button', { name: 'Print to PDF' }).click();
  const path = test.info().outputPath('sheets.pdf');
  await (await download).saveAs(path);
  return (await pdfTexts(await readFile(path))).join(' ');
}

test.use({ demo: 'F1' });

test('supports are placed by the table, slid along their pipe, printed with their sign, and taken back', async ({ nozzlewright: { page, complaints } }) => {
  await bench(page).getByRole('button', { name: /^Network 1/ }).click();
  await expect(supports(page)).toContainText('3 supports');
  await supports(page).getByText('3 supports').click();
  await supports(page).getByRole('button', { name: /^Rigid/ }).first().click();
  await page.keyboard.press('Delete');
  await bench(page).getByRole('button', { name: /^Network 1/ }).click();
  await expect(supports(page)).toContainText('2 supports');
  await supports(page).getByRole('button', { name: 'Place supports by the table' }).click();
  await expect(supports(page)).toContainText('3 supports');
  await expect(undoName(page)).toHaveAttribute('title', /^Undo place pipe supports/);

  // The run lies 9 ft 6 in north, from 9 in to 8 ft east; its second support stands about a foot before the elbow.
  await page.keyboard.press('Escape');
  await clickOn(page, ft(7.02, 9.5));
  await expect(tab(page)).toHaveText('Pipe support');
  await drag(page, ft(7.02, 9.5), ft(4, 8.6));
  await expect(undoName(page)).toHaveAttribute('title', /^Undo edit pipe support/);
  await expect(field(page, 'From the end of its pipe')).toHaveValue(/^3'-/);
  await enter(page, 'From the end of its pipe', '3');
  await expect(field(page, 'From the end of its pipe')).toHaveValue(`3'-0"`);
  await field(page, 'Kind').selectOption('guide');

  const words = await printedWords(page);
  expect(words).toContain('rigid support');
  expect(words).toContain('guide: pipe slides along it');

  await goToStage(page, 'Layout');
  for (let step = 0; step < 5; step += 1) await page.keyboard.press('Control+z');
  await bench(page).getByRole('button', { name: /^Network 1/ }).click();
  await expect(supports(page)).toContainText('3 supports');
  expect(complaints).toEqual([]);
});

test('one more is put where the pipe is pointed at, by tool and by the right button', async ({ nozzlewright: { page, complaints } }) => {
  await takeTool(page, 'Support');
  await pointTo(page, ft(4, 9.5));
  await expect(page.locator('.status-line')).toContainText('put a rigid support here');
  await clickOn(page, ft(4, 9.5));
  await expect(undoName(page)).toHaveAttribute('title', /^Undo add pipe support/);
  await page.keyboard.press('Escape');
  const p = await pagePlace(page, ft(8, 7.5));
  await page.mouse.move(p.x, p.y, { steps: 3 });
  await page.mouse.click(p.x, p.y, { button: 'right' });
  await page.getByRole('menuitem', { name: /^Add support here/ }).click();
  await expect(tab(page)).toHaveText('Pipe support');
  await page.keyboard.press('Escape');
  await bench(page).getByRole('button', { name: /^Network 1/ }).click();
  await expect(supports(page)).toContainText('5 supports');
  expect(complaints).toEqual([]);
});

test('the releasing circuit is drawn up anew, and an orifice is chosen from the profile', async ({ nozzlewright: { page, complaints } }) => {
  await bench(page).getByRole('button', { name: /^Network 1/ }).click();
  const release = bench(page).locator('[data-part="release"]');
  await release.getByRole('button', { name: 'Take it away' }).click();
  await expect(release).toContainText('Not drawn up');
  await release.getByRole('button', { name: 'Draw up the circuit' }).click();
  await expect(release).toContainText('how far “Release solenoid” is from the panel is not known');
  await enter(page, 'Wire from the panel', '18.288 m');
  await expect(release).toContainText('V reach it');
  await release.getByRole('button', { name: 'Add a stretch of conduit' }).click();
  await enter(page, 'Its bends', '90 90 45');
  await expect(release).toContainText('225.0° of 360.0° in all');

  await page.keyboard.press('Escape');
  await clickOn(page, ft(8, 5.5));
  await expect(tab(page)).toHaveText('Nozzle N1');
  const area = await field(page, 'Area of all holes').inputValue();
  await field(page, 'Orifice of the unit').selectOption({ index: 1 });
  await expect(field(page, 'Area of all holes')).not.toHaveValue(area);
  const orifice = bench(page).locator('[data-part="orifice"]');
  await orifice.getByRole('button', { name: 'Take it' }).click();
  await expect(field(page, 'Area of all holes')).toHaveValue(area);
  expect(complaints).toEqual([]);
});
