import { isInside } from '../geometry/outline.ts';
import { type PlanPoint, distance_m, planPoint } from '../geometry/point.ts';
import { meetingOf } from '../geometry/segment.ts';
import { type Ref, refKey } from '../model/plan.ts';
import { type Datum, compassName, datumsOf, faceName, fromFace_m } from './datum.ts';
import type { Derived, DerivedNetwork, DerivedNozzle, Space } from './derived.ts';
import { nozzleName } from './nozzle-name.ts';
import { spaceIndexOf } from './space-index.ts';

export type FieldDimensionKind = 'wall' | 'diagonal' | 'ceiling' | 'nozzle' | 'pipe' | 'cylinder';

/** A dimension that the fitter measures, with the id under which the plan's site record keeps it. */
export interface FieldDimension {
  /** Stays the same while its thing does: "room/level-0/enc-1/wall/c-2", "net-1/nozzle-3/first". */
  readonly id: string;
  readonly kind: FieldDimensionKind;
  /** The thing that it places. */
  readonly about: Ref;
  /** Which one of the thing: "first" and "second" off the datum faces, "height" above the floor, "drop" below the ceiling, "rail"; of a room the corner ids or a number. */
  readonly part: string;
  /** As printed, e.g. "N1 a". */
  readonly name: string;
  /** As the fitter reads them, beginning small. */
  readonly from: string;
  readonly to: string;
  /** As drawn [m]. */
  readonly planned_m: number;
}

/** Letter of a corner, counted from 0 in the order of the room's outline: A, B … Z, AA. */
export const cornerLetter = (i: number): string => (i < 26 ? String.fromCharCode(65 + i) : `${cornerLetter(Math.floor(i / 26) - 1)}${String.fromCharCode(65 + (i % 26))}`);
const small = (i: number): string => cornerLetter(i).toLowerCase();

/** Whether the straight line between two corners of a ring runs inside it. */
function runsInside(ring: readonly PlanPoint[], i: number, k: number): boolean {
  const [a, b] = [ring[i], ring[k]];
  if (!a || !b || !isInside(planPoint((a.x + b.x) / 2, (a.y + b.y) / 2), ring)) return false;
  return ring.every((from, side) => {
    const next = (side + 1) % ring.length;
    const to = ring[next];
    return side === i || side === k || next === i || next === k || !to || !meetingOf({ a, b }, { a: from, b: to });
  });
}

/**
 * Pairs of corners whose distances, with the walls, leave a ring no way to be another, and tell one error besides:
 * a ring of n corners needs n − 3 of them to be stiff, and one more to prove itself.
 */
function diagonalsOf(ring: readonly PlanPoint[]): readonly (readonly [number, number])[] {
  const found: (readonly [number, number])[] = [];
  for (let i = 0; i < ring.length; i += 1) {
    for (let k = i + 2; k < ring.length; k += 1) {
      if (found.length >= ring.length - 2) return found;
      if ((i === 0 && k === ring.length - 1) || !runsInside(ring, i, k)) continue;
      found.push([i, k]);
    }
  }
  return found;
}

/** Walls, diagonals and three ceiling heights of a room, corners lettered in the order of its outline. */
function ofRoom(space: Space, datum: Datum | undefined): FieldDimension[] {
  const { enclosure, level, name: room } = space;
  const about: Ref = { kind: 'enclosure', level: level.id, id: enclosure.id };
  const corners = enclosure.outline;
  const dimensions: FieldDimension[] = [];
  const add = (kind: FieldDimensionKind, part: string, from: string, to: string, planned_m: number): void => {
    dimensions.push({ id: `room/${level.id}/${enclosure.id}/${kind}/${part}`, kind, about, part, name: `${room} ${small(dimensions.length)}`, from, to, planned_m });
  };
  for (const [i, corner] of corners.entries()) {
    const next = corners[(i + 1) % corners.length];
    if (next) add('wall', corner.id, `corner ${cornerLetter(i)}`, `corner ${cornerLetter((i + 1) % corners.length)}, along the ${sideName(corner, next, corners)}`, distance_m(corner, next));
  }
  for (const [i, k] of diagonalsOf(corners)) {
    const [a, b] = [corners[i], corners[k]];
    if (a && b) add('diagonal', `${a.id}-${b.id}`, `corner ${cornerLetter(i)}`, `corner ${cornerLetter(k)}, across`, distance_m(a, b));
  }
  for (const [i, { words, at }] of ceilingPlaces(corners, datum).entries()) {
    const height_m = space.ceilingAt_m(at);
    if (height_m !== undefined) add('ceiling', String(i + 1), 'finished floor', `ceiling, ${words}`, height_m);
  }
  return dimensions;
}

function sideName(a: PlanPoint, b: PlanPoint, ring: readonly PlanPoint[]): string {
  const along = Math.atan2(b.y - a.y, b.x - a.x);
  const middle = planPoint((a.x + b.x) / 2 - Math.sin(along) * 0.01, (a.y + b.y) / 2 + Math.cos(along) * 0.01);
  return `${compassName(isInside(middle, ring) ? along - Math.PI / 2 : along + Math.PI / 2)} wall`;
}

/** How far from the corner itself a ceiling is measured [m]. */
const OFF_CORNER_m = 0.3;

/** At the datum corner, in the middle, and at the corner farthest from the first. */
export function ceilingPlaces(corners: readonly PlanPoint[], datum: Datum | undefined): { readonly words: string; readonly at: PlanPoint }[] {
  const first = datum?.corner ?? corners[0];
  if (!first) return [];
  const far = corners.reduce((best, corner) => (distance_m(first, corner) > distance_m(first, best) ? corner : best), first);
  const middle = planPoint((first.x + far.x) / 2, (first.y + far.y) / 2);
  const inward = (corner: PlanPoint): PlanPoint => {
    const share = Math.min(0.5, OFF_CORNER_m / (distance_m(corner, middle) || 1));
    return planPoint(corner.x + (middle.x - corner.x) * share, corner.y + (middle.y - corner.y) * share);
  };
  return [
    { words: 'near the datum corner', at: inward(first) },
    { words: 'halfway across', at: middle },
    { words: 'near the farthest corner', at: inward(far) },
  ].filter(({ at }) => isInside(at, corners));
}

interface Placed {
  readonly id: string;
  readonly kind: FieldDimensionKind;
  readonly about: Ref;
  readonly name: string;
}

/** Dimensions of something in a room, off its two datum faces and more. */
function placed({ id, kind, about, name }: Placed, datum: Datum | undefined, at: PlanPoint, what: string, heights: readonly (readonly [part: string, from: string, to: string, planned_m: number])[]): FieldDimension[] {
  const rows: (readonly [string, string, string, number])[] = [
    ...(datum ? [['first', faceName(datum.faces[0]), what, fromFace_m(datum.faces[0], at)] as const, ['second', faceName(datum.faces[1]), what, fromFace_m(datum.faces[1], at)] as const] : []),
    ...heights,
  ];
  return rows.map(([part, from, to, planned_m], i) => ({ id: `${id}/${part}`, kind, about, part, name: `${name} ${small(i)}`, from, to, planned_m }));
}

function ofNozzle(derived: Derived, nozzle: DerivedNozzle, datum: Datum | undefined): FieldDimension[] {
  const { at, ref, localCeiling_m, space } = nozzle;
  if (!at) return [];
  const overhead = space?.kind === 'under-floor' ? 'finished floor above' : 'ceiling';
  return placed({ id: `${ref.network}/${ref.id}`, kind: 'nozzle', about: ref, name: nozzleName(derived, nozzle) }, datum, at, 'orifice axis', [
    ['height', 'finished floor', 'orifice', at.z],
    ...(localCeiling_m === undefined ? [] : [['drop', overhead, 'orifice', localCeiling_m - at.z] as const]),
  ]);
}

/** Places where pipe turns or parts away from a nozzle, named P1, P2 … in the order of the network. */
function ofPipe(network: DerivedNetwork, datumAt: (at: PlanPoint & { z: number }) => Datum | undefined): FieldDimension[] {
  const atNozzles = new Set(network.nozzles.map(({ nozzle }) => nozzle.node));
  const marks = [...new Map(network.fittings.filter(({ node, kind }) => !atNozzles.has(node) && kind !== 'coupling' && kind !== 'joint').map(({ node, at }) => [node, at])).entries()];
  return marks.flatMap(([node, at], i) =>
    placed({ id: `${network.ref.id}/${node}`, kind: 'pipe', about: { kind: 'node', network: network.ref.id, id: node }, name: `${network.network.name} P${i + 1}` }, datumAt(at), at, 'pipe axis', [['height', 'finished floor', 'pipe axis', at.z]]),
  );
}

function ofCylinders(network: DerivedNetwork, datumAt: (at: PlanPoint & { z: number }) => Datum | undefined): FieldDimension[] {
  return Object.values(network.network.cylinders).flatMap(({ id, name, at, railHeight_m }) =>
    placed({ id: `${network.ref.id}/${id}`, kind: 'cylinder', about: { kind: 'cylinder', network: network.ref.id, id }, name }, datumAt({ ...at, z: 0.5 }), at, 'cylinder axis', railHeight_m === null ? [] : [['rail', 'finished floor', 'rail', railHeight_m]]),
  );
}

/**
 * Every dimension of a plan that is measured on site, as far as it is known on the plan: first the rooms that nozzles
 * serve, since all else is measured from them, then cylinders, pipe and nozzles.
 */
export function fieldDimensionsOf(derived: Derived): FieldDimension[] {
  const datums = datumsOf(derived);
  const served = derived.spaces.filter(({ kind, key }) => kind === 'room' && datums.has(key));
  const byLevel = new Map(derived.levels.map(({ level, spaces }) => [level.id, spaceIndexOf(spaces)]));
  const datumOn = (network: DerivedNetwork) => (at: PlanPoint & { z: number }): Datum | undefined => {
    const space = byLevel.get(network.level.id)?.findAt({ ...at, z: at.z });
    return space && datums.get(space.key);
  };
  return [
    ...served.flatMap((space) => ofRoom(space, datums.get(space.key))),
    ...derived.networks.flatMap((network) => [...ofCylinders(network, datumOn(network)), ...ofPipe(network, datumOn(network))]),
    ...derived.nozzles.flatMap((nozzle) => ofNozzle(derived, nozzle, nozzle.space && datums.get(nozzle.space.key))),
  ];
}

/** The dimensions of one thing. */
export const fieldDimensionsAbout = (dimensions: readonly FieldDimension[], ref: Ref): FieldDimension[] => {
  const key = refKey(ref);
  return dimensions.filter(({ about }) => refKey(about) === key);
};
