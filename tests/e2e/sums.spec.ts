import type { Locator, Page } from '@playwright/test';
import { expect, test } from './support/app.ts';
import { enter, field, ledger, redoName, undoName } from './support/by-hand.ts';

const topic = (page: Page, name: string): Locator => page.locator(`[data-topic="${name}"]`);

/** A result by the beginning of its label. */
const result = (page: Page, of: string, label: string): Locator =>
  topic(page, of)
    .locator('.sum-line')
    .filter({ has: page.locator('.sum-line-label', { hasText: new RegExp(`^${label}`) }) })
    .locator('.sum-line-result')
    .first();

/** Opens the sums and waits until the discharge is worked out. */
async function openSums(page: Page): Promise<void> {
  await page.keyboard.press('a');
  await expect(page.locator('.bench-tab[aria-selected="true"]')).toHaveText('Sums');
  await expect(page.locator('[data-chart="discharge"]')).toBeVisible();
}

test.describe('the sums of the signal hut', () => {
  test.use({ demo: 'F1' });

  test('stand beside the plan with their figures, their reasons and their charts', async ({ nozzlewright: { page, complaints } }) => {
    await openSums(page);
    await expect(result(page, 'agent', 'Mass needed')).toContainText('24.13 kg');
    await expect(result(page, 'agent', 'Mass needed')).toContainText('53.19 lb');
    await expect(topic(page, 'people')).toContainText('12.15 %');
    await expect(topic(page, 'vent')).toContainText('0.0242 m²');
    await expect(page.locator('.sums-foot')).toContainText('Preliminary');

    const mass = topic(page, 'agent').locator('.sum-line-head', { hasText: 'Mass needed' });
    await mass.click();
    await expect(mass).toHaveAttribute('aria-expanded', 'true');
    await expect(topic(page, 'agent').locator('.sum-line-why')).toContainText('Source:');
    await expect(topic(page, 'agent').locator('[data-chart="fill"]')).toBeVisible();

    const charts = page.locator('[data-chart="discharge"] svg.chart-plot');
    await expect(charts).toHaveCount(4);
    for (const chart of await charts.all()) await expect(chart).toHaveAccessibleDescription(/over time/);
    const slider = page.getByLabel(/^Time after release/);
    await slider.focus();
    await page.keyboard.press('Home');
    await expect(slider).toHaveAttribute('aria-valuetext', '0.0 s');
    await expect(page.locator('[data-chart="discharge"]')).toContainText('Agent0.0 %');
    await page.keyboard.press('End');
    await expect(slider).not.toHaveAttribute('aria-valuetext', '0.0 s');
    expect(complaints).toEqual([]);
  });

  test('follow the plan and the basis of design, and go back with undo', async ({ nozzlewright: { page, complaints } }) => {
    await page.getByRole('button', { name: /^Signal hut/ }).click();
    await enter(page, 'Design concentration', '45.2');
    await expect(ledger(page, 'Agent needed')).toContainText('62.0');
    await page.keyboard.press('a');
    await expect(result(page, 'agent', 'Mass needed')).toContainText('28.1');
    await page.keyboard.press('Control+z');
    await expect(result(page, 'agent', 'Mass needed')).toContainText('24.13 kg');

    await page.keyboard.press('Control+Shift+B');
    await expect(page.locator('[data-part="effects"]')).toContainText('Change a choice');
    await enter(page, 'Discharge coefficient of the vent', '0.5');
    await expect(page.locator('[data-part="effects"]')).toContainText('0.02418 m²');
    await expect(page.getByText('Usually: 0.61.')).toBeVisible();
    await expect(undoName(page)).toHaveAttribute('title', 'Undo change basis of design');
    await undoName(page).click();
    await expect(page.locator('[data-part="effects"]')).toContainText('Change a choice');
    await expect(field(page, 'Discharge coefficient of the vent')).toHaveValue('0.61');
    await expect(redoName(page)).toBeEnabled();
    expect(complaints).toEqual([]);
  });

  test('say what is missing and lead to the field, whose value brings the sum back', async ({ nozzlewright: { page } }) => {
    await page.getByRole('button', { name: /^Signal hut/ }).click();
    await page.getByRole('button', { name: /^Wall 1/ }).click();
    await field(page, 'Pressure it stands').fill('');
    await page.keyboard.press('Enter');
    await expect(page.getByText('Until it is known, the relief vent is not worked out.')).toBeVisible();
    await page.keyboard.press('a');
    await expect(topic(page, 'vent').locator('.sum-missing')).toContainText('Not worked out');
    await topic(page, 'vent').getByRole('button', { name: 'Enter what wall 1 stands' }).click();
    await expect(field(page, 'Pressure it stands')).toBeFocused();
    await page.keyboard.type('250 Pa');
    await page.keyboard.press('Enter');
    await page.keyboard.press('a');
    await expect(topic(page, 'vent')).toContainText('0.02418 m²');
    await expect(topic(page, 'vent').locator('.sum-missing')).toHaveCount(0);
  });

  test('what is known of leaks, people and anchors is entered on their forms', async ({ nozzlewright: { page } }) => {
    await page.getByRole('button', { name: /^Signal hut/ }).click();
    await field(page, 'What is known of the leaks').selectOption('unknown');
    await expect(page.getByText('Until they are known, how long the gas is held is not worked out.')).toBeVisible();
    await field(page, 'What is known of the leaks').selectOption('door-fan');
    for (const [direction, pressure, flow] of [
      ['out', '10 Pa', '0.02 m³/s'],
      ['out', '50 Pa', '0.05 m³/s'],
      ['in', '10 Pa', '0.02 m³/s'],
      ['in', '50 Pa', '0.05 m³/s'],
    ] as const) {
      await field(page, 'Next reading').selectOption(direction);
      await enter(page, 'Pressure difference', pressure);
      await enter(page, 'Flow of the fan', flow);
      await page.getByRole('button', { name: 'Add this reading' }).click();
    }
    await expect(page.getByRole('table', { name: 'Door-fan readings' }).getByRole('row')).toHaveCount(5);
    await enter(page, 'Time to leave', '40');
    await page.keyboard.press('a');
    await expect(result(page, 'hold', 'Hold time')).toContainText('min');
    await expect(topic(page, 'hold').locator('.sum-missing')).toHaveCount(0);
  });
});

test.describe('the sums of a floor with six rooms', () => {
  test.use({ demo: 'F3', look: { dark: true } });

  test('begin with all rooms; a room that is chosen is selected on the board, and shows its unit too', async ({ nozzlewright: { page, complaints } }) => {
    await page.keyboard.press('a');
    await expect(page.locator('[data-part="rooms"] tbody tr')).toHaveCount(6);
    await page.locator('[data-part="rooms"]').getByRole('button', { name: 'Room 203' }).click();
    await expect(field(page, 'Sums of').locator('option:checked')).toHaveText('Room 203');
    await expect(topic(page, 'agent')).toHaveCount(1);
    await expect(page.locator('[data-chart="discharge"]')).toHaveCount(1);
    await field(page, 'Sums of').selectOption({ label: 'All 6 rooms' });
    await expect(page.locator('[data-part="rooms"] tbody tr')).toHaveCount(6);
    await ledger(page, 'Oxygen').click();
    await expect(page.locator('.bench-tab[aria-selected="true"]')).toHaveText('Sums');
    const isWide = await page.locator('.bench-body').evaluate((body) => body.scrollWidth > body.clientWidth);
    expect(isWide).toBe(false);
    expect(complaints).toEqual([]);
  });
});
