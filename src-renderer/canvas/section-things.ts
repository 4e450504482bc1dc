import { type AssemblyPiece, assemblyRunOf } from '#shared/derived/assembly-run';
import type { DerivedNetwork, DerivedNozzle, Space } from '#shared/derived/derived';
import { type PlacedSupport, placedSupportsOf } from '#shared/derived/placed-supports';
import { isInside } from '#shared/geometry/outline';
import { type PlanPoint, type PlanPoint3, distance3_m } from '#shared/geometry/point';
import { type RefOf, type Support, isSameRef } from '#shared/model/plan';
import type { SectionPath } from './section-path.ts';
import { type PressureZone, pipeZoneOf } from '#shared/derived/pipe-zone';
import { type Piece, onLine } from './section-piece.ts';

/** A place in the section: distance along the way and height above the finished floor [m]. */
export interface SectionPoint {
  readonly s: number;
  readonly z: number;
}

export interface SectionPipe {
  readonly ref: RefOf<'pipe'>;
  readonly zone: PressureZone;
  readonly a: SectionPoint;
  readonly b: SectionPoint;
  readonly outside_m: number;
  readonly isBeyond: boolean;
}

export interface SectionNode {
  readonly ref: RefOf<'node'>;
  readonly at: SectionPoint;
  /** Its place in the plan. */
  readonly place: PlanPoint3;
}

export interface SectionNozzle {
  readonly nozzle: DerivedNozzle;
  readonly at: SectionPoint;
  readonly isBeyond: boolean;
}

export interface SectionSupport {
  readonly ref: RefOf<'support'>;
  readonly kind: Support['kind'];
  readonly at: SectionPoint;
  /** Its place in the plan. */
  readonly place: PlanPoint3;
  /** The pipe that it holds, as the section shows it. */
  readonly pipe: SectionPipe;
}

export interface SectionCylinder {
  readonly ref: RefOf<'cylinder'>;
  readonly network: DerivedNetwork;
  readonly name: string;
  readonly along_m: number;
  readonly railHeight_m: number | null;
  readonly outletHeight_m: number | undefined;
  /** Where the pipe begins, seen from this cylinder. */
  readonly source: SectionPoint | undefined;
  /** Its discharge assembly is drawn as it is built, and not as a schematic. */
  readonly hasPieces: boolean;
}

/** A part of the discharge assembly as the section shows it, in flow order. */
export interface SectionPiece {
  readonly piece: AssemblyPiece;
  readonly places: readonly SectionPoint[];
}

/** The pipe work of a section. */
export interface SectionThings {
  readonly pipes: readonly SectionPipe[];
  readonly nodes: readonly SectionNode[];
  readonly nozzles: readonly SectionNozzle[];
  readonly supports: readonly SectionSupport[];
  readonly cylinders: readonly SectionCylinder[];
  /** Parts of the discharge assembly whose places are known; an unfolded run shows none of them. */
  readonly assembly: readonly SectionPiece[];
}
/** Nothing hangs or stands there. */
export const NO_THINGS: SectionThings = { pipes: [], nodes: [], nozzles: [], supports: [], cylinders: [], assembly: [] };

const cylinderOf = (network: DerivedNetwork, id: string, along_m: number, source: SectionPoint | undefined, hasPieces: boolean): SectionCylinder[] => {
  const cylinder = network.network.cylinders[id];
  if (!cylinder) return [];
  return [
    {
      ref: { kind: 'cylinder', network: network.network.id, id },
      network,
      name: cylinder.name,
      along_m,
      railHeight_m: cylinder.railHeight_m,
      outletHeight_m: network.profile?.limits.outletHeight_m?.value,
      source,
      hasPieces,
    },
  ];
};

/** Nearer to the cut than this is on it [m]. */
const ON_CUT_m = 0.15;

/** The supports on the pipes that a section shows. */
const supportsOn = (network: DerivedNetwork, shown: readonly SectionPipe[], placeOf: (placed: PlacedSupport) => SectionPoint | undefined): SectionSupport[] =>
  placedSupportsOf(network).flatMap((placed): SectionSupport[] => {
    const { ref, support, pipe: held } = placed;
    const pipe = held && shown.find((each) => isSameRef(each.ref, held.ref));
    const at = pipe && placeOf(placed);
    return at ? [{ ref, kind: support.kind, at, place: support.at, pipe }] : [];
  });

/** The pipes, nodes and nozzles of an unfolded run, each as far along as the run has come. */
export function runThings(networks: readonly DerivedNetwork[], run: NonNullable<SectionPath['run']>): SectionThings {
  const network = networks.find((each) => each.network.id === run.network);
  if (!network) return NO_THINGS;
  const { nodes, source } = network.network;
  const at = (id: string): SectionPoint | undefined => {
    const s = run.nodes.get(id);
    const node = nodes[id];
    return s === undefined || !node ? undefined : { s, z: node.at.z };
  };
  const pipes = network.pipes.flatMap(({ ref, pipe, outside_m }): SectionPipe[] => {
    const a = at(pipe.from);
    const b = at(pipe.to);
    return run.pipes.has(pipe.id) && a && b ? [{ ref, zone: pipeZoneOf(network.network), a, b, outside_m, isBeyond: false }] : [];
  });
  return {
    pipes,
    supports: supportsOn(network, pipes, ({ support, pipe }) => {
      const [a, b, start] = [at(pipe?.pipe.from ?? ''), at(pipe?.pipe.to ?? ''), nodes[pipe?.pipe.from ?? '']?.at];
      const share = pipe && start && pipe.length_m > 0 ? distance3_m(start, support.at) / pipe.length_m : 0;
      return a && b && { s: a.s + (b.s - a.s) * share, z: support.at.z };
    }),
    nodes: [...run.nodes.keys()].flatMap((id) => {
      const place = at(id);
      const node = nodes[id];
      return place && node ? [{ ref: { kind: 'node' as const, network: network.network.id, id }, at: place, place: node.at }] : [];
    }),
    nozzles: network.nozzles.flatMap((nozzle) => {
      const place = at(nozzle.nozzle.node);
      return place ? [{ nozzle, at: place, isBeyond: false }] : [];
    }),
    cylinders: run.cylinder === null ? [] : cylinderOf(network, run.cylinder, run.cylinderAlong_m, source === null ? undefined : at(source), false),
    assembly: [],
  };
}

/** What hangs and stands in the rooms that a straight cut goes through, seen square to it. */
export function lineThings(networks: readonly DerivedNetwork[], line: Piece, kind: SectionPath['kind'], rooms: readonly Space[]): SectionThings {
  const isInRooms = (p: PlanPoint): boolean => rooms.some((room) => isInside(p, room.outline));
  const seen = (p: PlanPoint | PlanPoint3): { s: number; left_m: number } | undefined => {
    const place = onLine(line, p);
    if (place.s < -1e-6 || place.s > line.length_m + 1e-6) return undefined;
    return kind === 'line' && place.left_m < -ON_CUT_m ? undefined : place;
  };
  const isBeyond = ({ left_m }: { left_m: number }): boolean => Math.abs(left_m) > ON_CUT_m;
  const things = { pipes: [] as SectionPipe[], nodes: [] as SectionNode[], nozzles: [] as SectionNozzle[], supports: [] as SectionSupport[], cylinders: [] as SectionCylinder[], assembly: [] as SectionPiece[] };
  for (const network of networks) {
    const { nodes, cylinders, source } = network.network;
    const shownNodes = new Set<string>();
    for (const { ref, from, to, pipe, outside_m } of network.pipes) {
      const a = seen(from);
      const b = seen(to);
      if (!a || !b || !isInRooms({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 })) continue;
      shownNodes.add(pipe.from);
      shownNodes.add(pipe.to);
      things.pipes.push({ ref, zone: pipeZoneOf(network.network), a: { s: a.s, z: from.z }, b: { s: b.s, z: to.z }, outside_m, isBeyond: isBeyond(a) || isBeyond(b) });
    }
    things.supports.push(
      ...supportsOn(network, things.pipes, ({ support }) => {
        const place = seen(support.at);
        return place && { s: place.s, z: support.at.z };
      }),
    );
    for (const id of shownNodes) {
      const node = nodes[id];
      const place = node && seen(node.at);
      if (node && place) things.nodes.push({ ref: { kind: 'node', network: network.network.id, id }, at: { s: place.s, z: node.at.z }, place: node.at });
    }
    for (const nozzle of network.nozzles) {
      const place = nozzle.at && seen(nozzle.at);
      if (nozzle.at && place && isInRooms(nozzle.at)) things.nozzles.push({ nozzle, at: { s: place.s, z: nozzle.at.z }, isBeyond: isBeyond(place) });
    }
    const begin = source === null ? undefined : nodes[source]?.at;
    const beginSeen = begin && seen(begin);
    const run = assemblyRunOf(network);
    const shown = new Set<string>();
    for (const { id, at } of Object.values(cylinders)) {
      const place = seen(at);
      if (!place || !isInRooms(at)) continue;
      shown.add(id);
      things.cylinders.push(...cylinderOf(network, id, place.s, begin && beginSeen ? { s: beginSeen.s, z: begin.z } : undefined, run.isPlaced));
    }
    if (run.isPlaced && shown.size > 0) things.assembly.push(...run.pieces.filter(({ cylinder }) => cylinder === null || shown.has(cylinder)).map((piece) => ({ piece, places: piece.curve.map((p) => ({ s: onLine(line, p).s, z: p.z })) })));
  }
  return things;
}
