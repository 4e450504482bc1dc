import type { Page } from '@playwright/test';
import { expect, test } from './support/app.ts';
import { clickOn, drag, enter, field, ledger, pointTo, takeTool, typeAtPointer, undoName } from './support/by-hand.ts';

/** Plan place given in feet. */
const ft = (x: number, y: number) => ({ x: x * 0.3048, y: y * 0.3048 });
const tab = (page: Page) => page.locator('.bench-tab[aria-selected="true"]');
const options = (page: Page) => page.locator('[data-part="tool-options"]');

/** A room of 20' × 12' with its south-west corner at (3', 4') and a door in the middle of its south wall. */
async function drawRoom(page: Page): Promise<void> {
  await takeTool(page, 'Enclosure');
  await clickOn(page, ft(3, 4));
  await pointTo(page, ft(9, 4.7));
  await typeAtPointer(page, { length: '20' });
  await pointTo(page, ft(23.6, 9));
  await typeAtPointer(page, { length: "12'" });
  await pointTo(page, ft(15, 15.4));
  await typeAtPointer(page, { length: '20' });
  await page.keyboard.press('Enter');
  await expect(ledger(page, 'Floor area')).toContainText('240.00 ft²');
  await enter(page, 'Floor to ceiling', '9');
  await takeTool(page, 'Opening');
  await pointTo(page, ft(12, 4));
  await typeAtPointer(page, { length: '8-6' });
  await page.keyboard.press('Escape');
}

/** Takes the device tool up with a kind; its height is not known yet. */
async function takeDevice(page: Page, kind: string): Promise<void> {
  await page.keyboard.press('v');
  await options(page).getByLabel('Kind', { exact: true }).selectOption({ label: kind });
  await page.locator('.board').focus();
}

test('a detector, a manual release at a door, a sign outside it and a corridor are placed, edited, undone, found and deleted', async ({ nozzlewright: { page, complaints } }) => {
  await drawRoom(page);
  // Room for what lies beside it.
  await page.keyboard.press('-');
  await page.keyboard.press('-');

  await takeDevice(page, 'Detector');
  await pointTo(page, ft(10, 10));
  await typeAtPointer(page, { height: '8-6' });
  await clickOn(page, ft(10, 10));
  await expect(tab(page)).toHaveText('Detector D1');
  await page.keyboard.press('Escape');
  await expect(field(page, 'Height above floor')).toHaveValue(`8'-6"`);
  await enter(page, 'Zone', 'A');
  await field(page, 'Senses').selectOption('smoke');

  // Beside the door, inside: it catches the wall and faces into the room. A typed length counts from the wall's start.
  await takeDevice(page, 'Manual release');
  await pointTo(page, ft(15.3, 4.6));
  await typeAtPointer(page, { length: '12', height: '4' });
  await expect(tab(page)).toHaveText('Manual release 1');
  await page.keyboard.press('Escape');
  await expect(field(page, 'Height above floor')).toHaveValue(`4'-0"`);
  await expect(field(page, 'Faces')).toHaveValue(/^90/);
  await field(page, 'Guarded against a chance pull').selectOption('yes');

  await takeDevice(page, 'Sign');
  await options(page).getByLabel('Stands', { exact: true }).selectOption('entrance');
  await clickOn(page, ft(10, 3));
  await expect(tab(page)).toHaveText('Sign 1');
  await page.keyboard.press('Escape');
  await expect(field(page, 'Faces')).toHaveValue(/^270/);
  await expect(field(page, 'Height above floor')).toHaveValue('');
  await enter(page, 'Height above floor', '5');
  await expect(undoName(page)).toHaveAttribute('title', /^Undo edit Sign 1/);
  await page.keyboard.press('Control+z');
  await expect(field(page, 'Height above floor')).toHaveValue('');
  await page.keyboard.press('Control+Shift+z');
  await expect(field(page, 'Height above floor')).toHaveValue(`5'-0"`);

  await page.keyboard.press('y');
  await clickOn(page, ft(3, -2));
  await pointTo(page, ft(9, -2.3));
  await typeAtPointer(page, { length: '20' });
  await pointTo(page, ft(23.4, 1));
  await typeAtPointer(page, { length: '5-6' });
  await pointTo(page, ft(15, 3.3));
  await typeAtPointer(page, { length: '20' });
  await page.keyboard.press('Enter');
  await expect(tab(page)).toHaveText('Corridor 1');
  await field(page, 'Gas that drifts in').selectOption('alarmed');

  // The sign stands in the corridor: it is taken before the space that it stands in, and keeps to its wall.
  await clickOn(page, ft(10, 3.4));
  await expect(tab(page)).toHaveText('Sign 1');
  await drag(page, ft(10, 3.4), ft(7, 3.1));
  await expect(undoName(page)).toHaveAttribute('title', /^Undo edit Sign 1/);
  await expect(field(page, 'Faces')).toHaveValue(/^270/);

  await page.keyboard.press('Control+c');
  await page.keyboard.press('Control+v');
  await expect(tab(page)).toHaveText('Sign 2');
  await page.keyboard.press('Delete');
  await page.keyboard.press('Control+k');
  await page.keyboard.type('sign 1');
  await page.keyboard.press('Enter');
  await expect(tab(page)).toHaveText('Sign 1');
  await page.keyboard.press('Delete');
  await expect(undoName(page)).toHaveAttribute('title', /^Undo delete Sign 1/);
  expect(complaints).toEqual([]);
});
