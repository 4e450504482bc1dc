import { isInsideRegion } from '#shared/geometry/inside';
import type { PlanPoint } from '#shared/geometry/point';
import type { ToolView } from './tool.ts';

/** Height of the ceiling of the room that holds a place [m above the floor], zones and slope counted; undefined while unknown, and outside every room. */
export function localCeiling_m({ session, derived }: ToolView, at: PlanPoint): number | undefined {
  const room = derived.spaces.find(({ level, kind, outline, holes }) => level.id === session.level && kind === 'room' && isInsideRegion(at, outline, holes));
  return room?.ceilingAt_m({ x: at.x, y: at.y });
}
