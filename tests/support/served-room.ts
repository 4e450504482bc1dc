import { type PlanPoint, planPoint } from '#shared/geometry/point';
import { rectangle } from '#shared/geometry/outline';
import type { Enclosure, Opening } from '#shared/model/plan';
import { type PlanBuilder, planBuilder } from './plan-builder.ts';

/** A room of 6 by 4 m and 2.7 m that one nozzle in its middle serves; walls 0 south, 1 east, 2 north, 3 west. */
export const builtRoom = (change: Partial<Enclosure> = {}): PlanBuilder => planBuilder().room(6, 4, 2.7, planPoint(0, 0), change).network().nozzle(3, 2, 2.5);

/** A relief vent of 0.4 by 0.3 m high in a wall, its middle 2 m along it. */
export const ventInWall = (change: Partial<Opening> = {}): Partial<Opening> => ({ name: 'Vent', kind: 'relief-vent', bottom_m: 2, height_m: 0.3, swing: 'none', freeArea_m2: 0.05, leadsTo: 'outdoors', ...change });

/** A strip of 2 m behind the east wall of the room, with a wall of 0.15 m between. */
export const eastOf = (): PlanPoint[] => rectangle(2, 4, planPoint(6.15, 0));
