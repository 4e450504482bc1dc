import { type PipeSchedule, type PipeSize, pipeOutside_m, pipeWall_m } from '../../profile/pipe-table.ts';
import { toMillimetres } from '../../units/convert.ts';
import type { Basis } from '../topic.ts';

export const pipeWeightBasis: Basis = {
  formula: 'w = 0.0246615·t·(D − t), t wall and D outside diameter in mm',
  source: 'ASME B36.10M, carbon steel of 7850 kg/m³',
  caution: 'Bare pipe, without zinc and without fittings.',
};
/**
 * Mass of plain carbon steel pipe for each metre.
 *
 * @param size      nominal pipe size [-]
 * @param schedule  wall schedule [-]
 * @returns mass per length [kg/m]
 * @example pipeWeight_kg_m('3/4', '40') // 1.68463
 */
export function pipeWeight_kg_m(size: PipeSize, schedule: PipeSchedule): number {
  const wall_mm = toMillimetres(pipeWall_m(size, schedule));
  return 0.0246615 * wall_mm * (toMillimetres(pipeOutside_m(size)) - wall_mm);
}
