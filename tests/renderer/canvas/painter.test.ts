import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { ANEW, type Paint } from '../../../src-renderer/canvas/paint.ts';
import { Painter } from '../../../src-renderer/canvas/painter.ts';
import type { Pen } from '../../../src-renderer/canvas/pen.ts';
import { type Viewport, pannedBy, toScreen, zoomedAt } from '../../../src-renderer/canvas/viewport.ts';

const START: Viewport = { camera: { at: { x: 3, y: 2 }, scale_px_m: 100 }, width: 800, height: 600 };
const BEYOND_px = 160;
const moved = (view: Viewport, dx_px: number, dy_px: number): Viewport => ({ ...view, camera: pannedBy(view, dx_px, dy_px) });

/** A canvas that keeps how it is placed, and a pen that keeps where its corner is. */
function fakeCanvas() {
  let corner = { x: 0, y: 0 };
  const calls: string[] = [];
  const pen = {
    translate: () => undefined,
    setTransform: (_a: number, _b: number, _c: number, _d: number, x: number, y: number) => {
      corner = { x, y };
    },
    drawImage: (_image: unknown, x: number, y: number) => calls.push(`shift ${x} ${y}`),
    save: () => undefined,
    restore: () => undefined,
    beginPath: () => undefined,
    rect: () => undefined,
    clip: () => undefined,
    globalCompositeOperation: 'source-over',
  };
  const canvas = { width: 0, height: 0, style: { transform: '' } as Record<string, string>, getContext: () => pen };
  return { canvas, pen, calls, cornerNow: () => corner };
}

type Fake = ReturnType<typeof fakeCanvas>;
let made: Fake[] = [];
/** Later in every test: layers take turns by the clock of the window. */
let began_ms = 0;
let idle: (() => void)[] = [];

beforeEach(() => {
  made = [];
  idle = [];
  vi.useFakeTimers();
  began_ms += 10_000;
  vi.advanceTimersByTime(began_ms);
  vi.stubGlobal('window', { devicePixelRatio: 1 });
  vi.stubGlobal('document', {
    createElement() {
      const fake = fakeCanvas();
      made.push(fake);
      return fake.canvas;
    },
  });
  vi.stubGlobal('requestIdleCallback', (run: (deadline: { timeRemaining(): number }) => void) => idle.push(() => run({ timeRemaining: () => 10 })));
  vi.stubGlobal('cancelIdleCallback', () => undefined);
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** Lets so much time pass by the clock [ms]. */
const busy = (cost_ms: number): void => void vi.advanceTimersByTime(cost_ms);
/** Idle time, frame by frame. */
const passIdle = (): void => {
  for (let i = 0; idle.length > 0 && i < 50; i += 1) {
    busy(16);
    idle.shift()?.();
  }
};

/** A painter of a stage that reaches over the board, and how often its layer was drawn. */
function staged(beyond_px = BEYOND_px) {
  const fake = fakeCanvas();
  made.push(fake);
  fake.canvas.width = START.width + 2 * BEYOND_px;
  fake.canvas.height = START.height + 2 * BEYOND_px;
  let draws = 0;
  const painter: Painter = new Painter(
    {
      canvas: fake.canvas as unknown as HTMLCanvasElement,
      ratio: 1,
      draw() {
        draws += 1;
        painter.scene(fake.pen as unknown as Pen);
      },
    },
    START,
    { stage_px: BEYOND_px, picture_px: beyond_px },
  );
  return { painter, drawsNow: () => draws };
}

function painterOf(paint: Paint, beyond_px = BEYOND_px) {
  const { painter } = staged(beyond_px);
  painter.paint([paint]);
  return painter;
}

test('what it is given is drawn at once, somewhat larger than the board', () => {
  const views: Viewport[] = [];
  painterOf((_, view) => views.push(view));
  expect(views).toEqual([{ camera: START.camera, width: 800 + 2 * BEYOND_px, height: 600 + 2 * BEYOND_px }]);
  expect(made).toHaveLength(1);
});

test('a board that is moved a little shifts the picture and draws nothing', () => {
  let count = 0;
  const painter = painterOf(() => {
    count += 1;
  });
  painter.moved(moved(START, 20, -30));
  passIdle();
  busy(1000);
  expect(count).toBe(1);
  expect(made[0]?.canvas.style.transform).toMatch(/^translate\(20(\.0+\d)?px, -30(\.0+\d)?px\) scale\(1\)$/);
});

test('moved farther, only strips at its edges are drawn, each where it belongs', () => {
  const strips: Viewport[] = [];
  let corners: { x: number; y: number }[] = [];
  const painter = painterOf((_, view) => {
    if (!view.isStrip) return;
    strips.push(view);
    corners.push(made[0]?.cornerNow() ?? { x: 0, y: 0 });
  });
  const now = moved(START, 70, -80);
  painter.moved(now);
  expect(strips).toEqual([]);
  passIdle();
  expect(made).toHaveLength(1);
  expect(made[0]?.calls).toContain('shift 70 -80');
  expect(made[0]?.canvas.style.transform).toBe('');
  expect(strips.map(({ width, height }) => [width, height])).toEqual([
    [1120, 80],
    [70, 840],
  ]);
  const whole: Viewport = { ...now, width: 1120, height: 920 };
  const place = { x: 1.25, y: 3.5 };
  const wanted = toScreen(whole, place);
  for (const [i, strip] of strips.entries()) {
    const at = toScreen(strip, place);
    expect(at.x + (corners[i]?.x ?? 0)).toBeCloseTo(wanted.x, 6);
    expect(at.y + (corners[i]?.y ?? 0)).toBeCloseTo(wanted.y, 6);
  }
  corners = [];
});

test('layers are drawn on one after the other, a frame apart', () => {
  let strips = 0;
  const painters = [1, 2].map(() =>
    painterOf((_, view) => {
      if (view.isStrip) strips += 1;
    }),
  );
  for (const painter of painters) painter.moved(moved(START, 80, 0));
  busy(16);
  for (const run of idle.splice(0)) run();
  expect(strips).toBe(1);
  passIdle();
  expect(strips).toBe(2);
});

test('before the edge of the picture comes into sight the strip is drawn, idle or not', () => {
  let strips = 0;
  const painter = painterOf((_, view) => {
    if (view.isStrip) strips += 1;
  });
  painter.moved(moved(START, 150, 0));
  expect(strips).toBe(1);
});

test('a strip that does not fit beside the rest has all of it drawn anew, between frames', () => {
  let whole = 0;
  const painter = painterOf((_, view) => {
    if (view.isStrip) return ANEW;
    whole += 1;
    return undefined;
  });
  painter.moved(moved(START, 80, 0));
  passIdle();
  expect(whole).toBe(2);
  expect(made).toHaveLength(2);
});

test('a dear picture grows with the board, and is drawn sharp when it rests', () => {
  let whole = 0;
  const painter = painterOf(() => {
    whole += 1;
    busy(20);
  });
  painter.moved({ ...START, camera: zoomedAt(START, { x: 400, y: 300 }, 1.2) });
  expect(whole).toBe(1);
  expect(made[0]?.canvas.style.transform).toContain('scale(1.2');
  busy(200);
  passIdle();
  expect(whole).toBe(2);
});

test('a cheap picture is drawn sharp at every step of a zoom', () => {
  let whole = 0;
  const painter = painterOf(() => {
    whole += 1;
  });
  painter.moved({ ...START, camera: zoomedAt(START, { x: 400, y: 300 }, 1.2) });
  expect(whole).toBe(2);
  expect(made).toHaveLength(1);
});

test('an empty picture is left alone', () => {
  const { painter, drawsNow } = staged(0);
  painter.paint([]);
  expect(drawsNow()).toBe(1);
  painter.moved(moved(START, 300, 0));
  painter.paint([]);
  passIdle();
  expect(drawsNow()).toBe(1);
});

test('what keeps its place on the screen is drawn as large as the board', () => {
  const views: Viewport[] = [];
  const { painter } = staged(0);
  painter.paint([(_, view) => views.push(view)]);
  expect(views).toEqual([START]);
});
