import { arcPieces, pushArc } from '../flatten.ts';
import { type Matrix, multiply, transformed } from '../matrix.ts';
import { lengthOf } from './length.ts';
import type { XmlElement } from './parse-xml.ts';
import { type SubPath, pathRuns } from './path-data.ts';
import { numbersIn } from './transform-list.ts';

/** Sizes that lengths of a shape refer to. */
export interface ShapeFrame {
  /** Carries user units to the drawing. */
  readonly matrix: Matrix;
  /** What 100 % across and down is, user units. */
  readonly width: number;
  readonly height: number;
  /** Greatest distance of a chord from its curve, drawing units. */
  readonly tolerance: number;
}

type Shape = (element: XmlElement, frame: ShapeFrame) => SubPath[];

const roundRun = (cx: number, cy: number, rx: number, ry: number, { matrix, tolerance }: ShapeFrame): SubPath[] => {
  if (!(rx > 0) || !(ry > 0)) return [];
  const oval = multiply(matrix, [rx, 0, 0, ry, cx, cy]);
  const radius = Math.max(Math.hypot(oval[0], oval[1]), Math.hypot(oval[2], oval[3]), 1e-12);
  const places: number[] = [];
  pushArc(places, oval, 0, 2 * Math.PI, arcPieces(radius, 2 * Math.PI, tolerance));
  return [{ places, isClosed: true }];
};

const rectangle: Shape = ({ attributes }, frame) => {
  const x = lengthOf(attributes.get('x'), 0, frame.width);
  const y = lengthOf(attributes.get('y'), 0, frame.height);
  const width = lengthOf(attributes.get('width'), 0, frame.width);
  const height = lengthOf(attributes.get('height'), 0, frame.height);
  if (!(width > 0) || !(height > 0)) return [];
  const given = { rx: lengthOf(attributes.get('rx'), -1, frame.width), ry: lengthOf(attributes.get('ry'), -1, frame.height) };
  const rx = Math.min(width / 2, Math.max(0, given.rx >= 0 ? given.rx : given.ry));
  const ry = Math.min(height / 2, Math.max(0, given.ry >= 0 ? given.ry : given.rx));
  if (rx === 0 || ry === 0) {
    return [{ places: [...transformed(frame.matrix, [x, y, x + width, y, x + width, y + height, x, y + height])], isClosed: true }];
  }
  const corner = `a${rx} ${ry} 0 0 1`;
  const data = `M${x + rx} ${y}h${width - 2 * rx}${corner} ${rx} ${ry}v${height - 2 * ry}${corner} ${-rx} ${ry}h${2 * rx - width}${corner} ${-rx} ${-ry}v${2 * ry - height}${corner} ${rx} ${-ry}z`;
  return pathRuns(data, frame.matrix, frame.tolerance);
};

const straight = (isClosed: boolean): Shape =>
  ({ attributes }, { matrix }) => {
    const numbers = numbersIn(attributes.get('points') ?? '');
    const places = [...transformed(matrix, numbers.slice(0, numbers.length - (numbers.length % 2)))];
    return places.length >= 4 ? [{ places, isClosed }] : [];
  };

/** How each shape becomes runs of straight pieces. */
export const SHAPES: Readonly<Record<string, Shape>> = {
  path: ({ attributes }, { matrix, tolerance }) => pathRuns(attributes.get('d') ?? '', matrix, tolerance),
  rect: rectangle,
  circle: ({ attributes }, frame) => {
    const r = lengthOf(attributes.get('r'), 0, Math.hypot(frame.width, frame.height) / Math.SQRT2);
    return roundRun(lengthOf(attributes.get('cx'), 0, frame.width), lengthOf(attributes.get('cy'), 0, frame.height), r, r, frame);
  },
  ellipse: ({ attributes }, frame) =>
    roundRun(
      lengthOf(attributes.get('cx'), 0, frame.width),
      lengthOf(attributes.get('cy'), 0, frame.height),
      lengthOf(attributes.get('rx'), 0, frame.width),
      lengthOf(attributes.get('ry'), 0, frame.height),
      frame,
    ),
  line: ({ attributes }, { matrix, width, height }) => [
    {
      places: [
        ...transformed(matrix, [
          lengthOf(attributes.get('x1'), 0, width),
          lengthOf(attributes.get('y1'), 0, height),
          lengthOf(attributes.get('x2'), 0, width),
          lengthOf(attributes.get('y2'), 0, height),
        ]),
      ],
      isClosed: false,
    },
  ],
  polyline: straight(false),
  polygon: straight(true),
};
