import { type Pen, type Px, gap_px, pieces, polyline, setLine } from '../pen.ts';

const TICK_SPACING_px = 26;
const TICK_px = 5;

/** Whether a screen place lies in an area of rings, even-odd. */
export function isInArea(p: Px, rings: readonly (readonly Px[])[]): boolean {
  let inside = false;
  for (const places of rings) {
    for (const [i, a] of places.entries()) {
      const b = places[(i + 1) % places.length] ?? a;
      if (a.y > p.y !== b.y > p.y && p.x < ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y) + a.x) inside = !inside;
    }
  }
  return inside;
}

/** Short ticks on the inner side of an area's edge, evenly spread along each side. */
export function* innerTicks(rings: readonly (readonly Px[])[]): Generator<[Px, Px]> {
  for (const places of rings) {
    const way = innerSide(places, rings);
    for (const [i, a] of places.entries()) {
      const b = places[(i + 1) % places.length] ?? a;
      const length = gap_px(a, b);
      if (length < 1) continue;
      const nx = (-(b.y - a.y) / length) * way;
      const ny = ((b.x - a.x) / length) * way;
      const count = Math.floor(length / TICK_SPACING_px);
      for (let k = 0; k < count; k += 1) {
        const share = (k + 0.5) / count;
        const foot = { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
        yield [foot, { x: foot.x + nx * TICK_px, y: foot.y + ny * TICK_px }];
      }
    }
  }
}

/** 1 where the left normal of the ring's longest side (screen, y down) points into the area, −1 otherwise. */
function innerSide(places: readonly Px[], rings: readonly (readonly Px[])[]): 1 | -1 {
  let best: { a: Px; b: Px; length: number } | undefined;
  for (const [i, a] of places.entries()) {
    const b = places[(i + 1) % places.length] ?? a;
    const length = gap_px(a, b);
    if (!best || length > best.length) best = { a, b, length };
  }
  if (!best || best.length === 0) return 1;
  const { a, b, length } = best;
  const step = Math.min(0.5, length / 100);
  const probe = { x: (a.x + b.x) / 2 - ((b.y - a.y) / length) * step, y: (a.y + b.y) / 2 + ((b.x - a.x) / length) * step };
  return isInArea(probe, rings) ? 1 : -1;
}

/** The edge of what a nozzle covers: a thin dash-dotted outline with sparse ticks on its inner side. */
export function drawCoverageEdge(pen: Pen, rings: readonly (readonly Px[])[], colour: string): void {
  setLine(pen, { colour, width: 1.25, dash: [10, 3, 2, 3] });
  for (const places of rings) polyline(pen, places, true);
  setLine(pen, { colour, width: 1 });
  pieces(pen, innerTicks(rings));
}
