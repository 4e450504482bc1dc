/** Things of a set of sheets that links lead to: a sheet by its number, a finding by its number, its row in the table of findings. */
export type PlaceKind = 'sheet' | 'finding' | 'finding-row';

/** Name of a place of the set, by which texts on other sheets lead there. */
export const placeName = (kind: PlaceKind, of: string | number): string => `${kind}:${of}`;
