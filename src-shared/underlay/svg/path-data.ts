import { type Run, arcPieces, pushArc, pushCubic } from '../flatten.ts';
import { type Matrix, multiply } from '../matrix.ts';
import { PathTokens } from './path-tokens.ts';

/** A run of straight pieces of a path, x and y in turn. */
export interface SubPath {
  readonly places: Run;
  readonly isClosed: boolean;
}

/** Numbers that one step of each command takes. */
const ARGUMENTS: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, C: 6, S: 4, Q: 4, T: 2, A: 7, Z: 0 };

/** Draws path data into runs, carried through a transform while curves are flattened. */
class PathRuns {
  readonly done: SubPath[] = [];
  private run: Run = [];
  x = 0;
  y = 0;
  private startX = 0;
  private startY = 0;
  /** Last control place, for the smooth commands. */
  controlX = 0;
  controlY = 0;

  constructor(
    private readonly m: Matrix,
    private readonly tolerance: number,
  ) {}

  private put(x: number, y: number): void {
    this.run.push(this.m[0] * x + this.m[2] * y + this.m[4], this.m[1] * x + this.m[3] * y + this.m[5]);
  }

  private begin(): void {
    if (this.run.length === 0) this.put(this.x, this.y);
  }

  move(x: number, y: number): void {
    this.finish(false);
    this.x = this.startX = x;
    this.y = this.startY = y;
    this.settle();
  }

  line(x: number, y: number): void {
    this.begin();
    this.put(x, y);
    this.x = x;
    this.y = y;
    this.settle();
  }

  cubic(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
    this.begin();
    const [a, b, c, d, e, f] = this.m;
    pushCubic(
      this.run,
      a * this.x + c * this.y + e,
      b * this.x + d * this.y + f,
      a * x1 + c * y1 + e,
      b * x1 + d * y1 + f,
      a * x2 + c * y2 + e,
      b * x2 + d * y2 + f,
      a * x + c * y + e,
      b * x + d * y + f,
      this.tolerance,
    );
    this.x = x;
    this.y = y;
    this.controlX = x2;
    this.controlY = y2;
  }

  quadratic(x1: number, y1: number, x: number, y: number): void {
    const { x: x0, y: y0 } = this;
    this.cubic(x0 + (2 / 3) * (x1 - x0), y0 + (2 / 3) * (y1 - y0), x + (2 / 3) * (x1 - x), y + (2 / 3) * (y1 - y), x, y);
    this.controlX = x1;
    this.controlY = y1;
  }

  /** Elliptic arc from end to end: SVG 1.1 appendix F.6.5 and F.6.6. */
  arc(rxGiven: number, ryGiven: number, turn_deg: number, isLarge: boolean, isPositive: boolean, x: number, y: number): void {
    let rx = Math.abs(rxGiven);
    let ry = Math.abs(ryGiven);
    if (rx === 0 || ry === 0 || (x === this.x && y === this.y)) {
      this.line(x, y);
      return;
    }
    const turn = (turn_deg * Math.PI) / 180;
    const cos = Math.cos(turn);
    const sin = Math.sin(turn);
    const halfX = (this.x - x) / 2;
    const halfY = (this.y - y) / 2;
    const x1 = cos * halfX + sin * halfY;
    const y1 = -sin * halfX + cos * halfY;
    const grow = Math.sqrt((x1 * x1) / (rx * rx) + (y1 * y1) / (ry * ry));
    if (grow > 1) {
      rx *= grow;
      ry *= grow;
    }
    const over = rx * rx * y1 * y1 + ry * ry * x1 * x1;
    const root = Math.sqrt(Math.max(0, (rx * rx * ry * ry - over) / over)) * (isLarge === isPositive ? -1 : 1);
    const centreX = (root * rx * y1) / ry;
    const centreY = (-root * ry * x1) / rx;
    const from = Math.atan2((y1 - centreY) / ry, (x1 - centreX) / rx);
    const to = Math.atan2((-y1 - centreY) / ry, (-x1 - centreX) / rx);
    let sweep = to - from;
    if (isPositive && sweep < 0) sweep += 2 * Math.PI;
    if (!isPositive && sweep > 0) sweep -= 2 * Math.PI;
    const cx = cos * centreX - sin * centreY + (this.x + x) / 2;
    const cy = sin * centreX + cos * centreY + (this.y + y) / 2;
    const frame = multiply(this.m, [rx * cos, rx * sin, -ry * sin, ry * cos, cx, cy]);
    const radius = Math.max(Math.hypot(frame[0], frame[1]), Math.hypot(frame[2], frame[3]));
    this.begin();
    // The arc repeats the start, and its end is rounded: both give way to the exact places.
    const arc: Run = [];
    pushArc(arc, frame, from, sweep, arcPieces(Math.max(radius, 1e-12), sweep, this.tolerance));
    for (let i = 2; i < arc.length - 2; i += 1) this.run.push(arc[i] ?? 0);
    this.put(x, y);
    this.x = x;
    this.y = y;
    this.settle();
  }

  close(): void {
    this.finish(true);
    this.x = this.startX;
    this.y = this.startY;
    this.settle();
  }

  /** Ends the run under way. */
  finish(isClosed: boolean): void {
    if (this.run.length >= 4) this.done.push({ places: this.run, isClosed });
    this.run = [];
  }

  private settle(): void {
    this.controlX = this.x;
    this.controlY = this.y;
  }
}

/**
 * The runs of an SVG path. Data that breaks off is drawn up to the break, as the SVG specification asks.
 * @param m         carries path coordinates to the drawing
 * @param tolerance greatest distance of a chord from its curve, drawing units
 */
export function pathRuns(data: string, m: Matrix, tolerance: number): SubPath[] {
  const tokens = new PathTokens(data);
  const path = new PathRuns(m, tolerance);
  let last = '';
  let command = tokens.command();
  while (command !== undefined) {
    const upper = command.toUpperCase();
    if (last === '' && upper !== 'M') break;
    if (upper === 'Z') path.close();
    else if (!repeatStep(tokens, path, command, last)) break;
    last = upper;
    command = tokens.command();
  }
  path.finish(false);
  return path.done;
}

/** Carries out a command for every group of numbers after it. @returns false when the first group is broken */
function repeatStep(tokens: PathTokens, path: PathRuns, command: string, before: string): boolean {
  const upper = command.toUpperCase();
  const isRelative = command !== upper;
  let last = before;
  for (let step = 0; ; step += 1) {
    const n: number[] = [];
    for (let i = 0; i < (ARGUMENTS[upper] ?? 0); i += 1) {
      const value = upper === 'A' && (i === 3 || i === 4) ? tokens.flag() : tokens.number();
      if (value === undefined) return i === 0 && step > 0;
      n.push(value);
    }
    // A second pair after a move is a line.
    const doing = upper === 'M' && step > 0 ? 'L' : upper;
    takeStep(path, doing, n, isRelative ? path.x : 0, isRelative ? path.y : 0, last);
    last = doing;
  }
}

function takeStep(path: PathRuns, command: string, n: readonly number[], dx: number, dy: number, last: string): void {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0] = n;
  const mirroredX = 2 * path.x - path.controlX;
  const mirroredY = 2 * path.y - path.controlY;
  if (command === 'M') path.move(a + dx, b + dy);
  else if (command === 'L') path.line(a + dx, b + dy);
  else if (command === 'H') path.line(a + dx, path.y);
  else if (command === 'V') path.line(path.x, a + dy);
  else if (command === 'C') path.cubic(a + dx, b + dy, c + dx, d + dy, e + dx, f + dy);
  else if (command === 'S') {
    const isSmooth = last === 'C' || last === 'S';
    path.cubic(isSmooth ? mirroredX : path.x, isSmooth ? mirroredY : path.y, a + dx, b + dy, c + dx, d + dy);
  } else if (command === 'Q') path.quadratic(a + dx, b + dy, c + dx, d + dy);
  else if (command === 'T') {
    const isSmooth = last === 'Q' || last === 'T';
    path.quadratic(isSmooth ? mirroredX : path.x, isSmooth ? mirroredY : path.y, a + dx, b + dy);
  } else if (command === 'A') path.arc(a, b, c, d === 1, e === 1, f + dx, g + dy);
}
