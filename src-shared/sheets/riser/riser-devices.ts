import type { Derived, Space } from '../../derived/derived.ts';
import type { RefOf } from '../../model/plan.ts';
import { distanceToOutline_m, isInside } from '../../geometry/outline.ts';
import type { PlanPoint } from '../../geometry/point.ts';
import type { Device, Enclosure } from '../../model/plan.ts';

/** A device farther than this from every room belongs to none [m]. */
const FARTHEST_m = 5;

/** What the releasing circuit of a network belongs to: its rooms, and the devices in and at them. */
export interface RiserReach {
  readonly enclosures: readonly Enclosure[];
  readonly devices: readonly Device[];
  /** Panels of the level: one panel may serve rooms that it does not stand at. */
  readonly panels: readonly Device[];
}

/** The room that a place lies in, else the nearest within reach. */
function roomAt(rooms: readonly Space[], at: PlanPoint): Space | undefined {
  const within = rooms.find(({ outline }) => isInside(at, outline));
  if (within) return within;
  const near = rooms.map((room) => ({ room, away_m: distanceToOutline_m(at, room.outline) })).sort((a, b) => a.away_m - b.away_m)[0];
  return near && near.away_m <= FARTHEST_m ? near.room : undefined;
}

/** The rooms that a network serves, and the devices whose nearest room is one of them. */
export function riserReach({ networks, spaces, plan }: Derived, ref: RefOf<'network'>): RiserReach {
  const network = networks.find((each) => each.ref.id === ref.id);
  const level = network && plan.levels[network.network.level];
  if (!network || !level) return { enclosures: [], devices: [], panels: [] };
  const served = new Set(network.nozzles.flatMap(({ space }) => (space ? [space.enclosure.id] : [])));
  const rooms = spaces.filter((space) => space.kind === 'room' && space.level.id === level.id);
  const all = Object.values(level.devices);
  const near = all.filter(({ at }) => served.has(roomAt(rooms, at)?.enclosure.id ?? ''));
  const panels = near.filter(({ kind }) => kind === 'control-panel');
  return {
    enclosures: Object.values(level.enclosures).filter(({ id }) => served.has(id)),
    devices: near.filter(({ kind }) => kind !== 'control-panel'),
    panels: panels.length > 0 ? panels : all.filter(({ kind }) => kind === 'control-panel'),
  };
}
