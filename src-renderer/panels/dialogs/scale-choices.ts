import type { ImportReport } from '#shared/host/contract';

/** Units that a drawing may have been drawn in, when its file does not say so reliably. */
export const DRAWN_IN = [
  { id: 'mm', name: 'millimetres', metres: 0.001 },
  { id: 'cm', name: 'centimetres', metres: 0.01 },
  { id: 'm', name: 'metres', metres: 1 },
  { id: 'in', name: 'inches', metres: 0.0254 },
  { id: 'ft', name: 'feet', metres: 0.3048 },
] as const;
export type DrawnIn = (typeof DRAWN_IN)[number]['id'];

/** How an imported floor plan gets its scale. */
export type ScaleWay = 'file' | 'unit' | 'points' | 'width';

/** Ways that make sense for a file, the one to suggest first. A doubtful unit is never the suggestion. */
export function scaleWays({ metresPerUnit, unitsDoubt, kind }: Pick<ImportReport, 'metresPerUnit' | 'unitsDoubt' | 'kind'>): readonly ScaleWay[] {
  if (kind === 'png' || kind === 'jpeg' || kind === 'pdf') return ['points', 'width'];
  if (metresPerUnit === null) return ['points', 'unit', 'width'];
  return unitsDoubt === null ? ['file', 'points', 'width'] : ['points', 'file', 'unit', 'width'];
}

/** Metres per unit of the file by the chosen way; null while it is still open. */
export function metresPerUnitBy(way: ScaleWay, report: Pick<ImportReport, 'metresPerUnit' | 'width'>, unit: DrawnIn, width_m: number | null): number | null {
  if (way === 'file') return report.metresPerUnit;
  if (way === 'unit') return DRAWN_IN.find(({ id }) => id === unit)?.metres ?? null;
  if (way === 'width') return width_m !== null && report.width > 0 ? width_m / report.width : null;
  return null;
}
