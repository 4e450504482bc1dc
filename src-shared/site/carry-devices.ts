import { editDevice } from '../commands/edit-device.ts';
import { type PlanPoint, distance_m } from '../geometry/point.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { Corner, RefOf } from '../model/plan.ts';
import type { Building } from './building.ts';

/** What hangs this near to the face of a wall hangs on it [m], common practice. */
const ON_WALL_m = 0.05;

interface OnWall {
  readonly off_m: number;
  /** Share of the way along the wall. */
  readonly share: number;
  readonly from: Corner;
  readonly to: Corner;
}

function onWall(outline: readonly Corner[], at: PlanPoint): OnWall | undefined {
  let nearest: OnWall | undefined;
  for (const [i, from] of outline.entries()) {
    const to = outline[(i + 1) % outline.length];
    const length_m = to ? distance_m(from, to) : 0;
    if (!to || length_m === 0) continue;
    const share = Math.max(0, Math.min(1, ((at.x - from.x) * (to.x - from.x) + (at.y - from.y) * (to.y - from.y)) / length_m ** 2));
    const off_m = distance_m(at, { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) });
    if (!nearest || off_m < nearest.off_m) nearest = { off_m, share, from, to };
  }
  return nearest && nearest.off_m <= ON_WALL_m ? nearest : undefined;
}

/**
 * Lets detectors, sounders, signs and buttons that hang on a wall go with it where the wall was measured elsewhere: nobody
 * measures them, and they hang on the wall as it is.
 * @param outline  of the room as drawn
 */
export function carryDevices(building: Building, { level, id }: RefOf<'enclosure'>, outline: readonly Corner[]): void {
  const now = new Map(building.plan.levels[level]?.enclosures[id]?.outline.map((corner) => [corner.id, corner]));
  for (const device of Object.values(building.plan.levels[level]?.devices ?? {})) {
    const wall = onWall(outline, device.at);
    const [from, to] = [wall && now.get(wall.from.id), wall && now.get(wall.to.id)];
    if (!wall || !from || !to) continue;
    const byX = (1 - wall.share) * (from.x - wall.from.x) + wall.share * (to.x - wall.to.x);
    const byY = (1 - wall.share) * (from.y - wall.from.y) + wall.share * (to.y - wall.to.y);
    // Along the wall it stays where it is: only the face under it is elsewhere.
    const length_m = distance_m(wall.from, wall.to);
    const [nx, ny] = [(wall.from.y - wall.to.y) / length_m, (wall.to.x - wall.from.x) / length_m];
    const by_m = byX * nx + byY * ny;
    if (Math.abs(by_m) > SAME_PLACE_m) building.try(editDevice({ kind: 'device', level, id: device.id }, { at: { x: device.at.x + by_m * nx, y: device.at.y + by_m * ny } }));
  }
}
