import type { Verdict } from '../rules/finding.ts';
import type { PressureZone } from '../derived/pipe-zone.ts';
import { circle, doubleLine, line, pen, ring, segments } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import type { FittingSign } from '../isometric/fitting-sign.ts';
import type { Device, Support } from '../model/plan.ts';
import { deviceShape } from './device-shape.ts';
import { fittingShape } from './fitting-shape.ts';
import type { Mark } from './sheet.ts';
import { type SupportLie, supportShape } from './support-shape.ts';

/** A place where the ceiling is measured: an open triangle. */
export const ceilingPlaceSymbol = (x: number, y: number, factor: number): Mark => ({ kind: 'line', places: [x - 1.6 * factor, y + 1.1 * factor, x + 1.6 * factor, y + 1.1 * factor, x, y - 1.7 * factor], closed: true, stroke: pen(WEIGHT.medium), fill: PRINT.paper });

/** A place of the pipe that is measured: a small diamond. */
export const pipeMarkSymbol = (x: number, y: number, factor: number): Mark => ({ kind: 'line', places: [x - 1.3 * factor, y, x, y - 1.3 * factor, x + 1.3 * factor, y, x, y + 1.3 * factor], closed: true, stroke: pen(WEIGHT.medium), fill: PRINT.paper });

/** A drawn place that was not built: struck through. */
export const drawnPlaceSymbol = (x: number, y: number, factor: number): Mark => segments(pen(WEIGHT.medium * factor), [x - 2 * factor, y - 2 * factor, x + 2 * factor, y + 2 * factor, x - 2 * factor, y + 2 * factor, x + 2 * factor, y - 2 * factor]);

/** A place as it was built: a heavy ring. */
export const builtPlaceSymbol = (x: number, y: number, factor: number): Mark => circle(pen(WEIGHT.heavy * 1.4 * factor), x, y, 2.8 * factor);

/** Places along an arc, counter-clockwise on paper from its right, x and y in turn. */
export function arcPlaces(x: number, y: number, radius: number, from_rad: number, to_rad: number, steps = 24): number[] {
  const places: number[] = [];
  for (let i = 0; i <= steps; i += 1) {
    const angle = from_rad + ((to_rad - from_rad) * i) / steps;
    places.push(x + Math.cos(angle) * radius, y - Math.sin(angle) * radius);
  }
  return places;
}

const along = (x: number, y: number, angle_rad: number, length: number): [number, number] => [x + Math.cos(angle_rad) * length, y - Math.sin(angle_rad) * length];

/** An arrow head with its tip at a place, pointing in a direction. */
export function arrowHead(x: number, y: number, angle_rad: number, length: number, fill: string): Mark {
  const spread = 0.32;
  return ring(pen(WEIGHT.hair, fill), [x, y, ...along(x, y, angle_rad + Math.PI - spread, length), ...along(x, y, angle_rad + Math.PI + spread, length)], fill);
}

/** Radius of a nozzle's ring and of a riser's [mm at factor 1]. */
export const NOZZLE_RADIUS_mm = 1.3;
export const RISER_RADIUS_mm = 1.2;
/** How far a nozzle's strokes reach from its middle. */
export const NOZZLE_REACH_mm = 4;

/** Nozzle: small ring with one short stroke per hole, pointing where it blows. */
export function nozzleSymbol(x: number, y: number, holes_rad: readonly number[], factor: number): Mark[] {
  const radius = NOZZLE_RADIUS_mm * factor;
  return [
    ...holes_rad.flatMap((hole) => {
      const stroke = [...along(x, y, hole, radius), ...along(x, y, hole, NOZZLE_REACH_mm * factor)];
      return [line(pen(1.6 * factor, PRINT.paper), ...stroke), line(pen(WEIGHT.heavy * factor), ...stroke)];
    }),
    circle(pen(WEIGHT.medium * factor), x, y, radius, PRINT.paper),
    circle(undefined, x, y, radius * 0.3, PRINT.ink),
  ];
}

/** Cylinder: circle with a flat on the wall side, standing on its rail line; the outlet is a notch. */
export function cylinderSymbol(x: number, y: number, radius: number, back_rad: number, factor: number): Mark[] {
  const flat = Math.acos(0.86);
  const front = back_rad + Math.PI;
  const railMiddle = along(x, y, back_rad, radius * 1.02);
  const railEnd = radius * 1.35;
  const notchTip = along(x, y, front, radius * 0.5);
  return [
    ring(pen(WEIGHT.wide * factor), arcPlaces(x, y, radius, back_rad + flat, back_rad + 2 * Math.PI - flat, 40), PRINT.paper),
    line(
      pen(WEIGHT.heavy * factor),
      ...along(railMiddle[0], railMiddle[1], back_rad + Math.PI / 2, railEnd),
      ...along(railMiddle[0], railMiddle[1], back_rad - Math.PI / 2, railEnd),
    ),
    line(pen(WEIGHT.medium * factor), ...along(x, y, front + 0.3, radius), ...notchTip, ...along(x, y, front - 0.3, radius)),
  ];
}

/** Riser or drop: ring with an upward or a downward stroke. */
export function riserSymbol(x: number, y: number, way: 'riser' | 'drop', factor: number): Mark[] {
  const radius = RISER_RADIUS_mm * factor;
  const sense = way === 'riser' ? Math.PI / 2 : -Math.PI / 2;
  const end = along(x, y, sense, 3.4 * factor);
  return [
    line(pen(WEIGHT.medium * factor), ...along(x, y, sense, radius), ...end),
    arrowHead(end[0], end[1], sense, 1.5 * factor, PRINT.ink),
    circle(pen(WEIGHT.medium * factor), x, y, radius, PRINT.paper),
  ];
}

/** Regulator: lozenge with its flow arrow. */
export function regulatorSymbol(x: number, y: number, flow_rad: number, factor: number): Mark[] {
  const size = 2.2 * factor;
  const tip = along(x, y, flow_rad, size * 0.7);
  const tail = along(x, y, flow_rad + Math.PI, size * 0.7);
  return [
    ring(pen(WEIGHT.medium * factor), [0, 1, 2, 3].flatMap((i) => along(x, y, flow_rad + (i * Math.PI) / 2, size)), PRINT.paper),
    line(pen(WEIGHT.thin * factor), ...tail, ...tip),
    arrowHead(tip[0], tip[1], flow_rad, 1.4 * factor, PRINT.ink),
  ];
}

/** Check valve: flow arrow against a bar. */
export function checkValveSymbol(x: number, y: number, flow_rad: number, factor: number): Mark[] {
  const size = 1.6 * factor;
  const tip = along(x, y, flow_rad, size);
  const tail = along(x, y, flow_rad + Math.PI, size);
  const across = flow_rad + Math.PI / 2;
  return [
    ring(pen(WEIGHT.medium * factor), [...tip, ...along(tail[0], tail[1], across, size * 0.8), ...along(tail[0], tail[1], across, -size * 0.8)], PRINT.paper),
    line(pen(WEIGHT.wide * factor), ...along(tip[0], tip[1], across, size), ...along(tip[0], tip[1], across, -size)),
  ];
}

/** The sign of a fitting but a reducer, whose wedge is drawn beside it: ticks across its legs, or a shape of its own. */
export const fittingSymbol = (x: number, y: number, sign: FittingSign, legs_rad: readonly number[], colour: string, factor: number): Mark[] =>
  fittingShape(sign, legs_rad).map(({ places, isHeavy, fill }) => {
    const stroke = pen((isHeavy ? WEIGHT.heavy : WEIGHT.medium) * factor, colour);
    const placed = places.map((value, i) => (i % 2 === 0 ? x + value * factor : y - value * factor));
    return fill ? ring(stroke, placed, fill === 'paper' ? PRINT.paper : colour) : line(stroke, ...placed);
  });

/** Reducer: wedge that narrows with the flow. */
export function reducerSymbol(x: number, y: number, flow_rad: number, colour: string, factor: number): Mark {
  const back = along(x, y, flow_rad + Math.PI, 1.4 * factor);
  return ring(
    pen(WEIGHT.thin * factor, colour),
    [...along(back[0], back[1], flow_rad + Math.PI / 2, 1.3 * factor), ...along(back[0], back[1], flow_rad - Math.PI / 2, 1.3 * factor), ...along(x, y, flow_rad, 1.6 * factor)],
    colour,
  );
}

/** Break of a pipe that is drawn shorter than it is: a gap between two strokes aslant. */
export function breakSymbol(x: number, y: number, pipe_rad: number, factor: number): Mark[] {
  const half = 0.8 * factor;
  const ends = [along(x, y, pipe_rad, half), along(x, y, pipe_rad + Math.PI, half)];
  const [[ax, ay] = [x, y], [bx, by] = [x, y]] = ends;
  return [
    line(pen(2.2 * factor, PRINT.paper), ax, ay, bx, by),
    ...ends.map(([endX, endY]) => line(pen(WEIGHT.medium * factor), ...along(endX, endY, pipe_rad + Math.PI / 3, 2 * factor), ...along(endX, endY, pipe_rad + Math.PI / 3, -2 * factor))),
  ];
}

/** Pipe of a pressure zone: a single line, or the double one of the high-pressure side. */
export const pipeLine = (zone: PressureZone, factor: number, ...places: number[]): Mark[] =>
  zone === 'high' ? doubleLine(PRINT.warm, factor, places) : [line(pen(WEIGHT.heavy * factor, PRINT.cool), ...places)];

/** Colour of what sits on pipe of a zone. */
export const zoneColour = (zone: PressureZone): string => (zone === 'high' ? PRINT.warm : PRINT.cool);

/** Pipe support: two strokes square to its pipe, broken where it only carries; the bar of what holds it closes them. */
export function supportSymbol(x: number, y: number, kind: Support['kind'], lie: SupportLie, factor: number): Mark[] {
  const { strokes, bar, isBroken } = supportShape(kind, lie);
  const placed = (places: readonly number[]): number[] => places.map((value, i) => (i % 2 === 0 ? x + value * factor : y - value * factor));
  const stroke = pen(WEIGHT.medium * factor, PRINT.ink, isBroken ? [0.6 * factor, 0.45 * factor] : undefined);
  return [
    ...strokes.map((each) => line(stroke, ...placed(each))),
    ...(bar ? [line(pen(WEIGHT.heavy * factor), ...placed(bar))] : []),
  ];
}

/** Seat of a work place: a ring and the arc of its back. */
export const seatSymbol = (x: number, y: number, radius: number, factor: number): Mark[] => [
  circle(pen(WEIGHT.thin * factor, PRINT.solid), x, y, radius),
  line(pen(WEIGHT.thin * factor, PRINT.solid), ...arcPlaces(x, y, radius * 1.6, -0.75 * Math.PI, -0.25 * Math.PI, 8)),
];

/** The sign of a detector, alarm, switch, sign, panel or air outlet, as `device-shape` has it. */
export const deviceSymbol = (x: number, y: number, device: Device, factor: number): Mark[] =>
  deviceShape(device).map(({ places, isClosed, fill, isHeavy, isDashed }) => {
    const stroke = pen((isHeavy ? WEIGHT.heavy : WEIGHT.medium) * factor, PRINT.ink, isDashed ? [0.9 * factor, 0.6 * factor] : undefined);
    const placed = places.map((value, i) => (i % 2 === 0 ? x + value * factor : y - value * factor));
    return isClosed ? ring(stroke, placed, fill === 'ink' ? PRINT.ink : fill === 'paper' ? PRINT.paper : undefined) : line(stroke, ...placed);
  });

/** Datum: ring with two opposite quarters filled. */
export function datumSymbol(x: number, y: number, factor: number): Mark[] {
  const radius = 2 * factor;
  const quarter = (from: number): Mark => ring(pen(WEIGHT.hair), [x, y, ...arcPlaces(x, y, radius, from, from + Math.PI / 2, 8)], PRINT.ink);
  const reach = radius * 1.5;
  return [
    circle(pen(WEIGHT.thin * factor), x, y, radius, PRINT.paper),
    quarter(0),
    quarter(Math.PI),
    line(pen(WEIGHT.thin * factor), x - reach, y, x + reach, y),
    line(pen(WEIGHT.thin * factor), x, y - reach, x, y + reach),
  ];
}

/** North arrow: half-filled dart with its letter drawn by the caller below its foot. */
export function northSymbol(x: number, y: number, height: number): Mark[] {
  const half = height * 0.26;
  const foot = y + height * 0.5;
  const waist = y + height * 0.3;
  const tip = y - height * 0.5;
  return [
    ring(pen(WEIGHT.thin), [x, tip, x + half, foot, x, waist], PRINT.ink),
    ring(pen(WEIGHT.thin), [x, tip, x - half, foot, x, waist], PRINT.paper),
  ];
}

/** The mark of a verdict around a middle; each differs in shape, so that none needs its colour. */
export function verdictMark(x: number, y: number, size: number, verdict: Verdict): Mark[] {
  const half = size / 2;
  const stroke = pen(WEIGHT.medium);
  switch (verdict) {
    case 'stop':
      return [
        ring(pen(WEIGHT.hair), [x - half, y - half, x + half, y - half, x + half, y + half, x - half, y + half], PRINT.ink),
        line(pen(size * 0.18, PRINT.paper), x - half * 0.62, y, x + half * 0.62, y),
      ];
    case 'warn':
      return [ring(stroke, [x, y - half, x + half, y + half * 0.85, x - half, y + half * 0.85], PRINT.paper)];
    case 'note':
      return [circle(undefined, x, y, half * 0.5, PRINT.ink)];
    case 'not-checked': {
      const piece = Math.PI / 4;
      return [0, 1, 2, 3].map((i) => line(stroke, ...arcPlaces(x, y, half * 0.9, i * 2 * piece + 0.25, (i * 2 + 1) * piece + 0.35, 4)));
    }
    case 'ok':
      return [line(pen(WEIGHT.thin), x - half * 0.8, y, x - half * 0.2, y + half * 0.7, x + half * 0.9, y - half * 0.8)];
  }
}
