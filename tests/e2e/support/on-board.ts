import type { Locator, Page } from '@playwright/test';
import { type Viewport, toPlanPlace, toScreen } from '../../../src-renderer/canvas/viewport.ts';
import { type SectionView, sectionPx } from '../../../src-renderer/canvas/section-view.ts';

interface Place {
  readonly x: number;
  readonly y: number;
}

/** The drawing board of a window. */
export const boardOf = (page: Page): Locator => page.locator('.board');

const numbersOf = async (element: Locator, attribute: string): Promise<number[]> => ((await element.getAttribute(attribute)) ?? '').split(' ').map(Number);

/** What the board shows now, as it says itself. */
export async function viewOf(page: Page): Promise<Viewport & { readonly left: number; readonly top: number }> {
  const board = boardOf(page);
  const [x = 0, y = 0, scale_px_m = 1] = await numbersOf(board, 'data-camera');
  const box = await board.boundingBox();
  if (!box) throw new Error('The board is not shown.');
  return { camera: { at: { x, y }, scale_px_m }, width: box.width, height: box.height, left: box.x, top: box.y };
}

/** Page place of a plan place [m]. */
export async function pagePlace(page: Page, at: Place): Promise<Place> {
  const view = await viewOf(page);
  const p = toScreen(view, at);
  return { x: view.left + p.x, y: view.top + p.y };
}

/** Plan place of a page place. */
export async function planPlace(page: Page, at: Place): Promise<Place> {
  const view = await viewOf(page);
  return toPlanPlace(view, { x: at.x - view.left, y: at.y - view.top });
}

/** Moves the pointer over a plan place and clicks there. */
export async function clickPlan(page: Page, at: Place): Promise<void> {
  const p = await pagePlace(page, at);
  await page.mouse.move(p.x, p.y);
  await page.mouse.click(p.x, p.y);
}

/** Page place of a place in the section: distance along the way and height [m]. */
export async function sectionPagePlace(page: Page, at: { readonly s: number; readonly z: number }): Promise<Place> {
  const strip = page.locator('.section-board');
  const [s = 0, z = 0, scale_px_m = 1] = await numbersOf(strip, 'data-section');
  const box = await strip.boundingBox();
  if (!box) throw new Error('The section strip is not shown.');
  const view: SectionView = { width: Math.round(box.width), height: Math.round(box.height), scale_px_m, at: { s, z } };
  const p = sectionPx(view, at);
  return { x: box.x + p.x, y: box.y + p.y };
}

/** Waits until what was drawn has been painted: two frames of the page. */
export const painted = (page: Page): Promise<void> =>
  page.evaluate(
    () =>
      new Promise<void>((done) => {
        requestAnimationFrame(() => requestAnimationFrame(() => done()));
      }),
  );
