import { goToStage, undoName } from './support/by-hand.ts';
import { expect, test } from './support/app.ts';

test.describe('the findings desk', () => {
  test.use({ demo: 'F2-faults' });

  test('shows what a cure would do, cures all at once, accepts what stays, and lists every check', async ({ nozzlewright: { page, complaints } }) => {
    await goToStage(page, 'Proof');
    const stops = page.locator('.verdict-filter [data-verdict="stop"]');
    const before = Number((await stops.textContent())?.match(/\d+/)?.[0]);

    // Up and down go from line to line.
    await page.locator('.finding-head').first().focus();
    await page.keyboard.press('ArrowDown');
    await expect(page.locator('.finding-head').nth(1)).toBeFocused();

    await page.locator('[data-verdict="stop"][data-rule="N1"] .finding-head').click();
    await expect(page.locator('.why-picture')).toBeVisible();
    await page.locator('.finding-detail .button.is-main').hover();
    await expect(page.locator('[data-cell="stop"] .ledger-value')).toHaveText(String(before - 1));
    await expect(page.locator('[data-verdict="stop"][data-rule="N1"] .finding-detail')).toBeVisible();

    const warning = page.locator('.finding[data-verdict="warn"][data-rule="N14"]').first();
    await warning.locator('.finding-head').click();
    await warning.locator('.accept-link').click();
    await page.getByLabel('Why it is acceptable').fill('Agreed on site.');
    await page.getByLabel('Name of whoever accepts it').fill('M. Orrin');
    await page.getByRole('button', { name: 'Accept it', exact: true }).click();
    await expect(page.locator('[data-part="accepted"]')).toContainText('Accepted by M. Orrin');

    await page.locator('.cure-all button').click();
    await expect(page.locator('[data-part="cured"]')).toContainText('Cured: ');
    await expect(undoName(page)).toHaveAttribute('title', /^Undo cure \d+ findings$/);

    await page.locator('[data-view="catalogue"]').click();
    await expect(page.locator('[data-check]')).toHaveCount(116);
    await page.locator('[data-check="N1"] button').click();
    await expect(page.locator('.finding[data-rule="N1"]').first()).toBeVisible();
    await page.locator('[data-view="assumptions"]').click();
    await expect(page.locator('[data-assumption="basis/agent"]')).toContainText('ISO 14520:2015');
    expect(complaints).toEqual([]);
  });
});
