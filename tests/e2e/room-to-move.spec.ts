import type { Page } from '@playwright/test';
import { expect, test } from './support/app.ts';
import { clickPlan, pagePlace, painted } from './support/on-board.ts';

/** N1 of the signal hut [m]. */
const N1 = { x: 2.4384, y: 1.6764 };

/** Drags the nozzle from one place of the plan to another. */
async function drag(page: Page, from: { x: number; y: number }, to: { x: number; y: number }): Promise<void> {
  const [a, b] = [await pagePlace(page, from), await pagePlace(page, to)];
  await page.mouse.move(a.x, a.y);
  await page.mouse.down();
  await page.mouse.move((a.x + b.x) / 2, (a.y + b.y) / 2, { steps: 3 });
  await page.mouse.move(b.x, b.y, { steps: 3 });
  await page.mouse.up();
  await painted(page);
}

test.describe('room to move', () => {
  test.use({ demo: 'F1' });

  test('a nozzle shows its patch, a margin map and the dial; within the patch nothing stops, beyond it something does', async ({ nozzlewright: { page, complaints } }) => {
    const slip = page.locator('[data-part="room"]');
    const stops = page.locator('[data-cell="stop"] .ledger-value');
    const settled = () => expect(page.locator('.ledger')).toHaveAttribute('aria-busy', 'false');
    await clickPlan(page, N1);
    await expect(slip).toContainText('Straight each way');
    for (const [keys, button] of [
      ['Shift+Y', 'Show patch'],
      ['Shift+H', 'Directions at the pointer'],
    ] as const) {
      await page.keyboard.press(keys);
      await expect(slip.getByRole('button', { name: button })).toHaveAttribute('aria-pressed', 'true');
    }
    const map = slip.getByLabel('Show margins of');
    await page.keyboard.press('Shift+B');
    await expect(map).toHaveValue('all');
    await map.selectOption('N1');
    await expect(map).toHaveValue('N1');
    await painted(page);
    await page.screenshot({ path: test.info().outputPath('room.png') });

    await settled();
    const before = (await stops.textContent()) ?? '';
    await drag(page, N1, { x: N1.x - 0.3, y: N1.y });
    await settled();
    await expect(stops).toHaveText(before);
    // Half a foot from the west wall: no nozzle may hang so near to it.
    await drag(page, { x: N1.x - 0.3, y: N1.y }, { x: 0.15, y: N1.y });
    await expect(stops).not.toHaveText(before);
    expect(complaints).toEqual([]);
  });
});
