import type { BillOfMaterials } from './bill-of-materials.ts';

/** What a plan weighs, as far as it is known. */
export interface Weights {
  /** Of the pieces of pipe, one without a cut length as long as it can be [kg]. */
  readonly pipe_kg: number;
  /** Of the fittings whose weight is known or estimated [kg]. */
  readonly fittings_kg: number;
  /** What of that is only estimated [kg]. */
  readonly estimated_kg: number;
  /** Of the filled cylinders whose weight the manual gives [kg]. */
  readonly cylinders_kg: number;
  /** All of these together [kg]. */
  readonly total_kg: number;
  /** What is not in the total: each a clause. */
  readonly unknown: readonly string[];
}

const some = (count: number, one: string, many: string): string[] => (count > 0 ? [`${count} ${count === 1 ? one : many}`] : []);
const countOf = (list: readonly { readonly count: number }[]): number => list.reduce((sum, { count }) => sum + count, 0);

/** Adds up what is known to weigh, and names what is not. */
export function weightsOf({ pipe, fittings, cylinders, supports, nozzles, assembly, mounts }: Pick<BillOfMaterials, 'pipe' | 'fittings' | 'cylinders' | 'supports' | 'nozzles' | 'assembly' | 'mounts'>): Weights {
  const sum = (list: readonly { readonly weight_kg: number | null; readonly count: number }[]): number => list.reduce((total, { weight_kg, count }) => total + (weight_kg ?? 0) * count, 0);
  const blank = <Kind extends { readonly weight_kg: number | null; readonly count: number }>(list: readonly Kind[]): number => countOf(list.filter(({ weight_kg }) => weight_kg === null));
  const pipe_kg = pipe.reduce((total, { weight_kg }) => total + weight_kg, 0);
  const fittings_kg = sum(fittings);
  const cylinders_kg = sum(cylinders);
  return {
    pipe_kg,
    fittings_kg,
    estimated_kg: sum(fittings.filter(({ weightFrom }) => weightFrom === 'estimate')),
    cylinders_kg,
    total_kg: pipe_kg + fittings_kg + cylinders_kg,
    unknown: [
      ...some(blank(fittings), 'fitting', 'fittings'),
      ...some(blank(cylinders), 'cylinder', 'cylinders'),
      ...some(countOf(nozzles), 'nozzle', 'nozzles'),
      ...some(countOf(supports), 'support', 'supports'),
      ...some(countOf(assembly), 'part of the discharge assembly', 'parts of the discharge assembly'),
      ...some(countOf(mounts), 'rail, clamp or restraint', 'rails, clamps and restraints'),
    ],
  };
}
