import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { sequence } from '../../src-shared/commands/command.ts';
import { editInfo } from '../../src-shared/commands/edit-info.ts';
import { setNozzleHeight } from '../../src-shared/commands/set-nozzle-height.ts';
import type { Plan } from '../../src-shared/model/plan.ts';
import { type RunningHost, expect, openWindow, startHost, test } from './support/app.ts';
import { clickOn, drag, enter, field, finding, goToStage, ledger, pointTo, redoName, takeTool, typeAtPointer, undoName } from './support/by-hand.ts';
import { inRoom, switchRoomDxf } from './support/floor-plan.ts';
import { sectionPagePlace } from './support/on-board.ts';
import { pdfTexts } from './support/pdf-text.ts';
import { readPlanFile } from './support/plan-file.ts';

const INCH_m = 0.0254;
const FOOT_m = 0.3048;
/** The section strip begins this far before the cylinder [m]. */
const STRIP_BEFORE_m = 0.35;

/** Keeps a picture of the window beside the results of the run. */
const picture = async (page: Page, name: string): Promise<void> => {
  await page.screenshot({ path: test.info().outputPath(`${name}.png`) });
};

/** Types the project's name on the project form. */
async function typeProject(page: Page, name: string): Promise<void> {
  await page.keyboard.press('Control+Shift+I');
  await enter(page, 'Project', name);
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toBeHidden();
}

/** The saved plan with what was changed after it was saved and before the program was killed. */
function changedByHand(saved: Plan): Plan {
  const [network] = Object.values(saved.networks);
  const nozzle = Object.values(network?.nozzles ?? {}).find(({ name }) => name === 'N2');
  if (!network || !nozzle) throw new Error('The saved plan has no nozzle N2.');
  const done = sequence('By hand', [setNozzleHeight({ kind: 'nozzle', network: network.id, id: nozzle.id }, 8 * FOOT_m + 2 * INCH_m), editInfo({ project: 'Weir house' })])(saved);
  if (!done.ok) throw new Error(done.reason);
  return done.next;
}

/** What this journey leaves open: signs, buttons, alarms and title block have one of their own. */
const LEFT_OPEN: readonly (readonly [name: string, title: string])[] = [
  ['Room 1', 'Alarm heard and seen'],
  ['Room 1', 'Two detectors in every space'],
  ['Room 1, inside', 'Signs'],
  ['Network 1, cylinders', 'Signs'],
  ['Network 1', 'Disconnect and lock-out'],
  ['Plan', 'Title block filled in'],
];

test.describe('the whole job, by mouse and keys', () => {
  const hosts: RunningHost[] = [];
  const pages: Page[] = [];
  test.afterEach(async () => {
    for (const page of pages.splice(0)) await page.context().close();
    for (const host of hosts.splice(0)) await host.stop();
  });

  test('from a floor plan to a printed sheet, through a crash, and back', async ({ chromiumOfMachine }) => {
    test.setTimeout(180_000);
    const first = await startHost();
    hosts.push(first);
    const { page, complaints } = await openWindow(chromiumOfMachine, first);
    pages.push(page);
    const bench = page.getByRole('complementary', { name: /^Bench/ });

    await test.step('a floor plan is brought in, and the report says what it is', async () => {
      await page.getByRole('button', { name: /^A floor plan/ }).click();
      const chooser = page.waitForEvent('filechooser');
      const dialog = page.getByRole('dialog');
      await dialog.getByText('Choose a file…').click();
      await (await chooser).setFiles({ name: 'switch-room.dxf', mimeType: 'application/dxf', buffer: Buffer.from(switchRoomDxf()) });
      await expect(dialog).toContainText('DXF drawing');
      await expect(dialog).toContainText('WALLS, DOORS, FURNITURE, TEXT');
      await expect(dialog).toContainText(`inches: the plan is then 25'-0" × 19'-0"`);
      await picture(page, '01-report');
      await dialog.getByRole('button', { name: 'Lay it under the drawing' }).click();
      await expect(dialog).toBeHidden();
    });

    await test.step('its scale is proved by a second known length', async () => {
      await expect(bench).toContainText('only one length says what its scale is');
      await bench.getByRole('button', { name: 'Check it by two places…' }).click();
      await clickOn(page, inRoom(0, 0));
      await clickOn(page, inRoom(24, 0));
      await typeAtPointer(page, { length: `24'` });
      await expect(bench).toContainText(`24'-0" the plan has 24'-0", 0.00 % off`);
      await expect(ledger(page, 'Not checked')).toContainText('0');
      await picture(page, '02-scale');
    });

    await test.step('its closed outline becomes the enclosure, and gets its height', async () => {
      await takeTool(page, 'Trace');
      await clickOn(page, inRoom(6, 8));
      await expect(ledger(page, 'Floor area')).toContainText('318.00 ft²');
      await enter(page, 'Floor to ceiling', `9'`);
      await expect(ledger(page, 'Net volume')).toContainText('2862.0 ft³');
      await picture(page, '03-enclosure');
    });

    await test.step('a cylinder is stood against the west wall', async () => {
      await goToStage(page, 'Layout');
      await takeTool(page, 'Cylinder');
      await pointTo(page, inRoom(0.2, 5));
      await typeAtPointer(page, { length: `9'` });
      await expect(ledger(page, 'Cylinders')).toContainText('1');
      await expect(field(page, 'North of the origin')).toHaveValue(`6'-6"`);
      await picture(page, '04-cylinder');
    });

    await test.step('pipe is led by typed lengths, with a typed height for the riser', async () => {
      await takeTool(page, 'Pipe');
      await clickOn(page, inRoom(0.4375, 6));
      await pointTo(page, inRoom(6, 6));
      await typeAtPointer(page, { height: `8'6` });
      await pointTo(page, inRoom(8, 6));
      await typeAtPointer(page, { length: '17-6 3/4' });
      await picture(page, '05-pipe');
      await page.keyboard.press('Enter');
      await expect(undoName(page)).toHaveAccessibleName(/^Undo draw pipe/i);

      await clickOn(page, inRoom(4.5, 6));
      await pointTo(page, inRoom(4.6, 9));
      await typeAtPointer(page, { length: `4'6"`, direction: '90' });
      await page.keyboard.press('Enter');
      await picture(page, '06-branch');
    });

    await test.step('what the walls bear is typed once for all of them', async () => {
      await page.keyboard.press('Escape');
      await page.keyboard.press('Escape');
      await clickOn(page, inRoom(14, 2));
      await field(page, 'All walls bear').fill('250 Pa');
      await field(page, 'All walls bear').press('Enter');
      await expect(undoName(page)).toHaveAccessibleName(/all walls bear/i);
    });

    await test.step('nozzles are hung on the ends, and nothing stops but the signs, alarms and papers that this journey leaves open', async () => {
      await takeTool(page, 'Nozzle');
      await clickOn(page, inRoom(18, 6));
      await clickOn(page, inRoom(4.5, 10.5));
      await expect(ledger(page, 'Nozzles')).toContainText('2');
      for (const nozzle of ['N1', 'N2']) {
        await goToStage(page, 'Proof');
        const trap = finding(page, nozzle, 'Dirt trap');
        await trap.locator('.finding-head').click();
        await trap.getByRole('button', { name: 'Put a dirt trap at the last elbow' }).click();
      }
      const held = finding(page, 'C1', 'Held at two levels');
      await held.locator('.finding-head').click();
      await held.getByRole('button', { name: 'Go to its restraints' }).click();
      await bench.getByRole('button', { name: 'Add a restraint', exact: true }).click();
      await expect(ledger(page, 'Stops')).toHaveText(`Stops${LEFT_OPEN.length}`);
      await goToStage(page, 'Proof');
      for (const [name, title] of LEFT_OPEN) await expect(finding(page, name, title).first()).toBeVisible();
      await goToStage(page, 'Layout');
      await takeTool(page, 'Select');
      await page.keyboard.press('f');
      await clickOn(page, inRoom(4.5, 10.5));
      await expect(field(page, 'Orifice above floor')).toHaveValue(`8'-0"`);
      await expect(field(page, 'From the west face')).toHaveValue(`4'-6"`);
      await page.keyboard.press('Escape');
      await pointTo(page, inRoom(14, 2));
      await picture(page, '07-nozzles');
    });

    await test.step('a nozzle too near a wall is stopped with its figure, and cured by the button', async () => {
      await clickOn(page, inRoom(18, 6));
      await page.keyboard.press('r');
      await expect(undoName(page)).toHaveAccessibleName('Undo turn nozzle N1');
      await drag(page, inRoom(18, 6), inRoom(23.5, 6));
      await expect(undoName(page)).toHaveAccessibleName('Undo move nozzle N1');
      await expect(ledger(page, 'Stops')).toHaveText(`Stops${LEFT_OPEN.length + 1}`);
      await picture(page, '08-wall-fault');
      await goToStage(page, 'Proof');
      const wall = finding(page, 'N1', 'Wall clearance');
      await expect(wall).toContainText(`4" too near. Move it to 10" or more.`);
      await wall.getByRole('button').first().click();
      await picture(page, '09-wall-finding');
      await wall.getByRole('button', { name: `Slide it 4" off the wall` }).click();
      await expect(ledger(page, 'Stops')).toHaveText(`Stops${LEFT_OPEN.length}`);
      await expect(undoName(page)).toHaveAccessibleName('Undo move nozzle N1');
      await picture(page, '10-wall-cured');
    });

    await test.step('a hole blowing into a corner is stopped, and cured on the dial', async () => {
      await page.keyboard.press('f');
      await clickOn(page, inRoom(4.5, 10.5));
      const tab = page.getByRole('tab', { name: 'Nozzle N2' });
      await tab.click();
      const dial = page.getByRole('slider', { name: 'Direction of the first hole of N2' });
      await dial.scrollIntoViewIfNeeded();
      const box = await dial.boundingBox();
      if (!box) throw new Error('The dial is not shown.');
      await page.mouse.move(box.x + box.width / 2 + 60, box.y + box.height / 2);
      await page.mouse.down();
      await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2 - 60, { steps: 4 });
      await page.mouse.move(box.x + box.width / 2 - 50, box.y + box.height / 2 - 50, { steps: 4 });
      await page.mouse.up();
      await expect(dial).toHaveAttribute('aria-valuenow', '135');
      await expect(undoName(page)).toHaveAccessibleName('Undo turn nozzle N2');
      await expect(bench).toContainText('The hole at 135° blows into the corner, 0° off it: turn it 20° or more.');
      await picture(page, '11-corner-fault');
      for (let press = 0; press < 3; press += 1) await dial.press('Shift+ArrowRight');
      await expect(dial).toHaveAttribute('aria-valuenow', '90');
      await expect(ledger(page, 'Stops')).toHaveText(`Stops${LEFT_OPEN.length}`);
      await picture(page, '12-corner-cured');
    });

    await test.step('a drop too long is stopped, and cured in the section strip', async () => {
      await enter(page, 'Orifice above floor', `7' 6"`);
      await expect(bench).toContainText(`Hangs 1'-6" below the ceiling: 6" too low. Shorten the drop.`);
      await picture(page, '13-ceiling-fault');
      const along_m = STRIP_BEFORE_m + (4.5 - 0.4375 + 4.5) * FOOT_m;
      const from = await sectionPagePlace(page, { s: along_m, z: 90 * INCH_m });
      const to = await sectionPagePlace(page, { s: along_m, z: 99 * INCH_m });
      await page.mouse.move(from.x, from.y);
      await page.mouse.down();
      await page.mouse.move(from.x, (from.y + to.y) / 2, { steps: 3 });
      await page.mouse.move(from.x, to.y, { steps: 3 });
      await picture(page, '14-ceiling-drag');
      await page.mouse.up();
      await expect(ledger(page, 'Stops')).toHaveText(`Stops${LEFT_OPEN.length}`);
      await expect(field(page, 'Orifice above floor')).toHaveValue(/^8'-[234]/);
      await picture(page, '15-ceiling-cured');
    });

    await test.step('undo and redo name what they do', async () => {
      const back = ['set height of nozzle N2', 'set height of nozzle N2', 'turn nozzle N2', 'turn nozzle N2', 'turn nozzle N2', 'turn nozzle N2', 'move nozzle N1', 'move nozzle N1', 'turn nozzle N1', 'edit cylinder C1', 'add dirt trap', 'add dirt trap', 'add nozzle'];
      for (const name of back) {
        await expect(undoName(page)).toHaveAccessibleName(`Undo ${name}`);
        await page.keyboard.press('Control+z');
      }
      await expect(ledger(page, 'Nozzles')).toContainText('1');
      for (const name of back.reverse()) {
        await expect(redoName(page)).toHaveAccessibleName(`Redo ${name}`);
        await page.keyboard.press('Control+Shift+z');
      }
      await expect(redoName(page)).toBeDisabled();
      await expect(ledger(page, 'Nozzles')).toContainText('2');
      await expect(ledger(page, 'Stops')).toHaveText(`Stops${LEFT_OPEN.length}`);
    });

    await test.step('the sheet is printed and says what a fitter needs', async () => {
      await goToStage(page, 'Sheets');
      await expect(page.getByRole('img', { name: /^Sheet/ }).first()).toBeVisible();
      await picture(page, '16-sheets');
      const download = page.waitForEvent('download');
      await bench.getByRole('button', { name: 'Print to PDF' }).click();
      const printed = test.info().outputPath('sheets.pdf');
      await (await download).saveAs(printed);
      const sheets = await pdfTexts(await readFile(printed));
      const plan = sheets.find((words) => words.includes('Nozzle and pipe plan') && words.includes('100 mm'));
      for (const words of ['N1', 'N2', 'C1', 'SAMPLE PROFILE: NOT FOR CONSTRUCTION', `8'-3"`]) expect(plan).toContain(words);
    });

    await test.step('it is saved under a name', async () => {
      await page.keyboard.press('Control+Shift+S');
      await page.getByRole('dialog').getByLabel('Name', { exact: true }).fill('Switch room');
      await page.keyboard.press('Enter');
      await expect(page.getByRole('dialog')).toBeHidden();
      await expect(page.getByRole('button', { name: /^Switch room saved/ })).toBeVisible();
      await picture(page, '17-saved');
    });
    const saved = await readPlanFile(join(first.folder, 'Switch room.nzw'));

    await test.step('more is changed, and the program is killed', async () => {
      await goToStage(page, 'Layout');
      await clickOn(page, inRoom(4.5, 10.5));
      await enter(page, 'Orifice above floor', `8' 2"`);
      const kept = page.waitForResponse((response) => response.url().endsWith('/api/keepRecovery') && (response.request().postData() ?? '').includes('Weir house'));
      await typeProject(page, 'Weir house');
      await kept;
      expect(complaints).toEqual([]);
      await first.kill();
      await typeProject(page, 'Too late');
      await expect(page.getByRole('alert')).toContainText('What you change now is not kept aside. Start Nozzlewright again.');
      await picture(page, '18-killed');
      await page.context().close();
    });

    const second = await startHost([], first.folder);
    hosts.push(second);
    const again = await openWindow(chromiumOfMachine, second);
    pages.push(again.page);
    const recovered = changedByHand(saved.plan);

    await test.step('started anew, the unsaved work is offered, taken up as it was, and saved', async () => {
      const { page: reopened } = again;
      const offer = reopened.getByRole('dialog', { name: 'Your unsaved work was kept' });
      await expect(offer).toContainText('Switch room');
      await expect(offer).toContainText('2 steps not saved');
      await picture(reopened, '19-offer');
      await offer.getByRole('button', { name: 'Take it up again' }).click();
      await expect(offer).toBeHidden();
      await expect(reopened.getByRole('button', { name: /^Switch room not saved/ })).toBeVisible();
      await expect(ledger(reopened, 'Stops')).toHaveText(`Stops${LEFT_OPEN.length}`);
      await picture(reopened, '20-taken-up');
      await reopened.keyboard.press('Control+s');
      await expect(reopened.getByRole('button', { name: /^Switch room saved/ })).toBeVisible();
      expect(await readPlanFile(join(second.folder, 'Switch room.nzw'))).toEqual({ ...saved, plan: recovered });
    });

    await test.step('opened from the list it is the same plan, and nothing is left to recover', async () => {
      const { page: reopened } = again;
      await reopened.reload();
      await expect(reopened.getByRole('heading', { name: 'What do you have in hand?' })).toBeVisible();
      await expect(reopened.getByRole('dialog')).toBeHidden();
      await reopened.getByRole('button', { name: /^A plan from before/ }).click();
      await picture(reopened, '21-open');
      await reopened.getByRole('dialog').getByRole('button', { name: /^Switch room/ }).click();
      await expect(reopened.getByRole('button', { name: /^Switch room saved/ })).toBeVisible();
      await expect(ledger(reopened, 'Floor area')).toContainText('318.00 ft²');
      await expect(ledger(reopened, 'Nozzles')).toContainText('2');
      await goToStage(reopened, 'Survey');
      const side = reopened.getByRole('complementary', { name: /^Bench/ });
      await side.getByRole('button', { name: /^switch-room/ }).click();
      await expect(side.getByRole('checkbox', { name: 'WALLS' })).toBeChecked();
      await picture(reopened, '22-reopened');
      await reopened.keyboard.press('Control+Shift+S');
      await reopened.getByRole('dialog').getByLabel('Name', { exact: true }).fill('Switch room again');
      await reopened.keyboard.press('Enter');
      await expect(reopened.getByRole('button', { name: /^Switch room again saved/ })).toBeVisible();
      expect(await readPlanFile(join(second.folder, 'Switch room again.nzw'))).toEqual({ ...saved, plan: recovered });
      expect(again.complaints).toEqual([]);
    });
  });
});
