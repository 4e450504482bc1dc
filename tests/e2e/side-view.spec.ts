import type { Page } from '@playwright/test';
import { expect, test } from './support/app.ts';
import { clickOn } from './support/by-hand.ts';
import { painted } from './support/on-board.ts';

const ft = (x: number, y: number) => ({ x: x * 0.3048, y: y * 0.3048 });
const bench = (page: Page) => page.locator('.bench');
const tab = (page: Page) => page.locator('.bench-tab[aria-selected="true"]').last();
const isometric = (page: Page) => page.locator('.isometric-board');

/** Page places of a grid over the drawing, to be tried one after the other. */
async function placesOver(page: Page): Promise<{ x: number; y: number }[]> {
  const box = await isometric(page).boundingBox();
  if (!box) throw new Error('The isometric is not shown.');
  const places: { x: number; y: number }[] = [];
  for (let y = box.y + 80; y < box.y + box.height - 50; y += 14) for (let x = box.x + 20; x < box.x + box.width - 20; x += 14) places.push({ x, y });
  return places;
}

/** Points over the drawing until the pointer is over something that selects what the bench calls so. */
async function clickUntil(page: Page, heading: RegExp): Promise<boolean> {
  for (const place of await placesOver(page)) {
    await page.mouse.move(place.x, place.y);
    if (!(await isometric(page).getAttribute('class'))?.includes('is-pointing')) continue;
    await page.mouse.click(place.x, place.y);
    if (heading.test((await tab(page).textContent()) ?? '')) return true;
  }
  return false;
}

/** How many pixels of the drawing have the colour of the selection. */
const markedPixels = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const canvas = document.querySelector<HTMLCanvasElement>('.isometric-board canvas');
    const copy = document.createElement('canvas');
    const pen = copy.getContext('2d', { willReadFrequently: true });
    if (!canvas || !pen) return 0;
    [copy.width, copy.height] = [canvas.width, canvas.height];
    pen.drawImage(canvas, 0, 0);
    const { data } = pen.getImageData(0, 0, copy.width, copy.height);
    let count = 0;
    // #b8157f, the selection on a light ground: the only colour with far less green than red and blue.
    for (let i = 0; i < data.length; i += 4) {
      const [red = 0, green = 0, blue = 0, alpha = 0] = data.subarray(i, i + 4);
      if (alpha > 60 && red - green > 90 && blue - green > 60) count += 1;
    }
    return count;
  });

test.use({ demo: 'F2' });

test('the isometric beside the plan: a click selects on the bench, and what the plan selects is marked', async ({ nozzlewright: { page, complaints } }) => {
  await page.keyboard.press('i');
  await expect(isometric(page)).toBeVisible();
  await expect(page.locator('.isometric-key')).toContainText('not to scale');

  expect(await clickUntil(page, /pipe|run/i)).toBe(true);
  await expect(bench(page)).toContainText(/NPS|Size/);

  await page.keyboard.press('Escape');
  await page.locator('.board').click({ position: { x: 4, y: 4 } });
  await painted(page);
  const before = await markedPixels(page);
  // Nozzle N3 hangs 15 ft 6 in east, 6 ft 6 in north.
  await clickOn(page, ft(15.5, 6.5));
  await expect(tab(page)).toHaveText('Nozzle N3');
  await expect.poll(() => markedPixels(page)).toBeGreaterThan(before + 20);
  expect(complaints).toEqual([]);
});

test('it is zoomed and moved by keys and shown whole again', async ({ nozzlewright: { page } }) => {
  await page.keyboard.press('i');
  await isometric(page).focus();
  const camera = () => isometric(page).getAttribute('data-camera');
  const fitted = await camera();
  await page.keyboard.press('+');
  await expect.poll(camera).not.toBe(fitted);
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('0');
  await expect.poll(camera).toBe(fitted);
  await page.keyboard.press('-');
  await page.getByRole('button', { name: 'Show all' }).click();
  await expect.poll(camera).toBe(fitted);
});
