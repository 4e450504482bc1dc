import { type Locator, type Page, expect } from '@playwright/test';
import { pagePlace, painted } from './on-board.ts';

interface Place {
  readonly x: number;
  readonly y: number;
}

/** What is typed into the field at the pointer; parts left out stay empty. */
interface Typed {
  readonly length?: string;
  readonly direction?: string;
  readonly height?: string;
}

/** A field of the window by its label. */
export const field = (page: Page, label: string): Locator => page.getByLabel(label, { exact: true });

/** A figure of the line at the bottom, by its label. */
export const ledger = (page: Page, figure: string): Locator => page.getByRole('button', { name: new RegExp(`^${figure}`) });

/** Goes to a stage of the job on the line at the top. */
export async function goToStage(page: Page, stage: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Where the job stands' }).getByRole('button', { name: new RegExp(`^${stage}`) }).click();
}

/** Takes up a tool of the rail at the left. */
export async function takeTool(page: Page, tool: string): Promise<void> {
  const button = page.getByRole('toolbar', { name: /^Tools for/ }).getByRole('button', { name: tool, exact: true });
  await button.click();
  await expect(button).toHaveAttribute('aria-pressed', 'true');
}

/** Moves the mouse over a plan place in a few steps, as a hand does. */
export async function pointTo(page: Page, at: Place): Promise<void> {
  const p = await pagePlace(page, at);
  await page.mouse.move(p.x, p.y, { steps: 4 });
  await painted(page);
}

/** Clicks a plan place. */
export async function clickOn(page: Page, at: Place): Promise<void> {
  await pointTo(page, at);
  await page.mouse.down();
  await page.mouse.up();
}

/** Drags from one plan place to another. */
export async function drag(page: Page, from: Place, to: Place): Promise<void> {
  await pointTo(page, from);
  await page.mouse.down();
  await pointTo(page, { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 });
  await pointTo(page, to);
  await page.mouse.up();
}

/** Types into the field at the pointer, going from part to part with Tab, and takes it with Enter. */
export async function typeAtPointer(page: Page, typed: Typed): Promise<void> {
  const form = page.getByRole('form', { name: 'Typed value' });
  const labels = { length: 'Length', direction: 'Direction', height: 'Height' } as const;
  await (typed.length === undefined ? page.keyboard.press('Tab') : page.keyboard.type(typed.length));
  await expect(form).toBeVisible();
  for (const part of ['direction', 'height'] as const) {
    const text = typed[part];
    if (text === undefined) continue;
    const input = form.getByLabel(labels[part]);
    while (!(await input.evaluate((element) => element === document.activeElement))) await page.keyboard.press('Tab');
    await page.keyboard.type(text);
  }
  await page.keyboard.press('Enter');
  await expect(form).toBeHidden();
}

/** Types a value into a field of the bench and takes it with Enter. */
export async function enter(page: Page, label: string, text: string): Promise<void> {
  await field(page, label).click();
  await page.keyboard.press('ControlOrMeta+A');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

/** A line of the list of findings, by the thing and what is checked. */
export const finding = (page: Page, name: string, title: string): Locator => page.getByRole('listitem').filter({ has: page.getByRole('button', { name: new RegExp(`${name} ${title}`) }) });

/** What the undo button would undo. */
export const undoName = (page: Page): Locator => page.getByRole('button', { name: /^Undo/ });

/** What the redo button would do again. */
export const redoName = (page: Page): Locator => page.getByRole('button', { name: /^Redo/ });
