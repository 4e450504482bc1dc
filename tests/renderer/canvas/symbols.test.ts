import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { VERDICTS } from '#shared/rules/finding';
import { DARK_INK, LIGHT_INK } from '../../../src-renderer/ink.ts';
import { drawCut } from '../../../src-renderer/canvas/draw-cut.ts';
import { readable_rad, wrapped } from '../../../src-renderer/canvas/lettering.ts';
import { drawAssemblyPart } from '../../../src-renderer/canvas/symbols/assembly-symbols.ts';
import { innerTicks, isInArea } from '../../../src-renderer/canvas/symbols/coverage-edge.ts';
import { drawCylinder } from '../../../src-renderer/canvas/symbols/cylinder-symbol.ts';
import { drawDimension } from '../../../src-renderer/canvas/symbols/dimension-line.ts';
import { drawFitting } from '../../../src-renderer/canvas/symbols/fitting-symbol.ts';
import { hatchLines } from '../../../src-renderer/canvas/symbols/hatch.ts';
import { NOZZLE_REACH_px, NOZZLE_RING_px, drawNozzle } from '../../../src-renderer/canvas/symbols/nozzle-symbol.ts';
import { drawOpening } from '../../../src-renderer/canvas/symbols/opening-symbol.ts';
import { drawHighPressureLine, drawLowPressureLine } from '../../../src-renderer/canvas/symbols/pressure-line.ts';
import { drawUpright } from '../../../src-renderer/canvas/symbols/riser-symbol.ts';
import { drawSnap } from '../../../src-renderer/canvas/symbols/snap-mark.ts';
import { SNAP_WORDS } from '../../../src-renderer/tools/snap.ts';
import { dotPlaces } from '../../../src-renderer/canvas/symbols/uncovered-dots.ts';
import { drawVerdict } from '../../../src-renderer/canvas/symbols/verdict-mark.ts';
import { drawnPieces, named, recordingPen, texts } from './support/recording-pen.ts';

const at = { x: 100, y: 100 };
const paper = '#ffffff';

test('a nozzle has one stroke per hole, pointing where it blows with north up', () => {
  const { pen, calls } = recordingPen();
  drawNozzle(pen, at, { colour: '#000000', paper, holes_rad: [0, Math.PI / 2, Math.PI] });
  const strokes = drawnPieces(calls);
  expect(strokes).toHaveLength(3);
  const [east, north, west] = strokes;
  expect(east?.[0]).toBeCloseTo(100 + NOZZLE_RING_px);
  expect(east?.[2]).toBeCloseTo(100 + NOZZLE_REACH_px);
  expect(north?.[3]).toBeCloseTo(100 - NOZZLE_REACH_px);
  expect(west?.[2]).toBeCloseTo(100 - NOZZLE_REACH_px);
});

test('a cylinder is flat on its wall side and notched in front', () => {
  const { pen, calls } = recordingPen();
  drawCylinder(pen, at, { colour: '#000000', paper, warm: '#aa0000', radius_px: 20, back_rad: Math.PI / 2 });
  const outline = drawnPieces(calls.slice(0, calls.findIndex(({ name }) => name === 'stroke')));
  expect(Math.min(...outline.flatMap(([, y1, , y2]) => [y1 ?? 0, y2 ?? 0]))).toBeCloseTo(100 - 20 * 0.82);
  const notch = calls.filter(({ name, stroke }) => name === 'lineTo' && stroke === '#aa0000');
  expect(notch.map(({ args }) => Math.round(Number(args[1])))).toContain(112);
});

test('a riser points up the screen, a drop down', () => {
  const tip = (goes: 'riser' | 'drop'): number => {
    const { pen, calls } = recordingPen();
    drawUpright(pen, at, goes, '#000000', paper);
    return drawnPieces(calls)[0]?.[3] ?? 0;
  };
  expect(tip('riser')).toBeLessThan(90);
  expect(tip('drop')).toBeGreaterThan(110);
});

test('the high-pressure side is a double line, the low-pressure side a single one', () => {
  const run = [at, { x: 200, y: 100 }];
  const high = recordingPen();
  drawHighPressureLine(high.pen, run, '#b0480c', paper);
  expect(named(high.calls, 'stroke').map(({ stroke, width }) => [stroke, width])).toEqual([
    ['#b0480c', 6],
    [paper, 2],
  ]);
  const low = recordingPen();
  drawLowPressureLine(low.pen, run, '#0f639c', 3);
  expect(named(low.calls, 'stroke')).toHaveLength(1);
});

test.each(['regulator', 'check-valve'] as const)('a reversed %s is drawn the other way round', (kind) => {
  const drawn = (arrowDownstream: boolean): number[][] => {
    const { pen, calls } = recordingPen();
    drawAssemblyPart(pen, { x: 0, y: 0 }, 0, { kind, arrowDownstream }, { warm: '#000000', paper });
    return drawnPieces(calls).map((piece) => piece.map((value) => Math.round(value * 100) / 100 + 0));
  };
  const mirrored = drawn(true).map(([x1 = 0, y1 = 0, x2 = 0, y2 = 0]) => [-x1 + 0, -y1 + 0, -x2 + 0, -y2 + 0]);
  expect(drawn(false)).toEqual(mirrored);
  expect(drawn(false)).not.toEqual(drawn(true));
});

describe('fittings', () => {
  const bars = (kind: Parameters<typeof drawFitting>[2], legs_rad: number[]): number => {
    const { pen, calls } = recordingPen();
    drawFitting(pen, at, kind, { colour: '#000000', paper, legs_rad, pipe_px: 4 });
    return drawnPieces(calls).length;
  };
  test('a bar across every leg that can be seen', () => {
    expect(bars('elbow-90', [0, Math.PI / 2])).toBe(2);
    expect(bars('tee', [0, Math.PI / 2, Math.PI])).toBe(3);
    expect(bars('elbow-90', [0])).toBe(1);
  });
  test('an odd bend is marked beside its bars', () => {
    expect(bars('odd-bend', [0, 2])).toBeGreaterThan(2);
  });
});

describe('verdicts', () => {
  test('every verdict has a mark of its own shape', () => {
    const shapes = VERDICTS.map((verdict) => {
      const { pen, calls } = recordingPen();
      drawVerdict(pen, at, verdict, LIGHT_INK);
      return calls.map(({ name, dash }) => `${name}${dash.length > 0 ? ' dashed' : ''}`).join();
    });
    expect(new Set(shapes).size).toBe(VERDICTS.length);
  });

  test('stop is filled with a bar left out, warning is open, not checked is dashed', () => {
    const draw = (verdict: (typeof VERDICTS)[number]) => {
      const { pen, calls } = recordingPen();
      drawVerdict(pen, at, verdict, DARK_INK);
      return calls;
    };
    expect(named(draw('stop'), 'fillRect').map(({ fill }) => fill)).toEqual([DARK_INK.paper, DARK_INK.verdict.stop, DARK_INK.paper]);
    expect(named(draw('warn'), 'fill').map(({ fill }) => fill)).toEqual([DARK_INK.paper]);
    expect(named(draw('not-checked'), 'stroke')[0]?.dash).not.toEqual([]);
  });
});

describe('doors', () => {
  const place = { a: { x: 100, y: 200 }, b: { x: 190, y: 200 }, inward: { x: 0, y: -1 }, thickness_px: 15 };
  const door = (swing: 'in' | 'out', hinge: 'start' | 'end') => {
    const { pen, calls } = recordingPen();
    drawOpening(pen, { kind: 'door', swing, hinge }, place, { colour: '#000000', paper, wall_px: 3 });
    const arc = named(calls, 'arc')[0]?.args.map(Number) ?? [];
    const leaf = drawnPieces(calls).find(([x1, , x2]) => x1 === x2 && (x1 === 100 || x1 === 190) && calls.length > 0 && named(calls, 'arc').length > 0) ?? [];
    return { arc, leaf, pieces: drawnPieces(calls) };
  };

  test('the leaf sweeps the opening on the side that it swings to', () => {
    const inside = door('in', 'start');
    expect(inside.arc.slice(0, 3)).toEqual([100, 200, 90]);
    expect(inside.pieces).toContainEqual([100, 200, 100, 110]);
    const outside = door('out', 'end');
    expect(outside.arc.slice(0, 3)).toEqual([190, 215, 90]);
    expect(outside.pieces).toContainEqual([190, 215, 190, 305]);
  });

  test('the arc runs a quarter turn from the open leaf to the shut one', () => {
    for (const swing of ['in', 'out'] as const) {
      for (const hinge of ['start', 'end'] as const) {
        const [cx = 0, cy = 0, radius = 0, from = 0, to = 0] = door(swing, hinge).arc;
        expect(Math.abs(to - from)).toBeCloseTo(Math.PI / 2);
        expect(cx + radius * Math.cos(to)).toBeCloseTo(hinge === 'start' ? 190 : 100);
        expect(cy + radius * Math.sin(from)).toBeCloseTo(swing === 'in' ? 110 : 305);
      }
    }
  });
});

describe('coverage', () => {
  const outer = [{ x: 0, y: 0 }, { x: 200, y: 0 }, { x: 200, y: 200 }, { x: 0, y: 200 }];
  const hole = [{ x: 80, y: 80 }, { x: 120, y: 80 }, { x: 120, y: 120 }, { x: 80, y: 120 }];
  test.each([
    ['as drawn', outer, hole],
    ['wound the other way', [...outer].reverse(), [...hole].reverse()],
  ])('ticks stand on the inner side, %s', (_, ring, gap) => {
    const ticks = [...innerTicks([ring, gap])];
    expect(ticks.length).toBeGreaterThan(20);
    for (const [, tip] of ticks) expect(isInArea(tip, [ring, gap])).toBe(true);
  });

  test('dots stand denser near the worst place and stay with the drawing', () => {
    const box = { minX: 0, minY: 0, maxX: 400, maxY: 400 };
    const dots = [...dotPlaces(box, { x: 0, y: 0 }, { x: 50, y: 50 }, 500)];
    const near = dots.filter(({ x, y }) => x < 100 && y < 100).length;
    const far = dots.filter(({ x, y }) => x >= 300 && y >= 300).length;
    expect(near).toBeGreaterThan(2 * far);
    expect(far).toBeGreaterThan(5);
    const moved = [...dotPlaces({ minX: 3, minY: 5, maxX: 403, maxY: 405 }, { x: 3, y: 5 }, { x: 53, y: 55 }, 500)];
    expect(moved.map(({ x, y }) => [x - 3, y - 5])).toEqual(dots.map(({ x, y }) => [x, y]));
  });
});

test('hatch lines keep their distance and stay with the drawing', () => {
  fc.assert(
    fc.property(fc.integer({ min: -500, max: 500 }), fc.integer({ min: -500, max: 500 }), (x, y) => {
      const slant = -Math.PI / 4;
      const offsets = [...hatchLines({ minX: 0, minY: 0, maxX: 100, maxY: 60 }, { x, y }, 8, slant)].map(
        ([a]) => (a.x - x) * -Math.sin(slant) + (a.y - y) * Math.cos(slant),
      );
      expect(offsets.length).toBeGreaterThan(10);
      for (const offset of offsets) expect(offset / 8).toBeCloseTo(Math.round(offset / 8), 4);
    }),
  );
});

describe('texts', () => {
  test('no text along a line stands on its head', () => {
    fc.assert(
      fc.property(fc.double({ min: -10, max: 10, noNaN: true }), (heading) => {
        const turned = readable_rad(heading);
        expect(Math.abs(turned)).toBeLessThanOrEqual(Math.PI / 2 + 1e-6);
        expect(Math.abs(Math.sin(turned - heading))).toBeLessThan(1e-9);
      }),
    );
  });

  test('a note is broken between words and at its line ends', () => {
    const { pen } = recordingPen();
    expect(wrapped(pen, 'Light at N1\nask for the ceiling plan', 90)).toEqual(['Light at N1', 'ask for the', 'ceiling plan']);
  });

  test('a dimension writes its figure and puts it beside a line that is too short', () => {
    const { pen, calls } = recordingPen();
    drawDimension(pen, { x: 0, y: 0 }, { x: 200, y: 0 }, '2.000 m', { colour: '#000000', paper, offset_px: 30 });
    expect(texts(calls)).toEqual(['2.000 m']);
    const middle = named(calls, 'translate')[0]?.args.map(Number);
    expect(middle?.[0]).toBeCloseTo(100);
    const short = recordingPen();
    drawDimension(short.pen, { x: 0, y: 0 }, { x: 20, y: 0 }, '0.200 m', { colour: '#000000', paper, offset_px: 30 });
    expect(Number(named(short.calls, 'translate')[0]?.args[0])).toBeGreaterThan(30);
  });

  test('what the pointer caught is named, free places are not marked', () => {
    for (const [kind, word] of Object.entries(SNAP_WORDS)) {
      const { pen, calls } = recordingPen();
      drawSnap(pen, at, kind as keyof typeof SNAP_WORDS, '#000000', paper);
      if (kind === 'free') expect(calls).toEqual([]);
      else if (kind !== 'grid') expect(texts(calls)).toEqual([word]);
    }
  });
});

test('a section line has an arrow at both ends, to the left of the way it was drawn', () => {
  const { pen, calls } = recordingPen();
  const view = { camera: { at: { x: 0, y: 0 }, scale_px_m: 100 }, width: 800, height: 600 };
  drawCut(pen, view, { a: { x: -1, y: 0 }, b: { x: 1, y: 0 } }, LIGHT_INK);
  const shafts = drawnPieces(calls).filter(([x1, , x2]) => x1 !== undefined && x1 === x2);
  expect(shafts.map(([x1]) => x1)).toEqual([300, 500, 300, 500]);
  for (const [, y1 = 0, , y2 = 0] of shafts) expect(y2).toBeLessThan(y1);
});
