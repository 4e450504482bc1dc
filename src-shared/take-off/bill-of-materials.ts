import type { Derived, DerivedNetwork } from '../derived/derived.ts';
import { placedSupportsOf } from '../derived/placed-supports.ts';
import type { AssemblyPart, Support } from '../model/plan.ts';
import type { PipeSize } from '../profile/pipe-table.ts';
import { type AsBuilt, type MovedNozzle, asBuiltOf } from './as-built.ts';
import { type MountKind, assemblyPartsOf, mountsOf } from './cylinder-parts.ts';
import { type FittingCount, fittingCountsOf } from './fitting-counts.ts';
import { USUAL_KERF_m } from './nest-pieces.ts';
import { type PipeLabels, pipeLabelsOf } from './pipe-labels.ts';
import { type PipeOrder, pipeOrdersOf } from './pipe-order.ts';
import { type Piece, type TakeOffOptions, USUAL_TAKE_OFF, piecesOf } from './pieces-of.ts';
import { type Sealant, sealantOf } from './sealant.ts';
import { likeness, tally } from './tally.ts';
import { type Weights, weightsOf } from './weights.ts';

export type { FittingCount } from './fitting-counts.ts';

/** Everything that a plan needs to be built, and how its pipe is cut. Nothing is rounded. */
export interface BillOfMaterials {
  readonly pieces: readonly Piece[];
  readonly pipe: readonly PipeOrder[];
  readonly fittings: readonly FittingCount[];
  /** `size` is null where a support holds no pipe. */
  readonly supports: readonly { readonly kind: Support['kind']; readonly size: PipeSize | null; readonly count: number }[];
  /** `code` is null while the orifice is not chosen, or is none that the unit profile lists. */
  readonly nozzles: readonly { readonly code: string | null; readonly area_m2: number | null; readonly count: number }[];
  /** `weight_kg` is that of one filled cylinder; null: blank in the unit profile. */
  readonly cylinders: readonly { readonly unit: string | null; readonly mounting: 'wall' | 'floor'; readonly weight_kg: number | null; readonly count: number }[];
  /** What stands before a manifold counts once for each cylinder. */
  readonly assembly: readonly { readonly kind: AssemblyPart['kind']; readonly name: string; readonly length_m: number; readonly count: number }[];
  /** One rail with one clamp for each cylinder (common practice), and the further restraints that are drawn. */
  readonly mounts: readonly { readonly kind: MountKind; readonly count: number }[];
  readonly anchors: readonly { readonly kind: string; readonly count: number }[];
  /** Wall cylinders whose anchors are not chosen. */
  readonly withoutAnchors: number;
  readonly sealant: Sealant;
  /** By network id. */
  readonly labels: Readonly<Record<string, PipeLabels>>;
  /** Where the pipe as measured on site moves a nozzle, or could not be laid out: networks by id with anything to say. */
  readonly asBuilt: Readonly<Record<string, { readonly moved: readonly MovedNozzle[]; readonly unused: readonly string[] }>>;
  readonly kerf_m: number;
  readonly stock_m: number;
  /** Of the pieces of pipe, and of the stock they are cut from [kg]. */
  readonly pipeWeight_kg: number;
  readonly stockWeight_kg: number;
  readonly weights: Weights;
}

export interface BillOptions extends TakeOffOptions {
  readonly kerf_m: number;
}
export const USUAL_BILL: BillOptions = { ...USUAL_TAKE_OFF, kerf_m: USUAL_KERF_m };

/** An area this near to that of a code is meant to be it [share]. */
const SAME_CODE = 0.001;

const nozzlesIn = ({ nozzles, profile }: DerivedNetwork) =>
  nozzles.map(({ nozzle: { orificeArea_m2: area_m2 } }) => {
    const made = area_m2 === null ? undefined : profile?.orifices.find((orifice) => Math.abs(orifice.area_m2 / area_m2 - 1) <= SAME_CODE);
    return { code: made?.code ?? null, area_m2 };
  });

const counted = <Kind extends object>(things: readonly Kind[]) => tally(things, likeness).map(({ thing, count }) => ({ ...thing, count }));

/** Takes a whole plan off. */
export function billOfMaterials({ networks }: Pick<Derived, 'networks'>, options: BillOptions = USUAL_BILL): BillOfMaterials {
  const taken = networks.map((network) => {
    const asBuilt = asBuiltOf(network);
    return { network, asBuilt, pieces: piecesOf(network, options, asBuilt) };
  });
  const pieces = taken.flatMap((each) => each.pieces);
  const pipe = pipeOrdersOf(pieces, options.stockLength_m, options.kerf_m);
  const fittings = fittingCountsOf(taken);
  const cylinders = networks.flatMap(({ network, profile }) => Object.values(network.cylinders).map((cylinder) => ({ cylinder, profile })));
  const anchors = cylinders.flatMap(({ cylinder }) => (cylinder.anchors ? Array.from({ length: cylinder.anchors.count }, () => ({ kind: cylinder.anchors?.kind ?? '' })) : []));
  const counts = {
    pipe,
    fittings,
    supports: counted(networks.flatMap((network) => placedSupportsOf(network).map(({ support, pipe: held }) => ({ kind: support.kind, size: held?.pipe.size ?? null })))),
    nozzles: counted(networks.flatMap(nozzlesIn)),
    cylinders: counted(cylinders.map(({ cylinder, profile }) => ({ unit: profile?.name ?? null, mounting: cylinder.mounting, weight_kg: profile?.limits.filledMass_kg?.value ?? null }))),
    assembly: counted(networks.flatMap(assemblyPartsOf)),
    mounts: counted(cylinders.flatMap(({ cylinder }) => mountsOf(cylinder).map((kind) => ({ kind })))),
  };
  return {
    pieces,
    ...counts,
    anchors: counted(anchors),
    withoutAnchors: cylinders.filter(({ cylinder }) => cylinder.mounting === 'wall' && !cylinder.anchors).length,
    sealant: sealantOf(pieces, fittings),
    labels: labelsOf(networks),
    asBuilt: differencesOf(taken),
    kerf_m: options.kerf_m,
    stock_m: options.stockLength_m,
    pipeWeight_kg: pipe.reduce((sum, { weight_kg }) => sum + weight_kg, 0),
    stockWeight_kg: pipe.reduce((sum, { stockWeight_kg }) => sum + stockWeight_kg, 0),
    weights: weightsOf(counts),
  };
}

const labelsOf = (networks: readonly DerivedNetwork[]): BillOfMaterials['labels'] => Object.fromEntries(networks.map((network) => [network.ref.id, pipeLabelsOf(network)]));

const differencesOf = (taken: readonly { readonly network: DerivedNetwork; readonly asBuilt: AsBuilt }[]): BillOfMaterials['asBuilt'] =>
  Object.fromEntries(taken.flatMap(({ network, asBuilt: { moved, unused } }) => (moved.length + unused.length > 0 ? [[network.ref.id, { moved, unused }] as const] : [])));
