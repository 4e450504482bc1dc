import type { Derived, DerivedNetwork, PipePath, Space } from '#shared/derived/derived';
import { type PlanPoint, bearing_rad, distance_m, planPoint, polar } from '#shared/geometry/point';
import { rayHit_m } from '#shared/geometry/segment';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import { heldPipe } from '#shared/model/held-pipe';
import type { Ref } from '#shared/model/plan';

/** The way along which the section strip looks at the plan. */
export interface SectionPath {
  /** The line that the user set, a pipe run unfolded, or the middle of an enclosure. */
  readonly kind: 'line' | 'run' | 'middle';
  /** Places of the way on the plan, at least two. */
  readonly places: readonly PlanPoint[];
  readonly title: string;
  /** Of a cut through the middle: the one enclosure that it shows. */
  readonly enclosure?: string;
  /** Of an unfolded run: whose it is and how far along the way each of its nodes lies [m]. */
  readonly run?: { readonly network: string; readonly cylinder: string | null; readonly cylinderAlong_m: number; readonly nodes: ReadonlyMap<string, number>; readonly pipes: ReadonlySet<string> };
}

export interface SectionChoice {
  readonly level: string;
  readonly cut: { readonly a: PlanPoint; readonly b: PlanPoint } | null;
  readonly selection: readonly Ref[];
}

/** How far an unfolded run is carried on past its ends to show what stands there [m]. */
const PAST_ENDS_m = 1;
/** How far a cut through the middle reaches past the enclosure [m]. */
const PAST_WALLS_m = 0.35;

/** Distances of the places of a way from its start [m]. */
export function alongOf_m(places: readonly PlanPoint[]): number[] {
  let sum = 0;
  return places.map((p, i) => {
    const before = places[i - 1];
    if (before) sum += distance_m(before, p);
    return sum;
  });
}

/**
 * Which way the strip shows: the cut that the user set; else the run of what is selected, unfolded; else a cut through
 * the middle of an enclosure. undefined while nothing is drawn.
 */
export function findSectionPath(derived: Derived, { level, cut, selection }: SectionChoice): SectionPath | undefined {
  if (cut && distance_m(cut.a, cut.b) > SAME_PLACE_m) return { kind: 'line', places: [cut.a, cut.b], title: `Section, looking ${compassOf(bearing_rad(cut.a, cut.b) + Math.PI / 2)}` };
  for (const ref of selection) {
    const run = runOf(derived, level, ref);
    if (run) return run;
  }
  const rooms = derived.spaces.filter((space) => space.kind === 'room' && space.level.id === level);
  const chosen = selection.map((ref) => rooms.find((room) => isPartOf(ref, room, derived))).find((room) => room !== undefined) ?? rooms[0];
  return chosen && middleOf(chosen);
}

const isPartOf = (ref: Ref, room: Space, derived: Derived): boolean =>
  ('enclosure' in ref && ref.enclosure === room.enclosure.id) ||
  (ref.kind === 'enclosure' && ref.id === room.enclosure.id) ||
  (ref.kind === 'obstruction' && room.solids.some((solid) => solid.ref.id === ref.id)) ||
  (ref.kind === 'nozzle' && derived.nozzles.some((nozzle) => nozzle.ref.id === ref.id && nozzle.space?.enclosure.id === room.enclosure.id));

/** "north", "north-east", …: the eighth of the compass that a plan direction falls into. */
export function compassOf(direction_rad: number): string {
  const names = ['east', 'north-east', 'north', 'north-west', 'west', 'south-west', 'south', 'south-east'];
  const eighth = Math.round(direction_rad / (Math.PI / 4));
  return names[((eighth % 8) + 8) % 8] ?? 'north';
}

function middleOf({ bounds, enclosure }: Space): SectionPath {
  const midX = (bounds.minX + bounds.maxX) / 2;
  const midY = (bounds.minY + bounds.maxY) / 2;
  const name = enclosure.name || 'the enclosure';
  return bounds.maxX - bounds.minX >= bounds.maxY - bounds.minY
    ? { kind: 'middle', enclosure: enclosure.id, places: [planPoint(bounds.minX - PAST_WALLS_m, midY), planPoint(bounds.maxX + PAST_WALLS_m, midY)], title: `${name} from the south` }
    : { kind: 'middle', enclosure: enclosure.id, places: [planPoint(midX, bounds.minY - PAST_WALLS_m), planPoint(midX, bounds.maxY + PAST_WALLS_m)], title: `${name} from the east` };
}

/** The unfolded run of a selected nozzle, pipe, pipe end, cylinder or network. */
function runOf(derived: Derived, level: string, ref: Ref): SectionPath | undefined {
  if (ref.kind !== 'network' && !('network' in ref)) return undefined;
  const network = derived.networks.find((each) => each.network.id === (ref.kind === 'network' ? ref.id : ref.network));
  if (!network || network.network.level !== level) return undefined;
  const path = findPath(network, ref);
  if (!path) return undefined;
  const nozzle = network.network.nozzles[path.nozzle];
  return unfolded(derived, network, path, `Pipe run to ${nozzle?.name || 'the nozzle'}, unfolded`);
}

function findPath({ network, paths }: DerivedNetwork, ref: Ref): PipePath | undefined {
  if (ref.kind === 'nozzle') return paths.find((path) => path.nozzle === ref.id);
  if (ref.kind === 'pipe') return paths.find((path) => path.pipes.includes(ref.id));
  if (ref.kind === 'support') {
    const at = network.supports[ref.id]?.at;
    const held = at && heldPipe(network, at);
    const path = held && paths.find(({ pipes }) => pipes.includes(held.id));
    if (path) return path;
  }
  if (ref.kind === 'node') return paths.find((path) => path.nodes.includes(ref.id));
  return [...paths].sort((a, b) => b.length_m - a.length_m)[0];
}

function unfolded(derived: Derived, { network }: DerivedNetwork, path: PipePath, title: string): SectionPath | undefined {
  const nodes = path.nodes.flatMap((id) => (network.nodes[id] ? [network.nodes[id]] : []));
  const first = nodes[0];
  const last = nodes.at(-1);
  if (!first || !last) return undefined;
  const cylinder = Object.values(network.cylinders).sort((a, b) => distance_m(a.at, first.at) - distance_m(b.at, first.at))[0];
  const places: PlanPoint[] = [];
  const add = (p: PlanPoint): void => {
    const before = places.at(-1);
    if (!before || distance_m(before, p) > SAME_PLACE_m) places.push(planPoint(p.x, p.y));
  };
  if (cylinder) {
    add(polar(cylinder.at, cylinder.back_rad, PAST_WALLS_m));
    add(cylinder.at);
  }
  const cylinderAlong_m = alongOf_m(places).at(-1) ?? 0;
  const along = new Map<string, number>();
  for (const node of nodes) {
    add(node.at);
    along.set(node.id, alongOf_m(places).at(-1) ?? 0);
  }
  const end = places.at(-1) ?? last.at;
  const before = places.at(-2);
  const heading = before ? bearing_rad(before, end) : 0;
  add(polar(end, heading, pastEnd_m(derived, end, heading)));
  if (places.length < 2) return undefined;
  return { kind: 'run', places, title, run: { network: network.id, cylinder: cylinder?.id ?? null, cylinderAlong_m, nodes: along, pipes: new Set(path.pipes) } };
}

/** From the last nozzle on to a little past the wall in front, where one is near. */
function pastEnd_m(derived: Derived, from: PlanPoint, heading_rad: number): number {
  const hits = derived.spaces.flatMap((space) => space.walls.map(({ segment }) => rayHit_m(from, heading_rad, segment) ?? Infinity));
  const wall_m = Math.min(Infinity, ...hits);
  return wall_m <= 3 ? wall_m + PAST_WALLS_m : PAST_ENDS_m;
}
