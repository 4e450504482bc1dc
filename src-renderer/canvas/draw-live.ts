import type { DerivedNozzle } from '#shared/derived/derived';
import { formatAgainstLimit, formatLength } from '#shared/units/length-text';
import type { Ink } from '../ink.ts';
import type { Sketch, Snap } from '../tools/tool.ts';
import { write } from './lettering.ts';
import { ceilingDrop_m, governingWalls } from './live-distances.ts';
import { type Pen, type Px, fillRing, heading_rad, line, polyline, setLine } from './pen.ts';
import { drawSnap } from './symbols/snap-mark.ts';
import { drawMeasuringLine } from './symbols/verdict-mark.ts';
import { type Viewport, toScreen } from './viewport.ts';

type Lengths = 'feet' | 'metric';

/** Distances from a nozzle under the hand to the two walls that fix it, and its drop below the ceiling. */
export function drawLiveDistances(pen: Pen, view: Viewport, nozzle: DerivedNozzle, lengths: Lengths, ink: Ink): void {
  if (!nozzle.at || !nozzle.space) return;
  const at = toScreen(view, nozzle.at);
  const limit_m = nozzle.profile?.limits.nozzleToWall_m?.value;
  for (const { to, length_m } of governingWalls(nozzle.at, nozzle.space)) {
    const foot = toScreen(view, to);
    const isShort = limit_m !== undefined && length_m < limit_m;
    if (isShort) drawMeasuringLine(pen, at, foot, 'stop', ink);
    else {
      setLine(pen, { colour: ink.snap, width: 1.25, dash: [6, 3] });
      line(pen, at, foot);
      drawFoot(pen, foot, at, ink.snap);
    }
    const text = isShort && limit_m !== undefined ? againstLimit(length_m, limit_m, lengths) : formatLength(length_m, lengths);
    writeBeside(pen, text, at, foot, isShort ? ink.verdict.stop : ink.snap, ink.paper);
  }
  const drop_m = ceilingDrop_m(nozzle);
  const most_m = nozzle.profile?.limits.nozzleToCeiling_m?.value;
  const isLow = drop_m !== undefined && (drop_m < 0 || (most_m !== undefined && drop_m > most_m));
  const text =
    drop_m === undefined ? 'ceiling not known' : isLow && most_m !== undefined ? `${againstLimit(drop_m, most_m, lengths)} below ceiling` : `${formatLength(drop_m, lengths)} below ceiling`;
  write(pen, text, { x: at.x + 16, y: at.y + 32 }, { colour: isLow ? ink.verdict.stop : ink.snap, halo: ink.paper, bold: true });
}

function againstLimit(value_m: number, limit_m: number, lengths: Lengths): string {
  const { value, limit } = formatAgainstLimit(value_m, limit_m, lengths);
  return `${value} (limit ${limit})`;
}

/** A short bar square to a measuring line where it ends. */
function drawFoot(pen: Pen, foot: Px, from: Px, colour: string): void {
  const length = Math.hypot(foot.x - from.x, foot.y - from.y) || 1;
  const nx = -(foot.y - from.y) / length;
  const ny = (foot.x - from.x) / length;
  setLine(pen, { colour, width: 1.75 });
  line(pen, { x: foot.x - nx * 6, y: foot.y - ny * 6 }, { x: foot.x + nx * 6, y: foot.y + ny * 6 });
}

/** A figure beside the middle of a line: above a level one, right of an upright one. */
function writeBeside(pen: Pen, text: string, a: Px, b: Px, colour: string, paper: string): void {
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const isLevel = Math.abs(Math.cos(heading_rad(a, b))) > 0.7;
  write(pen, text, isLevel ? { x: middle.x, y: middle.y - 11 } : { x: middle.x + 10, y: middle.y }, {
    colour,
    halo: paper,
    bold: true,
    size: 13,
    align: isLevel ? 'center' : 'left',
  });
}

/** Lines and texts of the tool at work. */
export function drawSketch(pen: Pen, view: Viewport, sketch: Sketch, ink: Ink): void {
  for (const { places, closed = false, dashed = false } of sketch.lines ?? []) {
    const onScreen = places.map((p) => toScreen(view, p));
    if (closed) {
      pen.globalAlpha = 0.08;
      fillRing(pen, onScreen, ink.snap);
      pen.globalAlpha = 1;
    }
    setLine(pen, { colour: ink.snap, width: dashed ? 1.25 : 2, dash: dashed ? [6, 4] : [], join: 'round', cap: 'round' });
    polyline(pen, onScreen, closed);
  }
  for (const { at, text } of sketch.labels ?? []) {
    const p = toScreen(view, at);
    write(pen, text, { x: p.x + 10, y: p.y - 12 }, { colour: ink.snap, halo: ink.paper, bold: true, size: 13 });
  }
}

/** What the pointer caught: guides, the place and its word. */
export function drawCaught(pen: Pen, view: Viewport, snap: Snap, ink: Ink): void {
  setLine(pen, { colour: ink.snap, width: 1, dash: [3, 4] });
  for (const { a, b } of snap.guides) line(pen, toScreen(view, a), toScreen(view, b));
  drawSnap(pen, toScreen(view, snap.at), snap.kind, ink.snap, ink.paper);
}
