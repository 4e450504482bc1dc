import { type PlanPoint, distance_m, planPoint } from '../geometry/point.ts';

/** Places of the border are found to this [m]. */
const FINE_m = 1e-4;
/** The border may lie so far off the line through the places found: to the side that is kept, and beyond. */
const INSIDE_m = 3e-4;
const BEYOND_m = 8e-4;
/** Pieces of it shorter than this are taken as straight [m]. */
const SHORT_m = 0.003;

type Ask = (at: PlanPoint) => boolean;

const between = (a: PlanPoint, b: PlanPoint, share: number): PlanPoint => planPoint(a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share);

/** The last kept place on the way from a kept one to a broken one. */
function lastKeptPlace(kept: PlanPoint, broken: PlanPoint, ask: Ask): PlanPoint {
  let [yes, no] = [kept, broken];
  while (distance_m(yes, no) > FINE_m) {
    const middle = between(yes, no, 0.5);
    if (ask(middle)) yes = middle;
    else no = middle;
  }
  return yes;
}

/** Places of the border between two of them, what is kept to the left of the way; undefined where it makes no line. */
function refined(from: PlanPoint, to: PlanPoint, ask: Ask): PlanPoint[] | undefined {
  const long_m = distance_m(from, to);
  if (long_m <= SHORT_m) return [];
  const [x, y] = [(to.y - from.y) / long_m, (from.x - to.x) / long_m];
  const off = (share: number, out_m: number): PlanPoint => planPoint(from.x + (to.x - from.x) * share + x * out_m, from.y + (to.y - from.y) * share + y * out_m);
  const shares = long_m > 0.02 ? [0.5, 0.2, 0.8] : [0.5];
  if (shares.every((share) => ask(off(share, -INSIDE_m)) && !ask(off(share, BEYOND_m)))) return [];
  const [inner, outer] = [-long_m, long_m].map((out_m) => off(0.5, out_m)) as [PlanPoint, PlanPoint];
  const middle = off(0.5, 0);
  const isKept = ask(middle);
  if (isKept ? ask(outer) : !ask(inner)) return undefined;
  const met = isKept ? lastKeptPlace(middle, outer, ask) : lastKeptPlace(inner, middle, ask);
  if (Math.min(distance_m(from, met), distance_m(met, to)) < FINE_m) return undefined;
  const [before, after] = [refined(from, met, ask), refined(met, to, ask)];
  return before && after ? [...before, met, ...after] : undefined;
}

/**
 * The border through a box of which some corners are kept and some are not.
 * @param corners  counter-clockwise
 * @returns the part that is not kept, and the border as a line; undefined where the border is none that leads from one side to another
 */
export function borderLine(corners: readonly PlanPoint[], answers: readonly boolean[], ask: Ask): { readonly broken: readonly PlanPoint[]; readonly border: readonly PlanPoint[] } | undefined {
  const count = corners.length;
  const at = (i: number): PlanPoint => corners[i % count] ?? planPoint(0, 0);
  const yes = (i: number): boolean => answers[i % count] ?? false;
  const leaves = corners.flatMap((_, i) => (yes(i) && !yes(i + 1) ? i : []));
  const [leave] = leaves;
  if (leave === undefined || leaves.length !== 1) return undefined;
  let enter = leave + 1;
  while (!yes(enter + 1)) enter += 1;
  const first = lastKeptPlace(at(leave), at(leave + 1), ask);
  const last = lastKeptPlace(at(enter + 1), at(enter), ask);
  // From where the border is met going round to where it is left again, what is kept lies to the left.
  const line = refined(first, last, ask);
  if (!line) return undefined;
  const border = [first, ...line, last];
  const broken = Array.from({ length: enter - leave }, (_, i) => at(leave + 1 + i));
  return { broken: [...broken, ...border.toReversed()], border };
}
