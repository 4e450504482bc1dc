import { dot3, mixed } from '../geometry/bent-path.ts';
import { type PlanPoint3, distance3_m } from '../geometry/point.ts';
import { type Direction3, direction3 } from '../geometry/vector3.ts';
import type { AssemblyPart, Cylinder, Network } from '../model/plan.ts';
import type { UnitProfile } from '../profile/unit-profile.ts';
import type { DerivedNetwork } from './derived.ts';
import { type Hose, hoseOf } from './hose-of.ts';
import { remembered, rememberedPart } from './remember.ts';

/** A part of the discharge assembly where it stands. */
export interface AssemblyPiece {
  readonly part: AssemblyPart;
  /** Cylinder whose hose and valves it is part of; null: it stands once for all. */
  readonly cylinder: string | null;
  /** In flow order: where the part begins and where it ends. */
  readonly from: PlanPoint3;
  readonly to: PlanPoint3;
  /** Its middle line in flow order, both ends included: straight but for a hose. */
  readonly curve: readonly PlanPoint3[];
  /** Up to and with the last regulator the pressure is the cylinder's. */
  readonly zone: 'high' | 'low';
}

/** Lengths that do not add up. */
export interface AssemblyGap {
  readonly cylinder: string | null;
  /** short: a space is left before `before`; beyond: the parts are too long for it; drawn: the manifold is drawn longer (or, negative, shorter) than it is listed. */
  readonly kind: 'short' | 'beyond' | 'drawn';
  readonly before: 'pipe' | 'manifold';
  /** > 0 [m], but for `drawn`. */
  readonly off_m: number;
  readonly at: PlanPoint3;
}

/** A straight stretch of rigid parts that is clamped to the wall or its rail. */
export interface AssemblyStretch {
  readonly cylinder: string | null;
  readonly from: PlanPoint3;
  readonly to: PlanPoint3;
  readonly lie: 'level' | 'upright' | 'aslant';
  /** Places of its clamps; none on a stretch too short for two, which what it is screwed to holds. */
  readonly clamps: readonly PlanPoint3[];
}

/** The discharge assembly of a network in space, from the valves of its cylinders to where the pipe begins. */
export interface AssemblyRun {
  readonly pieces: readonly AssemblyPiece[];
  /** Hose by cylinder, of those whose both ends are known. */
  readonly hoses: ReadonlyMap<string, Hose>;
  readonly gaps: readonly AssemblyGap[];
  readonly stretches: readonly AssemblyStretch[];
  /** Every part has its place, so that the assembly can be drawn as it is. */
  readonly isPlaced: boolean;
  /** Why parts are left out, or lengths do not count: each a sentence. */
  readonly missing: readonly string[];
}

/** A space or excess up to this is a turn of a thread [m]; common practice. */
const MADE_UP_m = 0.003;
/** A rigid stretch from this length on takes two clamps [m], a quarter of it in from either end; common practice. */
const CLAMPED_m = 0.2;
/** Direction within this of level or upright counts as such: 1° as a component. */
const LEANING = Math.sin(Math.PI / 180);

/** The place on a line that is nearest to another, kept between its ends. */
function footOn({ from, to }: { readonly from: PlanPoint3; readonly to: PlanPoint3 }, p: PlanPoint3): PlanPoint3 {
  const way = direction3(from, to, 1e-9);
  return way ? mixed(1, from, Math.min(distance3_m(from, to), Math.max(0, dot3(mixed(1, p, -1, from), way))), way) : from;
}

function stretchOf(cylinder: string | null, from: PlanPoint3, to: PlanPoint3): AssemblyStretch[] {
  const way = direction3(from, to, 1e-6);
  if (!way) return [];
  const lie = Math.abs(way.z) <= LEANING ? 'level' : Math.hypot(way.x, way.y) <= LEANING ? 'upright' : 'aslant';
  const clamps = distance3_m(from, to) < CLAMPED_m ? [] : [0.25, 0.75].map((share) => mixed(1 - share, from, share, to));
  return [{ cylinder, from, to, lie, clamps }];
}

/** The direction in which the agent goes on where the pipe begins, along its first pipe. */
const pipeWay = (source: PlanPoint3, from: PlanPoint3 | undefined, to: PlanPoint3 | undefined): Direction3 | undefined =>
  from && to && (direction3(source, to, 1e-6) ?? direction3(source, from, 1e-6));

/**
 * Lays the discharge assembly out: hoses from the valve outlets to their ends, rigid parts straight on from there with
 * the lengths they are listed with, what stands before a manifold once for each cylinder. A rigid part points to the
 * manifold, or to where the pipe begins; whether the last one ends there is told as a gap.
 * The very same answer while nothing but pipe beyond the first is changed.
 */
export const assemblyRunOf = remembered(({ network, pipes, profile }: DerivedNetwork): AssemblyRun => {
  const { cylinders, assembly, manifold, source } = network;
  const first = pipes.find(({ pipe }) => pipe.from === source || pipe.to === source);
  return laidOut(cylinders, assembly, manifold, profile, source === null ? undefined : network.nodes[source]?.at, first?.from, first?.to);
});

const laidOut = rememberedPart((cylindersById: Network['cylinders'], assembly: Network['assembly'], manifold: Network['manifold'], profile: UnitProfile | undefined, source: PlanPoint3 | undefined, firstFrom: PlanPoint3 | undefined, firstTo: PlanPoint3 | undefined): AssemblyRun => {
  const split = assembly.findIndex(({ kind }) => kind === 'manifold');
  const own = split < 0 ? assembly : assembly.slice(0, split);
  const regulated = assembly.findLastIndex(({ kind }) => kind === 'regulator');
  const zoneOf = (part: AssemblyPart): 'high' | 'low' => (regulated >= 0 && assembly.indexOf(part) > regulated ? 'low' : 'high');
  const outlet_m = profile?.limits.outletHeight_m?.value;
  const least_m = profile?.limits.hoseBendRadius_m?.value;
  const missing: string[] = [];
  const lack = (sentence: string): void => {
    if (!missing.includes(sentence)) missing.push(sentence);
  };
  const cylinders = Object.values(cylindersById);
  if (assembly.length === 0) lack('No part of the discharge assembly is listed.');
  if (cylinders.length === 0) lack('No cylinder is drawn.');
  if (outlet_m === undefined) lack('The height of the valve outlet is blank in the unit profile.');
  if (!source) lack('Where the pipe begins is not chosen.');
  if (split >= 0 && !manifold) lack('Where the manifold runs is not known.');

  const pieces: AssemblyPiece[] = [];
  const hoses = new Map<string, Hose>();
  const gaps: AssemblyGap[] = [];
  const stretches: AssemblyStretch[] = [];

  /** Lays rigid parts one behind the other toward a target, and tells how far they miss it. */
  const layStraight = (parts: readonly AssemblyPart[], cylinder: string | null, start: PlanPoint3, target: PlanPoint3, before: AssemblyGap['before'], onward: Direction3 | undefined): void => {
    const way = direction3(start, target, 1e-6) ?? onward;
    let from = start;
    for (const part of parts) {
      const to = way ? mixed(1, from, part.length_m, way) : from;
      pieces.push({ part, cylinder, from, to, curve: [from, to], zone: zoneOf(part) });
      from = to;
    }
    if (!isMeasured(parts)) return;
    const off_m = distance3_m(start, target) - parts.reduce((sum, { length_m }) => sum + length_m, 0);
    if (Math.abs(off_m) > MADE_UP_m) gaps.push({ cylinder, kind: off_m > 0 ? 'short' : 'beyond', before, off_m: Math.abs(off_m), at: from });
    if (before === 'manifold' || !manifold || split < 0) stretches.push(...stretchOf(cylinder, start, from));
  };
  const isMeasured = (parts: readonly AssemblyPart[]): boolean => {
    const blank = parts.filter(({ length_m }) => length_m === 0);
    for (const { name } of blank) lack(`The length of “${name}” is not entered.`);
    return blank.length === 0;
  };

  const layCylinder = (cylinder: Cylinder): void => {
    const [first, ...rest] = own;
    const end = cylinder.hoseEnd;
    if (!end) {
      lack(`Where the hose of cylinder ${cylinder.name} ends is not known.`);
      return;
    }
    const target = split < 0 ? source : manifold ? footOn(manifold, end) : undefined;
    if (!first || !target) return;
    const hasHose = first.kind === 'hose';
    const onward = split < 0 && source ? pipeWay(source, firstFrom, firstTo) : undefined;
    if (hasHose && outlet_m !== undefined) {
      if (cylinder.outlet_rad === null) lack(`Which way the outlet of cylinder ${cylinder.name} points is not known.`);
      isMeasured([first]);
      const way = direction3(end, target, 1e-6) ?? onward;
      if (!way) lack(`In which direction the hose of cylinder ${cylinder.name} ends is not known.`);
      const hose = way && hoseOf(cylinder, first, outlet_m, least_m, way.x, way.y, way.z);
      if (hose) hoses.set(cylinder.id, hose);
      const from = { x: cylinder.at.x, y: cylinder.at.y, z: outlet_m };
      pieces.push({ part: first, cylinder: cylinder.id, from, to: end, curve: hose?.curve ?? [from, end], zone: zoneOf(first) });
    }
    layStraight(hasHose ? rest : own, cylinder.id, end, target, split < 0 ? 'pipe' : 'manifold', onward);
  };
  for (const cylinder of cylinders) layCylinder(cylinder);

  const header = split < 0 ? undefined : assembly[split];
  if (header && manifold) {
    pieces.push({ part: header, cylinder: null, from: manifold.from, to: manifold.to, curve: [manifold.from, manifold.to], zone: zoneOf(header) });
    const way = direction3(manifold.from, manifold.to, 1e-6);
    const drawn_m = distance3_m(manifold.from, manifold.to) - header.length_m;
    if (isMeasured([header]) && Math.abs(drawn_m) > MADE_UP_m) gaps.push({ cylinder: null, kind: 'drawn', before: 'manifold', off_m: drawn_m, at: manifold.from });
    const behind = assembly.slice(split + 1);
    if (source) layStraight(behind, null, manifold.to, source, 'pipe', way);
    const last = pieces.at(-1)?.to ?? manifold.to;
    const isInLine = way !== undefined && direction3(manifold.to, last, 1e-6) !== undefined && dot3(way, direction3(manifold.to, last, 1e-6) ?? way) > 1 - 1e-6;
    stretches.push(...(isInLine ? stretchOf(null, manifold.from, last) : [...stretchOf(null, manifold.from, manifold.to), ...stretchOf(null, manifold.to, last)]));
  }
  const isPlaced =
    assembly.length > 0 && cylinders.length > 0 && source !== undefined && outlet_m !== undefined && (split < 0 || manifold !== null) && (own[0]?.kind === 'hose' ? cylinders.every(({ id }) => hoses.has(id)) : cylinders.every(({ hoseEnd }) => hoseEnd !== null));
  return { pieces, hoses, gaps, stretches, isPlaced, missing };
});
