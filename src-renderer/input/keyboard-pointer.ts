import { type PlanPoint, planPoint } from '#shared/geometry/point';

const WAYS: Readonly<Record<string, readonly [x: number, y: number]>> = { ArrowRight: [1, 0], ArrowLeft: [-1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };

/** Grid steps of one press with Shift held. */
const FAR = 10;

/**
 * Where an arrow key takes the pointer of someone who draws without a mouse: on to the next line of the grid, with
 * Shift ten lines on. undefined for any other key.
 */
export function steppedPlace(from: PlanPoint, press: { readonly key: string; readonly shiftKey: boolean }, grid_m: number): PlanPoint | undefined {
  const way = WAYS[press.key];
  if (!way) return undefined;
  const steps = press.shiftKey ? FAR : 1;
  const stepped = (at: number, direction: number): number => (direction === 0 ? at : (Math.round(at / grid_m) + direction * steps) * grid_m);
  return planPoint(stepped(from.x, way[0]), stepped(from.y, way[1]));
}
