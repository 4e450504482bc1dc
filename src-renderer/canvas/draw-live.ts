import type { DerivedNozzle } from '#shared/derived/derived';
import { formatAgainstLimit, formatLength } from '#shared/units/length-text';
import type { Ink } from '../ink.ts';
import type { Sketch, Snap } from '../tools/tool.ts';
import { type LabelBox, placeLabels, spotsAround } from './label-placer.ts';
import { textWidth_px, write } from './lettering.ts';
import { ceilingDrop_m, governingWalls } from './live-distances.ts';
import { type Pen, type Px, fillRing, line, polyline, setLine } from './pen.ts';
import { drawSnap } from './symbols/snap-mark.ts';
import { drawMeasuringLine } from './symbols/verdict-mark.ts';
import { type Viewport, toScreen } from './viewport.ts';

type Lengths = 'feet' | 'metric';

interface LiveText {
  readonly text: string;
  readonly colour: string;
  readonly spots: (width: number) => readonly Px[];
}

/** Distances from a nozzle under the hand to the two walls that fix it, and its drop below the ceiling. */
export function drawLiveDistances(pen: Pen, view: Viewport, nozzle: DerivedNozzle, lengths: Lengths, ink: Ink): void {
  if (!nozzle.at || !nozzle.space) return;
  const at = toScreen(view, nozzle.at);
  const limit_m = nozzle.profile?.limits.nozzleToWall_m?.value;
  const lines: (readonly [number, number, number, number])[] = [];
  const marks: LabelBox[] = [{ x: at.x - 16, y: at.y - 16, width: 32, height: 32 }];
  const texts: LiveText[] = governingWalls(nozzle.at, nozzle.space).map(({ to, length_m }) => {
    const foot = toScreen(view, to);
    const isShort = limit_m !== undefined && length_m < limit_m;
    lines.push([at.x, at.y, foot.x, foot.y]);
    if (isShort) {
      drawMeasuringLine(pen, at, foot, 'stop', ink);
      marks.push({ x: (at.x + foot.x) / 2 - 9, y: (at.y + foot.y) / 2 - 9, width: 18, height: 18 });
    } else {
      setLine(pen, { colour: ink.snap, width: 1.25, dash: [6, 3] });
      line(pen, at, foot);
      drawFoot(pen, foot, at, ink.snap);
    }
    const text = isShort && limit_m !== undefined ? againstLimit(length_m, limit_m, lengths) : formatLength(length_m, lengths);
    return { text, colour: isShort ? ink.verdict.stop : ink.snap, spots: (width) => spotsBeside(at, foot, width) };
  });
  writeLive(pen, [...texts, dropText(nozzle, at, lengths, ink)], marks, lines, ink);
}

/** How far the orifice hangs below its ceiling. */
function dropText(nozzle: DerivedNozzle, at: Px, lengths: Lengths, ink: Ink): LiveText {
  const drop_m = ceilingDrop_m(nozzle);
  const most_m = nozzle.profile?.limits.nozzleToCeiling_m?.value;
  const isLow = drop_m !== undefined && (drop_m < 0 || (most_m !== undefined && drop_m > most_m));
  const under = nozzle.space?.kind === 'under-floor' ? 'floor' : 'ceiling';
  const figure = drop_m === undefined ? null : isLow && most_m !== undefined ? againstLimit(drop_m, most_m, lengths) : formatLength(drop_m, lengths);
  return {
    text: figure === null ? `${under} not known` : `${figure} below ${under}`,
    colour: isLow ? ink.verdict.stop : ink.snap,
    spots: (width) => spotsAround(at, 22, width, LIVE_px),
  };
}

const LIVE_px = 17;

function writeLive(pen: Pen, texts: readonly LiveText[], boxes: readonly LabelBox[], lines: readonly (readonly [number, number, number, number])[], ink: Ink): void {
  const style = { bold: true, size: 13 };
  const wishes = texts.map(({ text, spots }, i) => {
    const width = textWidth_px(pen, text, style) + 2;
    return { key: `${i}`, width, height: LIVE_px, spots: spots(width), must: true };
  });
  const placed = placeLabels(wishes, { boxes, lines });
  texts.forEach(({ text, colour }, i) => {
    const box = placed.get(`${i}`);
    if (box) write(pen, text, { x: box.x + 1, y: box.y + LIVE_px / 2 }, { colour, halo: ink.paper, ...style });
  });
}

/** Spots on both sides of a line at its middle and toward its ends. */
function spotsBeside(a: Px, b: Px, width: number): Px[] {
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const nx = -(b.y - a.y) / length;
  const ny = (b.x - a.x) / length;
  const away = 5 + Math.abs(nx) * (width / 2) + Math.abs(ny) * (LIVE_px / 2);
  return [0.5, 0.7, 0.9, 1.1].flatMap((share) =>
    [-1, 1].map((side) => ({
      x: a.x + (b.x - a.x) * share + nx * side * away - width / 2,
      y: a.y + (b.y - a.y) * share + ny * side * away - LIVE_px / 2,
    })),
  );
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
