import type { PipeTree } from '../../derived/pipe-tree.ts';
import { clearAfter_m, clearBefore_m } from './clear-of-joints.ts';
import { FROM_FITTING_m, type PipeWeb, type PlaceOnPipe, type WebPipe } from './pipe-web.ts';

/** Kept back from every limit, so that rounding cannot break one [m]. */
const MARGIN_m = 0.001;
/** Whole steps to measure in [m]. */
const STEP_m = 0.005;
/** Shorter pipe carries no support [m]. */
const SHORTEST_m = 0.002;

/** What hangs below a place on the pipe, seen from it. */
interface Below {
  /** Free pipe to each next support or end, with the shortest span on the way [m]. */
  readonly free: readonly { readonly length_m: number; readonly span_m: number }[];
  /** To the nearest support [m]. */
  readonly nearest_m: number;
  /** A support must come within this distance on the way up [m]: one on another branch holds neither turn nor nozzle below. */
  readonly due_m: number;
}

/** A pipe with all below it, up to its upper node. */
interface Climbed {
  readonly below: Below;
  /** The same with one more support at the top of the pipe; undefined when there is one. */
  readonly topped: (() => Climbed) | undefined;
}

const NEVER = Number.POSITIVE_INFINITY;
const held: Below = { free: [{ length_m: 0, span_m: NEVER }], nearest_m: 0, due_m: NEVER };

const above = ({ free, nearest_m, due_m }: Below, length_m: number, pipe: WebPipe): Below => ({
  free: free.map((each) => ({ length_m: each.length_m + length_m, span_m: Math.min(each.span_m, pipe.span_m) })),
  nearest_m: nearest_m + length_m,
  due_m: due_m - length_m,
});

/** Whether two free stretches that meet make too long a one. */
const tooLong = (a: Below, b: Below): boolean => a.free.some((x) => b.free.some((y) => x.length_m + y.length_m > Math.min(x.span_m, y.span_m) - MARGIN_m));

const longest_m = ({ free }: Below): number => Math.max(...free.map(({ length_m }) => length_m));

/** Walks one tree of pipe from its ends up, and puts each support as far up as it may go. */
export class SupportWalk {
  readonly places: PlaceOnPipe[] = [];
  readonly #web: PipeWeb;
  readonly #tree: PipeTree;

  constructor(web: PipeWeb, tree: PipeTree) {
    this.#web = web;
    this.#tree = tree;
  }

  /** All below a node; at the top of a tree nothing waits for a support farther up. */
  belowNode(node: string): Below {
    let branches = this.#branchesOf(node);
    const isTop = !this.#tree.inlets.has(node);
    for (;;) {
      const parted = this.#withOneMore(branches, isTop ? this.#web.turns_m.get(node) : undefined);
      if (!parted) break;
      branches = parted;
    }
    const all = branches.map(({ below }) => below);
    const [turn_m, nozzle_m] = [this.#web.turns_m.get(node) ?? NEVER, this.#web.nozzles_m.get(node) ?? NEVER];
    if (all.length === 0) return { ...held, nearest_m: NEVER, due_m: Math.min(turn_m, nozzle_m) };
    const nearest_m = Math.min(...all.map((each) => each.nearest_m));
    return {
      free: all.flatMap(({ free }) => free),
      nearest_m,
      due_m: Math.min(nozzle_m, nearest_m <= turn_m - MARGIN_m ? NEVER : turn_m, ...all.map(({ due_m }) => due_m)),
    };
  }

  /** The same branches with one more support where two meet in too long a stretch, or the top of a tree lacks one; undefined when all is well. */
  #withOneMore(branches: readonly Climbed[], wantHere_m: number | undefined): Climbed[] | undefined {
    const lacks = wantHere_m !== undefined && branches.every(({ below }) => below.nearest_m > wantHere_m - MARGIN_m);
    const [worst] = branches
      .filter((branch) => branch.topped && (lacks || branches.some((other) => other !== branch && tooLong(branch.below, other.below))))
      .sort((a, b) => longest_m(b.below) - longest_m(a.below));
    return worst?.topped && branches.map((branch) => (branch === worst && worst.topped ? worst.topped() : branch));
  }

  #branchesOf(node: string): Climbed[] {
    const inlet = this.#tree.inlets.get(node)?.pipe.id;
    return (this.#tree.legs.get(node) ?? []).flatMap(({ pipe, other }): Climbed[] => {
      const here = this.#web.pipes.get(pipe.id);
      if (!here || pipe.id === inlet) return [];
      if (this.#tree.inlets.get(other)?.pipe.id === pipe.id) return [this.#climb(here, other, this.belowNode(other), node)];
      // A pipe that closes a loop is held at both ends, so that each end may stand for itself.
      if (this.#tree.upstream.get(pipe.id) === node) this.#holdBothEnds(here);
      return [{ below: above(held, here.clear_m, here), topped: undefined }];
    });
  }

  #holdBothEnds(pipe: WebPipe): void {
    const between_m = pipe.length_m - 2 * pipe.clear_m;
    // One that makes way for a coupling moves by twice what it keeps from it at most.
    const kept_m = pipe.joints_m.length > 0 ? 2 * FROM_FITTING_m + STEP_m : 0;
    const parts = Math.ceil(between_m / (pipe.span_m - MARGIN_m - kept_m));
    for (let i = 0; i <= parts; i += 1) {
      const along_m = pipe.clear_m + (parts > 0 ? (between_m * i) / parts : 0);
      const before_m = clearBefore_m(pipe, pipe.from, along_m);
      this.places.push({ pipe: pipe.id, along_m: i === 0 || before_m < pipe.clear_m ? along_m : before_m });
    }
  }

  /** Goes up a pipe from its lower node. */
  #climb(pipe: WebPipe, lower: string, start: Below, upper: string): Climbed {
    const put = (up_m: number): void => {
      this.places.push({ pipe: pipe.id, along_m: pipe.from === lower ? up_m : pipe.length_m - up_m });
    };
    const clearOf_m = (up_m: number, least_m: number): number => {
      const clear_m = clearBefore_m(pipe, lower, up_m);
      return clear_m >= least_m ? clear_m : up_m;
    };
    const top_m = clearOf_m(pipe.length_m - pipe.clear_m, pipe.clear_m);
    const next = this.#web.pipes.get(this.#tree.inlets.get(upper)?.pipe.id ?? '');
    const nextClear_m = next && clearAfter_m(next, upper, next.clear_m);
    let [up_m, below, first_m] = [0, start, pipe.clear_m];
    while (pipe.length_m >= SHORTEST_m && first_m <= top_m) {
      const limit_m = (ahead: WebPipe | undefined): number => Math.min(...below.free.map(({ length_m, span_m }) => Math.min(span_m, pipe.span_m, ahead?.span_m ?? NEVER) - length_m));
      const isDue = up_m + below.due_m < pipe.length_m + (nextClear_m ?? NEVER) + MARGIN_m && below.due_m < NEVER;
      const isTooFar = up_m + limit_m(next) < pipe.length_m + (nextClear_m ?? 0) + MARGIN_m;
      if (!isDue && !isTooFar) break;
      const latest_m = up_m + Math.min(isDue ? below.due_m : NEVER, limit_m(undefined)) - MARGIN_m;
      const at_m = clearOf_m(Math.min(top_m, Math.max(first_m, Math.floor(latest_m / STEP_m) * STEP_m)), first_m);
      put(at_m);
      [up_m, below, first_m] = [at_m, held, at_m + STEP_m];
    }
    const canTop = pipe.length_m >= SHORTEST_m && first_m <= top_m;
    return {
      below: above(below, pipe.length_m - up_m, pipe),
      topped: canTop
        ? () => {
            put(top_m);
            return { below: above(held, pipe.length_m - top_m, pipe), topped: undefined };
          }
        : undefined,
    };
  }
}
