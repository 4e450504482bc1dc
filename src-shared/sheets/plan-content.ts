import { boughtFittingsOf } from '../derived/bought-fittings.ts';
import type { Derived, DerivedNetwork, DerivedNozzle, DerivedPipe, Fitting, Solid, Space } from '../derived/derived.ts';
import { type PlacedSupport, placedSupportsOf } from '../derived/placed-supports.ts';
import { type Box, boundsOf, distanceToOutline_m, isInside } from '../geometry/outline.ts';
import type { PlanPoint } from '../geometry/point.ts';
import type { Level, SpaceKind } from '../model/plan.ts';
import { swingTips } from './draw-walls.ts';
import { type PipeStretch, networkStretches } from './pipe-stretches.ts';

/** What one plan view shows: a level, seen at its rooms or in one kind of void. */
export interface PlanContent {
  readonly level: Level;
  readonly layer: SpaceKind;
  readonly title: string;
  /** Every room of the level: their walls are drawn in each layer. */
  readonly rooms: readonly Space[];
  /** Spaces of this layer: their coverage and dimensions are drawn. */
  readonly spaces: readonly Space[];
  readonly networks: readonly NetworkContent[];
  readonly solids: readonly Solid[];
}

/** What one plan view shows of a network. */
export interface NetworkContent {
  readonly network: DerivedNetwork;
  readonly pipes: readonly DerivedPipe[];
  readonly fittings: readonly Fitting[];
  readonly nozzles: readonly DerivedNozzle[];
  readonly supports: readonly PlacedSupport[];
  /** Its shown pipes joined into straight stretches, parted at nozzles and where the pipe begins. */
  readonly stretches: readonly PipeStretch[];
  /** Cylinders stand on the floor of the room layer only. */
  readonly hasCylinders: boolean;
}

/** Height below which a place counts as under the finished floor [m]. */
const BELOW_FLOOR_m = -1e-6;

const LAYER_TITLES: Readonly<Record<SpaceKind, string>> = { room: '', 'under-floor': ', under the floor', 'ceiling-void': ', ceiling void' };

/** Layer in which a nozzle is drawn: that of the space it serves. */
export const layerOf = (nozzle: DerivedNozzle): SpaceKind => nozzle.space?.kind ?? 'room';

function showsHeights(layer: SpaceKind, spaces: readonly Space[]): (low_m: number, high_m: number) => boolean {
  if (layer === 'under-floor') return (low) => low < BELOW_FLOOR_m;
  if (layer === 'room') return (_, high) => high >= BELOW_FLOOR_m;
  const ceiling = Math.min(...spaces.map(({ floor_m }) => floor_m));
  return (_, high) => high >= ceiling - 1e-6;
}

const contentOf = (derived: Derived, level: Level, layer: SpaceKind): PlanContent => {
  const onLevel = derived.spaces.filter((space) => space.level.id === level.id);
  const spaces = onLevel.filter(({ kind }) => kind === layer);
  const shows = showsHeights(layer, spaces);
  const networks = derived.networks
    .filter((network) => network.level.id === level.id)
    .map((network): NetworkContent => {
      const pipes = network.pipes.filter(({ from, to }) => shows(Math.min(from.z, to.z), Math.max(from.z, to.z)));
      return {
        network,
        pipes,
        fittings: boughtFittingsOf(network).filter(({ at }) => shows(at.z, at.z)),
        nozzles: network.nozzles.filter((nozzle) => layerOf(nozzle) === layer),
        supports: placedSupportsOf(network).filter(({ support }) => shows(support.at.z, support.at.z)),
        stretches: networkStretches(network, pipes),
        hasCylinders: layer === 'room',
      };
    });
  const solids = derived.solids.filter((solid) => solid.ref.level === level.id && shows(solid.bottom_m, solid.top_m));
  return { level, layer, title: `${level.name}${LAYER_TITLES[layer]}`, rooms: onLevel.filter(({ kind }) => kind === 'room'), spaces, networks, solids };
};

/** The plan views that a set needs: one per level, and one for each kind of void that holds nozzles or pipe. */
export function planContents(derived: Derived): PlanContent[] {
  const levels = Object.values(derived.plan.levels).sort((a, b) => a.floorElevation_m - b.floorElevation_m || (a.id < b.id ? -1 : 1));
  return levels.flatMap((level) => {
    const layers: SpaceKind[] = ['room', 'under-floor', 'ceiling-void'];
    return layers
      .map((layer) => contentOf(derived, level, layer))
      .filter(({ layer, networks }) => {
        if (layer === 'room') return true;
        const holdsNozzles = networks.some(({ nozzles }) => nozzles.length > 0);
        return holdsNozzles || (layer === 'under-floor' && networks.some(({ pipes }) => pipes.length > 0));
      });
  });
}

/** Every place that the view must hold; nothing for an empty level. */
export function contentBounds({ level, layer, rooms, networks, solids }: PlanContent): Box | undefined {
  const places: PlanPoint[] = [];
  for (const room of rooms) places.push(...room.outline, ...swingTips(room));
  for (const { network, pipes, nozzles, hasCylinders } of networks) {
    for (const { from, to } of pipes) places.push(from, to);
    for (const { at } of nozzles) if (at) places.push(at);
    if (hasCylinders) for (const { at } of Object.values(network.network.cylinders)) places.push(at);
  }
  if (layer === 'room') {
    for (const { a, b } of Object.values(level.dimensions)) places.push(a, b);
    for (const { at } of Object.values(level.notes)) places.push(at);
  }
  if (rooms.length === 0) for (const { footprint } of solids) places.push(...footprint);
  return places.length === 0 ? undefined : boundsOf(places);
}

/** A room's outline grown a little, so that what touches its walls counts as in it [m]. */
const AT_WALL_m = 0.01;

const isInRoom = (room: Space, at: PlanPoint): boolean => isInside(at, room.outline) || distanceToOutline_m(at, room.outline) <= AT_WALL_m;

/** What of a network belongs to a room: all of it when all its nozzles are there, else what lies in the room. */
export function networkInRoom(content: NetworkContent, room: Space): NetworkContent | undefined {
  const { network, pipes, fittings, nozzles, supports, hasCylinders } = content;
  const isOwn = network.nozzles.length > 0 && network.nozzles.every(({ space }) => space?.enclosure.id === room.enclosure.id);
  if (isOwn) return content;
  const inRoom = pipes.filter(({ from, to }) => isInRoom(room, from) || isInRoom(room, to));
  const own = nozzles.filter(({ space }) => space?.enclosure.id === room.enclosure.id);
  const cylinders = Object.fromEntries(Object.entries(network.network.cylinders).filter(([, { at }]) => isInRoom(room, at)));
  if (inRoom.length === 0 && own.length === 0 && Object.keys(cylinders).length === 0) return undefined;
  return {
    network: { ...network, network: { ...network.network, cylinders } },
    pipes: inRoom,
    fittings: fittings.filter(({ at }) => isInRoom(room, at)),
    nozzles: own,
    supports: supports.filter(({ pipe }) => pipe !== undefined && inRoom.includes(pipe)),
    stretches: networkStretches(network, inRoom),
    hasCylinders,
  };
}

/**
 * Parts a level into its rooms, each with all that belongs to it.
 * @returns undefined when something would be shown in no room: pipe across a corridor, say
 */
export function roomContents(content: PlanContent): PlanContent[] | undefined {
  const parts = content.rooms.map((room): PlanContent => ({
    ...content,
    level: { ...content.level, dimensions: {}, notes: {} },
    title: room.name,
    rooms: [room],
    spaces: content.spaces.filter(({ enclosure }) => enclosure.id === room.enclosure.id),
    networks: content.networks.flatMap((network) => networkInRoom(network, room) ?? []),
    solids: content.solids.filter(({ ref }) => room.solids.some((solid) => solid.ref.id === ref.id)),
  }));
  const count = <T>(of: (part: PlanContent) => readonly T[]): Set<T> => new Set(parts.flatMap((part) => of(part)));
  const pipes = count(({ networks }) => networks.flatMap((network) => network.pipes.map(({ ref }) => `${ref.network}/${ref.id}`)));
  const nozzles = count(({ networks }) => networks.flatMap((network) => network.nozzles.map(({ ref }) => `${ref.network}/${ref.id}`)));
  const cylinders = count(({ networks }) => networks.flatMap(({ network }) => Object.keys(network.network.cylinders).map((id) => `${network.ref.id}/${id}`)));
  const isWhole = content.networks.every(
    ({ network, pipes: all, nozzles: hung, hasCylinders }) =>
      all.every(({ ref }) => pipes.has(`${ref.network}/${ref.id}`)) &&
      hung.every(({ ref }) => nozzles.has(`${ref.network}/${ref.id}`)) &&
      (!hasCylinders || Object.keys(network.network.cylinders).every((id) => cylinders.has(`${network.ref.id}/${id}`))),
  );
  return isWhole ? parts.filter(({ networks }) => networks.length > 0) : undefined;
}
