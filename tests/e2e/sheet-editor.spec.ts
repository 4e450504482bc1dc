import { readFile } from 'node:fs/promises';
import { expect, test } from './support/app.ts';
import { field, goToStage, undoName } from './support/by-hand.ts';
import { pdfTexts } from './support/pdf-text.ts';

test.describe('a sheet on the board', () => {
  test.use({ demo: 'F1' });

  test('takes a moved and rescaled view and a note, by mouse and keys, and prints them', async ({ nozzlewright: { page, complaints } }) => {
    test.setTimeout(240_000);
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

  test('lets a dimension text be dragged, nudged, undone and given back, by mouse and by keys alone', async ({ nozzlewright: { page, complaints } }) => {
    test.setTimeout(180_000);
    await page.locator('[data-stage="sheets"]').click();
    await page.locator('.sheet-line', { hasText: 'Nozzle and pipe plan' }).first().click();
    const view = await page.locator('.paper-hit').first().boundingBox();
    if (!view) throw new Error('The view is not on the board.');
    await page.mouse.click(view.x + view.width / 2, view.y + view.height * 0.55);
    const text = page.locator('.paper-text[data-dimension*="|nozzle/"]').first();
    const key = await text.getAttribute('data-dimension');
    const same = page.locator(`.paper-text[data-dimension="${key}"]`);
    const place = async (): Promise<{ x: number; y: number }> => {
      const box = await same.boundingBox();
      return box ? { x: box.x + box.width / 2, y: box.y + box.height / 2 } : { x: Number.NaN, y: Number.NaN };
    };
    // Chosen first: the bar above is then as it will be, and the paper stands still.
    const shown = await place();
    await page.mouse.click(shown.x, shown.y);
    await expect(same).toHaveClass(/is-chosen/);
    const before = await place();
    const away = async (): Promise<number> => {
      const now = await place();
      return Math.hypot(now.x - before.x, now.y - before.y);
    };
    await page.mouse.move(before.x, before.y);
    await page.mouse.down();
    await page.mouse.move(before.x + 30, before.y + 30, { steps: 6 });
    await page.mouse.up();
    await expect(same).toHaveClass(/is-by-hand/, { timeout: 20_000 });
    await expect(undoName(page)).toHaveAccessibleName(/Move dimension text/i);
    await expect.poll(away, { timeout: 20_000 }).toBeGreaterThan(15);
    const dragged = await place();
    await page.keyboard.press('Shift+ArrowDown');
    await expect.poll(async () => (await place()).y, { timeout: 20_000 }).toBeGreaterThan(dragged.y + 2);
    await page.keyboard.press('Control+z');
    await expect.poll(async () => Math.abs((await place()).y - dragged.y), { timeout: 20_000 }).toBeLessThan(1);
    await page.mouse.dblclick(dragged.x, dragged.y);
    await expect(same).not.toHaveClass(/is-by-hand/, { timeout: 20_000 });
    await expect.poll(away, { timeout: 20_000 }).toBeLessThan(1);
    // By keys alone: out to the view, into its texts, along, and back by the button.
    await page.keyboard.press('Escape');
    await page.keyboard.press('Enter');
    await expect(page.getByRole('status').filter({ hasText: /^Dimension / })).toBeVisible();
    await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Shift+ArrowDown');
    await expect(page.locator('.paper-text.is-by-hand')).toHaveCount(1, { timeout: 20_000 });
    await page.getByRole('button', { name: 'Reset text' }).click();
    await expect(page.locator('.paper-text.is-by-hand')).toHaveCount(0, { timeout: 20_000 });
    expect(complaints).toEqual([]);
  });

  test('lets the view of a field sheet be moved', async ({ nozzlewright: { page, complaints } }) => {
    test.setTimeout(120_000);
    await page.locator('[data-stage="sheets"]').click();
    await page.locator('.sheet-line', { hasText: 'Field sheet' }).first().click();
    const view = page.locator('.paper-hit').first();
    const before = await view.boundingBox();
    if (!before) throw new Error('The view is not on the board.');
    await page.mouse.click(before.x + before.width / 2, before.y + before.height * 0.4);
    await page.keyboard.press('Shift+ArrowRight');
    await expect.poll(async () => (await view.boundingBox())?.x ?? 0, { timeout: 20_000 }).toBeGreaterThan(before.x + 4);
    await expect(undoName(page)).toHaveAccessibleName(/Place view/i);
    expect(complaints).toEqual([]);
  });

  test('finds a note whose sheet has gone, and puts it on another one', async ({ nozzlewright: { page, complaints } }) => {
    test.setTimeout(120_000);
    await page.locator('[data-stage="sheets"]').click();
    await page.locator('.sheet-line', { hasText: 'Nozzle and pipe plan' }).first().click();
    await page.locator('.paper-field').focus();
    await page.keyboard.press('n');
    await page.keyboard.type('Mind the beam');
    await page.keyboard.press('Control+Enter');
    await expect(page.locator('.paper-hit')).toHaveCount(2, { timeout: 20_000 });
    // Once, and on free paper: nothing is said of it.
    await expect(page.getByText('lies over other words')).toHaveCount(0);
    await page.getByRole('button', { name: 'Back to the plan' }).click();
    // The sheet bears the name of its level: it goes with it.
    await goToStage(page, 'Survey');
    await field(page, 'Name of this level').fill('Lower floor');
    await page.keyboard.press('Enter');
    await page.locator('[data-stage="sheets"]').click();
    await expect(page.getByText('A note stands on a sheet that is no longer in the set')).toBeVisible({ timeout: 20_000 });
    await page.locator('.sheet-line', { hasText: 'Nozzle and pipe plan' }).first().click();
    await page.getByRole('button', { name: 'Put on this sheet' }).click();
    await expect(page.getByRole('button', { name: 'Put on this sheet' })).toHaveCount(0, { timeout: 20_000 });
    expect(complaints).toEqual([]);
  });
});
