import { FROM_FITTING_m, type WebPipe } from './pipe-web.ts';

/** Whole steps to measure in [m]. */
const STEP_m = 0.005;
const NOISE_m = 1e-9;

/** The joint that a place is too near to, from an end of its pipe [m]; undefined where the pipe is clear. */
const tooNear_m = ({ joints_m, from, length_m }: WebPipe, end: string, at_m: number): number | undefined =>
  joints_m.map((joint_m) => (from === end ? joint_m : length_m - joint_m)).find((joint_m) => Math.abs(joint_m - at_m) < FROM_FITTING_m - NOISE_m);

/**
 * The nearest place clear of couplings at or before one on a pipe, from one of its ends [m]; it may lie before the pipe begins.
 * @param end  node that it is measured from
 */
export function clearBefore_m(pipe: WebPipe, end: string, at_m: number): number {
  let clear_m = at_m;
  for (let joint_m = tooNear_m(pipe, end, clear_m); joint_m !== undefined; joint_m = tooNear_m(pipe, end, clear_m)) {
    clear_m = Math.floor((joint_m - FROM_FITTING_m) / STEP_m + NOISE_m) * STEP_m;
  }
  return clear_m;
}

/** The same at or after a place; it may lie past the pipe's other end. */
export function clearAfter_m(pipe: WebPipe, end: string, at_m: number): number {
  let clear_m = at_m;
  for (let joint_m = tooNear_m(pipe, end, clear_m); joint_m !== undefined; joint_m = tooNear_m(pipe, end, clear_m)) {
    clear_m = Math.ceil((joint_m + FROM_FITTING_m) / STEP_m - NOISE_m) * STEP_m;
  }
  return clear_m;
}
