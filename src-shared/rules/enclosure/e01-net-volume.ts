import type { Obstruction } from '../../model/plan.ts';
import { defineRule, notChecked } from '../rule.ts';
import { type EnclosureOnLevel, placeOfEnclosure, servedEnclosuresOnLevel } from '../enclosure-subjects.ts';

/** Things that are part of the building and solid. */
const FIXED: ReadonlySet<Obstruction['kind']> = new Set<Obstruction['kind']>(['beam', 'column', 'duct']);

/**
 * E1: only fixed, solid things are taken off the volume that the agent fills.
 * Measure: volume taken off by things that can be moved or emptied [m³]. Limit: none.
 * Not checked: the volume is not known, because a height is missing.
 */
export const e01NetVolume = defineRule<EnclosureOnLevel>({
  id: 'E1',
  title: 'Net volume',
  severity: 'stop',
  measure: 'volume',
  basis: {
    formula: 'only beams, columns and ducts are taken off the gross volume; what can be moved or emptied counts as room',
    source: 'common practice; follows NFPA 2001, net volume (memory)',
    caution: 'A duct that air flows through during the discharge is not solid: enter it as a thing that agent passes through.',
  },
  subjects: servedEnclosuresOnLevel,
  check({ design, level }, { say }) {
    const { volume } = design;
    if (!volume.isKnown) return notChecked(volume.because, placeOfEnclosure(design));
    const { gross_m3, net_m3, spaces, deductions } = volume.sums;
    const movable = deductions.flatMap((deduction) => {
      const obstruction = level.obstructions[deduction.ref.id];
      return obstruction && !FIXED.has(obstruction.kind) ? [{ ...deduction, obstruction }] : [];
    });
    const wrong_m3 = movable.reduce((sum, { volume_m3 }) => sum + volume_m3, 0);
    const figures = { kind: 'judged', measured: wrong_m3, limit: 0, limitSource: 'common practice', margin: wrong_m3 > 0 ? -wrong_m3 : 0 } as const;
    const [first] = movable;
    if (!first) {
      const count = deductions.length === 0 ? 'nothing is taken off' : deductions.length === 1 ? '1 fixed thing is taken off' : `${deductions.length} fixed things are taken off`;
      const where = spaces.length === 1 ? '' : ` in ${spaces.length} spaces`;
      const net = say.quantity(net_m3, 'volume');
      return { ...figures, isKept: true, text: `Its net volume is ${net}${where}; ${count} the gross ${say.quantity(gross_m3, 'volume')}.`, place: placeOfEnclosure(design) };
    }
    const others = movable.length === 1 ? '' : movable.length === 2 ? ' and 1 other thing' : ` and ${movable.length - 1} other things`;
    const [lessen, they] = movable.length === 1 ? ['takes', 'it'] : ['take', 'they'];
    return {
      ...figures,
      isKept: false,
      text: `“${first.name || 'A thing'}”${others} ${lessen} ${say.quantity(wrong_m3, 'volume')} off the volume, but ${they} can be moved or emptied: too little agent would be counted. Mark that agent passes through.`,
      place: {
        level: design.ref.level,
        at: movable.flatMap(({ obstruction }) => obstruction.footprint.slice(0, 1)),
        areas: movable.map(({ obstruction }) => [obstruction.footprint]),
      },
      cure: { kind: 'advice', text: `Mark “agent passes through” at ${movable.map(({ name }) => `“${name}”`).join(', ')}, or draw as beam, column or duct what is part of the building and solid.` },
    };
  },
});
