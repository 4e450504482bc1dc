import { type PipeSchedule, type PipeSize, pipeOutside_m, pipeWall_m } from '../../profile/pipe-table.ts';
import type { Pipe } from '../../model/plan.ts';
import type { Basis } from '../topic.ts';
import { notNegative } from './checked.ts';
import { pipeWeight_kg_m } from './pipe-weight.ts';

const CARBON_STEEL_kg_m3 = 7850;
const STAINLESS_STEEL_kg_m3 = 8000;

export const materialWeightBasis: Basis = {
  formula: 'w of carbon steel pipe; of stainless steel pipe w·8000/7850',
  source: 'ASME B36.10M; density of stainless steel 1.4404 (316L): EN 10088-1, 8.0 kg/dm³, memory; 1.4301 (304) is 1 % lighter',
  caution: 'Zinc adds some per cent to galvanized pipe.',
};
/**
 * Mass of pipe of a material for each metre.
 *
 * @param size      nominal pipe size [-]
 * @param schedule  wall schedule [-]
 * @param material  what it is made of; zinc is not counted [-]
 * @returns mass per length [kg/m]
 * @example materialWeight_kg_m('3/4', '40', 'stainless-steel') // 1.71682
 */
export const materialWeight_kg_m = (size: PipeSize, schedule: PipeSchedule, material: Pipe['material']): number =>
  pipeWeight_kg_m(size, schedule) * (material === 'stainless-steel' ? STAINLESS_STEEL_kg_m3 / CARBON_STEEL_kg_m3 : 1);

export const fittingLegBasis: Basis = {
  formula: 'm = ρ·π·(D + t)·t·A for each leg: a sleeve around the pipe as thick as the wall t of Schedule 160 pipe, ρ = 7850 kg/m³',
  source: 'estimate, for lifting and freight only',
  caution: 'Weigh the fitting, or take its weight from its maker.',
};
/**
 * Estimated mass of one leg of a threaded fitting.
 *
 * @param size     nominal size of the leg [-]
 * @param reach_m  A, centre to end [m], ≥ 0
 * @returns mass [kg]
 * @throws {RangeError} reach not finite or out of range
 * @example fittingLegWeight_kg('3/4', 0.036576) // 0.162
 */
export function fittingLegWeight_kg(size: PipeSize, reach_m: number): number {
  const wall_m = pipeWall_m(size, '160');
  return CARBON_STEEL_kg_m3 * Math.PI * (pipeOutside_m(size) + wall_m) * wall_m * notNegative('reach_m', reach_m);
}
