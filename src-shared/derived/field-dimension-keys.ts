import type { Datum } from './datum.ts';
import type { DerivedNozzle } from './derived.ts';

/** What is measured of a nozzle on site: from the two datum faces, from the floor, from the ceiling. */
export type FieldDimensionKey = 'first' | 'second' | 'height' | 'drop';

/** The dimensions of a nozzle that are measured on site, as far as they are known on the plan. */
export function fieldDimensionKeys({ at, localCeiling_m }: Pick<DerivedNozzle, 'at' | 'localCeiling_m'>, datum: Datum | undefined): FieldDimensionKey[] {
  if (!at) return [];
  return [...(datum ? (['first', 'second'] as const) : []), 'height', ...(localCeiling_m === undefined ? [] : (['drop'] as const))];
}

/** Id under which the site record keeps a measured dimension of a nozzle. */
export const fieldDimensionId = ({ ref }: Pick<DerivedNozzle, 'ref'>, key: FieldDimensionKey): string => `${ref.network}/${ref.id}/${key}`;
