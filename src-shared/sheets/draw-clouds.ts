import type { PlanPoint } from '../geometry/point.ts';
import { type Issue, type Level, ringOf } from '../model/plan.ts';
import { line, pen, ring, text } from './marks.ts';
import type { PlanContent } from './plan-content.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import { arcPlaces } from './symbols.ts';
import type { Mark } from './sheet.ts';
import type { PaperBox } from './text-box.ts';
import { type ViewDraft, uprightBox } from './view-draft.ts';

/** Paper between what has changed and its cloud, and the length of one bulge [mm at factor 1]. */
const GAP_mm = 4.5;
const BULGE_mm = 4;

/** Places of what a key names, as far as this layer of the level draws it: "nozzle///net-1/nozzle-3". */
function placesOf(key: string, { level, networks }: PlanContent): readonly PlanPoint[] {
  const [kind, on, enclosure, network = '', id = ''] = key.split('/');
  if (on) return on === level.id ? placesOnLevel(level, kind ?? '', enclosure ?? '', id) : [];
  const content = networks.find((each) => each.network.ref.id === network);
  if (!content) return [];
  if (kind === 'nozzle') return content.nozzles.flatMap(({ ref, at }) => (ref.id === id && at ? [at] : []));
  if (kind === 'pipe') return content.pipes.flatMap(({ ref, from, to }) => (ref.id === id ? [from, to] : []));
  if (kind === 'support') return content.supports.flatMap(({ support }) => (support.id === id ? [support.at] : []));
  const cylinder = kind === 'cylinder' && content.hasCylinders ? content.network.network.cylinders[id] : undefined;
  // A node shows by the pipe and fittings at it.
  const node = kind === 'node' && content.pipes.some(({ pipe }) => pipe.from === id || pipe.to === id) ? content.network.network.nodes[id] : undefined;
  return cylinder ? [cylinder.at] : node ? [node.at] : [];
}

function placesOnLevel(level: Level, kind: string, enclosure: string, id: string): readonly PlanPoint[] {
  switch (kind) {
    case 'enclosure':
      return ringOf(level.enclosures[id]?.outline ?? []);
    case 'opening': {
      const room = level.enclosures[enclosure];
      const opening = room?.openings[id];
      const rings = room ? [room.outline, ...room.holes] : [];
      const walls = rings.find((corners) => corners.some((corner) => corner.id === opening?.wall));
      const from = walls?.findIndex((corner) => corner.id === opening?.wall) ?? -1;
      const [a, b] = [walls?.[from], walls?.[(from + 1) % (walls?.length || 1)]];
      if (!opening || !a || !b) return [];
      const share = opening.along_m / (Math.hypot(b.x - a.x, b.y - a.y) || 1);
      return [{ x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share }];
    }
    case 'ceiling-zone':
      return level.enclosures[enclosure]?.ceilingZones[id]?.outline ?? [];
    case 'obstruction':
      return level.obstructions[id]?.footprint ?? [];
    case 'adjoining':
      return level.adjoining[id]?.outline ?? [];
    case 'device':
      return level.devices[id] ? [level.devices[id].at] : [];
    case 'note':
      return level.notes[id] ? [level.notes[id].at] : [];
    case 'dimension':
      return level.dimensions[id] ? [level.dimensions[id].a, level.dimensions[id].b] : [];
    default:
      return [];
  }
}

const isTouching = (a: PaperBox, b: PaperBox): boolean => a.left <= b.right && b.left <= a.right && a.top <= b.bottom && b.top <= a.bottom;
const joined = (a: PaperBox, b: PaperBox): PaperBox => ({ left: Math.min(a.left, b.left), right: Math.max(a.right, b.right), top: Math.min(a.top, b.top), bottom: Math.max(a.bottom, b.bottom) });

/** Boxes put together until none touches another. */
export function joinedBoxes(boxes: readonly PaperBox[]): PaperBox[] {
  const apart: PaperBox[] = [];
  for (const box of boxes) {
    let grown = box;
    for (let at = apart.findIndex((other) => isTouching(other, grown)); at >= 0; at = apart.findIndex((other) => isTouching(other, grown))) {
      const [other] = apart.splice(at, 1);
      if (other) grown = joined(grown, other);
    }
    apart.push(grown);
  }
  return apart;
}

/** A row of bulges along each side of a box, outward. */
export function cloudMarks({ left, top, right, bottom }: PaperBox, factor: number): Mark[] {
  const sides = [
    { x: left, y: top, dx: right - left, dy: 0 },
    { x: right, y: top, dx: 0, dy: bottom - top },
    { x: right, y: bottom, dx: left - right, dy: 0 },
    { x: left, y: bottom, dx: 0, dy: top - bottom },
  ];
  const places = sides.flatMap(({ x, y, dx, dy }) => {
    const length = Math.abs(dx) + Math.abs(dy);
    const count = Math.max(1, Math.round(length / (BULGE_mm * factor)));
    const radius = length / count / 2;
    const along_rad = Math.atan2(-dy, dx);
    return Array.from({ length: count }, (_, i) => {
      const t = (i + 0.5) / count;
      return arcPlaces(x + dx * t, y + dy * t, radius, along_rad + Math.PI, along_rad, 8);
    }).flat();
  });
  return [line(pen(WEIGHT.medium * factor, PRINT.ink), ...places)];
}

/** Paper around some places of it, as a cloud keeps clear of them; undefined for none. */
export function boxAround(places_mm: readonly (readonly [x: number, y: number])[], factor: number): PaperBox | undefined {
  if (places_mm.length === 0) return undefined;
  const gap = GAP_mm * factor;
  const xs = places_mm.map(([x]) => x);
  const ys = places_mm.map(([, y]) => y);
  return { left: Math.min(...xs) - gap, right: Math.max(...xs) + gap, top: Math.min(...ys) - gap, bottom: Math.max(...ys) + gap };
}

/** A box brought within the paper of a view, its bulges too. */
function within({ left, top, right, bottom }: PaperBox, room: PaperBox, factor: number): PaperBox {
  const bulge = (BULGE_mm / 2) * factor;
  return { left: Math.max(left, room.left + bulge), top: Math.max(top, room.top + bulge), right: Math.min(right, room.right - bulge), bottom: Math.min(bottom, room.bottom - bulge) };
}

/** Draws a cloud around each of some boxes, those that touch in one, each with a triangle that carries the mark of the revision. */
export function cloudBoxes(view: ViewDraft, boxes: readonly PaperBox[], mark: string): void {
  const { sizes, room } = view;
  const { factor } = sizes;
  // Bulges stand out of their box: clouds whose bulges would meet are one.
  const bulge = (BULGE_mm / 2) * factor;
  const grown = boxes.map(({ left, top, right, bottom }) => ({ left: left - bulge, top: top - bulge, right: right + bulge, bottom: bottom + bulge }));
  for (const { left, top, right, bottom } of joinedBoxes(grown)) {
    const box = within({ left: left + bulge, top: top + bulge, right: right - bulge, bottom: bottom - bulge }, room, factor);
    if (box.right <= box.left || box.bottom <= box.top) continue;
    view.used.add('cloud');
    view.lines.push(...cloudMarks(box, factor));
    for (const [x, y, halfX, halfY] of [
      [(box.left + box.right) / 2, box.top, (box.right - box.left) / 2, factor],
      [(box.left + box.right) / 2, box.bottom, (box.right - box.left) / 2, factor],
      [box.left, (box.top + box.bottom) / 2, factor, (box.bottom - box.top) / 2],
      [box.right, (box.top + box.bottom) / 2, factor, (box.bottom - box.top) / 2],
    ] as const) view.placer.block(uprightBox(x, y, halfX, halfY));
    const half = sizes.text_mm * 1.5;
    const out = half + 2.5 * factor;
    const outside = [
      { x: box.right + out, y: box.top },
      { x: box.left - out, y: box.top },
      { x: box.right + out, y: box.bottom },
      { x: box.left - out, y: box.bottom },
    ].filter(({ x, y }) => x - half >= room.left && x + half <= room.right && y - half >= room.top && y + half <= room.bottom);
    const spots = [...outside, { x: box.right - out, y: box.top + out }, { x: box.left + out, y: box.top + out }, { x: box.right - out, y: box.bottom - out }, { x: box.left + out, y: box.bottom - out }];
    const spot = spots.find(({ x, y }) => view.placer.isFree(uprightBox(x, y, half, half))) ?? spots[0];
    if (!spot) continue;
    view.placer.block(uprightBox(spot.x, spot.y, half, half));
    view.texts.push(...revisionTriangle(spot.x, spot.y, mark, sizes.text_mm, factor));
  }
}

/** Clouds what has changed with the last revision, each with a triangle that carries its mark. Older changes are in the table only. */
export function drawClouds(view: ViewDraft, content: PlanContent, issue: Issue | null): void {
  if (!issue) return;
  const { frame, sizes } = view;
  const boxes = issue.changed.flatMap((key) => boxAround(placesOf(key, content).map(({ x, y }) => [frame.x(x), frame.y(y)] as const), sizes.factor) ?? []);
  cloudBoxes(view, boxes, issue.mark);
}

/** The triangle of a revision with its mark in it. */
export const revisionTriangle = (x: number, y: number, mark: string, height_mm: number, factor: number): Mark[] => [
  ring(pen(WEIGHT.thin * factor), [x - height_mm * 1.5, y + height_mm * 1.1, x + height_mm * 1.5, y + height_mm * 1.1, x, y - height_mm * 1.5], PRINT.paper),
  text(x, y + height_mm * 0.8, mark, { height_mm, font: 'bold', align: 'middle' }),
];
