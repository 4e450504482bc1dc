import { fittingLegWeight_kg } from '../calculations/formulas/part-weights.ts';
import { boughtFittingsOf, fittingSizesOf } from '../derived/bought-fittings.ts';
import type { DerivedNetwork, FittingKind } from '../derived/derived.ts';
import { findMadeFitting } from '../derived/made-fitting.ts';
import { remembered } from '../derived/remember.ts';
import type { PipeSize } from '../profile/pipe-table.ts';
import { endTakeOff } from './end-take-off.ts';
import type { Piece } from './pieces-of.ts';
import { likeness, tally } from './tally.ts';

/** What one fitting weighs: as its maker says, estimated, or not known. */
export interface FittingWeight {
  readonly weight_kg: number | null;
  readonly weightFrom: 'maker' | 'estimate' | null;
}

/** Fittings that are alike, with how many there are. */
export interface FittingCount extends FittingWeight {
  readonly kind: FittingKind;
  /** An elbow with one outside thread. */
  readonly isStreet: boolean;
  /** Sizes as the trade names them, of a tee the run and then the branch; one where all are alike. */
  readonly sizes: readonly PipeSize[];
  /** null: blank in the unit profile. */
  readonly fittingClass: string | null;
  /** At a node of the plan, or between two lengths of stock in one run. */
  readonly place: 'node' | 'stock';
  readonly count: number;
}

type One = Omit<FittingCount, 'count'>;

/** An estimate needs the reach of every leg. */
function weightOf(network: DerivedNetwork, kind: FittingKind, legs: readonly { readonly size: PipeSize }[], isStreet: boolean): FittingWeight {
  const { profile } = network;
  const made = findMadeFitting(profile?.madeFittings ?? [], kind, legs, isStreet) ?? null;
  if (made && made.fitting.weight_kg !== null) return { weight_kg: made.fitting.weight_kg, weightFrom: 'maker' };
  if (kind === 'joint' || kind === 'odd-bend' || kind === 'drain') return { weight_kg: null, weightFrom: null };
  const isReducing = new Set(legs.map(({ size }) => size)).size > 1;
  const fitting = { legs: legs.map(({ size }) => ({ pipe: null, size })), isReducing, isStreet, made };
  let weight_kg = 0;
  for (const [leg, { size }] of legs.entries()) {
    const takeOff = endTakeOff({ kind, fitting, leg, isReduced: false }, { size, joint: 'threaded' }, profile?.fittingClass ?? null, 'shop');
    if (!takeOff.isKnown || takeOff.reach_m === 0) return { weight_kg: null, weightFrom: null };
    weight_kg += fittingLegWeight_kg(size, takeOff.reach_m);
  }
  return { weight_kg, weightFrom: 'estimate' };
}

const NO_PROFILE = {};

/** Like fittings are many, and the same for as long as the unit profile is: each kind is worked out once, with what makes it alike. */
const kindsOf = remembered((_profile: object) => new Map<string, { readonly one: One; readonly key: string }>());

function kindOf(network: DerivedNetwork, kind: FittingKind, legs: readonly { readonly size: PipeSize }[], isStreet: boolean, place: FittingCount['place']) {
  const make = () => {
    const one = oneOf(network, kind, legs, isStreet, place);
    return { one, key: likeness(one) };
  };
  const { profile = NO_PROFILE } = network;
  if (!Object.isFrozen(profile) && profile !== NO_PROFILE) return make();
  const kinds = kindsOf(profile);
  let id = `${kind} ${isStreet} ${place}`;
  for (const { size } of legs) id += ` ${size}`;
  const known = kinds.get(id) ?? make();
  kinds.set(id, known);
  return known;
}

function oneOf(network: DerivedNetwork, kind: FittingKind, legs: readonly { readonly size: PipeSize }[], isStreet: boolean, place: FittingCount['place']): One {
  const sizes = fittingSizesOf({ legs: legs.map(({ size }) => ({ pipe: null, size })) });
  return { kind, isStreet, sizes, fittingClass: network.profile?.fittingClass ?? null, place, ...weightOf(network, kind, legs, isStreet) };
}

/**
 * Every fitting that a network is bought with, like ones counted: those of its nodes, and what joins two lengths of stock.
 * @param pieces  the network's own
 */
export function fittingCountsOf(taken: readonly { readonly network: DerivedNetwork; readonly pieces: readonly Piece[] }[]): FittingCount[] {
  const all = taken.flatMap(({ network, pieces }) => [
    ...boughtFittingsOf(network).map(({ kind, legs, isStreet }) => kindOf(network, kind, legs, isStreet, 'node')),
    // Each ends two pieces, and begins one.
    ...pieces.flatMap(({ from, size }) => (from.node === null && (from.kind === 'coupling' || from.kind === 'joint') ? [kindOf(network, from.kind, [{ size }, { size }], false, 'stock')] : [])),
  ]);
  return tally(all, ({ key }) => key).map(({ thing, count }) => ({ ...thing.one, count }));
}
