import type { Page } from '@playwright/test';
import { expect, test } from './support/app.ts';
import { clickOn, drag, enter, field, ledger, pointTo, takeTool, typeAtPointer, undoName } from './support/by-hand.ts';
import { boardOf } from './support/on-board.ts';

/** Plan place given in feet. */
const ft = (x: number, y: number) => ({ x: x * 0.3048, y: y * 0.3048 });
const status = (page: Page) => page.locator('.status-line');
const tab = (page: Page) => page.locator('.bench-tab[aria-selected="true"]');

/** A room of 20' × 12' with its south-west corner at (3', 4'), by typed lengths with square lines. */
async function drawRoom(page: Page): Promise<void> {
  await takeTool(page, 'Enclosure');
  await clickOn(page, ft(3, 4));
  // Hardly level, hardly upright: square lines make it so.
  await pointTo(page, ft(9, 4.7));
  await typeAtPointer(page, { length: '20' });
  await pointTo(page, ft(23.6, 9));
  await typeAtPointer(page, { length: "12'" });
  await pointTo(page, ft(15, 15.4));
  await typeAtPointer(page, { length: '6096 mm' });
  await page.keyboard.press('Enter');
  await expect(ledger(page, 'Floor area')).toContainText('240.00 ft²');
}

test('a room is drawn by lengths, reshaped by a wall and a typed distance, and given a shaft, a low ceiling and a door', async ({ nozzlewright: { page, complaints } }) => {
  await drawRoom(page);
  await enter(page, 'Floor to ceiling', '9');
  await expect(boardOf(page)).toBeFocused();
  await expect(ledger(page, 'Net volume')).toContainText('2160.0 ft³');

  await pointTo(page, ft(23, 8));
  await page.mouse.down();
  await pointTo(page, ft(24.3, 8.4));
  await expect(status(page)).toContainText('type how far it moves');
  await typeAtPointer(page, { length: '2-0' });
  await page.mouse.up();
  await expect(undoName(page)).toHaveAttribute('title', /^Undo move wall/);
  await expect(ledger(page, 'Floor area')).toContainText('264.00 ft²');

  await takeTool(page, 'Cut-out');
  await clickOn(page, ft(6, 6));
  await pointTo(page, ft(8, 6));
  await typeAtPointer(page, { length: '2' });
  await pointTo(page, ft(8, 9));
  await typeAtPointer(page, { length: '2' });
  await pointTo(page, ft(5, 8));
  await typeAtPointer(page, { length: '2' });
  await page.keyboard.press('Enter');
  await expect(ledger(page, 'Floor area')).toContainText('260.00 ft²');

  await takeTool(page, 'Ceiling');
  for (const [x, y] of [[15, 4], [20, 4], [20, 8], [15, 8]] as const) await clickOn(page, ft(x, y));
  await page.keyboard.press('Enter');
  await expect(status(page)).toContainText('Type the height');
  await page.keyboard.type('7-6');
  await page.keyboard.press('Enter');
  // 264 - 4 ft² at 9 ft, 20 ft² of it 1 1/2 ft lower.
  await expect(ledger(page, 'Net volume')).toContainText('2310.0 ft³');
  await expect(field(page, 'East to west')).toHaveValue(`5'-0"`);

  await takeTool(page, 'Opening');
  await pointTo(page, ft(12, 16));
  await typeAtPointer(page, { length: '6' });
  await expect(field(page, 'From corner to middle')).toHaveValue(`7'-6"`);
  await page.keyboard.press('Escape');
  for (let step = 0; step < 4; step += 1) await page.keyboard.press('Control+z');
  await expect(ledger(page, 'Floor area')).toContainText('240.00 ft²');
  expect(complaints).toEqual([]);
});

test('pipe rises from the cylinder, branches in a tee, drops to its ends, and nozzles hang there', async ({ nozzlewright: { page, complaints } }) => {
  await drawRoom(page);
  await enter(page, 'Floor to ceiling', '9');
  await page.keyboard.press('c');
  await clickOn(page, ft(3.5, 7));
  await expect(tab(page)).toHaveText('Cylinder C1');
  const east_ft = 0.4375 + 3;

  await page.keyboard.press('p');
  await clickOn(page, ft(east_ft, 7));
  await pointTo(page, ft(east_ft, 10));
  await typeAtPointer(page, { length: '3' });
  await pointTo(page, ft(12, 10));
  await typeAtPointer(page, { length: '15' });
  await typeAtPointer(page, { height: '8' });
  await page.keyboard.press('Enter');
  await expect(undoName(page)).toHaveAttribute('title', /^Undo draw pipe/);

  await clickOn(page, ft(12, 10));
  await pointTo(page, ft(12, 13));
  await typeAtPointer(page, { length: '3-6' });
  await typeAtPointer(page, { height: '8' });
  await page.keyboard.press('Enter');

  await page.keyboard.press('n');
  await clickOn(page, ft(east_ft + 15, 10));
  await expect(tab(page)).toHaveText('Nozzle N1');
  await expect(field(page, 'Orifice above floor')).toHaveValue(`8'-0"`);
  await clickOn(page, ft(12, 13.5));
  await expect(tab(page)).toHaveText('Nozzle N2');
  // Up from the outlet, round, along, through the tee and down; the other way turns in the tee's branch.
  await expect(page.locator('.bench-body')).toContainText('1 tee');
  await expect(ledger(page, 'Elbows left')).toContainText('6');
  await expect(ledger(page, 'Nozzles')).toContainText('2');
  await expect(page.locator('.bench-body')).not.toContainText('One source tree');
  expect(complaints).toEqual([]);
});

test.describe('the signal hut', () => {
  test.use({ demo: 'F1' });

  test('is turned, mirrored and set at a distance; its unit is copied whole, and onto another floor', async ({ nozzlewright: { page, complaints } }) => {
    await page.keyboard.press('Control+a');
    await page.keyboard.press('r');
    await expect(undoName(page)).toHaveAttribute('title', /^Undo turn/);
    await page.keyboard.press('Shift+M');
    await expect(undoName(page)).toHaveAttribute('title', /^Undo mirror/);
    await expect(ledger(page, 'Floor area')).toContainText('176.00 ft²');
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');

    await page.keyboard.press('Control+Shift+A');
    await clickOn(page, ft(5, 9));
    await expect(tab(page)).toHaveText('Relay cabinets');
    await enter(page, 'East to west', '5');
    await expect(field(page, 'East to west')).toHaveValue(`5'-0"`);
    await page.keyboard.press('Shift+W');
    await page.getByLabel('Wall', { exact: true }).selectOption({ label: 'Wall 3 of Signal hut (north)' });
    await field(page, 'From wall 3 of Signal hut').click();
    await page.keyboard.type('6"');
    await page.keyboard.press('Enter');
    await expect(undoName(page)).toHaveAttribute('title', /^Undo bring to wall/);

    await page.keyboard.press('Escape');
    await page.keyboard.press('Control+a');
    await page.keyboard.press('Control+c');
    await page.keyboard.press('Control+v');
    await expect(ledger(page, 'Cylinders')).toContainText('2');
    // A unit of its own: nothing of it hangs on the first one's pipe.
    await page.keyboard.press('Control+3');
    await expect(page.locator('[data-rule="D5"]')).toBeVisible();
    await expect(page.locator('[data-rule="P1"]')).toHaveCount(0);
    await page.keyboard.press('Control+z');

    await page.keyboard.press('Control+1');
    await page.getByRole('button', { name: 'Add a level' }).click();
    await expect(page.getByRole('combobox', { name: 'Level' })).toHaveValue(/.+/);
    await boardOf(page).focus();
    await page.keyboard.press('Control+v');
    await expect(ledger(page, 'Floor area')).toContainText('352.00 ft²');
    await expect(page.getByRole('combobox', { name: 'Level' }).locator('option:checked')).toHaveText('Level 2');
    expect(complaints).toEqual([]);
  });

  test('what is locked is neither picked nor moved, what is hidden not even seen by the pointer', async ({ nozzlewright: { page } }) => {
    const n1 = { x: 2.4384, y: 1.6764 };
    await page.keyboard.press('l');
    await page.getByLabel('Lock Nozzles').check();
    await clickOn(page, n1);
    await expect(page.locator('.bench-tab', { hasText: 'Nozzle N1' })).toHaveCount(0);
    await drag(page, n1, { x: n1.x + 0.6, y: n1.y });
    await expect(status(page)).toContainText('nozzles are locked');
    await expect(undoName(page)).toBeDisabled();
    await page.keyboard.press('l');
    await page.getByLabel('Lock Nozzles').uncheck();
    await page.getByLabel('Show Nozzles').uncheck();
    await clickOn(page, n1);
    await expect(page.locator('.bench-tab', { hasText: 'Nozzle N1' })).toHaveCount(0);
    await page.keyboard.press('F2');
    await page.keyboard.type('show: nozzles');
    await page.keyboard.press('Enter');
    await clickOn(page, n1);
    await expect(tab(page)).toHaveText('Nozzle N1');
  });

  test('a note is written where it was set down, and the board has the keyboard again', async ({ nozzlewright: { page } }) => {
    await page.keyboard.press('w');
    await clickOn(page, ft(12, 3));
    await expect(page.getByLabel('Text', { exact: true })).toBeFocused();
    await page.keyboard.type('Lift the tile');
    await page.keyboard.press('Control+Enter');
    await expect(boardOf(page)).toBeFocused();
    await expect(page.getByLabel('Text', { exact: true })).toHaveValue('Lift the tile');
  });
});
