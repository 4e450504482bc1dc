import { sealantPaste_m3, sealantTape_m } from '../calculations/formulas/thread-sealant.ts';
import { type PipeSize, pipeSizeRank } from '../profile/pipe-table.ts';
import type { FittingCount } from './fitting-counts.ts';
import type { Piece } from './pieces-of.ts';

/** Outside threads that get sealant, and how much of either kind does for them all (common practice). */
export interface Sealant {
  /** The largest size first. */
  readonly threads: readonly { readonly size: PipeSize; readonly count: number }[];
  /** PTFE tape of half an inch [m]. */
  readonly tape_m: number;
  /** Thread paste in its place [m³]. */
  readonly paste_m3: number;
}

/** Counts the outside threads: both ends of a threaded piece, and those of plugs and street elbows. */
export function sealantOf(pieces: readonly Piece[], fittings: readonly FittingCount[]): Sealant {
  const counts = new Map<PipeSize, number>();
  const add = (size: PipeSize | undefined, count: number): void => {
    if (size !== undefined && count > 0) counts.set(size, (counts.get(size) ?? 0) + count);
  };
  for (const { size, threads } of pieces) add(size, threads);
  for (const { kind, isStreet, sizes, count } of fittings) if (kind === 'plug' || isStreet) add(sizes.at(-1), count);
  const threads = [...counts].map(([size, count]) => ({ size, count })).sort((a, b) => pipeSizeRank(b.size) - pipeSizeRank(a.size));
  const sum = (each: (size: PipeSize) => number): number => threads.reduce((total, { size, count }) => total + count * each(size), 0);
  return { threads, tape_m: sum(sealantTape_m), paste_m3: sum(sealantPaste_m3) };
}
