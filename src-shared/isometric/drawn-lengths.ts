import { type DrawnPiece, crowding } from './crowding.ts';
import { ISO_VIEWS, type IsoPlace, type IsoView, project } from './project.ts';
import type { RunTree, StraightRun } from './straight-runs.ts';

/** A way to draw a network: from where it is seen, how long each run is drawn, and where its nodes come to lie. */
export interface Arrangement {
  readonly view: IsoView;
  /** In the order of the runs [m of the drawing]. */
  readonly drawn: readonly number[];
  readonly places: ReadonlyMap<string, IsoPlace>;
}

/** Runs are drawn at least and at most so many times as long as the middle one: shorter ones grow, longer ones are broken. */
const PLAIN_BOUNDS: readonly [least: number, most: number] = [0.6, 1.6];
const BOUNDS: readonly (readonly [least: number, most: number])[] = [PLAIN_BOUNDS, [0.6, 2.2], [0.8, 3]];
/** From this many middle runs on a run is long: it may be broken. */
const LONG = 1.6;
/** Lengths that are tried for a single run that stands in the way of others. */
const TRIED = [0.6, 1, 1.5, 2.2, 3, 4, 5.5, 7.5];
/** Price of drawing a run twice as long, or half as long, as its like. */
const UNLIKE_PRICE = 0.12;
/** Larger networks are drawn as they come, so that a slip in a file does not stop the program. */
const MOST_TUNED = 60;
const MOST_PASSES = 3;
const MOST_COMPARED = 250;
/** Two pipes nearer than this share of the middle run look like one. */
const GAP = 0.8;
/** Price of a drawing that is so many middle runs wide: what is wide is printed small. */
const WIDTH_PRICE = 0.05;
/** Paper is about so much wider than high. */
const ASPECT = 1.4;

const middleOf = (runs: readonly StraightRun[]): number => {
  const lengths = runs.map(({ length_m }) => length_m).filter((length_m) => length_m > 0).sort((a, b) => a - b);
  return lengths[Math.floor(lengths.length / 2)] ?? 1;
};

/** Places of the nodes, run by run from the source; a part that hangs on nothing begins where it lies from the source. */
function placesOf({ nodes, runs, places }: RunTree, drawn: readonly number[], view: IsoView): Map<string, IsoPlace> {
  const origin = places.get(nodes[0] ?? '') ?? { x: 0, y: 0, z: 0 };
  const placed = new Map<string, IsoPlace>();
  const ofRoot = (node: string): IsoPlace => {
    const at = places.get(node) ?? origin;
    return project({ x: at.x - origin.x, y: at.y - origin.y, z: at.z - origin.z }, view);
  };
  runs.forEach(({ from, to, start, end, length_m }, i) => {
    const a = placed.get(from) ?? ofRoot(from);
    placed.set(from, a);
    if (placed.has(to)) return;
    const share = length_m > 0 ? (drawn[i] ?? length_m) / length_m : 0;
    const way = project({ x: end.x - start.x, y: end.y - start.y, z: end.z - start.z }, view);
    placed.set(to, { x: a.x + way.x * share, y: a.y + way.y * share });
  });
  return placed;
}

const piecesOf = (runs: readonly StraightRun[], placed: ReadonlyMap<string, IsoPlace>): DrawnPiece[] =>
  runs.flatMap(({ from, to }) => {
    const [a, b] = [placed.get(from), placed.get(to)];
    return a && b ? [{ from, to, a, b }] : [];
  });

function priceOf(tree: RunTree, placed: ReadonlyMap<string, IsoPlace>, middle: number): number {
  let [left, right, bottom, top] = [0, 0, 0, 0];
  for (const { x, y } of placed.values()) {
    [left, right, bottom, top] = [Math.min(left, x), Math.max(right, x), Math.min(bottom, y), Math.max(top, y)];
  }
  return crowding(piecesOf(tree.runs, placed), GAP * middle) + (WIDTH_PRICE * Math.max(right - left, ASPECT * (top - bottom))) / middle;
}

/** A way to draw with how hard it is to read. */
interface Rated extends Arrangement {
  readonly price: number;
}

/** Draws single runs longer or shorter as long as that makes the drawing easier to read. */
function tuned(start: Rated, { runs }: RunTree, middle: number, rate: (view: IsoView, drawn: readonly number[]) => Rated): Rated {
  let best = start;
  for (let pass = 0; pass < MOST_PASSES; pass += 1) {
    const before = best.price;
    runs.forEach(({ length_m }, i) => {
      if (length_m === 0) return;
      for (const times of TRIED) {
        // Only what is longer than most is ever drawn shorter than it is.
        const length = length_m < LONG * middle ? Math.max(times * middle, length_m) : times * middle;
        const other = rate(best.view, best.drawn.with(i, length));
        if (other.price < best.price - 1e-6) best = other;
      }
    });
    if (best.price >= before - 1e-6) break;
  }
  return best;
}

/** Of one run, to know it again after an edit. */
const runKey = ({ from, to }: StraightRun): string => `${from}>${to}`;

/** How the runs of a drawing were drawn, by which a later one is laid out alike. */
export interface DrawnLike {
  readonly view: IsoView;
  /** Drawn over true length by run. */
  readonly shares: ReadonlyMap<string, number>;
}

/** What a drawing leaves behind for the next one of the same network. */
export const drawnLike = ({ runs }: Pick<RunTree, 'runs'>, { view, drawn }: Pick<Arrangement, 'view' | 'drawn'>): DrawnLike => ({
  view,
  shares: new Map(runs.map((run, i) => [runKey(run), run.length_m > 0 ? (drawn[i] ?? run.length_m) / run.length_m : 1])),
});

/**
 * Draws a network as an earlier drawing of it was: the same direction, every run as much longer or shorter than it is.
 * A run that was not there before is drawn within plain bounds.
 */
export function likeArrangement(tree: RunTree, like: DrawnLike): Arrangement {
  const middle = middleOf(tree.runs);
  const [least, most] = PLAIN_BOUNDS;
  const drawn = tree.runs.map((run) => {
    const { length_m } = run;
    if (tree.hasLoop || length_m === 0) return length_m;
    const share = like.shares.get(runKey(run));
    return share === undefined ? Math.min(Math.max(length_m, least * middle), most * middle) : length_m * share;
  });
  return { view: like.view, drawn, places: placesOf(tree, drawn, like.view) };
}

/**
 * Chooses among the four directions and several lengths the drawing whose pipes are told apart most easily.
 * A run is drawn shorter than it is only where it is longer than most others; one in a loop keeps its length,
 * so that the loop closes.
 */
export function bestArrangement(tree: RunTree): Arrangement {
  const { runs } = tree;
  const middle = middleOf(runs);
  const bounded = (shortest: number, longest: number): number[] => runs.map(({ length_m }) => (length_m === 0 ? 0 : Math.min(Math.max(length_m, shortest * middle), longest * middle)));
  if (tree.hasLoop || runs.length > MOST_COMPARED) {
    const drawn = tree.hasLoop ? runs.map(({ length_m }) => length_m) : bounded(...PLAIN_BOUNDS);
    return { view: 'south-east', drawn, places: placesOf(tree, drawn, 'south-east') };
  }
  const plain = bounded(...PLAIN_BOUNDS);
  const rate = (view: IsoView, drawn: readonly number[]): Rated => {
    const places = placesOf(tree, drawn, view);
    const unlike = drawn.reduce((sum, length, i) => sum + (length > 0 ? Math.abs(Math.log2(length / (plain[i] ?? length))) : 0), 0);
    return { view, drawn, places, price: priceOf(tree, places, middle) + UNLIKE_PRICE * unlike };
  };
  const better = (a: Rated, b: Rated): Rated => (b.price < a.price - 1e-6 ? b : a);
  return ISO_VIEWS.map((view) => {
    const start = BOUNDS.map((each) => rate(view, bounded(...each))).reduce(better);
    return runs.length <= MOST_TUNED ? tuned(start, tree, middle, rate) : start;
  }).reduce(better);
}
