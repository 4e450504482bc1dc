import type { PlanPoint } from '#shared/geometry/point';
import type { UnderlayDrawing, UnderlayLayer } from '#shared/underlay/drawing';

/** A floor plan of straight lines, each x1, y1, x2, y2, on one layer unless more are given. */
export function lineDrawing(lines: readonly (readonly [number, number, number, number])[], more: { closed?: readonly (readonly PlanPoint[])[]; layers?: readonly Partial<UnderlayLayer>[] } = {}): UnderlayDrawing {
  const layer = (change: Partial<UnderlayLayer>): UnderlayLayer => ({ name: '0', visible: true, colour: '#000000', segments: new Float64Array(), fills: [], closed: [], texts: [], ...change });
  const xs = lines.flatMap(([x1, , x2]) => [x1, x2]);
  const ys = lines.flatMap(([, y1, , y2]) => [y1, y2]);
  return {
    kind: 'dxf',
    metresPerUnit: 1,
    unitsText: 'metres',
    unitsDoubt: null,
    extents: { minX: Math.min(...xs, 0), minY: Math.min(...ys, 0), maxX: Math.max(...xs, 0), maxY: Math.max(...ys, 0) },
    layers: [
      layer({ segments: Float64Array.from(lines.flat()), closed: (more.closed ?? []).map((ring) => Float64Array.from(ring.flatMap(({ x, y }) => [x, y]))) }),
      ...(more.layers ?? []).map(layer),
    ],
    images: [],
    pageCount: 1,
    warnings: [],
  };
}
