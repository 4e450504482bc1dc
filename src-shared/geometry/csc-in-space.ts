import { type BentPath, type DirectedEnd, bentPath, cross3, dot3, mixed, squareTo } from './bent-path.ts';
import { type Direction3, direction3, opposite3 } from './vector3.ts';

/** Unknowns of a curve of arc, straight and arc: turn and plane of either arc [rad], and the straight in radii. */
type Unknowns = [turn0: number, plane0: number, turn1: number, plane1: number, straight: number];
/** Two directions are the same, and two places, in radii. */
const EXACT = 1e-10;
const MOST_STEPS = 25;
const FULL = 2 * Math.PI;

interface Frame {
  readonly way: Direction3;
  readonly e: Direction3;
  readonly f: Direction3;
}
const frameOf = (way: Direction3): Frame => {
  const e = squareTo(way);
  return { way, e, f: cross3(way, e) };
};
const inPlane = ({ e, f }: Frame, plane_rad: number): Direction3 => mixed(Math.cos(plane_rad), e, Math.sin(plane_rad), f);

/** An arc of radius 1 with its derivatives: direction at its end and way to it. */
function arcOf(frame: Frame, turn: number, plane: number) {
  const [s, c] = [Math.sin(turn), Math.cos(turn)];
  const normal = inPlane(frame, plane);
  const aside = inPlane(frame, plane + Math.PI / 2);
  const zero = { x: 0, y: 0, z: 0 };
  return {
    way: mixed(c, frame.way, s, normal),
    wayByTurn: mixed(-s, frame.way, c, normal),
    wayByPlane: mixed(s, aside, 0, zero),
    offset: mixed(s, frame.way, 1 - c, normal),
    offsetByTurn: mixed(c, frame.way, s, normal),
    offsetByPlane: mixed(1 - c, aside, 0, zero),
  };
}

/** Solves the damped normal equations; undefined when they are singular. */
function solved(matrix: number[][], right: number[]): number[] | undefined {
  const n = right.length;
  const rows = matrix.map((row, i) => [...row, right[i] ?? 0]);
  for (let k = 0; k < n; k += 1) {
    let pivot = k;
    for (let i = k + 1; i < n; i += 1) if (Math.abs(rows[i]?.[k] ?? 0) > Math.abs(rows[pivot]?.[k] ?? 0)) pivot = i;
    const [top, other] = [rows[pivot], rows[k]];
    if (!top || !other || Math.abs(top[k] ?? 0) < 1e-300) return undefined;
    rows[pivot] = other;
    rows[k] = top;
    for (let i = k + 1; i < n; i += 1) {
      const row = rows[i];
      if (!row) continue;
      const share = (row[k] ?? 0) / (top[k] ?? 1);
      for (let j = k; j <= n; j += 1) row[j] = (row[j] ?? 0) - share * (top[j] ?? 0);
    }
  }
  const answer = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i -= 1) {
    let sum = rows[i]?.[n] ?? 0;
    for (let j = i + 1; j < n; j += 1) sum -= (rows[i]?.[j] ?? 0) * (answer[j] ?? 0);
    answer[i] = sum / (rows[i]?.[i] ?? 1);
  }
  return answer;
}

/** The second arc is walked from the far end backward: its frame looks back. */
function residual(near: Frame, far: Frame, gap: Direction3, [turn0, plane0, turn1, plane1, straight]: Unknowns) {
  const first = arcOf(near, turn0, plane0);
  const last = arcOf(far, turn1, plane1);
  const ways = mixed(1, first.way, 1, last.way);
  const places = mixed(1, mixed(1, first.offset, straight, first.way), -1, mixed(1, gap, 1, last.offset));
  const columns: [Direction3, Direction3][] = [
    [first.wayByTurn, mixed(1, first.offsetByTurn, straight, first.wayByTurn)],
    [first.wayByPlane, mixed(1, first.offsetByPlane, straight, first.wayByPlane)],
    [last.wayByTurn, mixed(-1, last.offsetByTurn, 0, last.offset)],
    [last.wayByPlane, mixed(-1, last.offsetByPlane, 0, last.offset)],
    [{ x: 0, y: 0, z: 0 }, first.way],
  ];
  return { ways, places, columns, square: dot3(ways, ways) + dot3(places, places) };
}

/** Damped least squares from a start; undefined where it does not come to a curve. */
function closed(near: Frame, far: Frame, gap: Direction3, start: Unknowns): Unknowns | undefined {
  let at = start;
  let now = residual(near, far, gap, at);
  let damping = 1e-3;
  for (let step = 0; step < MOST_STEPS && now.square > EXACT * EXACT; step += 1) {
    const { columns, ways, places } = now;
    const matrix = columns.map(([u, v], i) => columns.map(([p, q], j) => dot3(u, p) + dot3(v, q) + (i === j ? damping : 0)));
    const change = solved(matrix, columns.map(([u, v]) => -dot3(u, ways) - dot3(v, places)));
    if (!change) return undefined;
    const next = at.map((value, i) => value + (change[i] ?? 0)) as Unknowns;
    const then = residual(near, far, gap, next);
    if (then.square < now.square) {
      at = next;
      now = then;
      damping = Math.max(damping / 10, 1e-14);
    } else {
      damping *= 8;
      if (damping > 1e6) return undefined;
    }
  }
  return now.square <= EXACT * EXACT ? at : undefined;
}

/** The turn from one direction to another and the plane it lies in, the short way or the long way round. */
function turnTo({ way, e, f }: Frame, to: Direction3, isLong: boolean): [turn: number, plane: number] {
  const [x, y] = [dot3(to, e), dot3(to, f)];
  const turn = Math.atan2(Math.hypot(x, y), dot3(to, way));
  const plane = Math.atan2(y, x);
  return isLong ? [FULL - turn, plane + Math.PI] : [turn, plane];
}

/** A turn within one full one, walked forward; a negative one is the same circle walked on. */
const forward = (turn: number): number => {
  const rest = ((turn % FULL) + FULL) % FULL;
  return rest > FULL - 1e-7 ? 0 : rest;
};

/**
 * Curves in space of an arc, a straight and an arc, both arcs of one radius, between two directed ends: all that
 * damped least squares find from a fan of starts, each to within 1e-10 of the radius.
 * The shortest of them is no shorter than the shortest curve of bounded curvature, which may also be a helix or three
 * arcs where the ends are near (H. J. Sussmann, Shortest 3-dimensional paths with a prescribed curvature bound, 1995).
 */
export function curvesInSpace(from: DirectedEnd, to: DirectedEnd, radius_m: number): BentPath[] {
  const near = frameOf(from.way);
  const far = frameOf(opposite3(to.way));
  const gap = mixed(1 / radius_m, to.at, -1 / radius_m, from.at);
  const origin = { x: 0, y: 0, z: 0 };
  const corner = mixed(1, gap, -1, mixed(1, from.way, 1, to.way));
  const guesses = [gap, corner, mixed(1, gap, -3, mixed(1, from.way, 1, to.way)), mixed(1, gap, -1, from.way), mixed(1, gap, -1, to.way), cross3(from.way, gap), cross3(gap, from.way)].flatMap((each) => direction3(origin, each, 1e-9) ?? []);
  const found: BentPath[] = [];
  for (const guess of guesses) {
    for (const [isLong0, isLong1] of [[false, false], [true, false], [false, true], [true, true]] as const) {
      const [turn0, plane0] = turnTo(near, guess, isLong0);
      const [turn1, plane1] = turnTo(far, opposite3(guess), isLong1);
      const at = closed(near, far, gap, [turn0, plane0, turn1, plane1, Math.max(0, dot3(corner, guess))]);
      if (!at || at[4] < -1e-9) continue;
      const [first, last] = [forward(at[0]), forward(at[2])];
      const normal0 = inPlane(near, at[1]);
      // Walked from the far end it bends toward the same centre; its normal is turned along with it.
      const end = inPlane(far, at[3]);
      const way1 = arcOf(far, last, at[3]);
      const normal1 = mixed(Math.sin(last), far.way, -Math.cos(last), end);
      const isTrue = Math.abs(dot3(normal1, way1.way)) < 1e-6;
      if (!isTrue) continue;
      found.push(
        bentPath(from, radius_m, [
          { normal: () => normal0, length_m: first * radius_m },
          { length_m: Math.max(0, at[4]) * radius_m },
          { normal: () => opposite3(normal1), length_m: last * radius_m },
        ]),
      );
    }
  }
  return found.filter((path) => leadsTo(path, to));
}

/** Whether a curve ends where and as it should. */
function leadsTo(path: BentPath, to: DirectedEnd): boolean {
  const piece = path.pieces.at(-1);
  if (!piece) return false;
  const turn = piece.kind === 'arc' ? piece.turn_rad : 0;
  const reach = piece.kind === 'arc' ? mixed(path.radius_m * Math.sin(turn), piece.start.way, path.radius_m * (1 - Math.cos(turn)), piece.normal) : mixed(piece.length_m, piece.start.way, 0, piece.start.way);
  const off = mixed(1, mixed(1, piece.start.at, 1, reach), -1, to.at);
  const way = piece.kind === 'arc' ? mixed(Math.cos(turn), piece.start.way, Math.sin(turn), piece.normal) : piece.start.way;
  const aside = mixed(1, way, -1, to.way);
  return Math.hypot(off.x, off.y, off.z) <= 1e-7 * Math.max(1, path.radius_m) && Math.hypot(aside.x, aside.y, aside.z) <= 1e-7;
}
