import type { Page } from '@playwright/test';
import { expect, test } from './support/app.ts';
import { boardOf, clickPlan, pagePlace, painted, planPlace, sectionPagePlace, viewOf } from './support/on-board.ts';

/** N1 of the signal hut, and its orifice along the unfolded run: 0.35 m from behind the cylinder, then the pipe on the plan. */
const N1 = { x: 2.4384, y: 1.6764 };
const N1_ALONG_m = 0.35 + (2.4384 - 0.2286) + (2.8956 - 1.6764);
const INCH_m = 0.0254;

const ledger = (page: Page, figure: string) => page.getByRole('button', { name: new RegExp(`^${figure}`) });
const field = (page: Page, label: string) => page.getByLabel(label, { exact: true });

/** Types into the field at the pointer and takes it. */
async function typeFigure(page: Page, text: string): Promise<void> {
  await page.keyboard.type(text);
  await expect(page.getByRole('form', { name: 'Typed value' })).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('form', { name: 'Typed value' })).toBeHidden();
}

/** Whether anything is drawn on the topmost layer within a few pixels of a page place. */
async function isInkedOnTop(page: Page, at: { x: number; y: number }): Promise<boolean> {
  await painted(page);
  return page.evaluate(({ x, y }) => {
    const canvas = [...document.querySelectorAll<HTMLCanvasElement>('.board canvas')].at(-1);
    const copy = document.createElement('canvas');
    const pen = copy.getContext('2d', { willReadFrequently: true });
    if (!canvas || !pen) return false;
    [copy.width, copy.height] = [canvas.width, canvas.height];
    pen.drawImage(canvas, 0, 0);
    const box = canvas.getBoundingClientRect();
    const ratio = canvas.width / box.width;
    const { data } = pen.getImageData((x - box.left - 3) * ratio, (y - box.top - 3) * ratio, 7 * ratio, 7 * ratio);
    return data.some((value, i) => i % 4 === 3 && value > 100);
  }, at);
}

test.describe('an empty board', () => {
  test('an enclosure is drawn by clicks and typed lengths, and undone by keyboard', async ({ nozzlewright: { page, complaints } }) => {
    await page.keyboard.press('e');
    await clickPlan(page, { x: 2, y: 5 });
    const pointTo = async (x: number, y: number): Promise<void> => {
      const p = await pagePlace(page, { x, y });
      await page.mouse.move(p.x, p.y, { steps: 3 });
      await painted(page);
    };
    await pointTo(5, 5.05);
    await typeFigure(page, "16'");
    await pointTo(2 + 4.9, 3);
    await typeFigure(page, '11-0');
    await pointTo(3, 1.6);
    await typeFigure(page, '4.8768 m');
    await page.keyboard.press('Enter');
    await expect(ledger(page, 'Floor area')).toContainText('176.00 ft²');

    await page.keyboard.press('Control+z');
    await expect(ledger(page, 'Floor area')).not.toContainText('176.00 ft²');
    await page.keyboard.press('Control+Shift+z');
    await expect(ledger(page, 'Floor area')).toContainText('176.00 ft²');
    expect(complaints).toEqual([]);
  });

  test('an enclosure is drawn without a mouse', async ({ nozzlewright: { page } }) => {
    await boardOf(page).focus();
    await page.keyboard.press('e');
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('Space');
    for (const [key, times] of [
      ['Shift+ArrowRight', 4],
      ['Shift+ArrowDown', 2],
      ['Shift+ArrowLeft', 4],
    ] as const) {
      for (let i = 0; i < times; i += 1) await page.keyboard.press(key);
      await page.keyboard.press('Space');
    }
    await page.keyboard.press('Enter');
    // 40 by 20 steps of the 3 in grid: 10 ft by 5 ft.
    await expect(ledger(page, 'Floor area')).toContainText('50.00 ft²');
  });

  test('a length that is not understood is refused in place, with an example', async ({ nozzlewright: { page } }) => {
    await page.keyboard.press('e');
    await clickPlan(page, { x: 2, y: 5 });
    const p = await pagePlace(page, { x: 4, y: 5 });
    await page.mouse.move(p.x, p.y);
    await page.keyboard.type('7 furlongs');
    await page.keyboard.press('Enter');
    const form = page.getByRole('form', { name: 'Typed value' });
    await expect(form.getByRole('alert')).toContainText('For example');
    await expect(form.getByLabel('Length')).toHaveValue('7 furlongs');
    await page.keyboard.press('Escape');
    await expect(form).toBeHidden();
    await expect(boardOf(page)).toBeFocused();
  });

  test('Escape steps back one corner at a time, then leaves the tool', async ({ nozzlewright: { page } }) => {
    await page.keyboard.press('e');
    await clickPlan(page, { x: 2, y: 5 });
    await clickPlan(page, { x: 5, y: 5 });
    const status = page.locator('.status-line');
    await expect(status).toContainText('next corner');
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    await expect(status).toContainText('first corner');
    await page.keyboard.press('Escape');
    await expect(boardOf(page)).toHaveClass(/is-picking/);
  });
});

test.describe('the signal hut', () => {
  test.use({ demo: 'F1' });

  test('a dragged nozzle shows its distances live and moves in one step', async ({ nozzlewright: { page, complaints } }) => {
    const start = await pagePlace(page, N1);
    await page.mouse.click(start.x, start.y);
    await expect(field(page, 'From the west face')).toHaveValue(`8'-0"`);
    const target = { x: N1.x + 36 * INCH_m, y: N1.y - 30 * INCH_m };
    const end = await pagePlace(page, target);
    await page.mouse.move(start.x, start.y);
    await page.mouse.down();
    await page.mouse.move((start.x + end.x) / 2, (start.y + end.y) / 2, { steps: 4 });
    await page.mouse.move(end.x, end.y, { steps: 4 });
    await expect(field(page, 'From the west face')).toHaveValue(`11'-0"`);
    // The measuring line down to the south wall, three quarters of the way.
    const onLine = await pagePlace(page, { x: target.x, y: target.y * 0.25 });
    expect(await isInkedOnTop(page, onLine)).toBe(true);
    await page.mouse.up();
    await expect(field(page, 'From the south face')).toHaveValue(`3'-0"`);
    expect(await isInkedOnTop(page, onLine)).toBe(false);
    await page.keyboard.press('Control+z');
    await expect(field(page, 'From the west face')).toHaveValue(`8'-0"`);
    await expect(field(page, 'From the south face')).toHaveValue(`5'-6"`);
    expect(complaints).toEqual([]);
  });

  test('Escape drops a drag and leaves no step', async ({ nozzlewright: { page } }) => {
    const start = await pagePlace(page, N1);
    await page.mouse.move(start.x, start.y);
    await page.mouse.down();
    await page.mouse.move(start.x + 90, start.y + 50, { steps: 5 });
    await expect(field(page, 'From the west face')).not.toHaveValue(`8'-0"`);
    await page.keyboard.press('Escape');
    await expect(field(page, 'From the west face')).toHaveValue(`8'-0"`);
    await page.mouse.up();
    await expect(field(page, 'From the west face')).toHaveValue(`8'-0"`);
  });

  test('wheel, middle button, space and F move the board', async ({ nozzlewright: { page } }) => {
    const box = await boardOf(page).boundingBox();
    const pointer = { x: (box?.x ?? 0) + 300, y: (box?.y ?? 0) + 180 };
    await page.mouse.move(pointer.x, pointer.y);
    const before = await viewOf(page);
    const held = await planPlace(page, pointer);
    await page.mouse.wheel(0, -240);
    await expect.poll(async () => (await viewOf(page)).camera.scale_px_m).toBeGreaterThan(before.camera.scale_px_m * 1.2);
    const after = await planPlace(page, pointer);
    expect(after.x).toBeCloseTo(held.x, 6);
    expect(after.y).toBeCloseTo(held.y, 6);

    const drag = async (begin: () => Promise<void>, end: () => Promise<void>): Promise<void> => {
      const from = await planPlace(page, pointer);
      await begin();
      await page.mouse.move(pointer.x + 70, pointer.y + 40, { steps: 4 });
      await end();
      const to = await planPlace(page, { x: pointer.x + 70, y: pointer.y + 40 });
      expect(to.x).toBeCloseTo(from.x, 6);
      expect(to.y).toBeCloseTo(from.y, 6);
      await page.mouse.move(pointer.x, pointer.y);
    };
    await drag(
      () => page.mouse.down({ button: 'middle' }),
      () => page.mouse.up({ button: 'middle' }),
    );
    await drag(
      async () => {
        await page.keyboard.down('Space');
        await page.mouse.down();
      },
      async () => {
        await page.mouse.up();
        await page.keyboard.up('Space');
      },
    );
    await page.keyboard.press('f');
    await expect.poll(async () => (await viewOf(page)).camera.scale_px_m).toBeCloseTo(before.camera.scale_px_m, 3);
  });

  test('a nozzle is raised and lowered in the section strip, by hand and by figure', async ({ nozzlewright: { page, complaints } }) => {
    const start = await pagePlace(page, N1);
    await page.mouse.click(start.x, start.y);
    const height = field(page, 'Orifice above floor');
    await expect(height).toHaveValue(`7'-4"`);
    const from = await sectionPagePlace(page, { s: N1_ALONG_m, z: 88 * INCH_m });
    const to = await sectionPagePlace(page, { s: N1_ALONG_m, z: 80 * INCH_m });
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(from.x, (from.y + to.y) / 2, { steps: 3 });
    await page.mouse.move(from.x, to.y, { steps: 3 });
    await expect(height).not.toHaveValue(`7'-4"`);
    await page.mouse.up();
    await expect(height).toHaveValue(/^6'-[78]/);
    await page.keyboard.press('Control+z');
    await expect(height).toHaveValue(`7'-4"`);

    await page.locator('.section-board').focus();
    await typeFigure(page, `7'2"`);
    await expect(height).toHaveValue(`7'-2"`);
    expect(complaints).toEqual([]);
  });

  test('a line chosen for the cut is shown on the plan and in the strip', async ({ nozzlewright: { page } }) => {
    await page.keyboard.press('x');
    await clickPlan(page, { x: 1, y: -0.3 });
    await clickPlan(page, { x: 1, y: 3.7 });
    const strip = page.getByRole('application', { name: /^Section strip: Section, looking west/ });
    await expect(strip).toBeVisible();
    await page.getByRole('button', { name: 'Follow the selection' }).click();
    await expect(page.getByRole('application', { name: /^Section strip: Signal hut from the south/ })).toBeVisible();
  });

  test('the strip is put away, pulled up and made higher by keyboard', async ({ nozzlewright: { page } }) => {
    const strip = page.getByRole('region', { name: 'Section strip' });
    await strip.getByRole('button', { name: 'Put away' }).click();
    await expect(page.locator('.section-board')).toBeHidden();
    await strip.getByRole('button', { name: 'Pull up the section' }).click();
    await expect(page.locator('.section-board')).toBeVisible();
    const edge = page.getByRole('separator', { name: 'Height of the section strip' });
    const before = Number(await edge.getAttribute('aria-valuenow'));
    await edge.focus();
    await page.keyboard.press('ArrowUp');
    await expect(edge).toHaveAttribute('aria-valuenow', `${before + 20}`);
  });

  test('what is selected is said to those who hear the board', async ({ nozzlewright: { page } }) => {
    const board = page.getByRole('application', { name: /^Drawing board/ });
    await expect(board).toBeVisible();
    const start = await pagePlace(page, N1);
    await page.mouse.click(start.x, start.y);
    await expect(board.getByRole('status')).toHaveText('Nozzle N1 selected.');
  });
});

test.describe('by touch', () => {
  test.use({ demo: 'F1', look: { touch: true } });

  test('two fingers zoom and move the board, one finger picks', async ({ nozzlewright: { page } }) => {
    const n1 = await pagePlace(page, N1);
    await page.touchscreen.tap(n1.x, n1.y);
    await expect(boardOf(page).getByRole('status')).toHaveText('Nozzle N1 selected.');

    const fingers = await page.context().newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...touchPoints: { x: number; y: number; id: number }[]) => fingers.send('Input.dispatchTouchEvent', { type, touchPoints });
    const before = await viewOf(page);
    const middle = { x: n1.x + 60, y: n1.y + 40 };
    const held = await planPlace(page, middle);
    const pair = (apart: number, shift: number) => [
      { x: middle.x - apart + shift, y: middle.y, id: 1 },
      { x: middle.x + apart + shift, y: middle.y, id: 2 },
    ];
    const [first] = pair(40, 0);
    if (first) await touch('touchStart', first);
    await touch('touchStart', ...pair(40, 0));
    for (let i = 1; i <= 8; i += 1) await touch('touchMove', ...pair(40 + i * 5, i * 4));
    await touch('touchEnd');
    await expect.poll(async () => (await viewOf(page)).camera.scale_px_m / before.camera.scale_px_m).toBeCloseTo(2, 2);
    const after = await pagePlace(page, held);
    expect(after.x).toBeCloseTo(middle.x + 32, 0);
    expect(after.y).toBeCloseTo(middle.y, 0);
    // The first finger drew nothing and picked nothing else.
    await expect(boardOf(page).getByRole('status')).toHaveText('Nozzle N1 selected.');
  });
});

test.describe('a floor plan under the drawing', () => {
  test.use({ demo: 'F2' });

  test('is painted, and hidden with its layer', async ({ nozzlewright: { page, complaints } }) => {
    /** Share of pixels on the lowest layer that are darker than the grid, around the room's name in the file. */
    const inked = async (): Promise<number> => {
      const a = await pagePlace(page, { x: 0.2, y: 7.6 });
      const b = await pagePlace(page, { x: 2.4, y: 7 });
      return page.evaluate(
        ({ left, top, right, bottom }) => {
          const canvas = document.querySelector<HTMLCanvasElement>('.board canvas');
          const copy = document.createElement('canvas');
          const pen = copy.getContext('2d', { willReadFrequently: true });
          if (!canvas || !pen) return 0;
          [copy.width, copy.height] = [canvas.width, canvas.height];
          pen.drawImage(canvas, 0, 0);
          const box = canvas.getBoundingClientRect();
          const ratio = canvas.width / box.width;
          const { data } = pen.getImageData((left - box.left) * ratio, (top - box.top) * ratio, (right - left) * ratio, (bottom - top) * ratio);
          let dark = 0;
          for (let i = 0; i < data.length; i += 4) if ((data[i] ?? 255) < 215) dark += 1;
          return dark / (data.length / 4);
        },
        { left: a.x, top: a.y, right: b.x, bottom: b.y },
      );
    };
    await expect.poll(inked).toBeGreaterThan(0.01);
    await page.keyboard.press('F2');
    await page.keyboard.type('hide: floor plans');
    await page.keyboard.press('Enter');
    await expect.poll(inked).toBe(0);
    expect(complaints).toEqual([]);
  });
});

test.describe('a plan with faults', () => {
  test.use({ demo: 'F2-faults' });

  test('the mark of a finding leads to the thing it is about', async ({ nozzlewright: { page, complaints } }) => {
    const n5 = await pagePlace(page, { x: 26.5 * 0.3048, y: 7.5 * 0.3048 });
    await page.mouse.click(n5.x - 17, n5.y - 15);
    await expect(page.locator('.board').getByRole('status')).toHaveText('Nozzle N5 selected.');
    expect(complaints).toEqual([]);
  });
});
