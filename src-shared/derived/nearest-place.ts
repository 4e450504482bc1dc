import { isInside, sidesOf } from '../geometry/outline.ts';
import { type PlanPoint3, distance_m } from '../geometry/point.ts';
import { type Prism, segmentToPrism_m } from '../geometry/prism.ts';
import { nearestOnSegment } from '../geometry/segment.ts';
import { type Segment3, along3 } from '../geometry/segment3.ts';

/** The place of an upright solid that is nearest to a place in space; the place itself where it is inside. */
export function nearestInPrism(p: PlanPoint3, { footprint, bottom_m, top_m }: Prism): PlanPoint3 {
  const z = Math.min(Math.max(p.z, bottom_m), top_m);
  if (isInside(p, footprint)) return { x: p.x, y: p.y, z };
  const [nearest] = sidesOf(footprint)
    .map((side) => nearestOnSegment(p, side))
    .sort((a, b) => distance_m(p, a) - distance_m(p, b));
  return nearest ? { x: nearest.x, y: nearest.y, z } : { ...p, z };
}

const SAMPLES = 48;
const HALVINGS = 30;

/** Where an axis comes nearest to an upright solid, and the place of the solid there: for showing, true to a millimetre or so. */
export function nearestPlaces(axis: Segment3, prism: Prism): { readonly onAxis: PlanPoint3; readonly onSolid: PlanPoint3 } {
  const far_m = (share: number): number => {
    const at = along3(axis, share);
    return segmentToPrism_m({ a: at, b: at }, prism);
  };
  let best = 0;
  for (let i = 1; i <= SAMPLES; i += 1) if (far_m(i / SAMPLES) < far_m(best)) best = i / SAMPLES;
  let [low, high] = [Math.max(0, best - 1 / SAMPLES), Math.min(1, best + 1 / SAMPLES)];
  for (let i = 0; i < HALVINGS; i += 1) {
    const [one, other] = [low + (high - low) / 3, high - (high - low) / 3];
    if (far_m(one) <= far_m(other)) high = other;
    else low = one;
  }
  const onAxis = along3(axis, far_m(best) <= far_m((low + high) / 2) ? best : (low + high) / 2);
  return { onAxis, onSolid: nearestInPrism(onAxis, prism) };
}
