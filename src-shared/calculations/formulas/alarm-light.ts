import { feet_m } from '../../units/convert.ts';
import type { Basis } from '../topic.ts';
import { notNegative } from './checked.ts';

/** Side of the square room [ft] that one light on a wall serves, and the least effective intensity that it takes [cd]. */
const ROOMS: readonly (readonly [side_ft: number, light_cd: number])[] = [
  [20, 15],
  [28, 30],
  [30, 34],
  [40, 60],
  [45, 75],
  [50, 94],
  [54, 110],
  [55, 115],
  [60, 135],
  [63, 150],
  [68, 177],
  [70, 184],
  [80, 240],
  [90, 304],
  [100, 375],
  [110, 455],
  [120, 540],
  [130, 635],
];

export const alarmLightBasis: Basis = {
  formula: 'largest square room of the table whose light is no stronger than this one',
  source: 'NFPA 72, room spacing of wall-mounted visible appliances, one light in a room (memory)',
  caution: 'The table holds for lights on a wall, 80 to 96 in above the floor; on a ceiling other figures hold.',
};
/**
 * Side of the square room that one alarm light on a wall serves, from the middle of one of its sides. Between two steps of
 * the table the smaller room counts.
 *
 * @param light_cd  effective intensity [cd], ≥ 0
 * @returns side [m]; 0 when it is weaker than any light of the table
 * @throws {RangeError} argument not finite or below 0
 * @example alarmLightSide_m(75) // 13.716
 */
export function alarmLightSide_m(light_cd: number): number {
  notNegative('light_cd', light_cd);
  return feet_m(ROOMS.reduce((most, [side_ft, least_cd]) => (light_cd >= least_cd ? side_ft : most), 0));
}
