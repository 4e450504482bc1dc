import { type Box, type Outline, area_m2, boundsOf, isInside } from '#shared/geometry/outline';
import type { PlanPoint } from '#shared/geometry/point';
import { type Segment, distanceToSegment_m, meetingOf } from '#shared/geometry/segment';
import type { Underlay } from '#shared/model/plan';
import type { UnderlayDrawing, UnderlayLayer } from '#shared/underlay/drawing';
import { toFile, toPlan } from '#shared/underlay/placement';
import { type SegmentGrid, buildSegmentGrid } from './segment-grid.ts';

/** What a placed floor plan offers to be caught: everything in plan places, hidden layers left out. */
export interface UnderlayIndex {
  readonly underlay: Underlay;
  /** Straight pieces within reach, nearest first, at most `most` of them. */
  nearestSegments(at: PlanPoint, reach_m: number, most?: number): Segment[];
  /** Names of the layers that are shown. */
  readonly layers: readonly string[];
  /** Pieces that come within reach of a line, in no order; of one layer only when it is named. */
  segmentsAlong(line: Segment, reach_m: number, layer?: string): Segment[];
  /** Nearest end of a piece within reach. */
  endpointNear(at: PlanPoint, reach_m: number): PlanPoint | undefined;
  /** Closed outlines of the file that hold the place, smallest first. */
  outlinesAround(at: PlanPoint): Outline[];
  /** Whether the place lies on one of its pictures. */
  isOnPicture(at: PlanPoint): boolean;
}

interface ClosedRing {
  readonly ring: Float64Array;
  readonly bounds: Box;
}
interface LayerIndex {
  readonly layer: UnderlayLayer;
  readonly grid: SegmentGrid;
  readonly closed: readonly ClosedRing[];
}

const pointsOf = (ring: Float64Array): PlanPoint[] => {
  const points: PlanPoint[] = [];
  for (let i = 0; i + 1 < ring.length; i += 2) points.push({ x: ring[i] ?? 0, y: ring[i + 1] ?? 0 });
  return points;
};

const pieceOf = (segments: Float64Array, piece: number): Segment => ({
  a: { x: segments[piece * 4] ?? 0, y: segments[piece * 4 + 1] ?? 0 },
  b: { x: segments[piece * 4 + 2] ?? 0, y: segments[piece * 4 + 3] ?? 0 },
});

const layersByDrawing = new WeakMap<UnderlayDrawing, LayerIndex[]>();

/** Index of a drawing in file units: made once, however often the drawing is moved, turned or scaled. */
function layersOf(drawing: UnderlayDrawing): LayerIndex[] {
  const known = layersByDrawing.get(drawing);
  if (known) return known;
  const made = drawing.layers.map((layer) => ({
    layer,
    grid: buildSegmentGrid(layer.segments),
    closed: layer.closed.map((ring) => ({ ring, bounds: boundsOf(pointsOf(ring)) })),
  }));
  layersByDrawing.set(drawing, made);
  return made;
}

/** Whether two pieces come within reach of each other. */
const isNear = (one: Segment, other: Segment, reach: number): boolean =>
  distanceToSegment_m(other.a, one) <= reach ||
  distanceToSegment_m(other.b, one) <= reach ||
  distanceToSegment_m(one.a, other) <= reach ||
  distanceToSegment_m(one.b, other) <= reach ||
  meetingOf(one, other) !== undefined;

const boxAround = ({ x, y }: PlanPoint, reach: number): Box => ({ minX: x - reach, minY: y - reach, maxX: x + reach, maxY: y + reach });
const holds = (box: Box, { x, y }: PlanPoint): boolean => x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY;

/** Pieces looked for beside a place unless the caller says otherwise. */
const MOST_NEAR = 32;

/** Prepares a placed floor plan for catching, picking and outline search. */
export function indexUnderlay(drawing: UnderlayDrawing, underlay: Underlay): UnderlayIndex {
  const scale = underlay.metresPerUnit ?? 1;
  const hidden = new Set(underlay.hiddenLayers);
  const layers = layersOf(drawing).filter(({ layer }) => !hidden.has(layer.name));
  const place = (p: PlanPoint): PlanPoint => toPlan(underlay, p.x, p.y);

  /** Pieces at most `reach` file units away, unsorted. */
  const within = (at: PlanPoint, reach: number): { segment: Segment; distance: number }[] => {
    const found: { segment: Segment; distance: number }[] = [];
    for (const { layer, grid } of layers) {
      const seen = new Set<number>();
      grid.visitNear(boxAround(at, reach), (piece) => {
        if (seen.has(piece)) return;
        seen.add(piece);
        const segment = pieceOf(layer.segments, piece);
        const distance = distanceToSegment_m(at, segment);
        if (distance <= reach) found.push({ segment, distance });
      });
    }
    return found;
  };

  const nearestSegments: UnderlayIndex['nearestSegments'] = (at, reach_m, most = MOST_NEAR) => {
    const inFile = toFile(underlay, at);
    // Looks close by first: at a far zoom the whole drawing may lie within reach.
    for (let share = 1 / 32; ; share *= 2) {
      const found = within(inFile, (reach_m / scale) * Math.min(1, share));
      if (found.length < most && share < 1) continue;
      return found
        .sort((one, other) => one.distance - other.distance)
        .slice(0, most)
        .map(({ segment }) => ({ a: place(segment.a), b: place(segment.b) }));
    }
  };

  const segmentsAlong: UnderlayIndex['segmentsAlong'] = (line, reach_m, only) => {
    const inFile = { a: toFile(underlay, line.a), b: toFile(underlay, line.b) };
    const reach = reach_m / scale;
    const { minX, minY, maxX, maxY } = boundsOf([inFile.a, inFile.b]);
    const box = { minX: minX - reach, minY: minY - reach, maxX: maxX + reach, maxY: maxY + reach };
    const found: Segment[] = [];
    for (const { layer, grid } of layers) {
      if (only !== undefined && layer.name !== only) continue;
      const seen = new Set<number>();
      grid.visitNear(box, (piece) => {
        if (seen.has(piece)) return;
        seen.add(piece);
        const segment = pieceOf(layer.segments, piece);
        if (isNear(inFile, segment, reach)) found.push({ a: place(segment.a), b: place(segment.b) });
      });
    }
    return found;
  };

  return {
    underlay,
    layers: layers.map(({ layer }) => layer.name),
    nearestSegments,
    segmentsAlong,
    endpointNear(at, reach_m) {
      let nearest: PlanPoint | undefined;
      let least = reach_m;
      for (const { a, b } of nearestSegments(at, reach_m)) {
        for (const end of [a, b]) {
          const distance = Math.hypot(end.x - at.x, end.y - at.y);
          if (distance <= least) {
            least = distance;
            nearest = end;
          }
        }
      }
      return nearest;
    },
    outlinesAround(at) {
      const inFile = toFile(underlay, at);
      return layers
        .flatMap(({ closed }) => closed.filter(({ bounds }) => holds(bounds, inFile)))
        .map(({ ring }) => pointsOf(ring))
        .filter((ring) => ring.length >= 3 && isInside(inFile, ring))
        .sort((one, other) => area_m2(one) - area_m2(other))
        .map((ring) => ring.map(place));
    },
    isOnPicture(at) {
      const inFile = toFile(underlay, at);
      return drawing.images.some(({ matrix: [a, b, c, d, e, f] }) =>
        isInside(inFile, [
          { x: e, y: f },
          { x: e + a, y: f + b },
          { x: e + a + c, y: f + b + d },
          { x: e + c, y: f + d },
        ]),
      );
    },
  };
}
