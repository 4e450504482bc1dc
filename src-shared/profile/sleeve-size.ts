import { PIPE_SIZES, type PipeSize, pipeBore_m, pipeOutside_m, pipeSizeRank } from './pipe-table.ts';
import { inches_m } from '../units/convert.ts';

/** Room that a sleeve leaves around what goes through it, both sides together [m]: 1/4 in, common practice. */
export const SLEEVE_CLEARANCE_m = inches_m(1 / 4);

/**
 * Inside of a sleeve for a pipe [m]: Schedule 40 pipe two sizes larger, or as many more as leave `SLEEVE_CLEARANCE_m`;
 * beyond the largest pipe of the table 2 in more than the pipe. Common practice.
 * @param insulation_m  thickness of what is wrapped around the pipe
 */
export function sleeveFor_m(size: PipeSize, insulation_m: number): number {
  const through_m = pipeOutside_m(size) + 2 * insulation_m;
  const sleeve = PIPE_SIZES.slice(pipeSizeRank(size) + 2).find((each) => pipeBore_m(each, '40') >= through_m + SLEEVE_CLEARANCE_m);
  return sleeve ? pipeBore_m(sleeve, '40') : through_m + inches_m(2);
}
