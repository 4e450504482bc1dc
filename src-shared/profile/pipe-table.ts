/** Nominal pipe sizes that the plan knows, smallest first. */
export const PIPE_SIZES = ['1/4', '3/8', '1/2', '3/4', '1', '1-1/4', '1-1/2', '2', '2-1/2', '3', '4'] as const;
/** A nominal pipe size (NPS), as the trade writes it. */
export type PipeSize = (typeof PIPE_SIZES)[number];

export const PIPE_SCHEDULES = ['40', '80', '160'] as const;
/** A wall schedule of steel pipe. */
export type PipeSchedule = (typeof PIPE_SCHEDULES)[number];

export interface PipeDimensions {
  /** Metric nominal size (DN). */
  readonly dn: number;
  /** Outside diameter [in]. */
  readonly outside_in: number;
  /** Wall thickness by schedule [in]. */
  readonly wall_in: Readonly<Record<PipeSchedule, number>>;
}

/** Outside diameters and walls of steel pipe. Source: ASME B36.10M-2018, inch columns. */
export const PIPE_TABLE: Readonly<Record<PipeSize, PipeDimensions>> = {
  '1/4': { dn: 8, outside_in: 0.54, wall_in: { 40: 0.088, 80: 0.119, 160: 0.145 } },
  '3/8': { dn: 10, outside_in: 0.675, wall_in: { 40: 0.091, 80: 0.126, 160: 0.158 } },
  '1/2': { dn: 15, outside_in: 0.84, wall_in: { 40: 0.109, 80: 0.147, 160: 0.188 } },
  '3/4': { dn: 20, outside_in: 1.05, wall_in: { 40: 0.113, 80: 0.154, 160: 0.219 } },
  '1': { dn: 25, outside_in: 1.315, wall_in: { 40: 0.133, 80: 0.179, 160: 0.25 } },
  '1-1/4': { dn: 32, outside_in: 1.66, wall_in: { 40: 0.14, 80: 0.191, 160: 0.25 } },
  '1-1/2': { dn: 40, outside_in: 1.9, wall_in: { 40: 0.145, 80: 0.2, 160: 0.281 } },
  '2': { dn: 50, outside_in: 2.375, wall_in: { 40: 0.154, 80: 0.218, 160: 0.344 } },
  '2-1/2': { dn: 65, outside_in: 2.875, wall_in: { 40: 0.203, 80: 0.276, 160: 0.375 } },
  '3': { dn: 80, outside_in: 3.5, wall_in: { 40: 0.216, 80: 0.3, 160: 0.438 } },
  '4': { dn: 100, outside_in: 4.5, wall_in: { 40: 0.237, 80: 0.337, 160: 0.531 } },
};

const INCH_m = 0.0254;

/**
 * Outside diameter of a nominal pipe size [m].
 * @example pipeOutside_m('3/4') // 0.02667
 */
export const pipeOutside_m = (size: PipeSize): number => PIPE_TABLE[size].outside_in * INCH_m;

/**
 * Inside diameter of a pipe [m].
 * @example pipeBore_m('1', '40') // 0.0266446
 */
export const pipeBore_m = (size: PipeSize, schedule: PipeSchedule): number =>
  (PIPE_TABLE[size].outside_in - 2 * PIPE_TABLE[size].wall_in[schedule]) * INCH_m;

/**
 * Nominal wall of a pipe [m].
 * @example pipeWall_m('3/4', '40') // 0.0028702
 */
export const pipeWall_m = (size: PipeSize, schedule: PipeSchedule): number => PIPE_TABLE[size].wall_in[schedule] * INCH_m;

/** Order of a size in the table: a larger number is a larger pipe. */
export const pipeSizeRank = (size: PipeSize): number => PIPE_SIZES.indexOf(size);
