import type { BillOfMaterials } from '../take-off/bill-of-materials.ts';
import { type LengthSystem, formatLength } from '../units/length-text.ts';
import { formatQuantity } from '../units/quantity-text.ts';
import { sentence, sizeText } from './sheet-text.ts';

/** One line of the parts that are bought beside pipe and fittings. */
export interface PartLine {
  readonly part: string;
  readonly what: string;
  /** null: not counted in pieces, or not known. */
  readonly count: number | null;
  readonly remark: string;
}

/** Supports, nozzles, cylinders, discharge assembly and anchors, a line for each that is alike. */
export function partLines(bill: BillOfMaterials, lengths: LengthSystem): PartLine[] {
  const { supports, nozzles, cylinders, assembly, anchors, withoutAnchors } = bill;
  return [
    ...supports.map(({ kind, size, count }) => ({ part: 'Support', what: `${sentence(kind)}${size === null ? '' : ` for ${sizeText(size, lengths)} pipe`}`, count, remark: size === null ? 'It holds no pipe: move it onto one.' : '' })),
    ...nozzles.map(({ code, area_m2, count }) => ({
      part: 'Nozzle',
      what: code !== null ? `Orifice ${code}` : area_m2 === null ? 'Orifice not chosen' : `Orifice of ${formatQuantity(area_m2, 'orificeArea', lengths)}`,
      count,
      remark: code !== null ? '' : area_m2 === null ? 'Choose the orifice in the form of the nozzle.' : 'No orifice of this area is listed in the unit profile.',
    })),
    ...cylinders.map(({ unit, mounting, count }) => ({ part: 'Cylinder', what: unit ?? 'Unit not known', count, remark: mounting === 'wall' ? 'Clamped to a wall rail' : 'In a floor frame' })),
    ...assembly.map(({ kind, name, length_m, count }) => ({ part: 'Discharge assembly', what: sentence(name || kind.replace('-', ' ')), count, remark: length_m > 0 ? `${formatLength(length_m, lengths)} long` : '' })),
    ...anchors.map(({ kind, count }) => ({ part: 'Anchor', what: sentence(kind || 'kind not entered'), count, remark: '' })),
    ...(withoutAnchors > 0 ? [{ part: 'Anchor', what: 'Not chosen', count: null, remark: `${withoutAnchors === 1 ? 'One wall cylinder has' : `${withoutAnchors} wall cylinders have`} no anchors yet: enter them in the form of the cylinder.` }] : []),
  ];
}
