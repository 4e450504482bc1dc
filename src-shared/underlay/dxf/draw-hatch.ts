import { fillRings } from '../fill-rings.ts';
import { arcPieces, pushArc, pushBulge, type Run } from '../flatten.ts';
import { transformed } from '../matrix.ts';
import { isSoundSpline, pushSpline } from '../rational-spline.ts';
import { type Drawer, planeOf, workOf } from './reading.ts';
import type { Records } from './records.ts';

const TURN = 2 * Math.PI;
const RADIANS = Math.PI / 180;
const POLYLINE_PATH = 2;

/** The pairs of a hatch come in a fixed order: this walks them and answers nothing once the order is broken. */
class Walk {
  constructor(
    private readonly records: Records,
    private at: number,
  ) {}

  /** Value of the next pair when it has this code, else undefined and it stays where it is. */
  take(code: number): number | undefined {
    if (this.at >= this.records.count || this.records.codeAt(this.at) !== code) return undefined;
    this.at += 1;
    return this.records.numberAt(this.at - 1);
  }

  /** Value of the next pair. @throws {BrokenHatch} when it has another code */
  need(code: number): number {
    const value = this.take(code);
    if (value === undefined) throw new BrokenHatch();
    return value;
  }

  /** Passes over the next pair when it has this code. */
  skip(code: number): boolean {
    if (this.at >= this.records.count || this.records.codeAt(this.at) !== code) return false;
    this.at += 1;
    return true;
  }

  /** A count of things that follow: never more than there are pairs. */
  count(code: number): number {
    const count = this.need(code);
    if (count < 0 || count > this.records.count) throw new BrokenHatch();
    return Math.trunc(count);
  }
}

class BrokenHatch extends Error {}

function readPolylinePath(walk: Walk, tolerance: number): Run {
  const hasBulges = walk.need(72) !== 0;
  walk.need(73);
  const corners: { x: number; y: number; bulge: number }[] = [];
  for (let left = walk.count(93); left > 0; left -= 1) {
    const x = walk.need(10);
    const y = walk.need(20);
    const bulge = walk.take(42) ?? 0;
    corners.push({ x, y, bulge: hasBulges ? bulge : 0 });
  }
  const run: Run = [];
  corners.forEach((from, i) => {
    const to = corners[(i + 1) % corners.length] ?? from;
    if (i === 0) run.push(from.x, from.y);
    pushBulge(run, from.x, from.y, to.x, to.y, from.bulge, tolerance);
  });
  return run;
}

/** An arc of a circle or ellipse; one that runs clockwise has its angles counted clockwise, too. */
function readRoundEdge(walk: Walk, run: Run, isCircle: boolean, tolerance: number): void {
  const x = walk.need(10);
  const y = walk.need(20);
  const [mx, my] = isCircle ? [0, 0] : [walk.need(11), walk.need(21)];
  const size = walk.need(40);
  const start = walk.need(50) * RADIANS;
  const end = walk.need(51) * RADIANS;
  const isCounterClockwise = walk.need(73) !== 0;
  const turn = Math.abs(end - start) >= TURN - 1e-9 ? TURN : (((end - start) % TURN) + TURN) % TURN;
  const radius = isCircle ? size : Math.hypot(mx, my);
  if (radius === 0) return;
  const frame = isCircle ? ([size, 0, 0, size, x, y] as const) : ([mx, my, -my * size, mx * size, x, y] as const);
  const pieces = arcPieces(Math.abs(radius), turn, tolerance);
  if (isCounterClockwise) pushArc(run, frame, start, turn, pieces);
  else pushArc(run, frame, -start, -turn, pieces);
}

function readSplineEdge(walk: Walk, run: Run, tolerance: number): void {
  const degree = walk.need(94);
  const isRational = walk.need(73) !== 0;
  walk.need(74);
  const knotCount = walk.count(95);
  const placeCount = walk.count(96);
  const knots: number[] = [];
  for (let i = 0; i < knotCount; i += 1) knots.push(walk.need(40));
  const places: number[] = [];
  const weights: number[] = [];
  for (let i = 0; i < placeCount; i += 1) {
    places.push(walk.need(10), walk.need(20));
    const weight = walk.take(42);
    if (weight !== undefined) weights.push(weight);
  }
  const passed = walk.take(97) ?? 0;
  for (let i = 0; i < passed; i += 1) {
    if (walk.take(11) === undefined) break;
    walk.need(21);
  }
  for (const code of [12, 22, 13, 23]) walk.take(code);
  const spline = { degree, knots, places, weights: isRational && weights.length > 0 ? weights : undefined };
  if (!isSoundSpline(spline)) throw new BrokenHatch();
  pushSpline(run, spline, tolerance);
}

function readEdgePath(walk: Walk, tolerance: number): Run {
  const run: Run = [];
  for (let left = walk.count(93); left > 0; left -= 1) {
    const kind = walk.need(72);
    const edge: Run = [];
    if (kind === 1) edge.push(walk.need(10), walk.need(20), walk.need(11), walk.need(21));
    else if (kind === 2 || kind === 3) readRoundEdge(walk, edge, kind === 2, tolerance);
    else if (kind === 4) readSplineEdge(walk, edge, tolerance);
    else throw new BrokenHatch();
    appendEdge(run, edge);
  }
  return run;
}

/** Joins an edge to the run so far, turned round where its far end is the nearer one. */
function appendEdge(run: Run, edge: Run): void {
  const length = run.length;
  if (length >= 2 && edge.length >= 4) {
    const x = run[length - 2] ?? 0;
    const y = run[length - 1] ?? 0;
    const toStart = Math.hypot((edge[0] ?? 0) - x, (edge[1] ?? 0) - y);
    const toEnd = Math.hypot((edge[edge.length - 2] ?? 0) - x, (edge[edge.length - 1] ?? 0) - y);
    if (toEnd < toStart) {
      for (let i = edge.length - 2; i >= 0; i -= 2) run.push(edge[i] ?? 0, edge[i + 1] ?? 0);
      return;
    }
  }
  for (const value of edge) run.push(value);
}

/** HATCH: its outlines; the area between them is filled when the hatch is solid. */
export const drawHatch: Drawer = (reading) => {
  const { records, tolerance, tally } = reading;
  const isSolid = records.whole(70, 0) === 1;
  const start = records.indexOf(91);
  if (start < 0) return;
  const loops: Run[] = [];
  try {
    const walk = new Walk(records, start);
    for (let left = walk.count(91); left > 0; left -= 1) {
      const flags = walk.need(92);
      loops.push((flags & POLYLINE_PATH) !== 0 ? readPolylinePath(walk, tolerance) : readEdgePath(walk, tolerance));
      const sources = walk.take(97) ?? 0;
      for (let i = 0; i < sources && walk.skip(330); i += 1);
    }
  } catch (error) {
    if (!(error instanceof BrokenHatch)) throw error;
    tally.note('damaged-hatch');
    return;
  }
  const work = workOf(reading);
  const plane = planeOf(records, records.number(30, 0));
  const rings = loops.map((loop) => transformed(plane, loop));
  for (const ring of rings) work.polyline(ring, true);
  if (!isSolid) tally.note('pattern');
  else for (const ring of fillRings(rings, 'evenodd')) work.fill(ring);
};
