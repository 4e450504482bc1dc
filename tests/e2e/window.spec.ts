import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { SAMPLE_PROFILE } from '../../src-shared/profile/sample-profile.ts';
import { expect, openWindow, startHost, test } from './support/app.ts';
import { startChromium } from './support/chromium.ts';

const cell = (page: Page, figure: string) => page.locator(`[data-cell="${figure}"] .ledger-value`);
const undoName = (page: Page) => page.locator('.undo-redo button').first();

/** Saves under a name in the plans folder. */
async function saveAs(page: Page, name: string): Promise<void> {
  await page.keyboard.press('Control+Shift+S');
  await page.locator('#save-name').fill(name);
  await page.keyboard.press('Enter');
  await expect(page.locator('[data-dialog="save-as"]')).toHaveCount(0);
}

/** Changes something small that can be undone: the project's name. */
async function renameProject(page: Page, name: string): Promise<void> {
  await page.keyboard.press('Control+Shift+I');
  await page.getByLabel('Project', { exact: true }).fill(name);
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
}

test.describe('an empty window', () => {
  test('offers three ways to begin, ticks the steps off, and breaks no content policy', async ({ nozzlewright: { page, complaints } }) => {
    await expect(page.getByRole('heading', { name: 'What do you have in hand?' })).toBeVisible();
    await expect(page.locator('.first-step')).toHaveCount(5);
    await expect(page.locator('.first-step.is-done')).toHaveCount(0);
    await page.locator('.start-demos [data-demo="F1"]').click();
    await expect(page.locator('.plan-name')).toContainText('Tallowmere Signal Hut');
    await expect(page.locator('.start-page')).toHaveCount(0);
    await expect(cell(page, 'nozzles')).toHaveText('1');
    await page.keyboard.press('F1');
    await expect(page.locator('[data-dialog="help"] .first-step.is-done')).toHaveCount(5);
    expect(complaints).toEqual([]);
  });

  test('lays a dropped floor plan under the drawing with the scale that the user types', async ({ nozzlewright: { page } }) => {
    const svg = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 600 400"><path d="M10 10H590V390H10Z" fill="none" stroke="#000"/><path d="M300 10V200" stroke="#000"/></svg>';
    await page.keyboard.press('Control+I');
    await page.locator('[data-dialog="import"] input[type="file"]').setInputFiles({ name: 'ground.svg', mimeType: 'image/svg+xml', buffer: Buffer.from(svg) });
    await page.getByText('Type the true width of the whole drawing').click();
    await page.getByRole('textbox', { name: 'True width' }).fill('nonsense');
    await page.keyboard.press('Tab');
    await expect(page.locator('[data-dialog="import"] .field-fault')).toBeVisible();
    await page.getByRole('textbox', { name: 'True width' }).fill('12 m');
    await page.keyboard.press('Tab');
    await page.getByRole('button', { name: 'Lay it under the drawing' }).click();
    await expect(page.locator('.bench-tab[aria-selected="true"]')).toHaveText('Floor plan ground');
    await expect(page.getByText('from two places and a typed distance')).toBeVisible();
    await expect(undoName(page)).toHaveAttribute('title', /^Undo add floor plan/);
    await page.keyboard.press('Control+z');
    await expect(page.locator('.start-page')).toBeVisible();
  });
});

test.describe('a demo with faults', () => {
  test.use({ demo: 'F2-faults' });

  test('leads from a finding to its place and cures it as one named step', async ({ nozzlewright: { page, complaints } }) => {
    await expect(page.locator('.stage[aria-current]')).toContainText('Proof');
    const before = Number(await cell(page, 'stop').textContent());
    expect(before).toBeGreaterThan(0);
    const board = page.locator('.board');
    const camera = await board.getAttribute('data-camera');
    await page.locator('[data-verdict="stop"][data-rule="N1"] .finding-head').click();
    await expect(board).not.toHaveAttribute('data-camera', camera ?? '');
    await expect(page.locator('.bench-tab').nth(1)).toHaveText('Nozzle N4');
    await expect(page.locator('.finding-detail')).toContainText('common practice');
    await page.locator('.finding-detail .button.is-main').click();
    await expect(cell(page, 'stop')).toHaveText(String(before - 1));
    await expect(undoName(page)).toHaveAttribute('title', 'Undo move nozzle N4');
    await page.keyboard.press('Control+z');
    await expect(cell(page, 'stop')).toHaveText(String(before));
    expect(complaints).toEqual([]);
  });

  test('turns a nozzle on its dial by the keyboard, only where the keyboard is', async ({ nozzlewright: { page } }) => {
    await page.locator('[data-verdict="stop"][data-rule="N6"] .finding-head').click();
    await page.getByRole('tab', { name: 'Nozzle N4' }).click();
    const dial = page.getByRole('slider', { name: /first hole of N4/ });
    await dial.focus();
    const before = Number(await dial.getAttribute('aria-valuenow'));
    await page.keyboard.press('Shift+ArrowLeft');
    await expect(dial).toHaveAttribute('aria-valuenow', String((before + 15) % 360));
    await expect(undoName(page)).toHaveAttribute('title', /^Undo turn nozzle/);
  });

  test('finds any action by typing, says why one cannot be done, and does the chosen one', async ({ nozzlewright: { page } }) => {
    await page.keyboard.press('F2');
    const search = page.getByRole('combobox', { name: 'What you want to do' });
    await expect(search).toBeFocused();
    await search.fill('undo');
    await expect(page.locator('.action-line').first()).toContainText('Nothing was done yet.');
    await search.fill('slate');
    await page.keyboard.press('Enter');
    await expect(page.locator('[data-dialog="actions"]')).toHaveCount(0);
    await expect.poll(() => page.evaluate(() => getComputedStyle(document.body).colorScheme)).toBe('dark');
    await page.keyboard.press('Control+k');
    await search.fill('paper-white');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.evaluate(() => getComputedStyle(document.body).colorScheme)).toBe('light');
  });

  test('changes between feet and metric and back', async ({ nozzlewright: { page } }) => {
    await expect(cell(page, 'path')).toContainText("'");
    await page.locator('[data-part="units"]').click();
    await expect(cell(page, 'path')).toContainText(' m');
    await expect(undoName(page)).toHaveAttribute('title', /metric|units|lengths|settings/i);
    await page.keyboard.press('u');
    await expect(cell(page, 'path')).toContainText("'");
  });

  test('every figure of the ledger opens its sum', async ({ nozzlewright: { page } }) => {
    for (const [figure, title] of [
      ['volume', 'Net volume'],
      ['area', 'Floor area'],
      ['path', 'Longest path'],
      ['elbows', 'Elbows left'],
      ['nozzles', 'Nozzles'],
      ['cylinders', 'Cylinders'],
    ] as const) {
      await page.locator(`[data-cell="${figure}"]`).click();
      await expect(page.locator('.bench-tab[aria-selected="true"]')).toHaveText(title);
      await expect(page.locator('.bench-body')).toContainText('How it is worked out');
    }
  });

  test('the right button lists what can be done with the thing under it', async ({ nozzlewright: { page } }) => {
    await page.keyboard.press('Control+a');
    await page.keyboard.press('Control+Shift+A');
    await expect(page.locator('.bench-tab[data-tab="selection"]')).toHaveCount(0);
    const board = await page.locator('.board').boundingBox();
    if (!board) throw new Error('The board is not shown.');
    await page.mouse.click(board.x + 8, board.y + 8, { button: 'right' });
    await expect(page.locator('.context-menu .menu-title')).toHaveText('Here');
    await page.keyboard.press('Escape');
    await expect(page.locator('.context-menu')).toHaveCount(0);
    await expect(page.locator('.board')).toBeFocused();
  });

  test('a blank limit is shown as not checked, never as kept', async ({ nozzlewright: { page } }) => {
    // Until the discharges are worked out, what rests on them is not checked either.
    await expect(page.locator('.ledger')).toHaveAttribute('aria-busy', 'false');
    const unchecked = Number(await cell(page, 'not-checked').textContent());
    await page.keyboard.press('Control+Shift+U');
    const line = page.locator('[data-limit="nozzleToWall_m"]');
    await line.locator('input').first().fill('');
    await page.keyboard.press('Enter');
    await expect(line).toHaveClass('is-blank');
    await page.keyboard.press('Escape');
    await expect.poll(async () => Number(await cell(page, 'not-checked').textContent())).toBeGreaterThan(unchecked);
    await expect(page.locator('[data-stage="proof"]')).toContainText('1 limit blank');
  });

  test('shows the sheets as they will print', async ({ nozzlewright: { page } }) => {
    await page.locator('[data-stage="sheets"]').click();
    await expect(page.locator('.sheet-line').first()).toBeVisible();
    await page.locator('.sheet-line').first().click();
    await expect(page.locator('.paper-view')).toBeVisible();
    await page.keyboard.press('Escape');
    const waiting = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Print to PDF' }).click();
    const file = await (await waiting).path();
    expect((await readFile(file)).subarray(0, 5).toString()).toBe('%PDF-');
  });
});

test.describe('files', () => {
  test.use({ demo: 'F1' });

  test('saves, is opened again, and asks before unsaved work is left', async ({ nozzlewright: { page, host } }) => {
    await renameProject(page, 'Hut at the ford');
    await expect(page.locator('.plan-state')).toHaveText('not saved');
    await saveAs(page, 'Ford hut');
    await expect(page.locator('.plan-state')).toHaveText('saved');
    expect((await readFile(join(host.folder, 'Ford hut.nzw'))).subarray(0, 2).toString()).toBe('PK');

    await renameProject(page, 'Hut at the weir');
    await page.keyboard.press('Alt+n');
    await expect(page.locator('[data-dialog="discard"]')).toContainText('Ford hut');
    await page.getByRole('button', { name: 'Go on without saving' }).click();
    await expect(page.locator('.start-page')).toBeVisible();

    await page.keyboard.press('Control+o');
    await page.locator('.plan-line', { hasText: 'Ford hut' }).locator('button').first().click();
    await expect(page.locator('.plan-name')).toContainText('Ford hut');
    await expect(cell(page, 'nozzles')).toHaveText('1');
    await page.keyboard.press('Control+Shift+I');
    await expect(page.getByLabel('Project', { exact: true })).toHaveValue('Hut at the ford');
  });

  test('a name that is taken is not overwritten unasked', async ({ nozzlewright: { page } }) => {
    await saveAs(page, 'Hut');
    await page.keyboard.press('Alt+n');
    await expect(page.locator('.start-page')).toBeVisible();
    await page.keyboard.press('Control+Shift+S');
    await page.locator('#save-name').fill('Hut');
    await page.keyboard.press('Enter');
    await expect(page.locator('[data-dialog="save-as"]')).toContainText('there already');
    await page.getByRole('button', { name: 'Replace it' }).click();
    await expect(page.locator('[data-dialog="save-as"]')).toHaveCount(0);
  });

  test('the unit profile scrolls in its body alone: head and buttons stay', async ({ nozzlewright: { page } }) => {
    await page.keyboard.press('Control+Shift+U');
    const dialog = page.locator('[data-dialog="profile"]');
    await expect(dialog).toBeVisible();
    expect(await dialog.evaluate((box) => box.scrollHeight - box.clientHeight)).toBeLessThanOrEqual(1);
    await dialog.getByLabel('Note', { exact: true }).focus();
    await expect(dialog.getByRole('button', { name: 'Done' })).toBeInViewport();
    await expect(dialog.getByRole('heading', { name: 'Unit profile' })).toBeInViewport();
  });

  test('a profile goes out as a file and comes in again', async ({ nozzlewright: { page } }) => {
    await page.keyboard.press('Control+Shift+U');
    const mine = { ...SAMPLE_PROFILE, id: 'valley-120', name: 'Valley 120 L', isSample: false };
    await page.locator('[data-dialog="profile"] input[type="file"]').setInputFiles({ name: 'valley.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(mine)) });
    await expect(page.locator('[data-dialog="profile"]').getByLabel('Name', { exact: true })).toHaveValue('Valley 120 L');
    const waiting = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save as a file…' }).click();
    const file = await (await waiting).path();
    expect(JSON.parse(await readFile(file, 'utf8'))).toEqual(mine);
    await page.locator('[data-dialog="profile"] input[type="file"]').setInputFiles({ name: 'x.json', mimeType: 'application/json', buffer: Buffer.from('{"id":1}') });
    await expect(page.locator('[data-dialog="profile"] .field-fault')).toContainText('no unit profile');
  });
});

/** Hosts and browsers that a test began by itself: ended whatever became of the test. */
const begun: { end(): Promise<unknown> }[] = [];
test.afterEach(async () => {
  for (const each of begun.splice(0).reverse()) await each.end();
});

test('unsaved work of a window whose host was killed is offered again and taken up', async () => {
  const browser = await startChromium();
  const first = await startHost(['--demo', 'F1']);
  begun.push({ end: first.stop }, { end: () => browser.close() });
  const { page } = await openWindow(browser, first);
  // What was written aside is there when the host has answered: the journal is a file of the host's folder.
  const kept = page.waitForResponse((response) => response.url().endsWith('/api/keepRecovery'));
  await renameProject(page, 'Hut at the ford');
  await kept;
  await first.kill();
  await page.context().close();

  const second = await startHost([], first.folder);
  begun.push({ end: second.stop });
  const again = await openWindow(browser, second);
  const offer = again.page.locator('[data-dialog="recover"]');
  await expect(offer).toContainText('1 step not saved');
  await offer.getByRole('button', { name: 'Take it up again' }).click();
  await expect(cell(again.page, 'nozzles')).toHaveText('1');
  await expect(again.page.locator('.plan-state')).toHaveText('not saved');
  await again.page.keyboard.press('Control+Shift+I');
  await expect(again.page.getByLabel('Project', { exact: true })).toHaveValue('Hut at the ford');
});

test('two windows on one plan: the later save is asked, and a copy keeps both', async () => {
  const browser = await startChromium();
  const host = await startHost(['--demo', 'F1']);
  begun.push({ end: host.stop }, { end: () => browser.close() });
  const { page } = await openWindow(browser, host);
  await saveAs(page, 'Hut');
  const other = await page.context().newPage();
  await other.goto(new URL('/', page.url()).href);
  await expect(other.locator('.plan-name')).toContainText('Tallowmere');
  await other.keyboard.press('Control+o');
  await other.locator('.plan-line strong', { hasText: /^Hut$/ }).click();
  await expect(other.locator('.notice')).toBeVisible();
  await renameProject(other, 'Theirs');
  await other.keyboard.press('Control+s');
  await expect(other.locator('.plan-state')).toHaveText('saved');

  await renameProject(page, 'Mine');
  await page.keyboard.press('Control+s');
  await expect(page.locator('[data-dialog="conflict"]')).toBeVisible();
  await page.getByRole('button', { name: 'Save mine as a copy…' }).click();
  await page.locator('#save-name').fill('Hut of mine');
  await page.keyboard.press('Enter');
  await expect(page.locator('.plan-name')).toContainText('Hut of mine');
  await expect(page.locator('.plan-state')).toHaveText('saved');
});
