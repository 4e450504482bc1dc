import { STANDARD_GRAVITY_m_s2 } from '../../units/convert.ts';
import type { Basis } from '../topic.ts';
import { notNegative, positive, within } from './checked.ts';

export const wallLoadBasis: Basis = {
  formula: 'W = m·g·k, k load factor, g = 9.80665 m/s²',
  source: 'statics; the load factor is the choice of the basis of design',
  caution: 'A structural engineer declares what the wall bears. Earthquake and the kick of the discharge are not in it.',
};
/**
 * Weight that a filled cylinder puts on its rail, with reserve.
 *
 * @param filledMass_kg  m, of the cylinder with valve and gas [kg], ≥ 0
 * @param loadFactor     k, reserve [-], 1 to 10
 * @returns load [N], ≥ 0
 * @throws {RangeError} argument not finite or out of range
 * @example wallLoad_N(150, 1.5) // 2206.5
 */
export function wallLoad_N(filledMass_kg: number, loadFactor: number): number {
  return notNegative('filledMass_kg', filledMass_kg) * STANDARD_GRAVITY_m_s2 * within('loadFactor', loadFactor, 1, 10);
}

export const anchorShearBasis: Basis = {
  formula: 'V = W/n',
  source: 'statics, the anchors sharing alike',
  caution: 'Edge distance, spacing, embedment and base material as the maker of the anchor states.',
};
/**
 * Shear of each anchor of a rail.
 *
 * @param load_N   W, on the rail [N], ≥ 0
 * @param anchors  n, that carry it [-], 1 or more
 * @returns shear [N], ≥ 0
 * @throws {RangeError} argument not finite or out of range
 * @example anchorShear_N(2206.5, 4) // 551.6
 */
export const anchorShear_N = (load_N: number, anchors: number): number => notNegative('load_N', load_N) / within('anchors', anchors, 1, 1000);

export const anchorPullBasis: Basis = {
  formula: 'T = W·d/(h·n)',
  source: 'statics: moment about the lower edge of the rail, the upper anchors sharing alike',
  caution: 'Rigid rail, prying left out: a bracket that bends pulls harder at its anchors.',
};
/**
 * Pull of each upper anchor, from a cylinder whose axis stands off the wall.
 *
 * @param load_N        W, on the rail [N], ≥ 0
 * @param standOff_m    d, from the wall to the axis of the cylinder [m], ≥ 0
 * @param leverArm_m    h, from the lower edge that bears on the wall up to the upper anchors [m], > 0
 * @param upperAnchors  n, that take the pull [-], 1 or more
 * @returns pull [N], ≥ 0
 * @throws {RangeError} argument not finite or out of range
 * @example anchorPull_N(2206.5, 0.16, 0.8, 2) // 220.65
 */
export function anchorPull_N(load_N: number, standOff_m: number, leverArm_m: number, upperAnchors: number): number {
  const moment_Nm = notNegative('load_N', load_N) * notNegative('standOff_m', standOff_m);
  return moment_Nm / (positive('leverArm_m', leverArm_m) * within('upperAnchors', upperAnchors, 1, 1000));
}
