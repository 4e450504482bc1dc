import { readFile } from 'node:fs/promises';
import { expect, test } from './support/app.ts';
import { undoName } from './support/by-hand.ts';
import { pdfTexts } from './support/pdf-text.ts';

test.describe('a sheet on the board', () => {
  test.use({ demo: 'F1' });

  test('takes a moved and rescaled view and a note, by mouse and keys, and prints them', async ({ nozzlewright: { page, complaints } }) => {
    test.setTimeout(120_000);
    await page.locator('[data-stage="sheets"]').click();
    await page.locator('.sheet-line', { hasText: 'Nozzle and pipe plan' }).first().click();
    const view = page.locator('.paper-hit').first();
    const before = await view.boundingBox();
    if (!before) throw new Error('The view is not on the board.');
    await page.mouse.click(before.x + before.width / 2, before.y + before.height / 2);
    const scale = page.getByLabel(/^Scale of Plan/);
    await scale.selectOption({ label: '1/4" = 1\'-0"' });
    await expect.poll(async () => (await view.boundingBox())?.width ?? 0, { timeout: 20_000 }).toBeLessThan(before.width * 0.8);
    const small = await view.boundingBox();
    if (!small) throw new Error('The view is not on the board.');
    await page.mouse.move(small.x + small.width / 2, small.y + small.height / 2);
    await page.mouse.down();
    await page.mouse.move(small.x + small.width / 2 + 90, small.y + small.height / 2 + 40, { steps: 5 });
    await page.mouse.up();
    await expect.poll(async () => (await view.boundingBox())?.x ?? 0, { timeout: 20_000 }).toBeGreaterThan(small.x + 60);
    await expect(undoName(page)).toHaveAccessibleName(/Place view/i);
    await page.keyboard.press('n');
    await page.keyboard.type('Meet the electrician first');
    await page.keyboard.press('Control+Enter');
    const waiting = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Print to PDF' }).click();
    const pages = await pdfTexts(await readFile(await (await waiting).path()));
    const sheet = pages.find((words) => words.includes('Meet the electrician first'));
    expect(sheet).toContain('1/4" = 1\'-0"');
    expect(sheet).toContain('Nozzle and pipe plan');
    expect(complaints).toEqual([]);
  });
});
