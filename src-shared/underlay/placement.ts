import { type PlanPoint, planPoint } from '../geometry/point.ts';
import type { Underlay } from '../model/plan.ts';
import type { Matrix } from './matrix.ts';

/** What says where a floor plan lies on the plan. */
export type Placement = Pick<Underlay, 'at' | 'rotation_rad' | 'metresPerUnit'>;

/** Metres on the plan for one file unit; 1 until the scale is known. */
const metresPerFileUnit = ({ metresPerUnit }: Placement): number => metresPerUnit ?? 1;

/** Carries file units to plan metres: scale, then turn, then shift. */
function placementMatrix(placement: Placement): Matrix {
  const scale = metresPerFileUnit(placement);
  const cos = Math.cos(placement.rotation_rad) * scale;
  const sin = Math.sin(placement.rotation_rad) * scale;
  return [cos, sin, -sin, cos, placement.at.x, placement.at.y];
}

/** The plan place [m] of a place in the file (file units, y up). */
export function toPlan(placement: Placement, x: number, y: number): PlanPoint {
  const [a, b, c, d, e, f] = placementMatrix(placement);
  return planPoint(a * x + c * y + e, b * x + d * y + f);
}

/** The place in the file (file units, y up) of a plan place [m]. */
export function toFile(placement: Placement, p: PlanPoint): { readonly x: number; readonly y: number } {
  const scale = metresPerFileUnit(placement);
  const cos = Math.cos(placement.rotation_rad) / scale;
  const sin = Math.sin(placement.rotation_rad) / scale;
  const dx = p.x - placement.at.x;
  const dy = p.y - placement.at.y;
  return { x: cos * dx + sin * dy, y: -sin * dx + cos * dy };
}

/** Names of the layers that the file itself hides: what a fresh underlay starts with as `hiddenLayers`. */
export const layersHiddenByFile = (layers: readonly { readonly name: string; readonly visible: boolean }[]): string[] =>
  layers.filter(({ visible }) => !visible).map(({ name }) => name);
