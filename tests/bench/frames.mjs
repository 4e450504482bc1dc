// Frame times of the board on the largest building, in the browser of this machine: node tests/bench/frames.mjs [SHARE]
// Build first (npm run build). SHARE is how much of the building is drawn, 1 unless told otherwise.
// FRAMES_PICTURES and FRAMES_PROFILE name folders for pictures of each drag and for profiles of each gesture.
import { spawn } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { createInterface } from 'node:readline';
import { chromium } from '@playwright/test';
import { runnerImport } from 'vite';
import { findBrowser } from '../../src-main/loopback/browsers.mjs';

const ROOT = resolve(import.meta.dirname, '..', '..');
const FLAGS = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'];
const share = Number(process.argv[2] ?? 1);
/** Frames that are measured of each gesture. */
const STEPS = 120;

const fromSource = async (file) => (await runnerImport(join(ROOT, file), { root: ROOT, configFile: false, logLevel: 'error' })).module;
const { building, countsOf } = await fromSource('tests/support/building.ts');
const { packPlan } = await fromSource('src-shared/model/pack-plan.ts');

const plan = building(share);
const folder = await mkdtemp(join(tmpdir(), 'nozzlewright-frames-'));
const file = join(folder, 'building.nzw');
await writeFile(file, packPlan(plan, {}));

const host = spawn(process.execPath, [join(ROOT, 'out/main/loopback.js'), '--no-open', '--grace', '300', '--folder', folder, file], { stdio: ['ignore', 'pipe', 'inherit'] });
const address = await new Promise((found) => {
  createInterface({ input: host.stdout }).on('line', (line) => {
    const named = /https?:\/\/127\.0\.0\.1:\S+/.exec(line);
    if (named) found(named[0]);
  });
});
const browser = await chromium.launch({ executablePath: findBrowser(), args: FLAGS });
const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
page.on('pageerror', (error) => console.error(error.message));
await page.goto(address);
await page.waitForSelector('.board canvas', { timeout: 600_000 });
const client = await page.context().newCDPSession(page);
// Counted in the time of the window's own thread, whatever else the machine does.
await client.send('Performance.enable', { timeDomain: 'threadTicks' });

const at = (list, part) => list.toSorted((a, b) => a - b)[Math.min(list.length - 1, Math.floor(list.length * part))] ?? Number.NaN;
const busy_ms = async () => {
  const { metrics } = await client.send('Performance.getMetrics');
  return metrics.find(({ name }) => name === 'TaskDuration').value * 1000;
};

/** Times between frames while the page moves the pointer itself, one step a frame, so that no wire stands between. */
async function frames(name, steps) {
  if (process.env.FRAMES_PROFILE) {
    await client.send('Profiler.enable');
    await client.send('Profiler.start');
  }
  const before_ms = await busy_ms();
  const gaps = await page.evaluate(
    (places) =>
      new Promise((done) => {
        const board = document.querySelector('.board');
        const target = board.querySelector('canvas') ?? board;
        const event = (type, { x, y, buttons, ...rest }) =>
          target.dispatchEvent(new PointerEvent(type, { bubbles: true, cancelable: true, composed: true, clientX: x, clientY: y, pointerId: 1, pointerType: 'mouse', isPrimary: true, buttons, ...rest }));
        const found = [];
        let i = -1;
        let last = 0;
        const step = (now) => {
          if (i >= 0) found.push(now - last);
          last = now;
          i += 1;
          const place = places[i];
          if (!place) return done(found);
          event('pointermove', place);
          requestAnimationFrame(step);
        };
        requestAnimationFrame(step);
      }),
    steps,
  );
  const spent_ms = await busy_ms();
  if (process.env.FRAMES_PROFILE) {
    const { profile } = await client.send('Profiler.stop');
    await writeFile(join(process.env.FRAMES_PROFILE, `${name.replaceAll(/\W+/g, '-')}.cpuprofile`), JSON.stringify(profile));
  }
  const rest = gaps.slice(2);
  console.log(`${name}: ${rest.length} frames, median ${at(rest, 0.5).toFixed(1)} ms, p95 ${at(rest, 0.95).toFixed(1)} ms, longest ${Math.max(...rest).toFixed(0)} ms; window's thread busy ${((spent_ms - before_ms) / gaps.length).toFixed(1)} ms a frame`);
}

/** Waits until the window has nothing more to work out. */
async function rest() {
  for (let quiet = 0, last = await busy_ms(); quiet < 3; ) {
    await page.waitForTimeout(500);
    const now = await busy_ms();
    quiet = now - last < 40 ? quiet + 1 : 0;
    last = now;
  }
}

const camera = async () => {
  const [x, y, scale] = (await page.locator('.board').getAttribute('data-camera')).split(' ').map(Number);
  const box = await page.locator('.board').boundingBox();
  return { x, y, scale, box };
};
const placeOf = async (p) => {
  const { x, y, scale, box } = await camera();
  return { x: box.x + box.width / 2 + (p.x - x) * scale, y: box.y + box.height / 2 - (p.y - y) * scale };
};

try {
  console.log(Object.entries(countsOf(plan)).map(([what, count]) => `${count} ${what}`).join(', '));
  await rest();
  const { box } = await camera();
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };

  /** The middle button takes the drawing along. */
  async function pan(name) {
    await page.mouse.move(middle.x, middle.y);
    await page.mouse.down({ button: 'middle' });
    await frames(name, Array.from({ length: STEPS }, (_, i) => ({ x: middle.x + 150 * Math.sin(i / 12), y: middle.y + 100 * Math.sin(i / 17), buttons: 4, button: -1 })));
    await page.mouse.up({ button: 'middle' });
    await rest();
  }
  async function drag(name, node) {
    const from = await placeOf(node);
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(from.x + 6, from.y + 2, { steps: 3 });
    const held = await page.locator('.board [role="status"]').textContent();
    if (!held) throw new Error('The drag has taken nothing along: the nozzle is not under the pointer.');
    await frames(name, Array.from({ length: STEPS }, (_, i) => ({ x: from.x + 6 + 25 * Math.sin(i / 9), y: from.y + 15 * Math.sin(i / 7), buttons: 1, button: -1 })));
    if (process.env.FRAMES_PICTURES) await page.screenshot({ path: join(process.env.FRAMES_PICTURES, `${name.replaceAll(/\W+/g, '-')}.png`) });
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await rest();
  }

  const [network] = Object.values(plan.networks);
  const nozzle = Object.values(network.nozzles)[3];
  const node = network.nodes[nozzle.node].at;
  await pan('pan, the whole level');
  await page.locator('.board').focus();
  await page.keyboard.press('f');
  await rest();
  for (let i = 0; i < 60; i += 1) {
    const p = await placeOf(node);
    await page.mouse.move(p.x, p.y);
    if ((await camera()).scale > 45) break;
    await page.mouse.wheel(0, -240);
    await page.waitForTimeout(60);
  }
  await rest();
  await drag('nozzle drag, two rooms', node);
  await pan('pan, two rooms');
} finally {
  await browser.close();
  host.kill();
  await rm(folder, { recursive: true, force: true });
}
