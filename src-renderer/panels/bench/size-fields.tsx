import { type PlanPoint, bearing_rad } from '#shared/geometry/point';
import { rectangleSides_m, resizedRectangle } from '#shared/geometry/rectangle';
import { LengthField } from '../fields/quantity-field.tsx';

/** A ring from its most south-western corner on: that one stands still when a size is typed. */
export function fromSouthWest(ring: readonly PlanPoint[]): PlanPoint[] {
  const start = ring.reduce((best, { x, y }, i) => (x + y < (ring[best]?.x ?? 0) + (ring[best]?.y ?? 0) ? i : best), 0);
  return [...ring.slice(start), ...ring.slice(0, start)];
}

/** What the first and second side of a rectangle are called: by the compass where they run with it. */
export function sideNames(ring: readonly PlanPoint[]): readonly [string, string] {
  const [a, b] = ring;
  const angle_rad = a && b ? bearing_rad(a, b) : 0;
  if (Math.abs(Math.sin(angle_rad)) < 1e-9) return ['East to west', 'North to south'];
  if (Math.abs(Math.cos(angle_rad)) < 1e-9) return ['North to south', 'East to west'];
  return ['One side', 'Other side'];
}

/** Lengths of the sides of a rectangle on the plan; nothing for another shape, whose corners are dragged. */
export function SizeFields({ ring, onCommit }: { readonly ring: readonly PlanPoint[]; onCommit(ring: PlanPoint[]): void }) {
  const from = fromSouthWest(ring);
  const sides = rectangleSides_m(from);
  if (!sides) return null;
  const [first_m, second_m] = sides;
  const [first, second] = sideNames(from);
  return (
    <>
      <LengthField label={first} value={first_m} least={0.001} onCommit={(length_m) => onCommit(resizedRectangle(from, [length_m, second_m]))} />
      <LengthField label={second} value={second_m} least={0.001} onCommit={(length_m) => onCommit(resizedRectangle(from, [first_m, length_m]))} />
    </>
  );
}
