import { readFile } from 'node:fs/promises';
import { readXlsx } from '../support/xlsx-reading.ts';
import { expect, test } from './support/app.ts';

test.describe('the take-off of the signal hut', () => {
  test.use({ demo: 'F1' });

  test('shows a piece on the plan, takes what was measured, and is saved as a spreadsheet', async ({ nozzlewright: { page, complaints } }) => {
    await page.keyboard.press('Shift+A');
    await expect(page.locator('.bench-tab[aria-selected="true"]')).toHaveText('Take-off');
    await expect(page.locator('[data-part="pipe-order"]')).toContainText("1 × 21'-0\"");

    const piece = page.locator('.piece').nth(1);
    await piece.locator('.piece-head').click();
    await expect(page.locator('.bench-tab[data-tab="selection"]')).toContainText('Pipe');
    await expect(page.locator('.cut-piece[data-selected]')).toHaveCount(1);
    await expect(piece).toContainText("cut 7'-1 1/4\"");

    const measured = page.getByLabel('Measured centre to centre');
    await measured.fill("7'-4");
    await measured.press('Enter');
    await expect(piece).toContainText("cut 7'-2 1/4\"");
    await expect(piece.locator('.piece-mark')).toHaveText('measured');
    await page.keyboard.press('Control+z');
    await expect(piece).toContainText("cut 7'-1 1/4\"");

    const coming = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save as spreadsheet…' }).click();
    const bytes = await readFile(await (await coming).path());
    expect(readXlsx(bytes).map(({ name }) => name)).toEqual(['Pipe', 'Cut list', 'Fittings', 'Parts']);
    expect(complaints).toEqual([]);
  });
});
