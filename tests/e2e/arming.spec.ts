import type { Page } from '@playwright/test';
import { expect, test } from './support/app.ts';
import { goToStage, undoName } from './support/by-hand.ts';

const arming = (page: Page) => page.locator('.bench [data-part="arming"]');
const service = (page: Page) => page.locator('.bench [data-part="service"]');
const next = (page: Page) => arming(page).locator('[data-point]');
const tick = (page: Page, id: string) => arming(page).getByRole('button', { name: `Tick ${id}` });

/** Opens the form of a reading, fills it in and logs it. */
async function log(page: Page, what: RegExp, fields: Readonly<Record<string, string>>, choice?: string): Promise<void> {
  await next(page).getByRole('button', { name: what }).first().click();
  const form = next(page).locator('form');
  for (const [name, typed] of Object.entries(fields)) await form.getByRole('textbox', { name }).fill(typed);
  if (choice) await form.getByRole('combobox').selectOption({ label: choice });
  await form.getByRole('button', { name: 'Log it' }).click();
  await expect(form).toHaveCount(0);
}

test.use({ demo: 'F1' });

test('hold points are ticked in order, none before its readings hold, and what stood on one goes back with it', async ({ nozzlewright: { page, complaints } }) => {
  await goToStage(page, 'Site');
  await expect(next(page)).toHaveAttribute('data-point', 'H1');
  await next(page).getByRole('textbox', { name: 'Done by' }).fill('M. Arden');
  await tick(page, 'H1').click();

  // H2 is witnessed: without a name, and with the same name, it stays open.
  await expect(next(page)).toHaveAttribute('data-point', 'H2');
  await tick(page, 'H2').click();
  await expect(next(page)).toHaveAttribute('data-point', 'H2');
  await next(page).getByRole('textbox', { name: 'Witness' }).fill('M. Arden');
  await tick(page, 'H2').click();
  await expect(next(page)).toHaveAttribute('data-point', 'H2');
  await next(page).getByRole('textbox', { name: 'Witness' }).fill('R. Quill');
  for (const id of ['H2', 'H3', 'H4']) await tick(page, id).click();

  await expect(next(page)).toHaveAttribute('data-point', 'H5');
  await expect(next(page)).toContainText('Nobody stays in the room');
  await expect(tick(page, 'H5')).toBeDisabled();
  await log(page, /pressure lost/, { 'Pressure lost in the pipe test': '9' });
  await expect(next(page)).toContainText('Find the leak');
  await log(page, /pressure lost/, { 'Pressure lost in the pipe test': '8' });
  await expect(next(page)).not.toContainText('Find the leak');
  await expect(tick(page, 'H5')).toBeDisabled();
  await log(page, /puff/, {}, 'Good');
  await tick(page, 'H5').click();
  await expect(next(page)).toHaveAttribute('data-point', 'H6');

  await arming(page).getByRole('button', { name: 'Take back H3, and H4, H5' }).click();
  await expect(next(page)).toHaveAttribute('data-point', 'H3');
  await expect(undoName(page)).toHaveAttribute('title', /^Undo take back hold point H3 and what stood on it: H4, H5/);
  await page.keyboard.press('Escape');
  await undoName(page).click();
  await expect(next(page)).toHaveAttribute('data-point', 'H6');
  expect(complaints).toEqual([]);
});

test('service says what is due, and pressures over time stand corrected with the 5 % rule', async ({ nozzlewright: { page, complaints } }) => {
  await goToStage(page, 'Site');
  await expect(service(page).locator('[data-standing="unknown"]').first()).toBeVisible();
  await service(page).getByRole('button', { name: /^Discharge hose.*done$/ }).click();
  await service(page).getByRole('textbox', { name: 'On' }).fill('2001-02-30');
  await service(page).getByRole('textbox', { name: 'By' }).fill('Service');
  await service(page).getByRole('button', { name: 'Add it' }).click();
  await expect(page.locator('.status-refusal')).toContainText('Write the day as year, month and day');
  await service(page).getByRole('textbox', { name: 'On' }).fill('2001-02-28');
  await service(page).getByRole('button', { name: 'Add it' }).click();
  await expect(service(page).locator('[data-standing="overdue"]')).toContainText('Was due on 2006-02-28');

  await arming(page).locator('[data-part="arming-log"] summary').click();
  await next(page).getByRole('textbox', { name: 'Done by' }).fill('M. Arden');
  const entries = arming(page).locator('[data-part="arming-log"]');
  // Full at 15 °C are 300 bar gauge; at 50 °C that reads 356 bar gauge, and 300 there is a sixth too little.
  for (const [pressure, warmth] of [['300 bar', '15 C'], ['300 bar', '50 C']] as const) {
    await entries.getByRole('button', { name: 'Log something else' }).click();
    await entries.getByRole('combobox', { name: 'What is logged' }).selectOption('pressure');
    await entries.getByRole('combobox', { name: 'Of' }).selectOption({ label: 'Cylinder C1' });
    await entries.getByRole('textbox', { name: 'Cylinder pressure' }).fill(pressure);
    await entries.getByRole('textbox', { name: 'Temperature of the cylinder' }).fill(warmth);
    await entries.getByRole('button', { name: 'Log it' }).click();
    await expect(entries.getByRole('button', { name: 'Log something else' })).toBeVisible();
  }
  await expect(service(page).locator('[data-chart="pressure-trend"]')).toBeVisible();
  await expect(service(page)).toContainText('Refill or replace it.');
  await expect(service(page)).toContainText('nothing lost');
  expect(complaints).toEqual([]);
});
