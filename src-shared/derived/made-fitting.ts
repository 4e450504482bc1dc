import type { PipeSize } from '../profile/pipe-table.ts';
import type { MadeFitting } from '../profile/unit-profile.ts';
import type { FittingKind } from './derived.ts';

/** A fitting of a maker, with the leg of it that each leg of the plan is on. */
export interface MatchedFitting {
  readonly fitting: MadeFitting;
  /** Centre to end of each leg, in the order of the legs asked for [m]. */
  readonly reaches_m: readonly number[];
}

/** Orders in which a fitting can be turned without becoming another one: places in the maker's list of legs. The outside thread of a street elbow stays what it is. */
function turnsOf(kind: MadeFitting['kind'], count: number): readonly (readonly number[])[] {
  if (kind === 'tee') return [[0, 1, 2], [1, 0, 2]];
  if (kind === 'cross') return [[0, 1, 2, 3], [1, 0, 2, 3], [0, 1, 3, 2], [1, 0, 3, 2], [2, 3, 0, 1], [3, 2, 0, 1], [2, 3, 1, 0], [3, 2, 1, 0]];
  if (kind === 'street-elbow') return [[0, 1]];
  return count === 2 ? [[0, 1], [1, 0]] : [[0]];
}

const LEGS: Readonly<Partial<Record<MadeFitting['kind'], number>>> = { tee: 3, cross: 4, cap: 1, plug: 1 };

/** Kind under which a maker lists what a node demands; undefined: makers list no such thing. A street elbow turns by 90°. */
function madeKindOf(kind: FittingKind, isStreet: boolean): MadeFitting['kind'] | undefined {
  if (isStreet) return kind === 'elbow-90' ? 'street-elbow' : undefined;
  return kind === 'odd-bend' || kind === 'joint' || kind === 'drain' ? undefined : kind;
}

/** What was found in a list for a kind with its sizes, leg by leg. */
const found = new WeakMap<readonly MadeFitting[], Map<string, MatchedFitting | undefined>>();

/**
 * The first fitting of a maker's list that is of a kind and has these sizes, leg by leg, however it is turned.
 * @param legs  as the trade names them: of a tee or cross the run first, then what branches off
 */
export function findMadeFitting(list: readonly MadeFitting[], kind: FittingKind, legs: readonly { readonly size: PipeSize }[], isStreet = false): MatchedFitting | undefined {
  const madeKind = madeKindOf(kind, isStreet);
  if (!madeKind || legs.length === 0 || list.length === 0) return undefined;
  if (!Object.isFrozen(list)) return lookUp(list, madeKind, legs);
  let key: string = madeKind;
  for (const { size } of legs) key += ` ${size}`;
  const known = found.get(list) ?? new Map<string, MatchedFitting | undefined>();
  if (known.has(key)) return known.get(key);
  const match = lookUp(list, madeKind, legs);
  known.set(key, match);
  found.set(list, known);
  return match;
}

function lookUp(list: readonly MadeFitting[], madeKind: MadeFitting['kind'], legs: readonly { readonly size: PipeSize }[]): MatchedFitting | undefined {
  const count = LEGS[madeKind] ?? 2;
  for (const fitting of list) {
    if (fitting.kind !== madeKind) continue;
    const [only] = fitting.legs;
    const given = fitting.legs.length === 1 && only ? Array.from({ length: count }, () => only) : fitting.legs;
    if (given.length !== count || legs.length > count) continue;
    // A coupling that holds a plug is asked for with the one leg that pipe is on.
    for (const turn of turnsOf(madeKind, count)) {
      const turned = turn.flatMap((place) => given[place] ?? []);
      if (legs.every(({ size }, i) => turned[i]?.size === size)) return { fitting, reaches_m: turned.slice(0, legs.length).map(({ reach_m }) => reach_m) };
    }
  }
  return undefined;
}
