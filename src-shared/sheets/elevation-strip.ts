import { doorsByLevel, sweepOutline } from '../derived/door-swing.ts';
import { panelZone } from '../derived/panel-space.ts';
import { type Outline, boundsOf, boxesTouch } from '../geometry/outline.ts';
import type { Elevation } from '../elevation/elevation.ts';
import type { Space } from '../derived/derived.ts';
import type { ElevationLayout } from './elevation-frame.ts';
import { addLabel } from './labels.ts';
import { line, pen, ring, segments, text } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import type { Mark } from './sheet.ts';
import { arrowHead, cylinderSymbol } from './symbols.ts';
import { textBoxOf } from './text-box.ts';
import { type ViewDraft, addLine, uprightBox } from './view-draft.ts';

/** Slanted lines across an upright box. */
function hatched(left: number, top: number, right: number, bottom: number, step: number): number[] {
  const lines: number[] = [];
  for (let k = left - (bottom - top) + step / 2; k < right; k += step) {
    const x0 = Math.max(k, left);
    const x1 = Math.min(k + (bottom - top), right);
    if (x1 > x0) lines.push(x0, bottom - (x0 - k), x1, bottom - (x1 - k));
  }
  return lines;
}

/** Draws the floor before the wall from above, the wall at its upper edge: cylinders, the floor to be kept clear, doors and things on it. */
export function drawStrip(view: ViewDraft, elevation: Elevation, { strip_mm, stripEnd_mm }: ElevationLayout, spaces: readonly Space[]): void {
  const { frame, sizes } = view;
  const { factor } = sizes;
  const { shown, cylinders, fronts, solids, room, frame: wall, wayOut } = elevation;
  const [left, right] = [frame.x(shown.from_m), frame.x(shown.to_m)];
  const y = (off: number): number => strip_mm + frame.mm(off);
  const cut: Mark[] = [];
  /** Doorways, where the wall face is broken. */
  const gaps: Mark[] = [];
  const ringOf = (outline: Outline): number[] => outline.flatMap((p) => {
    const { s, off } = wall.place({ ...p, z: 0 });
    return [frame.x(s), y(off)];
  });

  for (const { from_m, to_m, near_m, far_m } of fronts) {
    const box = [frame.x(from_m), y(near_m), frame.x(to_m), y(far_m)] as const;
    cut.push(segments(pen(WEIGHT.hair * factor, PRINT.faint), hatched(...box, 2 * factor)));
    cut.push(line(pen(WEIGHT.thin * factor, PRINT.quiet, [1.2 * factor, 0.8 * factor]), box[0], box[1], box[0], box[3], box[2], box[3], box[2], box[1]));
  }
  for (const { solid, isOverhead, space } of solids) {
    const places = ringOf(solid.footprint);
    const stroke = pen(WEIGHT.thin * factor, PRINT.solid, isOverhead ? [1.6 * factor, 1 * factor] : undefined);
    cut.push(ring(stroke, places, isOverhead ? undefined : PRINT.solidFill));
    if (space) cut.push(ring(pen(WEIGHT.thin * factor, PRINT.ink, [0.5 * factor, 0.8 * factor]), ringOf(panelZone(space))));
  }
  const levelDoors = doorsByLevel(spaces).get(room.level.id) ?? [];
  const roomBox = room.bounds;
  for (const { sweep, doorways, ref } of levelDoors) {
    if (sweep && boxesTouch(boundsOf(sweepOutline(sweep)), roomBox)) {
      const places = ringOf(sweepOutline(sweep));
      view.used.add('door');
      cut.push(ring(pen(WEIGHT.thin * factor, PRINT.quiet), places));
    }
    if (ref.enclosure !== room.enclosure.id) continue;
    for (const { a, b } of doorways.slice(0, 1)) gaps.push(line(pen(WEIGHT.heavy * 2 * factor, PRINT.paper), ...ringOf([a, b])));
  }
  view.lines.push({ kind: 'clip', x: left, y: strip_mm - 0.6 * factor, width_mm: right - left, height_mm: stripEnd_mm - strip_mm + 0.6 * factor, marks: cut });
  const face = [left, strip_mm, right, strip_mm];
  addLine(view, face, line(pen(WEIGHT.heavy * factor), ...face), 14);
  const hatch: number[] = [];
  for (let x = left + factor; x < right; x += 2.4 * factor) hatch.push(x, strip_mm, x + 1.3 * factor, strip_mm - 1.3 * factor);
  view.lines.push(segments(pen(WEIGHT.hair * factor), hatch));
  view.lines.push({ kind: 'clip', x: left, y: strip_mm - 2 * factor, width_mm: right - left, height_mm: stripEnd_mm - strip_mm + 2 * factor, marks: gaps });
  for (const [x, s] of [
    [left, shown.from_m],
    [right, shown.to_m],
  ] as const) {
    const isEnd = s < 1e-6 || s > wall.length_m - 1e-6;
    view.lines.push(line(pen((isEnd ? WEIGHT.heavy : WEIGHT.hair) * factor, isEnd ? PRINT.ink : PRINT.faint), x, strip_mm, x, stripEnd_mm));
  }
  for (const { at, radius_m, cylinder } of cylinders) {
    const seen = wall.seen(cylinder.back_rad);
    // On the strip y runs out of the wall, downward on paper.
    const back_rad = Math.atan2(-seen.toward, seen.right);
    const radius = frame.mm(radius_m);
    view.lines.push(...cylinderSymbol(frame.x(at.s), y(at.off), radius, back_rad, factor * 0.7));
    view.placer.block(uprightBox(frame.x(at.s), y(at.off), radius, radius), `strip ${cylinder.id}`);
  }
  if (wayOut) drawWayOut(view, elevation, y, stripEnd_mm);
}

/** An arrow toward the nearest door, where it leaves the strip. */
function drawWayOut(view: ViewDraft, { wayOut, cylinders, shown }: Elevation, y: (off: number) => number, end_mm: number): void {
  if (!wayOut) return;
  const { frame, sizes } = view;
  const { factor } = sizes;
  const middle = cylinders.reduce((sum, { at }) => sum + at.s, 0) / cylinders.length;
  const front = Math.max(...cylinders.map(({ at, radius_m }) => at.off + radius_m));
  const from = { x: frame.x(middle), y: y(front) + 2 * factor };
  const way = Math.atan2(wayOut.off - (front - (cylinders[0]?.at.off ?? 0)), wayOut.s);
  const reach = Math.min((end_mm - from.y - factor) / Math.max(0.05, Math.abs(Math.sin(way))), 14 * factor, ((way > -Math.PI / 2 && way < Math.PI / 2 ? frame.x(shown.to_m) - from.x : from.x - frame.x(shown.from_m)) - factor) / Math.max(0.05, Math.abs(Math.cos(way))));
  if (reach < 3 * factor) return;
  const tip = { x: from.x + Math.cos(way) * reach, y: from.y + Math.sin(way) * reach };
  addLine(view, [from.x, from.y, tip.x, tip.y], line(pen(WEIGHT.medium * factor), from.x, from.y, tip.x, tip.y), 8);
  view.lines.push(arrowHead(tip.x, tip.y, -way, 1.8 * factor, PRINT.ink));
  addLabel(view, [{ text: `way out: ${wayOut.name || 'door'}` }], { x: tip.x, y: tip.y, clearance_mm: 1.2 * factor, toward_rad: -way }, 'the way out');
}

/** What the strip is, written at its lower corner. */
export function stripCaption(view: ViewDraft, { stripEnd_mm, ladder_mm, ladderSide }: ElevationLayout): void {
  const mark = text(ladder_mm, stripEnd_mm - view.sizes.factor, 'floor from above', { height_mm: view.sizes.note_mm, colour: PRINT.quiet, align: ladderSide === 'left' ? 'right' : 'left' });
  view.placer.block(textBoxOf(mark));
  view.texts.push(mark);
}
