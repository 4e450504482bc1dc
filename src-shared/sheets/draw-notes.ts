import type { Space } from '../derived/derived.ts';
import { distanceToOutline_m, isInside } from '../geometry/outline.ts';
import { type PlanPoint, bearing_rad, distance_m } from '../geometry/point.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { Level, Settings } from '../model/plan.ts';
import { formatLength } from '../units/length-text.ts';
import { formatQuantity } from '../units/quantity-text.ts';
import { addDimension } from './dimension-line.ts';
import { printable } from './font-widths.ts';
import { clearHeight_m } from './sheet-text.ts';
import { wrapText } from './text-box.ts';
import { addLabel, addLabelWays } from './labels.ts';
import { type ViewDraft, onPaper } from './view-draft.ts';

/** Draws the dimensions that the user placed, on the user's line where it is free. */
export function drawUserDimensions(view: ViewDraft, level: Level): void {
  for (const { id, a, b, offset_m } of Object.values(level.dimensions)) {
    const length = distance_m(a, b);
    if (length <= SAME_PLACE_m) continue;
    const aside_mm = view.frame.mm(offset_m);
    const step = 3 * view.sizes.factor;
    const isDrawn = addDimension(view, {
      x: view.frame.x(a.x),
      y: view.frame.y(a.y),
      along_rad: bearing_rad(a, b),
      length_mm: view.frame.mm(length),
      words: formatLength(length, view.lengths),
      fromAside_mm: [0],
      toAside_mm: [0],
      slots: [0, 1, -1, 2, -2, 3, -3, 4, -4].map((k) => ({ aside_mm: aside_mm + k * step, price: Math.abs(k) * 6 })),
      fromDatum: false,
      of: [`drawn/${id}`],
    });
    if (!isDrawn) view.unplaced.push(`a dimension of ${formatLength(length, view.lengths)}`);
  }
}

/** Writes the user's notes near where they were put. */
export function labelNotes(view: ViewDraft, level: Level): void {
  const widest = 60 * view.sizes.factor;
  for (const { at, text } of Object.values(level.notes)) {
    const lines = text.split(/\r?\n/).flatMap((words) => wrapText(printable(words), widest, view.sizes.text_mm, 'plain'));
    addLabel(
      view,
      lines.map((words) => ({ text: words })),
      { x: view.frame.x(at.x), y: view.frame.y(at.y), clearance_mm: 0.8, toward_rad: 0 },
      'a note',
    );
  }
}

/** Places well inside a room for its name, the roomiest first. */
export function roomyPlaces({ outline, holes, bounds }: Space): PlanPoint[] {
  const found: { at: PlanPoint; room_m: number }[] = [];
  const steps = 14;
  for (let i = 1; i < steps; i += 1) {
    for (let j = 1; j < steps; j += 1) {
      const at = { x: bounds.minX + ((bounds.maxX - bounds.minX) * i) / steps, y: bounds.minY + ((bounds.maxY - bounds.minY) * j) / steps };
      if (!isInside(at, outline) || holes.some((hole) => isInside(at, hole))) continue;
      found.push({ at, room_m: Math.min(distanceToOutline_m(at, outline), ...holes.map((hole) => distanceToOutline_m(at, hole))) });
    }
  }
  return found.sort((a, b) => b.room_m - a.room_m).map(({ at }) => at);
}

/** Writes each room's name with its floor area and ceiling height. */
export function labelRooms(view: ViewDraft, spaces: readonly Space[]): void {
  for (const space of spaces) {
    const places = roomyPlaces(space);
    const first = places[0] ?? { x: (space.bounds.minX + space.bounds.maxX) / 2, y: (space.bounds.minY + space.bounds.maxY) / 2 };
    const [x, y] = [view.frame.x(first.x), view.frame.y(first.y)];
    const spots = onPaper(view.frame, places);
    const [area, height] = [formatQuantity(space.area_m2, 'area', view.lengths), heightWords(space, view.lengths)];
    const figures = { text: `${area}, ${height}` };
    const inRoom = { x, y, clearance_mm: 0, spots, isLoose: true, farthest_mm: 0 };
    const name = (height_mm: number) => ({ text: space.name, font: 'bold', height_mm }) as const;
    const ways = [[name(view.sizes.heading_mm), figures], [name(view.sizes.text_mm), figures], [name(view.sizes.text_mm), { text: area }, { text: height }], [name(view.sizes.text_mm)]];
    const outside = { lines: [name(view.sizes.text_mm), figures], wish: { x, y, clearance_mm: 1 } };
    addLabelWays(view, [...ways.map((lines) => ({ lines, wish: inRoom })), outside], space.name);
  }
}

function heightWords(space: Space, lengths: Settings['lengths']): string {
  const { kind, enclosure } = space;
  const height_m = clearHeight_m(space);
  if (height_m === undefined) return 'ceiling height not known';
  const height = formatLength(height_m, lengths);
  if (kind !== 'room') return `depth ${height}`;
  return enclosure.slope || Object.keys(enclosure.ceilingZones).length > 0 ? `ceiling up to ${height}` : `ceiling ${height}`;
}
