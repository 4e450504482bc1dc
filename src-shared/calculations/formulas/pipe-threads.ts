import { PIPE_TABLE, type PipeSize } from '../../profile/pipe-table.ts';
import { inches_m } from '../../units/convert.ts';
import type { Basis } from '../topic.ts';

interface Thread {
  readonly perInch: number;
  /** L1, hand-tight engagement [in]. */
  readonly handTight_in: number;
  /** Engagement that shops allow for [in]. */
  readonly shop_in: number;
}

const THREADS: Readonly<Record<PipeSize, Thread>> = {
  '1/4': { perInch: 18, handTight_in: 0.2278, shop_in: 3 / 8 },
  '3/8': { perInch: 18, handTight_in: 0.24, shop_in: 3 / 8 },
  '1/2': { perInch: 14, handTight_in: 0.32, shop_in: 1 / 2 },
  '3/4': { perInch: 14, handTight_in: 0.339, shop_in: 9 / 16 },
  '1': { perInch: 11.5, handTight_in: 0.4, shop_in: 11 / 16 },
  '1-1/4': { perInch: 11.5, handTight_in: 0.42, shop_in: 11 / 16 },
  '1-1/2': { perInch: 11.5, handTight_in: 0.42, shop_in: 11 / 16 },
  '2': { perInch: 11.5, handTight_in: 0.436, shop_in: 3 / 4 },
  '2-1/2': { perInch: 8, handTight_in: 0.682, shop_in: 15 / 16 },
  '3': { perInch: 8, handTight_in: 0.766, shop_in: 1 },
  '4': { perInch: 8, handTight_in: 0.844, shop_in: 9 / 8 },
};

export const THREAD_ENGAGEMENTS = ['shop', 'standard'] as const;
/** How far a pipe is taken to screw in: what shops allow for, or hand-tight and wrench turns of ASME B1.20.1. */
export type ThreadEngagement = (typeof THREAD_ENGAGEMENTS)[number];

export const threadDepthBasis: Basis = { formula: 'h = 0.8/n, n threads an inch', source: 'ASME B1.20.1 (NPT)' };
/**
 * Depth of a taper pipe thread.
 *
 * @param size  nominal pipe size [-]
 * @returns depth [m]
 * @example threadDepth_m('1/2') // 0.00145143
 */
export const threadDepth_m = (size: PipeSize): number => inches_m(0.8 / THREADS[size].perInch);

export const threadEngagementBasis: Basis = {
  formula: 'e = what shops allow for, or L1 + L3 with L3 = 3 threads up to NPS 2, 2 threads above',
  source: 'L1 and threads an inch: ASME B1.20.1; shop engagement: pipe-trade table (common practice); L3 turns: memory',
};
/**
 * How far a pipe goes into a threaded fitting.
 *
 * @param size        nominal pipe size [-]
 * @param engagement  by the shop's allowance or by the thread standard [-]
 * @returns engagement [m]
 * @example threadEngagement_m('3/4', 'shop') // 0.0142875
 */
export function threadEngagement_m(size: PipeSize, engagement: ThreadEngagement): number {
  const { perInch, handTight_in, shop_in } = THREADS[size];
  return inches_m(engagement === 'shop' ? shop_in : handTight_in + (perInch === 8 ? 2 : 3) / perInch);
}

export const effectiveThreadBasis: Basis = { formula: 'L2 = (0.80·D + 6.8)/n, D outside diameter and n threads an inch', source: 'ASME B1.20.1 (NPT)' };
/**
 * Length of the effective thread of a pipe.
 *
 * @param size  nominal pipe size [-]
 * @returns length [m]
 * @example effectiveThread_m('3/4') // 0.0138611
 */
export const effectiveThread_m = (size: PipeSize): number => inches_m((0.8 * PIPE_TABLE[size].outside_in + 6.8) / THREADS[size].perInch);
