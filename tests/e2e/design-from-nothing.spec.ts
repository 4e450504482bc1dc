import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { expect, test } from './support/app.ts';
import { clickOn, enter, field, finding, goToStage, ledger, pointTo, takeTool, typeAtPointer, undoName } from './support/by-hand.ts';
import { pdfTexts } from './support/pdf-text.ts';

const FOOT_m = 0.3048;
/** Plan place in feet. */
const ft = (x: number, y: number) => ({ x: x * FOOT_m, y: y * FOOT_m });
const bench = (page: Page) => page.getByRole('complementary', { name: /^Bench/ });
const press = async (page: Page, name: string | RegExp): Promise<void> => bench(page).getByRole('button', { name, exact: true }).click();

/** Opens a finding and presses the button that leads to where it is cleared. */
async function mend(page: Page, name: string, title: string, button: string): Promise<void> {
  await goToStage(page, 'Proof');
  const line = finding(page, name, title);
  const head = line.locator('.finding-head');
  if ((await head.getAttribute('aria-expanded')) !== 'true') await head.click();
  await line.getByRole('button', { name: button, exact: true }).click();
}

/** Types into the field that a button led to. */
async function typeThere(page: Page, label: string, text: string): Promise<void> {
  await expect(field(page, label)).toBeFocused();
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

/** Presses the button that another one led to. */
async function pressThere(page: Page, name: string): Promise<void> {
  await expect(bench(page).getByRole('button', { name, exact: true })).toBeFocused();
  await page.keyboard.press('Enter');
}

/** Hangs a device where it is clicked, at a height, and leaves it selected with its form. */
async function hang(page: Page, kind: string, at: { x: number; y: number }, height: string, sign?: string): Promise<void> {
  await page.locator('.board').focus();
  await page.keyboard.press('v');
  const options = page.locator('[data-part="tool-options"]');
  await options.getByLabel('Kind', { exact: true }).selectOption({ label: kind });
  if (sign) await options.getByLabel('Stands', { exact: true }).selectOption(sign);
  await options.getByLabel('Height above floor', { exact: true }).fill(height);
  await page.keyboard.press('Enter');
  await page.locator('.board').focus();
  await clickOn(page, at);
  await page.keyboard.press('Escape');
  await expect(field(page, 'Height above floor')).toBeVisible();
}

/** Hangs a sign and writes down what it says. */
async function hangSign(page: Page, sign: string, at: { x: number; y: number }, words: string): Promise<void> {
  await hang(page, 'Sign', at, '5', sign);
  await field(page, 'Wording').fill(words);
  await field(page, 'Wording').blur();
}

test('an empty plan becomes a layout with every sum known and every check asked, led by what the window says', async ({ nozzlewright: { page, complaints } }) => {
  test.setTimeout(300_000);

  await test.step('a room is drawn with typed lengths and gets its height', async () => {
    await page.getByRole('button', { name: /^A tape measure/ }).click();
    await clickOn(page, ft(2, 3));
    await pointTo(page, ft(10, 3));
    await typeAtPointer(page, { length: `16'` });
    await pointTo(page, ft(18, 9));
    await typeAtPointer(page, { length: `11'` });
    await pointTo(page, ft(6, 14));
    await typeAtPointer(page, { length: `16'` });
    await page.keyboard.press('Enter');
    await enter(page, 'Floor to ceiling', `8'`);
    await expect(ledger(page, 'Net volume')).toContainText('1408.0 ft³');
  });

  await test.step('a door, clear of where the cylinder will stand', async () => {
    await goToStage(page, 'Survey');
    await takeTool(page, 'Opening');
    await clickOn(page, ft(15, 3));
    await expect(undoName(page)).toHaveAccessibleName(/opening/i);
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
  });

  await test.step('cylinder, pipe and nozzle', async () => {
    await goToStage(page, 'Layout');
    await takeTool(page, 'Cylinder');
    await pointTo(page, ft(2.2, 8));
    await typeAtPointer(page, { length: `8'` });
    await takeTool(page, 'Pipe');
    await clickOn(page, ft(2.44, 6));
    await pointTo(page, ft(2.44, 9));
    await typeAtPointer(page, { length: `2'6` });
    await pointTo(page, ft(7, 8.5));
    await typeAtPointer(page, { length: '7-6 3/4' });
    await page.keyboard.press('Enter');
    await takeTool(page, 'Nozzle');
    await clickOn(page, ft(10, 8.5));
    await expect(ledger(page, 'Nozzles')).toContainText('1');
    await page.keyboard.press('Escape');
  });

  await test.step('what the agent, the people and the hold time need', async () => {
    await mend(page, 'Room 1', 'Wall strength known', 'Enter what all walls bear');
    await typeThere(page, 'All walls bear', '250 Pa');
    await mend(page, 'Room 1', 'Agent quantity', 'Say what can burn');
    await expect(field(page, 'What can burn')).toBeFocused();
    await field(page, 'What can burn').selectOption({ label: 'Class A, surface fire' });
    await press(page, 'Take the least of the edition: 40.3 %');
    await expect(field(page, 'Design concentration')).toHaveValue('40.3 %');
    await mend(page, 'Room 1', 'Agent quantity', 'Enter the temperatures');
    await expect(field(page, 'Coldest')).toBeFocused();
    await page.keyboard.type('60');
    await page.keyboard.press('Tab');
    await typeThere(page, 'Warmest', '80');
    await mend(page, 'Room 1', 'Agent quantity', 'Enter the height above the sea');
    await typeThere(page, 'Height above the sea', '0');
    await expect(ledger(page, 'Agent needed')).toContainText('53.6 / 54.5 lb');
    await mend(page, 'Room 1', 'People in the gas', 'Say who is in the room');
    await field(page, 'People').selectOption({ label: 'People come now and then' });
    await mend(page, 'Room 1', 'Time to leave', 'Enter the time to leave');
    await typeThere(page, 'Time to leave', '25');
    await mend(page, 'Room 1', 'Delay before discharge', 'Enter the delay');
    await typeThere(page, 'Delay before discharge', '30');
    await mend(page, 'Room 1', 'Leakage area', 'Say what is known of the leaks');
    await field(page, 'What is known of the leaks').selectOption({ label: 'A leakage area, listed or estimated' });
    await enter(page, 'Leakage area', '0.01 m²');
    await enter(page, 'At a pressure of', '10 Pa');
    await mend(page, 'Room 1', 'Hold time', 'Enter the lowest thing to protect');
    await typeThere(page, 'Lowest thing to protect', `6'`);
  });

  await test.step('a relief vent of the needed size', async () => {
    await mend(page, 'Room 1', 'Pressure relief', 'Put a relief vent in a wall');
    await clickOn(page, ft(18, 8));
    await press(page, 'Take it');
    await expect(undoName(page)).toHaveAccessibleName(/opening|vent/i);
    await field(page, 'Leads to').selectOption({ label: 'Outdoors' });
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
  });

  await test.step('what holds the cylinder and the pipe', async () => {
    await mend(page, 'C1', 'Wall behind cylinder', 'Say what the wall behind it bears');
    await field(page, 'Load-bearing').selectOption({ label: 'Yes' });
    await enter(page, 'Weight it bears at a rail', '3000 N');
    await mend(page, 'C1', 'Anchors', 'Enter its anchors');
    await expect(field(page, 'Kind of anchor')).toBeFocused();
    for (const text of ['Sleeve 10', '2', '3 kN', '4 kN', '6 in', '4 in']) {
      await page.keyboard.type(text);
      await page.keyboard.press('Tab');
    }
    await enter(page, 'Rail above floor', `4'`);
    await mend(page, 'N1', 'Orifice code', 'Choose its orifice');
    await press(page, 'Take it');
    await mend(page, 'N1', 'Dirt trap', 'Put a dirt trap at the last elbow');
    await mend(page, 'Network 1', 'Support span', 'Place all supports anew, by the table');
    await mend(page, 'N1', 'Thrust on support', 'Enter what the supports bear');
    await typeThere(page, 'Each support bears', '1 kN');
  });

  await test.step('how the cylinder is held and read, and what its hose and valves are', async () => {
    await mend(page, 'C1', 'Held at two levels', 'Go to its restraints');
    await pressThere(page, 'Add a restraint');
    await mend(page, 'C1', 'Gauge can be read', 'Change its gauge');
    await typeThere(page, 'Gauge above floor', `5'`);
    await mend(page, 'C1', 'Exposed place', 'Say what it is exposed to');
    await field(page, 'Sun, heat, water, vehicles, weather').selectOption({ index: 1 });
    await mend(page, 'C1', 'Outlet height against hose and pipe', 'Look at the discharge assembly');
    for (const [part, length] of [['1. Discharge hose', '30 in'], ['2. Check valve', '4 in'], ['3. Pressure regulator', '6 in']] as const) {
      const box = bench(page).getByRole('group', { name: part, exact: true }).getByLabel('Length', { exact: true });
      await box.fill(length);
      await box.press('Enter');
    }
    await press(page, 'Lay it out');
    await expect(bench(page).getByRole('alert')).toHaveCount(0);
  });

  await test.step('how the pipe is put up', async () => {
    await mend(page, 'Network 1', 'Bonding', 'Say whether the pipe is bonded');
    await field(page, 'Bonding to earth').selectOption({ label: 'Bonded' });
    await enter(page, 'Marking along the pipe', 'Nitrogen, arrow along the flow');
    await enter(page, 'Finish against corrosion', 'Primed and painted');
    await mend(page, 'Network 1', 'Earthquake bracing', 'Say whether bracing is required');
    await field(page, 'Earthquake bracing').selectOption({ label: 'No bracing required' });
  });

  await test.step('the releasing circuit', async () => {
    await mend(page, 'Network 1', 'Voltage at device', 'Draw up the releasing circuit');
    await pressThere(page, 'Draw up the circuit');
    await mend(page, 'Network 1', 'Voltage at device', 'Enter how long the wire is');
    await typeThere(page, 'Wire from the panel', `60'`);
    await mend(page, 'Network 1', 'Release current', 'Enter what the panel gives');
    await typeThere(page, 'Current it gives', '2 A');
    await mend(page, 'Network 1', 'Release current', 'Enter how long the panel gives it');
    await typeThere(page, 'For how long', '3');
    await mend(page, 'Network 1', 'Conduit fill', 'Choose the conduit');
    await field(page, 'Conduit').selectOption({ index: 1 });
    await mend(page, 'Network 1', 'Conduit fill', 'Enter the conductors');
    await pressThere(page, 'Add conductors');
    await mend(page, 'Network 1', 'Bends between pulls', 'Enter how the conduit bends');
    await pressThere(page, 'Add a stretch of conduit');
    await enter(page, 'Its bends', '90 90');
    await mend(page, 'Network 1', 'Low-pressure switch', 'Enter the low-pressure switch');
    await press(page, /^Take that of the unit/);
  });

  await test.step('how the circuit is watched, and its battery', async () => {
    await mend(page, 'Network 1', 'Supervision of the circuit', 'Say how its devices are wired');
    await field(page, 'Wired').selectOption('in-line');
    await mend(page, 'Network 1', 'Supervision of the circuit', 'Say where the line ends');
    await field(page, 'End-of-line part').selectOption('after-last');
    await mend(page, 'Network 1', 'Actuator watched', 'Say whether the actuator is watched');
    await field(page, 'Taking the actuator off shows at the panel').selectOption('yes');
    await mend(page, 'Network 1', 'Listing of the panel', 'Say whether the panel is listed');
    await field(page, 'Listed for releasing').selectOption('yes');
    await field(page, 'Listed with this solenoid').selectOption('yes');
    await enter(page, 'Which listing says so', 'page 12');
    await enter(page, 'Battery', '7 Ah');
    await enter(page, 'Current while it stands by', '0.15 A');
    await enter(page, 'Current in alarm', '2 A');
  });

  await test.step('signs, buttons, detectors and alarms', async () => {
    await goToStage(page, 'Layout');
    await page.keyboard.press('Escape');
    await hang(page, 'Detector', ft(6, 11), '7-10');
    await enter(page, 'Zone', '1');
    await hang(page, 'Detector', ft(14, 6), '7-10');
    await enter(page, 'Zone', '2');
    for (const at of [ft(18, 12), ft(2, 5)]) {
      await hang(page, 'Sounder', at, '7-6');
      await enter(page, 'Loudness at 3 m', '92');
      await enter(page, 'Light in candela', '110');
    }
    // The door is from 13'-6" to 16'-6" in the south wall.
    await hang(page, 'Manual release', ft(12.8, 3.1), '3-10');
    await field(page, 'Guarded against a chance pull').selectOption('yes');
    await hang(page, 'Disconnect switch', ft(11, 3.1), '3-10');
    await field(page, 'Needs a key').selectOption('yes');
    await field(page, 'Supervised').selectOption('yes');
    await hangSign(page, 'manual-release', ft(12.4, 3.1), 'Releases nitrogen into this room.');
    await hangSign(page, 'inside', ft(10, 3.1), 'Leave at once when the alarm sounds.');
    await hangSign(page, 'entrance', ft(12.8, 2.6), 'Do not enter while the alarm sounds.');
    await hangSign(page, 'cylinder', ft(2.1, 9.5), 'Nitrogen under high pressure.');
  });

  await test.step('what lies around the room, how it is shut, and what follows a discharge', async () => {
    await mend(page, 'Room 1', 'Alarm heard and seen', 'Enter how loud it usually is');
    await typeThere(page, 'Loudest usual noise', '60');
    await mend(page, 'Door 1, Room 1', 'Openings close', 'Say whether it closes');
    await field(page, 'Closes before discharge').selectOption('yes');
    await enter(page, 'Gap under the leaf', '0');
    await mend(page, 'Room 1', 'Tiles clipped', 'Say what the ceiling is made of');
    await field(page, 'Ceiling').selectOption('hard');
    await mend(page, 'Room 1', 'Adjacent spaces', 'Say what lies on the other sides');
    await field(page, 'What lies on the other sides').fill('Open ground on all sides.');
    await field(page, 'What lies on the other sides').blur();
    await mend(page, 'Room 1', 'Extract after discharge', 'Say whether extract is required');
    await field(page, 'Extract after a discharge').selectOption({ label: 'No extract required' });
    await field(page, 'Lock-out valve').selectOption({ label: 'No lock-out valve required' });
    await enter(page, 'Battery stands by for, hours', '24');
    await enter(page, 'Then sounds the alarm for, minutes', '5');
    await mend(page, 'Room 1', 'Coming back in', 'Write how people come back in');
    await field(page, 'How people come back in').fill('Only after ventilating, with a meter that shows 19.5 % oxygen or more.');
    await field(page, 'How people come back in').blur();
    await field(page, 'Oxygen meter at hand').selectOption('yes');
  });

  await test.step('the title block', async () => {
    await mend(page, 'Plan', 'Title block filled in', 'Enter the project data');
    const dialog = page.getByRole('dialog');
    for (const [label, text] of [['Project', 'Signal hut'], ['Site', 'Junction'], ['Client', 'The owner'], ['Adopted code', 'ISO 14520-1'], ['Edition', '2023'], ['Drawn by', 'A'], ['Checked by', 'B']] as const) {
      await dialog.getByLabel(label, { exact: true }).fill(text);
      await page.keyboard.press('Tab');
    }
    await dialog.getByRole('button', { name: 'Done', exact: true }).click();
  });

  await test.step('nothing stops, nothing is left unchecked, every sum is worked out', async () => {
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    await page.keyboard.press('a');
    await bench(page).getByRole('button', { name: 'Enter the longest delay allowed' }).click();
    await typeThere(page, 'Longest delay the authority allows', '60');
    await page.keyboard.press('Escape');
    await page.keyboard.press('a');
    await expect(ledger(page, 'Stops')).toHaveText(/\D0$/);
    await expect(ledger(page, 'Not checked')).toHaveText(/\D0$/);
    for (const topic of ['agent', 'people', 'discharge', 'vent', 'hold', 'strength', 'supports', 'supervision', 'wiring', 'battery']) await expect(page.locator(`[data-topic="${topic}"]`).first()).toBeAttached();
    await expect(page.locator('[data-chart="discharge"] svg.chart-plot')).toHaveCount(4);
    await expect(bench(page).locator('.sum-missing')).toHaveCount(0);
    await page.screenshot({ path: test.info().outputPath('sums.png') });
  });

  await test.step('the sums are printed', async () => {
    await goToStage(page, 'Sheets');
    const download = page.waitForEvent('download');
    await press(page, 'Print to PDF');
    const path = test.info().outputPath('sheets.pdf');
    await (await download).saveAs(path);
    expect((await pdfTexts(await readFile(path))).join(' ')).toContain('Agent quantity');
  });
  expect(complaints).toEqual([]);
});
