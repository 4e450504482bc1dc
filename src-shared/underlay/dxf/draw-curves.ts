import { arcPieces, pushArc, type Run } from '../flatten.ts';
import { transformed } from '../matrix.ts';
import { isSoundSpline, pushSpline } from '../rational-spline.ts';
import { type Drawer, planeOf, workOf } from './reading.ts';

const TURN = 2 * Math.PI;
const RADIANS = Math.PI / 180;

/** Turn from one direction counter-clockwise to the other, more than 0 and at most a full turn. */
export const sweepBetween_rad = (from_rad: number, to_rad: number): number => {
  const turn = (to_rad - from_rad) % TURN;
  return turn <= 1e-12 ? turn + TURN : turn;
};

const drawRound = (reading: Parameters<Drawer>[0], from_rad: number, sweep_rad: number, isClosed: boolean): void => {
  const { records, tolerance } = reading;
  const radius = Math.abs(records.number(40, 0));
  if (radius === 0) return;
  const frame = [radius, 0, 0, radius, records.number(10, 0), records.number(20, 0)] as const;
  const run: Run = [];
  pushArc(run, frame, from_rad, sweep_rad, arcPieces(radius, sweep_rad, tolerance));
  workOf(reading).polyline(transformed(planeOf(records, records.number(30, 0)), run), isClosed);
};

/** CIRCLE */
export const drawCircle: Drawer = (reading) => drawRound(reading, 0, TURN, true);

/** ARC: counter-clockwise from one angle to the other [°]. */
export const drawArc: Drawer = (reading) => {
  const from = reading.records.number(50, 0) * RADIANS;
  drawRound(reading, from, sweepBetween_rad(from, reading.records.number(51, 360) * RADIANS), false);
};

/** ELLIPSE: centre and half major axis in plan coordinates, the minor axis by ratio; parameters in radians. */
export const drawEllipse: Drawer = (reading) => {
  const { records, tolerance } = reading;
  const [mx, my, mz] = [records.number(11, 0), records.number(21, 0), records.number(31, 0)];
  const ratio = records.number(40, 1);
  const [nx, ny, nz] = [records.number(210, 0), records.number(220, 0), records.number(230, 1)];
  const from = records.number(41, 0);
  const to = records.number(42, TURN);
  const sweep = sweepBetween_rad(from, to);
  const size = Math.hypot(nx, ny, nz) || 1;
  const minor = [((ny * mz - nz * my) / size) * ratio, ((nz * mx - nx * mz) / size) * ratio] as const;
  const run: Run = [];
  pushArc(
    run,
    [mx, my, minor[0], minor[1], records.number(10, 0), records.number(20, 0)],
    from,
    sweep,
    arcPieces(Math.max(Math.hypot(mx, my, mz), 1e-12), sweep, tolerance),
  );
  workOf(reading).polyline(run, Math.abs(sweep - TURN) < 1e-9);
};

/** SPLINE: by its control places, or straight between the places it passes where it has no others. */
export const drawSpline: Drawer = (reading) => {
  const { records, tolerance, tally } = reading;
  const knots: number[] = [];
  const places: number[] = [];
  const weights: number[] = [];
  const passed: number[] = [];
  for (let i = 0; i < records.count; i += 1) {
    const code = records.codeAt(i);
    if (code === 40) knots.push(records.numberAt(i));
    else if (code === 41) weights.push(records.numberAt(i));
    else if (code === 10 && records.codeAt(i + 1) === 20) places.push(records.numberAt(i), records.numberAt(i + 1));
    else if (code === 11 && records.codeAt(i + 1) === 21) passed.push(records.numberAt(i), records.numberAt(i + 1));
  }
  const work = workOf(reading);
  const spline = { degree: records.whole(71, 3), knots, places, weights: weights.length > 0 ? weights : undefined };
  if (isSoundSpline(spline)) {
    const run: Run = [];
    pushSpline(run, spline, tolerance);
    const isClosed = run[0] === run[run.length - 2] && run[1] === run[run.length - 1];
    work.polyline(run, isClosed);
  } else if (passed.length >= 4) {
    tally.note('fit-points');
    work.polyline(passed, false);
  } else {
    tally.note('unsound-spline');
  }
};
