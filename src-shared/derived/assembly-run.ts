import { type PlanPoint3, distance3_m } from '../geometry/point.ts';
import { direction3 } from '../geometry/vector3.ts';
import type { AssemblyPart } from '../model/plan.ts';
import type { DerivedNetwork } from './derived.ts';
import { remembered } from './remember.ts';

/** A part of the discharge assembly where it stands. */
export interface AssemblyPiece {
  readonly part: AssemblyPart;
  /** Cylinder whose hose and valves it is part of; null: it stands once for all. */
  readonly cylinder: string | null;
  /** In flow order: where the part begins and where it ends. */
  readonly from: PlanPoint3;
  readonly to: PlanPoint3;
  /** Up to and with the last regulator the pressure is the cylinder's. */
  readonly zone: 'high' | 'low';
}

/** The discharge assembly of a network in space, from the valves of its cylinders to where the pipe begins. */
export interface AssemblyRun {
  readonly pieces: readonly AssemblyPiece[];
  /** Why parts are left out: each a sentence. */
  readonly missing: readonly string[];
}

const towards = (from: PlanPoint3, to: PlanPoint3, length_m: number): PlanPoint3 => {
  const way = direction3(from, to, 1e-9) ?? { x: 0, y: 0, z: 1 };
  return { x: from.x + way.x * length_m, y: from.y + way.y * length_m, z: from.z + way.z * length_m };
};

/** The place on a line that is nearest to another, kept between its ends. */
function footOn({ from, to }: { readonly from: PlanPoint3; readonly to: PlanPoint3 }, p: PlanPoint3): PlanPoint3 {
  const length_m = distance3_m(from, to);
  if (length_m === 0) return from;
  const along_m = ((p.x - from.x) * (to.x - from.x) + (p.y - from.y) * (to.y - from.y) + (p.z - from.z) * (to.z - from.z)) / length_m;
  return towards(from, to, Math.min(length_m, Math.max(0, along_m)));
}

/**
 * Lays the discharge assembly out: hoses from the valve outlets to their ends, rigid parts straight on from there with
 * the lengths they are listed with, what stands before a manifold once for each cylinder. A rigid part points to the
 * manifold, or to where the pipe begins; the last one ends there only if the lengths add up.
 */
export const assemblyRunOf = remembered(({ network, profile }: DerivedNetwork): AssemblyRun => {
  const { assembly, manifold } = network;
  const split = assembly.findIndex(({ kind }) => kind === 'manifold');
  const own = split < 0 ? assembly : assembly.slice(0, split);
  const common = split < 0 ? [] : assembly.slice(split);
  const regulated = assembly.findLastIndex(({ kind }) => kind === 'regulator');
  const zoneOf = (part: AssemblyPart): 'high' | 'low' => (regulated >= 0 && assembly.indexOf(part) > regulated ? 'low' : 'high');
  const source = network.source === null ? undefined : network.nodes[network.source]?.at;
  const outlet_m = profile?.limits.outletHeight_m?.value;
  const missing: string[] = [];
  const lack = (sentence: string): void => {
    if (!missing.includes(sentence)) missing.push(sentence);
  };
  if (outlet_m === undefined) lack('The height of the valve outlet is blank in the unit profile.');
  if (!source) lack('Where the pipe begins is not chosen.');
  if (split >= 0 && !manifold) lack('Where the manifold runs is not known.');

  const pieces: AssemblyPiece[] = [];
  const layStraight = (parts: readonly AssemblyPart[], cylinder: string | null, start: PlanPoint3, target: PlanPoint3): void => {
    let from = start;
    for (const part of parts) {
      const to = distance3_m(start, target) > 0 ? towards(from, distance3_m(from, target) > 1e-9 ? target : towards(start, target, distance3_m(start, target) + 1), part.length_m) : from;
      pieces.push({ part, cylinder, from, to, zone: zoneOf(part) });
      from = to;
    }
  };
  for (const cylinder of Object.values(network.cylinders)) {
    const [first, ...rest] = own;
    if (!first) break;
    const target = split < 0 ? source : manifold ? footOn(manifold, cylinder.hoseEnd ?? manifold.from) : undefined;
    if (cylinder.hoseEnd === null) {
      lack(`Where the hose of cylinder ${cylinder.name} ends is not known.`);
      continue;
    }
    const end = cylinder.hoseEnd;
    if (first.kind === 'hose' && outlet_m !== undefined) pieces.push({ part: first, cylinder: cylinder.id, from: { ...cylinder.at, z: outlet_m }, to: end, zone: zoneOf(first) });
    if (target) layStraight(first.kind === 'hose' ? rest : own, cylinder.id, end, target);
  }
  const [header, ...behind] = common;
  if (header && manifold) {
    pieces.push({ part: header, cylinder: null, from: manifold.from, to: manifold.to, zone: zoneOf(header) });
    if (source) layStraight(behind, null, manifold.to, source);
  }
  return { pieces, missing };
});
