import { SUPPORT_TABLES } from '../../model/basis-of-design.ts';
import { PIPE_SIZES, PIPE_TABLE, pipeSizeRank, type PipeSize } from '../../profile/pipe-table.ts';
import { feet_m, inches_m } from '../../units/convert.ts';
import type { Basis } from '../topic.ts';

export { SUPPORT_TABLES };
/** Whose spans between pipe supports. */
export type SupportTable = (typeof SUPPORT_TABLES)[number];

export const NOZZLE_SUPPORTS = ['iso', 'us'] as const;
/** Whose distance from the last support to a nozzle. */
export type NozzleSupport = (typeof NOZZLE_SUPPORTS)[number];

/** Spans of gas-filled steel pipe; feet where the source prints feet. */
const SPANS_m: Readonly<Record<SupportTable, Readonly<Partial<Record<PipeSize, number>>>>> = {
  'b31.1': { '1': feet_m(9), '2': feet_m(13), '3': feet_m(15), '4': feet_m(17) },
  'mss-sp-69': { '1/2': feet_m(8), '3/4': feet_m(9), '1': feet_m(9), '1-1/2': feet_m(12), '2': feet_m(13), '2-1/2': feet_m(14), '3': feet_m(15), '4': feet_m(17) },
  'iso-14520': { '1/2': 1.5, '3/4': 1.8, '1': 2.1, '1-1/4': 2.4, '1-1/2': 2.7, '2': 3.4, '2-1/2': 3.5, '3': 3.7, '4': 4.3 },
};

export const supportSpanBasis: Basis = {
  formula: 'span by nominal size; a size that the table leaves out takes the span of the next smaller one in it',
  source: 'ASME B31.1 Table 121.5, gas or air; MSS SP-69, steam or vapour, as an adapted table prints it; ISO 14520-1, memory',
  caution: 'For the weight of straight pipe only. Thrust, fittings, valves, earthquake and the ends of runs need more.',
};
/**
 * Greatest distance between supports of a pipe.
 *
 * @param table  whose spans [-]
 * @param size   nominal pipe size [-]
 * @returns span, undefined when the table begins above this size [m]
 * @example supportSpan_m('b31.1', '1-1/2') // 2.743
 */
export function supportSpan_m(table: SupportTable, size: PipeSize): number | undefined {
  const listed = PIPE_SIZES.slice(0, pipeSizeRank(size) + 1).filter((each) => SPANS_m[table][each] !== undefined).at(-1);
  return listed && SPANS_m[table][listed];
}

export const nozzleSupportBasis: Basis = {
  formula: 'iso: 100 mm up to DN 25, 250 mm above; us: 12 in',
  source: 'ISO 14520-1:2000 as a trade-press series reports it; 12 in: common practice',
  caution: 'The support must take the thrust of the nozzle: no sling, no loose hanger.',
};
/**
 * Greatest distance from a nozzle to the last support of its pipe.
 *
 * @param rule  whose distance [-]
 * @param size  nominal pipe size [-]
 * @returns distance along the pipe [m]
 * @example nozzleSupport_m('us', '3/4') // 0.3048
 */
export function nozzleSupport_m(rule: NozzleSupport, size: PipeSize): number {
  if (rule === 'us') return inches_m(12);
  return PIPE_TABLE[size].dn <= 25 ? 0.1 : 0.25;
}

export const turnSupportBasis: Basis = {
  formula: 'at most 1 ft from a fitting that turns',
  source: 'Unified Facilities Guide Specifications, piping; common practice',
};
/** Greatest distance from an elbow or tee to a support [m]. */
export const TURN_SUPPORT_m = feet_m(1);
