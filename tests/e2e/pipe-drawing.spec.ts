import { join } from 'node:path';
import type { Page } from '@playwright/test';
import type { Network } from '../../src-shared/model/plan.ts';
import { expect, test } from './support/app.ts';
import { clickOn, enter, field, goToStage, ledger, pointTo, takeTool, typeAtPointer } from './support/by-hand.ts';
import { painted } from './support/on-board.ts';
import { readPlanFile } from './support/plan-file.ts';

const FOOT_m = 0.3048;
/** Plan place in feet. */
const ft = (x: number, y: number) => ({ x: x * FOOT_m, y: y * FOOT_m });

/** Says a line of words to the pipe tool, in the field at the pointer. */
async function say(page: Page, words: string): Promise<void> {
  const form = page.getByRole('form', { name: 'Typed value' });
  await page.keyboard.press('Tab');
  await expect(form).toBeVisible();
  await page.keyboard.insertText(words);
  await page.keyboard.press('Enter');
  await expect(form).toBeHidden();
}

/** Draws one run of a size: where it begins, then piece by piece; Enter ends it. */
async function run(page: Page, size: string, ...lines: readonly string[]): Promise<void> {
  const choice = page.locator('[data-part="tool-options"]').getByLabel('Size', { exact: true });
  if ((await choice.inputValue()) !== size) await choice.selectOption(size);
  await page.locator('.board').focus();
  for (const line of lines) await say(page, line);
  await page.keyboard.press('Enter');
}

/** Length of the way from the source to a nozzle [ft], walked through the saved plan without the program's own sums. */
function pathLength_ft({ nodes, pipes, nozzles, source }: Network, name: string): number {
  const end = Object.values(nozzles).find((nozzle) => nozzle.name === name)?.node;
  const reached = new Map([[source ?? '', 0]]);
  for (const [node, so_far] of reached) {
    for (const { from, to } of Object.values(pipes)) {
      const next = from === node ? to : to === node ? from : undefined;
      const [a, b] = [nodes[from]?.at, nodes[to]?.at];
      if (next && a && b && !reached.has(next)) reached.set(next, so_far + Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z));
    }
  }
  return (reached.get(end ?? '') ?? Number.NaN) / FOOT_m;
}

test('the whole network of the archive annex is drawn by typed lengths and heights', async ({ nozzlewright: { page, host, complaints } }) => {
  test.setTimeout(180_000);

  await test.step('an L-shaped room with a raised floor', async () => {
    await page.getByRole('button', { name: /^A tape measure/ }).click();
    for (let i = 0; i < 3; i += 1) await page.keyboard.press('-');
    await clickOn(page, ft(0, 0));
    await pointTo(page, ft(4, 1));
    for (const [length, direction] of [['31-6', '0'], ['15', '90'], ['12', '180'], ['10-6', '90'], ['19-6', '180']] as const) await typeAtPointer(page, { length, direction });
    await page.keyboard.press('Enter');
    await enter(page, 'Floor to ceiling', '9-6');
    await field(page, 'Under-floor void').check();
    await enter(page, 'Clear depth', '1-0');
    await page.locator('.board').focus();
    await page.keyboard.press('f');
    await expect(ledger(page, 'Net volume')).toContainText(/71\d\d\.\d ft³/);
  });

  await test.step('main, risers and branches', async () => {
    await goToStage(page, 'Layout');
    await takeTool(page, 'Pipe');
    await pointTo(page, ft(15, 12));
    await run(page, '1-1/4', 'x 30-9 y 10-0 z 7-0', 'up 0-10', 'x 29-6', 'x 26-6', 'x 15-6', 'x 5-0');
    for (const x of ['26-6', '15-6', '5-0']) await run(page, '1', `x ${x} y 10-0 z 7-10`, 'up 1-4');
    await run(page, '3/4', 'x 5-0 y 10-0 z 9-2', 'south 3-6', 'down 5"');
    await run(page, '3/4', 'x 5-0 y 10-0 z 9-2', 'north 9-0', 'down 5"');
    await run(page, '3/4', 'x 15-6 y 10-0 z 9-2', 'y 6-6', 'at 8-9');
    await run(page, '3/4', 'x 15-6 y 10-0 z 9-2', 'y 19-0', 'at 8-9');
    await run(page, '3/4', 'x 26-6 y 10-0 z 9-2', 'y 7-6, at 9-2', 'at 8-9');
    await page.screenshot({ path: test.info().outputPath('branches.png') });
  });

  await test.step('the drop into the void and its pipe', async () => {
    await run(page, '1', 'x 29-6 y 10-0 z 7-10', 'z -0-4', 'x 23-6', 'x 9-9');
    await run(page, '3/4', 'x 9-9 y 10-0 z -0-4', 'x 8-0');
    for (const [x, y] of [['8-0', '6-6'], ['9-9', '19-0'], ['23-6', '7-6']] as const) await run(page, '3/4', `x ${x} y 10-0 z -0-4`, `y ${y}`, 'down 3"');
  });

  await test.step('nozzles at the ends', async () => {
    await takeTool(page, 'Nozzle');
    for (const [x, y] of [[5, 6.5], [5, 19], [15.5, 6.5], [15.5, 19], [26.5, 7.5], [8, 6.5], [9.75, 19], [23.5, 7.5]] as const) await clickOn(page, ft(x, y));
    await expect(ledger(page, 'Nozzles')).toContainText('8');
    await page.keyboard.press('Escape');
    await painted(page);
    await page.screenshot({ path: test.info().outputPath('network.png') });
  });

  await test.step('the ways of the agent are as designed', async () => {
    await page.keyboard.press('Control+Shift+S');
    await page.getByRole('dialog').getByLabel('Name', { exact: true }).fill('Annex');
    await page.keyboard.press('Enter');
    await expect(page.getByRole('dialog')).toBeHidden();
    const { plan } = await readPlanFile(join(host.folder, 'Annex.nzw'));
    const networks = Object.values(plan.networks);
    expect(networks).toHaveLength(1);
    const [network] = networks;
    if (!network) throw new Error('No network was saved.');
    for (const [name, length_ft] of [['N1', 31.83], ['N2', 37.33], ['N3', 21.33], ['N4', 26.83], ['N5', 9.33]] as const) expect(pathLength_ft(network, name), name).toBeCloseTo(length_ft, 2);
    for (const name of ['U1', 'U2', 'U3']) expect(pathLength_ft(network, name), name).toBeGreaterThan(0);
    expect(Object.values(network.pipes).map(({ size }) => size).sort().filter((size, i, all) => all.indexOf(size) === i)).toEqual(['1', '1-1/4', '3/4']);
  });
  expect(complaints).toEqual([]);
});
