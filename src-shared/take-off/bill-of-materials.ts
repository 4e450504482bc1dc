import type { Derived, DerivedNetwork, FittingKind } from '../derived/derived.ts';
import { placedSupportsOf } from '../derived/placed-supports.ts';
import type { AssemblyPart, Support } from '../model/plan.ts';
import type { PipeSize } from '../profile/pipe-table.ts';
import { USUAL_KERF_m } from './nest-pieces.ts';
import { type Piece, type TakeOffOptions, USUAL_TAKE_OFF, piecesOf } from './pieces-of.ts';
import { type PipeOrder, pipeOrdersOf } from './pipe-order.ts';
import { tally } from './tally.ts';

export interface FittingCount {
  /** A joint is a weld or a grooved coupling. */
  readonly kind: FittingKind | 'joint';
  /** Sizes of its legs, the one toward the source first; one where all are alike. */
  readonly sizes: readonly PipeSize[];
  /** null: blank in the unit profile. */
  readonly fittingClass: string | null;
  readonly count: number;
}

/** Everything that a plan needs to be built, and how its pipe is cut. Nothing is rounded. */
export interface BillOfMaterials {
  readonly pieces: readonly Piece[];
  readonly pipe: readonly PipeOrder[];
  readonly fittings: readonly FittingCount[];
  /** `size` is null where a support holds no pipe. */
  readonly supports: readonly { readonly kind: Support['kind']; readonly size: PipeSize | null; readonly count: number }[];
  /** `code` is null while the orifice is not chosen, or is none that the unit profile lists. */
  readonly nozzles: readonly { readonly code: string | null; readonly area_m2: number | null; readonly count: number }[];
  readonly cylinders: readonly { readonly unit: string | null; readonly mounting: 'wall' | 'floor'; readonly count: number }[];
  readonly assembly: readonly { readonly kind: AssemblyPart['kind']; readonly name: string; readonly length_m: number; readonly count: number }[];
  readonly anchors: readonly { readonly kind: string; readonly count: number }[];
  /** Wall cylinders whose anchors are not chosen. */
  readonly withoutAnchors: number;
  readonly kerf_m: number;
  readonly stock_m: number;
  /** Of the pieces of pipe, and of the stock they are cut from; null when no weight is known for some [kg]. */
  readonly pipeWeight_kg: number | null;
  readonly stockWeight_kg: number | null;
}

export interface BillOptions extends TakeOffOptions {
  readonly kerf_m: number;
}
export const USUAL_BILL: BillOptions = { ...USUAL_TAKE_OFF, kerf_m: USUAL_KERF_m };

/** An area this near to that of a code is meant to be it [share]. */
const SAME_CODE = 0.001;

type Fitted = Omit<FittingCount, 'count'>;

function fittingsIn({ network, fittings, profile }: DerivedNetwork): Fitted[] {
  const fittingClass = profile?.fittingClass ?? null;
  return fittings.map(({ kind, pipes }) => {
    const sizes = pipes.flatMap((id) => network.pipes[id]?.size ?? []);
    return { kind, sizes: new Set(sizes).size === 1 ? sizes.slice(0, 1) : sizes, fittingClass };
  });
}

/** Couplings and joints that no node of the plan has a fitting for: each ends two pieces. */
function joinersIn({ profile }: DerivedNetwork, pieces: readonly Piece[]): Fitted[] {
  const fittingClass = profile?.fittingClass ?? null;
  return pieces.flatMap(({ from, size }): Fitted[] => (from.kind === 'coupling' || from.kind === 'joint' ? [{ kind: from.kind, sizes: [size], fittingClass }] : []));
}

const nozzlesIn = ({ nozzles, profile }: DerivedNetwork) =>
  nozzles.map(({ nozzle: { orificeArea_m2: area_m2 } }) => {
    const made = area_m2 === null ? undefined : profile?.orifices.find((orifice) => Math.abs(orifice.area_m2 / area_m2 - 1) <= SAME_CODE);
    return { code: made?.code ?? null, area_m2 };
  });

const counted = <Kind extends object>(things: readonly Kind[]) => tally(things, (thing) => JSON.stringify(thing)).map(({ thing, count }) => ({ ...thing, count }));

/** Sum of numbers, or null when one is not known. */
const total = (values: readonly (number | null)[]): number | null => values.reduce<number | null>((sum, value) => (sum === null || value === null ? null : sum + value), 0);

/** Takes a whole plan off. */
export function billOfMaterials({ networks }: Pick<Derived, 'networks'>, options: BillOptions = USUAL_BILL): BillOfMaterials {
  const taken = networks.map((network) => ({ network, pieces: piecesOf(network, options) }));
  const pieces = taken.flatMap((each) => each.pieces);
  const pipe = pipeOrdersOf(pieces, options.stockLength_m, options.kerf_m);
  const cylinders = networks.flatMap(({ network, profile }) => Object.values(network.cylinders).map((cylinder) => ({ cylinder, unit: profile?.name ?? null })));
  const anchors = cylinders.flatMap(({ cylinder }) => (cylinder.anchors ? Array.from({ length: cylinder.anchors.count }, () => ({ kind: cylinder.anchors?.kind ?? '' })) : []));
  return {
    pieces,
    pipe,
    fittings: counted(taken.flatMap((each) => [...fittingsIn(each.network), ...joinersIn(each.network, each.pieces)])),
    supports: counted(networks.flatMap((network) => placedSupportsOf(network).map(({ support, pipe: held }) => ({ kind: support.kind, size: held?.pipe.size ?? null })))),
    nozzles: counted(networks.flatMap(nozzlesIn)),
    cylinders: counted(cylinders.map(({ cylinder, unit }) => ({ unit, mounting: cylinder.mounting }))),
    assembly: counted(networks.flatMap(({ network }) => network.assembly.map(({ kind, name, length_m }) => ({ kind, name, length_m })))),
    anchors: counted(anchors),
    withoutAnchors: cylinders.filter(({ cylinder }) => cylinder.mounting === 'wall' && !cylinder.anchors).length,
    kerf_m: options.kerf_m,
    stock_m: options.stockLength_m,
    pipeWeight_kg: total(pipe.map(({ weight_kg }) => weight_kg)),
    stockWeight_kg: total(pipe.map(({ stockWeight_kg }) => stockWeight_kg)),
  };
}
