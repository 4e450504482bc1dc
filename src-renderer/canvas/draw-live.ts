import type { DerivedNozzle, Space } from '#shared/derived/derived';
import { isInside } from '#shared/geometry/outline';
import type { PlanPoint } from '#shared/geometry/point';
import type { UnitProfile } from '#shared/profile/unit-profile';
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

/** A place whose distances are read while something is brought there. */
export interface LivePlace {
  readonly at: PlanPoint;
  readonly space: Space;
  readonly profile: UnitProfile | undefined;
  /** How the orifice hangs: below which ceiling, and how far; undefined while its height is not chosen. */
  readonly drop_m: number | undefined;
  readonly ceiling_m: number | undefined;
}

/** The live place of a nozzle; undefined while it hangs in no space. */
export const livePlaceOf = (nozzle: DerivedNozzle): LivePlace | undefined =>
  nozzle.at && nozzle.space && { at: nozzle.at, space: nozzle.space, profile: nozzle.profile, drop_m: ceilingDrop_m(nozzle), ceiling_m: nozzle.localCeiling_m };

/** The live place under the pointer of a tool that is about to hang a nozzle; undefined outside every room. */
export function livePlaceAt(at: PlanPoint, spaces: readonly Space[], level: string, profile: UnitProfile | undefined): LivePlace | undefined {
  const space = spaces.find((each) => each.kind === 'room' && each.level.id === level && isInside(at, each.outline) && !each.holes.some((hole) => isInside(at, hole)));
  return space && { at, space, profile, drop_m: undefined, ceiling_m: space.ceilingAt_m(at) };
}

/** What the texts of the work under way must find room among. */
interface LiveTexts {
  readonly texts: readonly LiveText[];
  readonly boxes: readonly LabelBox[];
  readonly lines: readonly (readonly [number, number, number, number])[];
}

/** Draws the tool's sketch and the distances of the places under the hand, with all their texts clear of each other. */
export function drawWork(pen: Pen, view: Viewport, work: { readonly sketch: Sketch; readonly snap: Snap | null; readonly places: readonly LivePlace[]; readonly lengths: Lengths; readonly ink: Ink }): void {
  const { sketch, snap, places, lengths, ink } = work;
  const parts = [drawSketch(pen, view, sketch, ink), ...places.map((place) => drawDistances(pen, view, place, lengths, ink))];
  const word = snap && toScreen(view, snap.at);
  writeLive(
    pen,
    {
      texts: parts.flatMap(({ texts }) => texts),
      boxes: [...parts.flatMap(({ boxes }) => boxes), ...(word ? [{ x: word.x + 12, y: word.y + 7, width: 56, height: 16 }] : [])],
      lines: parts.flatMap(({ lines }) => lines),
    },
    ink,
  );
}

/** Distances to the two walls that fix a place, and its drop below the ceiling. */
function drawDistances(pen: Pen, view: Viewport, place: LivePlace, lengths: Lengths, ink: Ink): LiveTexts {
  const at = toScreen(view, place.at);
  const limit_m = place.profile?.limits.nozzleToWall_m?.value;
  const lines: (readonly [number, number, number, number])[] = [];
  const boxes: LabelBox[] = [{ x: at.x - 16, y: at.y - 16, width: 32, height: 32 }];
  const texts: LiveText[] = governingWalls(place.at, place.space).map(({ to, length_m }) => {
    const foot = toScreen(view, to);
    const isShort = limit_m !== undefined && length_m < limit_m;
    lines.push([at.x, at.y, foot.x, foot.y]);
    if (isShort) {
      drawMeasuringLine(pen, at, foot, 'stop', ink);
      boxes.push({ x: (at.x + foot.x) / 2 - 9, y: (at.y + foot.y) / 2 - 9, width: 18, height: 18 });
    } else {
      setLine(pen, { colour: ink.snap, width: 1.25, dash: [6, 3] });
      line(pen, at, foot);
      drawFoot(pen, foot, at, ink.snap);
    }
    const text = isShort && limit_m !== undefined ? againstLimit(length_m, limit_m, lengths) : formatLength(length_m, lengths);
    return { text, colour: isShort ? ink.verdict.stop : ink.snap, spots: (width) => spotsBeside(at, foot, width) };
  });
  return { texts: [...texts, dropText(place, at, lengths, ink)], boxes, lines };
}

/** How far the orifice hangs below its ceiling, or the ceiling while its height is not chosen. */
function dropText({ space, profile, drop_m, ceiling_m }: LivePlace, at: Px, lengths: Lengths, ink: Ink): LiveText {
  const most_m = profile?.limits.nozzleToCeiling_m?.value;
  const isLow = drop_m !== undefined && (drop_m < 0 || (most_m !== undefined && drop_m > most_m));
  const under = space.kind === 'under-floor' ? 'floor' : 'ceiling';
  const text =
    drop_m !== undefined
      ? `${isLow && most_m !== undefined ? againstLimit(drop_m, most_m, lengths) : formatLength(drop_m, lengths)} below ${under}`
      : ceiling_m === undefined
        ? `${under} not known`
        : `${under} ${formatLength(ceiling_m, lengths)}`;
  return { text, colour: isLow ? ink.verdict.stop : ink.snap, spots: (width) => spotsAround(at, 22, width, LIVE_px) };
}

const LIVE_px = 17;

function writeLive(pen: Pen, { texts, boxes, lines }: LiveTexts, ink: Ink): void {
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

/** Lines of the tool at work. */
function drawSketch(pen: Pen, view: Viewport, sketch: Sketch, ink: Ink): LiveTexts {
  const drawn: (readonly [number, number, number, number])[] = [];
  for (const { places, closed = false, dashed = false } of sketch.lines ?? []) {
    const onScreen = places.map((p) => toScreen(view, p));
    if (closed) {
      pen.globalAlpha = 0.08;
      fillRing(pen, onScreen, ink.snap);
      pen.globalAlpha = 1;
    }
    setLine(pen, { colour: ink.snap, width: dashed ? 1.25 : 2, dash: dashed ? [6, 4] : [], join: 'round', cap: 'round' });
    polyline(pen, onScreen, closed);
    onScreen.forEach((p, i) => {
      const before = onScreen[i - 1];
      if (before) drawn.push([before.x, before.y, p.x, p.y]);
    });
  }
  const texts = (sketch.labels ?? []).map(({ at, text }): LiveText => {
    const p = toScreen(view, at);
    return { text, colour: ink.snap, spots: (width) => [{ x: p.x + 10, y: p.y - 21 }, ...spotsAround(p, 13, width, LIVE_px)] };
  });
  return { texts, boxes: [], lines: drawn };
}

/** What the pointer caught: guides, the place and its word. */
export function drawCaught(pen: Pen, view: Viewport, snap: Snap, ink: Ink): void {
  setLine(pen, { colour: ink.snap, width: 1, dash: [3, 4] });
  for (const { a, b } of snap.guides) line(pen, toScreen(view, a), toScreen(view, b));
  drawSnap(pen, toScreen(view, snap.at), snap.kind, ink.snap, ink.paper);
}
