import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { expect, test } from './support/app.ts';
import { type GivenFile, binaryDxf, cutOff, dwgFile, emptyFile, lockedPdf, scriptedSvg } from './support/bad-files.ts';
import { enter, field, ledger } from './support/by-hand.ts';
import { readPlanFile } from './support/plan-file.ts';

test.use({ demo: 'F1' });

/** What the window shows of the plan that is open: its name, its figures, what could be undone. */
async function shownPlan(page: Page): Promise<string[]> {
  // The figures stand once the discharges are worked out.
  await expect(page.locator('.ledger')).toHaveAttribute('aria-busy', 'false');
  return [
    await page.title(),
    (await page.locator('.ledger').textContent()) ?? '',
    ...(await page.getByRole('button', { name: /^(Undo|Redo)/ }).evaluateAll((buttons) => buttons.map((button) => `${button.ariaLabel} ${button.matches(':disabled')}`))),
  ];
}

/** Saves the plan under a name and reads the file back. */
async function saveAs(page: Page, folder: string, name: string) {
  await page.keyboard.press('Control+Shift+S');
  await page.getByRole('dialog').getByLabel('Name', { exact: true }).fill(name);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog')).toBeHidden();
  return readPlanFile(join(folder, `${name}.nzw`));
}

/** Gives a file to the button of the open dialog that picks one. */
async function give(page: Page, button: string, file: GivenFile): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('dialog').getByRole('button', { name: button }).click();
  await (await chooser).setFiles({ ...file });
}

const FLOOR_PLANS: readonly (readonly [what: string, file: () => GivenFile | Promise<GivenFile>, says: RegExp])[] = [
  ['a PDF with a password', lockedPdf, /protected by a password \(locked\.pdf\)\. .*print it to a new PDF/],
  ['a drawing in a closed binary form', dwgFile, /DWG drawing, which is not read \(plan\.dwg\)\. Save it as ASCII DXF/],
  ['a binary DXF', binaryDxf, /binary DXF.*\(plan\.dxf\)\. Save it as ASCII DXF/],
  ['an empty file', emptyFile, /empty \(empty\.dxf\)\. \w/],
];

for (const [what, file, says] of FLOOR_PLANS) {
  test(`${what} is refused as a floor plan with what, where and what to do`, async ({ nozzlewright: { page, complaints } }) => {
    const before = await shownPlan(page);
    await page.keyboard.press('Control+i');
    await give(page, 'Choose a file…', await file());
    const alert = page.getByRole('dialog').getByRole('alert');
    await expect(alert).toHaveCount(1);
    await expect(alert).toHaveText(says);
    await page.screenshot({ path: test.info().outputPath('refused.png') });
    await expect(page.getByRole('dialog').getByRole('button', { name: 'Choose another file…' })).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(page.getByRole('dialog')).toBeHidden();
    expect(await shownPlan(page)).toEqual(before);
    expect(complaints).toEqual([]);
  });
}

test('a script in an SVG is not run and the report says so', async ({ nozzlewright: { page, complaints } }) => {
  const before = await shownPlan(page);
  await page.keyboard.press('Control+i');
  await give(page, 'Choose a file…', scriptedSvg());
  await expect(page.getByRole('dialog')).toContainText('The file holds a script; it was not run.');
  await page.screenshot({ path: test.info().outputPath('script.png') });
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toBeHidden();
  expect(await shownPlan(page)).toEqual(before);
  expect(complaints).toEqual([]);
});

test('a plan file that was cut off is not opened, and the open plan is saved as it was', async ({ nozzlewright: { page, host, complaints } }) => {
  const whole = await saveAs(page, host.folder, 'Hut');
  const before = await shownPlan(page);
  await page.keyboard.press('Control+o');
  await give(page, 'From a file…', cutOff(await readFile(join(host.folder, 'Hut.nzw'))));
  const alert = page.getByRole('dialog').getByRole('alert');
  await expect(alert).toHaveCount(1);
  await expect(alert).toHaveText(/damaged|cut off/i);
  await expect(alert).toContainText('cut off.nzw');
  await page.screenshot({ path: test.info().outputPath('cut-off.png') });
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toBeHidden();
  expect(await shownPlan(page)).toEqual(before);
  expect(await saveAs(page, host.folder, 'Hut again')).toEqual(whole);
  expect(complaints).toEqual([]);
});

test('nonsense in a length field stays there with an example under it, and changes nothing', async ({ nozzlewright: { page, complaints } }) => {
  const before = await shownPlan(page);
  await page.getByRole('button', { name: /^Signal hut/ }).click();
  for (const nonsense of ['nonsense', `7' 90"`, '1/0', '-', '12 furlongs']) {
    await enter(page, 'Floor to ceiling', nonsense);
    await expect(field(page, 'Floor to ceiling')).toHaveValue(nonsense);
    await expect(field(page, 'Floor to ceiling')).toHaveAttribute('aria-invalid', 'true');
    await expect(field(page, 'Floor to ceiling')).toHaveAccessibleDescription(/\bWrite\b|such as|for example/i);
  }
  await page.screenshot({ path: test.info().outputPath('nonsense.png') });
  await page.keyboard.press('Escape');
  await expect(field(page, 'Floor to ceiling')).toHaveValue(`8'-0"`);
  expect(await shownPlan(page)).toEqual(before);
  await expect(ledger(page, 'Net volume')).not.toContainText('not known');
  expect(complaints).toEqual([]);
});
