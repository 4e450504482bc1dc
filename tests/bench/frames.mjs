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
const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, colorScheme: process.env.FRAMES_DARK ? 'dark' : 'light' });
page.on('pageerror', (error) => console.error(error.message));
const client = await page.context().newCDPSession(page);
// Counted in the time of the window's own thread, whatever else the machine does.
await client.send('Performance.enable', { timeDomain: 'threadTicks' });

const at = (list, part) => list.toSorted((a, b) => a - b)[Math.min(list.length - 1, Math.floor(list.length * part))] ?? Number.NaN;
const busy_ms = async () => {
  const { metrics } = await client.send('Performance.getMetrics');
  return metrics.find(({ name }) => name === 'TaskDuration').value * 1000;
};
const fileOf = (folder, name, ending) => join(folder, `${name.replaceAll(/\W+/g, '-')}.${ending}`);
async function startProfile() {
  if (!process.env.FRAMES_PROFILE) return;
  await client.send('Profiler.enable');
  await client.send('Profiler.setSamplingInterval', { interval: 500 });
  await client.send('Profiler.start');
}
async function endProfile(name) {
  if (!process.env.FRAMES_PROFILE) return;
  const { profile } = await client.send('Profiler.stop');
  await client.send('Profiler.disable');
  await writeFile(fileOf(process.env.FRAMES_PROFILE, name, 'cpuprofile'), JSON.stringify(profile));
}
const picture = async (name) => {
  if (process.env.FRAMES_PICTURES) await page.screenshot({ path: fileOf(process.env.FRAMES_PICTURES, name, 'png') });
};

/** Kinds of work on the window's own thread, by the names that the browser gives to it. */
const KINDS = {
  script: /^(FunctionCall|EventDispatch|FireAnimationFrame|FireIdleCallback|TimerFire|RunMicrotasks|EvaluateScript|v8\.|V8\.)/,
  garbage: /^(V8\.GC|MinorGC|MajorGC|BlinkGC|CppGC)/,
  style: /^(UpdateLayoutTree|Layout|ParseAuthorStyleSheet|ScheduleStyleRecalculation|RecalculateStyles|HitTest|IntersectionObserverController)/,
  paint: /^(PrePaint|Paint|Layerize|Commit|UpdateLayer|CompositeLayers|RasterTask|ImageDecodeTask|Decode)/,
};
const kindOf = (name) => (KINDS.garbage.test(name) ? 'garbage' : (Object.keys(KINDS).find((kind) => KINDS[kind].test(name)) ?? 'other'));

/** What the window's own thread did from frame to frame, in its own processor time [ms], and its parts over all. */
function threadFrames(events) {
  const thread = events.find(({ name }) => name === 'frames-begin');
  if (!thread) return { each: [], parts: {} };
  const own = events.filter(({ pid, tid }) => pid === thread.pid && tid === thread.tid).toSorted((a, b) => a.ts - b.ts || b.dur - a.dur);
  const begin = own.find(({ name }) => name === 'frames-begin')?.ts ?? 0;
  const end = own.findLast(({ name }) => name === 'frames-end')?.ts ?? Infinity;
  const within = own.filter(({ ts }) => ts >= begin && ts <= end);
  const starts = within.filter(({ name }) => name === 'frames-step').map(({ ts }) => ts);
  const each = starts.map(() => 0);
  for (const { ts, tdur, name } of within) {
    if (!/RunTask$/.test(name) || tdur === undefined) continue;
    const i = starts.findLastIndex((start) => start <= ts);
    if (i >= 0) each[i] += tdur / 1000;
  }
  const parts = {};
  const open = [];
  for (const { ph, ts, dur, tdur, name } of within) {
    if (ph !== 'X' || tdur === undefined) continue;
    while (open.length > 0 && open.at(-1).end <= ts) open.pop();
    const parent = open.at(-1);
    const kind = kindOf(name) === 'other' && parent ? parent.kind : kindOf(name);
    parts[kind] = (parts[kind] ?? 0) + tdur / 1000;
    if (parent) parts[parent.kind] -= tdur / 1000;
    open.push({ end: ts + dur, kind });
  }
  return { each, parts };
}

/** Times between frames while the page moves the pointer itself, one step a frame, so that no wire stands between. */
async function frames(name, steps) {
  const move = () =>
    page.evaluate(
      (places) =>
        new Promise((done) => {
          const board = document.querySelector('.board');
          const target = board.querySelector('canvas') ?? board;
          const event = (type, { x, y, buttons, deltaY, ...rest }) =>
            target.dispatchEvent(
              type === 'wheel'
                ? new WheelEvent(type, { bubbles: true, cancelable: true, composed: true, clientX: x, clientY: y, deltaY })
                : new PointerEvent(type, { bubbles: true, cancelable: true, composed: true, clientX: x, clientY: y, pointerId: 1, pointerType: 'mouse', isPrimary: true, buttons, ...rest }),
            );
          const found = [];
          let i = -1;
          let last = 0;
          performance.mark('frames-begin');
          const step = (now) => {
            performance.mark('frames-step');
            if (i >= 0) found.push(now - last);
            last = now;
            i += 1;
            const place = places[i];
            if (!place) {
              performance.mark('frames-end');
              return done(found);
            }
            event(place.deltaY ? 'wheel' : 'pointermove', place);
            requestAnimationFrame(step);
          };
          requestAnimationFrame(step);
        }),
      steps,
    );
  if (process.env.FRAMES_PROFILE) {
    await startProfile();
    await move();
    await endProfile(name);
    return;
  }
  await browser.startTracing(page, { categories: ['toplevel', 'devtools.timeline', 'v8', 'blink.user_timing'] });
  const gaps = await move();
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString());
  const { each, parts } = threadFrames(traceEvents);
  const rest = gaps.slice(2);
  const spent = each.slice(2, -1);
  const words = Object.entries(parts).map(([part, ms]) => `${part} ${(ms / gaps.length).toFixed(1)}`).join(', ');
  console.log(`${name}: ${rest.length} frames, median ${at(rest, 0.5).toFixed(1)} ms, p95 ${at(rest, 0.95).toFixed(1)} ms, longest ${Math.max(...rest).toFixed(0)} ms; window's own thread a frame: median ${at(spent, 0.5).toFixed(1)} ms, p95 ${at(spent, 0.95).toFixed(1)} ms, longest ${Math.max(...spent).toFixed(0)} ms (${words})`);
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
  const began = Date.now();
  await startProfile();
  await page.goto(address);
  await page.waitForSelector('.board canvas', { timeout: 600_000 });
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  console.log(`opened: board up after ${((Date.now() - began) / 1000).toFixed(1)} s, ${((await busy_ms()) / 1000).toFixed(1)} s of the window's own thread`);
  await endProfile('open');
  await picture('opened');
  await rest();
  console.log(`checked: after ${((Date.now() - began) / 1000).toFixed(1)} s, ${((await busy_ms()) / 1000).toFixed(1)} s of the window's own thread`);
  await picture('checked');
  const { box } = await camera();
  const middle = { x: Math.round(box.x + box.width / 2), y: Math.round(box.y + box.height / 2) };

  /** The middle button takes the drawing along. */
  async function pan(name) {
    await page.mouse.move(middle.x, middle.y);
    await page.mouse.down({ button: 'middle' });
    await frames(name, Array.from({ length: STEPS }, (_, i) => ({ x: Math.round(middle.x + 150 * Math.sin(i / 12)), y: Math.round(middle.y + 100 * Math.sin(i / 17)), buttons: 4, button: -1 })));
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
    await frames(name, Array.from({ length: STEPS }, (_, i) => ({ x: Math.round(from.x + 6 + 25 * Math.sin(i / 9)), y: Math.round(from.y + 15 * Math.sin(i / 7)), buttons: 1, button: -1 })));
    await picture(name);
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
  await frames('zoom, two rooms', Array.from({ length: STEPS }, (_, i) => ({ ...middle, deltaY: i % 40 < 20 ? 40 : -40 })));
} finally {
  await browser.close();
  host.kill();
  await rm(folder, { recursive: true, force: true });
}
