import { assemblyRunOf } from '../derived/assembly-run.ts';
import type { Derived, DerivedNetwork, Space } from '../derived/derived.ts';
import { placedSupportsOf } from '../derived/placed-supports.ts';
import { remembered } from '../derived/remember.ts';
import { type WallBehind, findWallBehind } from '../derived/wall-behind.ts';
import { openingMiddle } from '../derived/wall-places.ts';
import type { Cylinder, RefOf } from '../model/plan.ts';
import { ceilingAlong, openingsIn, solidsBefore } from './around-wall.ts';
import type { Elevation, GaugeLook, Stretch, WallCylinder } from './elevation.ts';
import { racksOf, railsOf } from './mounts-on-wall.ts';
import { type WallFrame, type WallPlace, wallFrame } from './wall-frame.ts';

/** Drawn diameter while the profile gives none [m]: a symbol, and said so. */
const SYMBOL_DIAMETER_m = 0.2;
/** Height of the outlet of the symbol while the profile gives none [m]. */
export const SYMBOL_OUTLET_m = 1.6;
/** Wall shown on both sides of the cylinders [m]. */
const BESIDE_m = 1.2;
/** An end of the wall that is only so much farther is shown as well [m]. */
const NEARLY_m = 1;
/** Wall shown beyond a thing that would be cut [m]. */
const BEYOND_m = 0.15;
/** Clear depth in front while the manual gives none [m]: 36 in, common practice. */
const FRONT_m = 0.9144;
/** Pipe and assembly are drawn within this of the wall [m]. */
const AT_WALL_m = 1;
/** Least height that is drawn [m]. */
const LEAST_TOP_m = 2.2;

function lookOf(frame: WallFrame, facing_rad: number): GaugeLook {
  const { right, toward } = frame.seen(facing_rad);
  if (Math.abs(toward) >= Math.abs(right)) return toward > 0 ? 'room' : 'wall';
  return right > 0 ? 'right' : 'left';
}

function wallCylinder({ ref, profile }: DerivedNetwork, cylinder: Cylinder, frame: WallFrame): WallCylinder {
  const diameter_m = profile?.limits.cylinderDiameter_m?.value;
  return {
    ref: { kind: 'cylinder', network: ref.id, id: cylinder.id },
    cylinder,
    at: frame.place({ ...cylinder.at, z: 0 }),
    radius_m: (diameter_m ?? SYMBOL_DIAMETER_m) / 2,
    isMeasured: diameter_m !== undefined,
    outlet_m: profile?.limits.outletHeight_m?.value,
    gauge: cylinder.gauge ? { height_m: cylinder.gauge.height_m, look: lookOf(frame, cylinder.gauge.facing_rad) } : undefined,
    outlet: cylinder.outlet_rad === null ? undefined : frame.seen(cylinder.outlet_rad),
  };
}

/** The part of the wall from its datum corner past the cylinders, and to its other end where that is near. */
function shownPart(cylinders: readonly WallCylinder[], length_m: number): Stretch & { readonly datum: 'left' | 'right' } {
  const least = Math.min(...cylinders.map(({ at, radius_m }) => at.s - radius_m));
  const most = Math.max(...cylinders.map(({ at, radius_m }) => at.s + radius_m));
  const datum = least <= length_m - most ? 'left' : 'right';
  const [from, to] = [Math.max(0, least - BESIDE_m), Math.min(length_m, most + BESIDE_m)];
  return { datum, from_m: datum === 'left' || from <= NEARLY_m ? 0 : from, to_m: datum === 'right' || to >= length_m - NEARLY_m ? length_m : to };
}

/** The shown part with the whole of every opening and thing on the wall that it would cut. */
function withWhole(shown: Stretch, things: readonly Stretch[], length_m: number): Stretch {
  const from_m = Math.min(shown.from_m, ...things.map((thing) => thing.from_m - BEYOND_m));
  const to_m = Math.max(shown.to_m, ...things.map((thing) => thing.to_m + BEYOND_m));
  return { from_m: from_m < 2 * BEYOND_m ? 0 : from_m, to_m: to_m > length_m - 2 * BEYOND_m ? length_m : to_m };
}

function missingOf({ profile, network }: DerivedNetwork, cylinders: readonly WallCylinder[], ceiling: Elevation['ceiling'], missingParts: readonly string[]): string[] {
  const named = (those: readonly WallCylinder[]): string => (those.length === cylinders.length && those.length > 1 ? 'all cylinders' : those.map(({ cylinder }) => cylinder.name).join(', '));
  const lacking = (words: string, is: (one: WallCylinder) => boolean): string[] => {
    const those = cylinders.filter(is);
    return those.length > 0 ? [`${words} of ${named(those)} is not known.`] : [];
  };
  const bare = cylinders.filter(({ cylinder }) => cylinder.restraints_m.length === 0);
  return [
    ...(cylinders.some(({ isMeasured }) => !isMeasured) ? ['The diameter of the cylinders is not known: they are symbols, not to scale.'] : []),
    ...(profile?.limits.outletHeight_m ? [] : ['The height of the valve outlet is not known: the cylinders are symbols, not to scale.']),
    ...(ceiling.length === 0 ? ['The height of the ceiling is not known.'] : []),
    ...lacking('The rail height', ({ cylinder }) => cylinder.mounting === 'wall' && cylinder.railHeight_m === null),
    ...(bare.length > 0 ? [`No further restraint holds ${named(bare)}.`] : []),
    ...lacking('The anchoring', ({ cylinder }) => cylinder.mounting === 'wall' && cylinder.anchors === null),
    ...lacking('The gauge', ({ gauge }) => gauge === undefined),
    ...(network.assembly.length > 0 ? missingParts.filter((words) => !words.startsWith('The height of the valve outlet')) : []),
  ];
}

/** The door of the room that is nearest to the cylinders. */
function wayOutOf(room: Space, frame: WallFrame, cylinders: readonly WallCylinder[]): Elevation['wayOut'] {
  const middle = { s: cylinders.reduce((sum, { at }) => sum + at.s, 0) / cylinders.length, off: cylinders[0]?.at.off ?? 0 };
  const doors = Object.values(room.enclosure.openings).flatMap((opening) => {
    const at = opening.kind === 'door' ? openingMiddle(room.enclosure, opening) : undefined;
    return at ? [{ name: opening.name, ...frame.place({ ...at, z: 0 }) }] : [];
  });
  const [first] = doors.map(({ name, s, off }) => ({ name, s: s - middle.s, off: off - middle.off })).sort((a, b) => Math.hypot(a.s, a.off) - Math.hypot(b.s, b.off));
  return first;
}

function elevationOf(derived: DerivedNetwork, { face, room }: WallBehind, own: readonly Cylinder[]): Elevation {
  const frame = wallFrame(face);
  const cylinders = own.map((cylinder) => wallCylinder(derived, cylinder, frame)).sort((a, b) => a.at.s - b.at.s);
  const { datum, ...around } = shownPart(cylinders, frame.length_m);
  const shown = withWhole(around, [...openingsIn(face, room, frame, around), ...solidsBefore(room, frame, around, 0).filter(({ isOverhead }) => !isOverhead)], frame.length_m);
  const front_m = derived.profile?.limits.frontDepth_m?.value ?? FRONT_m;
  const fronts = cylinders.map(({ at, radius_m }) => ({ from_m: at.s - radius_m, to_m: at.s + radius_m, near_m: at.off + radius_m, far_m: at.off + radius_m + front_m }));
  const depth_m = Math.max(...fronts.map(({ far_m }) => far_m));
  const run = assemblyRunOf(derived);
  const isNear = (places: readonly { readonly s: number; readonly off: number }[]): boolean =>
    places.some(({ s, off }) => off > -0.05 && off <= AT_WALL_m && s >= shown.from_m - 1e-6 && s <= shown.to_m + 1e-6);
  const ids = new Set(own.map(({ id }) => id));
  const pieces = run.pieces.filter(({ cylinder }) => cylinder === null || ids.has(cylinder)).map((piece) => ({ piece, places: piece.curve.map(frame.place) }));
  const pipes = derived.pipes.flatMap((pipe) => {
    const [from, to] = cutToView(frame.place(pipe.from), frame.place(pipe.to), shown) ?? [];
    return from && to && isNear([from, to]) ? [{ pipe, from, to }] : [];
  });
  const supports = placedSupportsOf(derived).map((support) => ({ support, at: frame.place(support.support.at) })).filter(({ at }) => isNear([at]));
  const ceiling = ceilingAlong(room, frame, shown);
  const heights = [...ceiling.map(({ z }) => z), ...pieces.flatMap(({ places }) => places.map(({ z }) => z)), ...pipes.flatMap(({ from, to }) => [from.z, to.z]), ...cylinders.map(({ outlet_m }) => (outlet_m ?? SYMBOL_OUTLET_m) + 0.2)];
  return {
    key: `${derived.ref.id}/${face.ref.enclosure}/${face.ref.id}`,
    network: derived,
    room,
    wall: face.ref,
    frame,
    shown,
    datum,
    ceiling,
    top_m: Math.max(LEAST_TOP_m, ...heights),
    cylinders,
    rails: railsOf(cylinders, frame.length_m),
    racks: racksOf(cylinders, frame.length_m),
    openings: openingsIn(face, room, frame, shown),
    solids: solidsBefore(room, frame, shown, depth_m),
    fronts,
    depth_m,
    wayOut: wayOutOf(room, frame, cylinders),
    pieces: pieces.filter(({ places }) => isNear(places)),
    pipes,
    supports,
    missing: missingOf(derived, cylinders, ceiling, run.missing),
  };
}

/** The part of a pipe over the floor and in the shown part of the wall; undefined when none is. */
function cutToView(from: WallPlace, to: WallPlace, { from_m, to_m }: Stretch): readonly [WallPlace, WallPlace] | undefined {
  let [start, end] = [0, 1];
  for (const [a, b, least, most] of [
    [from.s, to.s, from_m, to_m],
    [from.z, to.z, 0, Infinity],
  ] as const) {
    if (Math.abs(b - a) < 1e-9) {
      if (a < least - 1e-6 || a > most + 1e-6) return undefined;
      continue;
    }
    const [p, q] = [(least - a) / (b - a), (most - a) / (b - a)];
    start = Math.max(start, Math.min(p, q));
    end = Math.min(end, Math.max(p, q));
  }
  const at = (t: number): WallPlace => ({ s: from.s + (to.s - from.s) * t, z: from.z + (to.z - from.z) * t, off: from.off + (to.off - from.off) * t });
  return end < start ? undefined : [at(start), at(end)];
}

const ofNetwork = remembered((derived: DerivedNetwork, spaces: readonly Space[]): readonly Elevation[] => {
  const rooms = spaces.filter(({ kind, level }) => kind === 'room' && level.id === derived.level.id);
  const walls = new Map<string, { behind: WallBehind; cylinders: Cylinder[] }>();
  for (const cylinder of Object.values(derived.network.cylinders)) {
    const behind = findWallBehind(cylinder, rooms);
    if (!behind) continue;
    const { enclosure, id } = behind.face.ref;
    const wall = walls.get(`${enclosure}/${id}`);
    if (wall) wall.cylinders.push(cylinder);
    else walls.set(`${enclosure}/${id}`, { behind, cylinders: [cylinder] });
  }
  return [...walls.values()].map(({ behind, cylinders }) => elevationOf(derived, behind, cylinders));
});

/** Every wall that carries cylinders, network by network. Cylinders without a wall behind them are on none. */
export const elevationsOf = ({ networks, spaces }: Derived): Elevation[] => networks.flatMap((network) => ofNetwork(network, spaces));

/** Cylinders that no wall stands behind: they are on no elevation. */
export const cylindersWithoutWall = (derived: Derived): RefOf<'cylinder'>[] => {
  const shown = new Set(elevationsOf(derived).flatMap(({ network, cylinders }) => cylinders.map(({ ref }) => `${network.ref.id}/${ref.id}`)));
  return derived.networks.flatMap(({ ref, network }) =>
    Object.keys(network.cylinders).flatMap((id) => (shown.has(`${ref.id}/${id}`) ? [] : [{ kind: 'cylinder' as const, network: ref.id, id }])),
  );
};
