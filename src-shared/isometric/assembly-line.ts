import { distanceToSegment_m } from '../geometry/segment.ts';
import { distance_m } from '../geometry/point.ts';
import type { AssemblyPart, Cylinder, Network } from '../model/plan.ts';
import type { PressureZone } from '../derived/pipe-zone.ts';
import type { IsoPlace } from './project.ts';

/** Directions on the drawing in which the discharge assembly leaves the pipe and in which its cylinders stand in a row [rad]. */
export interface AssemblyWays {
  readonly away_rad: number;
  readonly row_rad: number;
}

/** A part of the assembly on the drawing, about the place where the pipe begins [pitches]. */
export interface AssemblySpot extends IsoPlace {
  readonly part: AssemblyPart;
  readonly zone: PressureZone;
}

/**
 * The discharge assembly as a scheme: one pitch a part, in flow order from the cylinders to where the pipe begins.
 * x to the right, y up, in pitches from where the pipe begins.
 */
export interface AssemblyLine {
  readonly lines: readonly { readonly a: IsoPlace; readonly b: IsoPlace; readonly zone: PressureZone; readonly isManifold: boolean }[];
  readonly spots: readonly AssemblySpot[];
  readonly cylinders: readonly (IsoPlace & { readonly id: string })[];
  /** Away from the cylinders, along the line [rad]. */
  readonly flow_rad: number;
}

/** What of a network the scheme shows. */
export type AssembledNetwork = Pick<Network, 'assembly' | 'cylinders' | 'manifold' | 'nodes' | 'source'>;

/** Cylinders from the one nearest to where the agent leaves the manifold, or the valves, to the farthest. */
function fromOutlet({ cylinders, manifold, nodes, source }: AssembledNetwork): Cylinder[] {
  const outlet = manifold?.to ?? nodes[source ?? '']?.at;
  const standing = Object.values(cylinders);
  return outlet ? standing.sort((a, b) => distance_m(a.at, outlet) - distance_m(b.at, outlet)) : standing;
}

/** Both senses of the three axes of an isometric [rad]. */
const AXES_rad = [7, 11, 5, 1, 9, 3].map((twelfths) => (twelfths * Math.PI) / 6);
/** Line before the first part, from the last one to the cylinder, and from cylinder to cylinder [pitches]. */
const LEAD = 0.8;
const TAIL = 0.9;
const ROW = 1.35;
/** What each pitch costs by which the assembly makes the whole drawing wider, and higher, against one pitch of clearance. */
const WIDER = 0.09;
const HIGHER = 0.06;
/** Shares of a line where its distance to the pipe is taken. */
const SHARES = [0.25, 0.5, 0.75, 1];

const step = ({ x, y }: IsoPlace, angle_rad: number, length: number): IsoPlace => ({ x: x + Math.cos(angle_rad) * length, y: y + Math.sin(angle_rad) * length });
const between = (a: IsoPlace, b: IsoPlace, share: number): IsoPlace => ({ x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share });

/**
 * Lays the discharge assembly out in two directions.
 * @param most  cylinders drawn at most, each with what stands before the manifold
 */
export function assemblyLine(network: AssembledNetwork, { away_rad, row_rad }: AssemblyWays, most = Number.POSITIVE_INFINITY): AssemblyLine {
  const { assembly } = network;
  const split = assembly.findIndex(({ kind }) => kind === 'manifold');
  const own = split < 0 ? assembly : assembly.slice(0, split);
  const common = split < 0 ? [] : assembly.slice(split + 1);
  const regulated = assembly.findLastIndex(({ kind }) => kind === 'regulator');
  const zoneBehind = (part: AssemblyPart): PressureZone => (regulated >= 0 && assembly.indexOf(part) >= regulated ? 'low' : 'high');
  const zoneBefore = (part: AssemblyPart): PressureZone => (regulated >= 0 && assembly.indexOf(part) > regulated ? 'low' : 'high');
  const lines: { a: IsoPlace; b: IsoPlace; zone: PressureZone; isManifold: boolean }[] = [];
  const spots: AssemblySpot[] = [];
  const addLine = (a: IsoPlace, b: IsoPlace, zone: PressureZone, isManifold = false): void => void lines.push({ a, b, zone, isManifold });
  /** Parts against the flow, from a place on; answers where the line has come to and its zone there. */
  const lay = (from: IsoPlace, parts: readonly AssemblyPart[], lead: number, start: PressureZone): { place: IsoPlace; zone: PressureZone } => {
    let [place, zone] = [from, start];
    [...parts].reverse().forEach((part, i) => {
      const at = step(place, away_rad, i === 0 ? lead + 0.5 : 1);
      addLine(place, at, zoneBehind(part));
      spots.push({ ...at, part, zone: zoneBefore(part) });
      [place, zone] = [at, zoneBefore(part)];
    });
    return { place, zone };
  };

  const source = { x: 0, y: 0 };
  const pipe: PressureZone = regulated >= 0 ? 'low' : 'high';
  const end = lay(source, common, LEAD, pipe);
  const manifold = assembly[split];
  const nearest = own.at(-1);
  const branchZone = nearest ? zoneBehind(nearest) : end.zone;
  const header = split < 0 ? end.place : step(end.place, away_rad, common.length > 0 ? 0.8 : LEAD);
  if (split >= 0) addLine(end.place, header, end.zone);
  const shown = fromOutlet(network).slice(0, most);
  const feet = shown.map((_, i) => step(header, row_rad, i * ROW));
  const last = feet.at(-1);
  if (last && feet.length > 1) addLine(header, last, manifold ? zoneBefore(manifold) : branchZone, split >= 0);
  const stands: (IsoPlace & { id: string })[] = [];
  for (const [i, { id }] of shown.entries()) {
    const { place, zone } = lay(feet[i] ?? header, own, split < 0 && shown.length === 1 ? LEAD : 0.3, branchZone);
    const stand = step(place, away_rad, TAIL);
    addLine(place, stand, zone);
    stands.push({ ...stand, id });
  }
  if (shown.length === 0 && own.length > 0) lay(header, own, LEAD, branchZone);
  return { lines, spots, cylinders: stands, flow_rad: away_rad + Math.PI };
}

/**
 * The directions in which the discharge assembly keeps clearest of the pipe.
 * @param runs      drawn pipe about the place where it begins [pitches]; those that begin there are told apart
 * @param isInside  whether a place may be drawn on
 */
export function clearestWays(
  network: AssembledNetwork,
  runs: readonly { readonly a: IsoPlace; readonly b: IsoPlace; readonly isHere: boolean }[],
  isInside: (place: IsoPlace) => boolean,
  most?: number,
): AssemblyWays {
  let best: { readonly ways: AssemblyWays; readonly rating: number } | undefined;
  const growth = growthOf(runs);
  const isRow = Math.min(most ?? Number.POSITIVE_INFINITY, Object.keys(network.cylinders).length) > 1;
  for (const away_rad of AXES_rad) {
    for (const row_rad of isRow ? AXES_rad.filter((each) => Math.abs(Math.sin(each - away_rad)) > 0.1) : [away_rad]) {
      const ways = { away_rad, row_rad };
      const { lines } = assemblyLine(network, ways, most);
      const clear = lines.flatMap(({ a, b }) =>
        SHARES.map((share) => {
          const place = between(a, b, share);
          const fromStart = Math.hypot(place.x, place.y);
          const gap = Math.min(3, ...runs.map(({ isHere, ...segment }) => distanceToSegment_m(place, segment) / (isHere ? Math.min(1, fromStart / 3) : 1)));
          return gap - (isInside(place) ? 0 : 1000);
        }),
      );
      const rating = Math.min(3, ...clear) + clear.reduce((sum, gap) => sum + gap, 0) / (100 * Math.max(1, clear.length)) - growth(lines);
      if (!best || rating > best.rating + 1e-6) best = { ways, rating };
    }
  }
  return best?.ways ?? { away_rad: -Math.PI / 2, row_rad: 0 };
}

/** What it costs that lines reach beyond the drawn pipe. */
function growthOf(runs: readonly { readonly a: IsoPlace; readonly b: IsoPlace }[]): (lines: AssemblyLine['lines']) => number {
  const places = [{ x: 0, y: 0 }, ...runs.flatMap(({ a, b }) => [a, b])];
  const sizeOf = (all: readonly IsoPlace[]): readonly [number, number] => {
    const [xs, ys] = [all.map(({ x }) => x), all.map(({ y }) => y)];
    return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
  };
  const [wide, high] = sizeOf(places);
  return (lines) => {
    const [wider, higher] = sizeOf([...places, ...lines.flatMap(({ a, b }) => [a, b])]);
    return WIDER * (wider - wide) + HIGHER * (higher - high);
  };
}
