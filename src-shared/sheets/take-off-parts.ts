import type { BillOfMaterials } from '../take-off/bill-of-materials.ts';
import { feet_m, toLitres } from '../units/convert.ts';
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

const MOUNT_WORDS = { rail: 'Wall rail', clamp: 'Clamp', restraint: 'Further restraint' } as const satisfies Record<BillOfMaterials['mounts'][number]['kind'], string>;

/** Tape is bought by the roll: whole feet or tenths of a metre, rounded up. */
const tapeText = (tape_m: number, lengths: LengthSystem): string => (lengths === 'feet' ? `${Math.ceil(tape_m / feet_m(1))} ft` : formatLength(Math.ceil(tape_m * 10) / 10, lengths));

/** Either kind of sealant does for all threads. */
function sealantLines({ threads, tape_m, paste_m3 }: BillOfMaterials['sealant'], lengths: LengthSystem): PartLine[] {
  if (threads.length === 0) return [];
  const count = threads.reduce((sum, each) => sum + each.count, 0);
  return [
    { part: 'Thread sealant', what: `PTFE tape, 1/2" wide: ${tapeText(tape_m, lengths)}`, count: null, remark: `For ${count} outside threads; the unit’s manual may ask for another sealant` },
    { part: 'Thread sealant', what: `Or thread paste: ${Math.ceil(toLitres(paste_m3) * 1000)} mL`, count: null, remark: 'In its place, not with it' },
  ];
}

/** Labels of all networks; the spacing is said where it is one. */
function labelLine(labels: BillOfMaterials['labels'], lengths: LengthSystem): PartLine {
  const all = Object.values(labels);
  const spacings = new Set(all.map(({ spacing_m }) => spacing_m));
  const [spacing_m] = spacings;
  const isStated = all.every((each) => each.isStated);
  const where = spacings.size === 1 && spacing_m !== undefined ? `at most ${formatLength(spacing_m, lengths)} apart` : 'as the marking of each network says';
  return { part: 'Pipe label', what: 'Label with arrow', count: all.reduce((sum, { count }) => sum + count, 0), remark: `One on every straight run, ${where}${isStated ? '' : ' (common practice)'}` };
}

/** Supports, nozzles, cylinders with what holds them, discharge assembly, anchors, thread sealant and labels, a line for each that is alike. */
export function partLines(bill: BillOfMaterials, lengths: LengthSystem): PartLine[] {
  const { supports, nozzles, cylinders, mounts, assembly, anchors, withoutAnchors, sealant, labels } = bill;
  return [
    ...supports.map(({ kind, size, count }) => ({ part: 'Support', what: `${sentence(kind)}${size === null ? '' : ` for ${sizeText(size, lengths)} pipe`}`, count, remark: size === null ? 'It holds no pipe: move it onto one.' : '' })),
    ...nozzles.map(({ code, area_m2, count }) => ({
      part: 'Nozzle',
      what: code !== null ? `Orifice ${code}` : area_m2 === null ? 'Orifice not chosen' : `Orifice of ${formatQuantity(area_m2, 'orificeArea', lengths)}`,
      count,
      remark: code !== null ? '' : area_m2 === null ? 'Choose the orifice in the form of the nozzle.' : 'No orifice of this area is listed in the unit profile.',
    })),
    ...cylinders.map(({ unit, mounting, weight_kg, count }) => ({
      part: 'Cylinder',
      what: unit ?? 'Unit not known',
      count,
      remark: [mounting === 'wall' ? 'Clamped to a wall rail' : 'In a floor frame', weight_kg === null ? 'filled mass not known' : `${formatQuantity(weight_kg, 'mass', lengths)} filled, each`].join(', '),
    })),
    ...mounts.map(({ kind, count }) => ({ part: 'Mounting', what: MOUNT_WORDS[kind], count, remark: kind === 'restraint' ? '' : 'Common practice; the manual decides' })),
    ...assembly.map(({ kind, name, length_m, count }) => ({ part: 'Assembly', what: sentence(name || kind.replace('-', ' ')), count, remark: length_m > 0 ? `${formatLength(length_m, lengths)} long` : '' })),
    ...anchors.map(({ kind, count }) => ({ part: 'Anchor', what: sentence(kind || 'kind not entered'), count, remark: '' })),
    ...sealantLines(sealant, lengths),
    ...(Object.values(labels).some(({ count }) => count > 0) ? [labelLine(labels, lengths)] : []),
    ...(withoutAnchors > 0 ? [{ part: 'Anchor', what: 'Not chosen', count: null, remark: `${withoutAnchors === 1 ? 'One wall cylinder has' : `${withoutAnchors} wall cylinders have`} no anchors yet: enter them in the form of the cylinder.` }] : []),
  ];
}
