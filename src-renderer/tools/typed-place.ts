import { normalAngle_rad } from '#shared/geometry/angle';
import { type PlanPoint, bearing_rad, distance_m, midpoint, planPoint } from '#shared/geometry/point';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import { formatLength } from '#shared/units/length-text';
import { formatQuantity } from '#shared/units/quantity-text';
import type { Sketch, ToolEvent, ToolView } from './tool.ts';

export type Typed = Extract<ToolEvent, { kind: 'typed' }>;

/** Cosine or sine with the float noise of quarter turns taken off, so that square walls are square to the last digit. */
const clean = (share: number): number => (Math.abs(share) < 1e-12 ? 0 : Math.abs(Math.abs(share) - 1) < 1e-15 ? Math.sign(share) : share);

/** The place a length away in a direction; quarter turns keep the other coordinate exactly. */
export const placeToward = (from: PlanPoint, angle_rad: number, length_m: number): PlanPoint =>
  planPoint(from.x + clean(Math.cos(angle_rad)) * length_m, from.y + clean(Math.sin(angle_rad)) * length_m);

/**
 * The place that a typed length means from the last one: in the typed direction, else the locked one, else
 * toward the pointer. undefined when no length was typed or nothing gives a direction.
 */
export function typedPlace(from: PlanPoint, typed: Typed, axis_rad: number | null, pointer: PlanPoint | null): PlanPoint | undefined {
  if (typed.length_m === null || Math.abs(typed.length_m) < SAME_PLACE_m) return undefined;
  const toPointer_rad = pointer && distance_m(from, pointer) > SAME_PLACE_m ? bearing_rad(from, pointer) : undefined;
  const lockedToPointer_rad = axis_rad !== null && toPointer_rad !== undefined && Math.cos(toPointer_rad - axis_rad) < 0 ? axis_rad + Math.PI : axis_rad;
  const angle_rad = typed.angle_rad ?? lockedToPointer_rad ?? toPointer_rad;
  return angle_rad === undefined ? undefined : placeToward(from, angle_rad, typed.length_m);
}

/** A length in the plan's units. */
export const lengthText = (view: ToolView, length_m: number): string => formatLength(length_m, view.plan.settings.lengths);

/** A direction as the user reads it, 0° to 360°. */
export const angleText = (view: ToolView, angle_rad: number): string => formatQuantity(normalAngle_rad(angle_rad), 'angle', view.plan.settings.lengths);

/** Length and direction of a line, written at its middle. */
export const lineLabel = (view: ToolView, a: PlanPoint, b: PlanPoint): NonNullable<Sketch['labels']>[number] => ({
  at: midpoint(a, b),
  text: `${lengthText(view, distance_m(a, b))} at ${angleText(view, bearing_rad(a, b))}`,
});
