import { rectangle } from '#shared/geometry/outline';
import { type PlanPoint, planPoint } from '#shared/geometry/point';
import type { Plan } from '#shared/model/plan';
import { type DeviceSpec, devicesFrom } from './devices.ts';
import { type Placing, placed } from './layout.ts';
import { planBuilder } from './plan-builder.ts';

/** A served room of 6 by 4 m with a door in the middle of its south wall (x 2.5 to 3.5), unless told otherwise; one network with a cylinder at (0.2, 2). */
export function doorRoom(devices: readonly DeviceSpec[], { placing, hasDoor = true, isServed = true }: { readonly placing?: Placing; readonly hasDoor?: boolean; readonly isServed?: boolean } = {}): Plan {
  const at = (x: number, y: number): PlanPoint => (placing ? placed(planPoint(x, y), placing) : planPoint(x, y));
  const built = planBuilder().outline(rectangle(6, 4).map(({ x, y }) => at(x, y)), 2.7);
  if (hasDoor) built.opening(0, 3, 1);
  const [cylinder, nozzle] = [at(0.2, 2), at(3, 2)];
  built.network().cylinder(cylinder.x, cylinder.y, 0);
  if (isServed) built.nozzle(nozzle.x, nozzle.y, 2.5);
  const level = built.plan.levels['level-0'];
  if (level) level.devices = devicesFrom(devices, placing);
  return built.plan;
}
