import { hoseLine } from './draw-assembly-run.ts';
import { cloudMarks, revisionTriangle } from './draw-clouds.ts';
import type { FittingSign } from '../isometric/fitting-sign.ts';
import { newDevice } from '../model/new-device.ts';
import type { AssemblyPart, Device, DeviceKind, Support } from '../model/plan.ts';
import { assemblySymbol, manifoldSymbol } from './assembly-symbols.ts';
import { circle, doubleLine, line, pen, ring, segments } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import type { Mark } from './sheet.ts';
import { SYMBOL_NAMES, type SymbolName } from './symbol-names.ts';
import {
  arcPlaces,
  arrowHead,
  breakSymbol,
  builtPlaceSymbol,
  ceilingPlaceSymbol,
  cylinderSymbol,
  datumSymbol,
  deviceSymbol,
  drawnPlaceSymbol,
  fittingSymbol,
  nozzleSymbol,
  pipeMarkSymbol,
  reducerSymbol,
  riserSymbol,
  seatSymbol,
  supportSymbol,
  verdictMark,
} from './symbols.ts';
import type { Table } from './tables.ts';
import type { TypeSizes } from '../paper/type-sizes.ts';

interface Entry {
  readonly words: string;
  /** Drawn around the middle of its cell: x, y, half width and factor. */
  readonly draw: (x: number, y: number, half: number, factor: number) => readonly Mark[];
}

const across = (stroke: Parameters<typeof line>[0]) => (x: number, y: number, half: number): Mark[] => [line(stroke, x - half, y, x + half, y)];

const support =
  (kind: Support['kind']) =>
  (x: number, y: number, half: number, f: number): Mark[] => [line(pen(WEIGHT.heavy * f, PRINT.cool), x - half, y + 0.5 * f, x + half, y + 0.5 * f), ...supportSymbol(x, y + 0.5 * f, kind, { pipe_rad: 0 }, f)];

/** A part of the discharge assembly on its line. */
const part =
  (kind: AssemblyPart['kind']) =>
  (x: number, y: number, half: number, f: number): Mark[] => [...doubleLine(PRINT.warm, f, [x - half, y, x + half, y]), ...assemblySymbol(x, y, { kind, arrowDownstream: true }, 0, 'high', f)];

/** The sign of a device as it looks from a wall below it. */
const device =
  (kind: DeviceKind, change: Partial<Device> = {}) =>
  (x: number, y: number, _half: number, f: number): Mark[] => deviceSymbol(x, y, { ...newDevice(kind, kind, '', { x: 0, y: 0 }), ...change } as Device, f * 0.85);

/** A sign that sits in the pipe, and one that closes its end. */
const through =
  (sign: FittingSign) =>
  (x: number, y: number, half: number, f: number): Mark[] => [line(pen(WEIGHT.heavy * f, PRINT.cool), x - half, y, x + half, y), ...fittingSymbol(x, y, sign, [Math.PI, 0], PRINT.cool, f)];
const atEnd =
  (sign: FittingSign) =>
  (x: number, y: number, half: number, f: number): Mark[] => [line(pen(WEIGHT.heavy * f, PRINT.cool), x - half, y, x + half * 0.4, y), ...fittingSymbol(x + half * 0.4, y, sign, [Math.PI], PRINT.cool, f)];

const ENTRIES: Readonly<Record<SymbolName, Entry>> = {
  wall: {
    words: 'finished wall face, ticks outside',
    draw: (x, y, half, f) => [
      line(pen(WEIGHT.heavy * f), x - half, y + 0.6 * f, x + half, y + 0.6 * f),
      segments(
        pen(WEIGHT.hair),
        [-0.7, -0.2, 0.3, 0.8].flatMap((t) => [x + half * t, y + 0.6 * f, x + half * t + 1.2 * f, y - 0.8 * f]),
      ),
    ],
  },
  door: {
    words: 'door with its swing',
    draw: (x, y, half, f) => [
      line(pen(WEIGHT.medium * f), x - half * 0.5, y + 1.8 * f, x - half * 0.5, y - 1.8 * f),
      line(pen(WEIGHT.thin * f), ...arcPlaces(x - half * 0.5, y + 1.8 * f, 3.6 * f, Math.PI / 2, 0, 10)),
    ],
  },
  'relief-vent': {
    words: 'relief vent, arrow outward',
    draw: (x, y, half, f) => [
      ring(pen(WEIGHT.thin * f), [x - half * 0.7, y - 0.8 * f, x + half * 0.4, y - 0.8 * f, x + half * 0.4, y + 0.8 * f, x - half * 0.7, y + 0.8 * f], PRINT.paper),
      arrowHead(x + half, y, 0, 1.8 * f, PRINT.ink),
    ],
  },
  opening: {
    words: 'other opening',
    draw: (x, y, half, f) => [
      ring(pen(WEIGHT.thin * f), [x - half * 0.7, y - 0.8 * f, x + half * 0.7, y - 0.8 * f, x + half * 0.7, y + 0.8 * f, x - half * 0.7, y + 0.8 * f], PRINT.paper),
      line(pen(WEIGHT.thin * f), x - half * 0.7, y - 0.8 * f, x + half * 0.7, y + 0.8 * f),
      line(pen(WEIGHT.thin * f), x - half * 0.7, y + 0.8 * f, x + half * 0.7, y - 0.8 * f),
    ],
  },
  standing: {
    words: 'thing that stands in the room',
    draw: (x, y, half, f) => [
      ring(pen(WEIGHT.thin * f, PRINT.solid), [x - half * 0.8, y - 1.6 * f, x + half * 0.8, y - 1.6 * f, x + half * 0.8, y + 1.6 * f, x - half * 0.8, y + 1.6 * f], PRINT.solidFill),
      line(pen(WEIGHT.hair, PRINT.faint), x - half * 0.8, y + 1.6 * f, x + half * 0.8, y - 1.6 * f),
    ],
  },
  overhead: {
    words: 'thing overhead',
    draw: (x, y, half, f) => [
      { kind: 'line', closed: true, stroke: pen(WEIGHT.thin * f, PRINT.solid, [1.8 * f, 0.9 * f]), places: [x - half * 0.8, y - 1.4 * f, x + half * 0.8, y - 1.4 * f, x + half * 0.8, y + 1.4 * f, x - half * 0.8, y + 1.4 * f] },
    ],
  },
  'live-part': {
    words: 'live part',
    draw: (x, y, half, f) => [
      ring(pen(WEIGHT.thin * f, PRINT.solid), [x - half * 0.8, y - 1.2 * f, x + half * 0.8, y - 1.2 * f, x + half * 0.8, y + 1.2 * f, x - half * 0.8, y + 1.2 * f], PRINT.solidFill),
      line(pen(WEIGHT.thin * f, PRINT.solid), ...[-0.7, -0.42, -0.14, 0.14, 0.42, 0.7].flatMap((t, i) => [x + half * t, y + (i % 2 === 0 ? 0.5 : -0.5) * f])),
    ],
  },
  'work-place': {
    words: 'work place',
    draw: (x, y, half, f) => [
      { kind: 'line', closed: true, stroke: pen(WEIGHT.thin * f, PRINT.solid, [1.2 * f, 0.8 * f]), places: [x - half * 0.8, y - 1.5 * f, x + half * 0.8, y - 1.5 * f, x + half * 0.8, y + 1.5 * f, x - half * 0.8, y + 1.5 * f] },
      ...seatSymbol(x, y, 0.6 * f, f),
    ],
  },
  'ceiling-zone': {
    words: 'part of the ceiling with its own height',
    draw: (x, y, half, f) => [
      { kind: 'line', closed: true, stroke: pen(WEIGHT.thin * f, PRINT.quiet, [2.4 * f, 0.8 * f, 0.6 * f, 0.8 * f]), places: [x - half * 0.8, y - 1.4 * f, x + half * 0.8, y - 1.4 * f, x + half * 0.8, y + 1.4 * f, x - half * 0.8, y + 1.4 * f] },
    ],
  },
  adjoining: {
    words: 'adjoining space',
    draw: (x, y, half, f) => [
      { kind: 'line', closed: true, stroke: pen(WEIGHT.thin * f, PRINT.quiet, [4 * f, f, 0.8 * f, f]), places: [x - half * 0.8, y - 1.5 * f, x + half * 0.8, y - 1.5 * f, x + half * 0.8, y + 1.5 * f, x - half * 0.8, y + 1.5 * f] },
      segments(pen(WEIGHT.hair, PRINT.faint), [-0.4, 0.1, 0.6].flatMap((t) => [x + half * t - 0.5 * f, y + 0.9 * f, x + half * t + 0.5 * f, y - 0.9 * f])),
    ],
  },
  detector: { words: 'detector', draw: device('detector') },
  'detector-void': { words: 'detector in a void', draw: device('detector', { space: 'under-floor' }) },
  sounder: { words: 'alarm; arcs: heard, cross: seen', draw: device('sounder') },
  sign: { words: 'sign', draw: device('sign') },
  'manual-release': { words: 'manual release', draw: device('manual-release') },
  abort: { words: 'abort switch', draw: device('abort') },
  disconnect: { words: 'disconnect switch', draw: device('disconnect') },
  'lock-out-valve': { words: 'lock-out valve', draw: device('lock-out-valve') },
  'door-button': { words: 'door exit button', draw: device('door-button') },
  'control-panel': { words: 'releasing panel', draw: device('control-panel') },
  diffuser: { words: 'diffuser, arrow with the air', draw: device('diffuser') },
  'air-intake': { words: 'air intake', draw: device('air-intake') },
  cylinder: { words: 'cylinder on its rail, notch: outlet', draw: (x, y, _half, f) => cylinderSymbol(x, y, 1.9 * f, Math.PI / 2, f) },
  'high-pressure': { words: 'high-pressure side', draw: (x, y, half, f) => doubleLine(PRINT.warm, f, [x - half, y, x + half, y]) },
  hose: { words: 'hose', draw: part('hose') },
  'laid-hose': { words: 'hose, as it lies', draw: (x, y, half, f) => hoseLine(f, [x - half, y, x + half, y]) },
  'check-valve': { words: 'check valve, arrow with the flow', draw: part('check-valve') },
  manifold: { words: 'manifold', draw: (x, y, half, f) => manifoldSymbol('high', f, x - half, y, x + half, y) },
  'stop-valve': { words: 'stop valve', draw: part('stop-valve') },
  'relief-valve': { words: 'pressure relief valve', draw: part('relief-valve') },
  regulator: { words: 'regulator, arrow with the flow', draw: part('regulator') },
  adapter: { words: 'adapter', draw: part('adapter') },
  pipe: { words: 'pipe: size · length · height', draw: (x, y, half, f) => across(pen(WEIGHT.heavy * f, PRINT.cool))(x, y, half) },
  run: { words: 'pipe, low-pressure side: size · length', draw: (x, y, half, f) => across(pen(WEIGHT.heavy * f, PRINT.cool))(x, y, half) },
  'pipe-high': { words: 'pipe at high pressure: size · length · height', draw: (x, y, half, f) => doubleLine(PRINT.warm, f, [x - half, y, x + half, y]) },
  'run-high': { words: 'pipe at high pressure: size · length', draw: (x, y, half, f) => doubleLine(PRINT.warm, f, [x - half, y, x + half, y]) },
  flow: { words: 'way of the agent', draw: (x, y, half, f) => [...across(pen(WEIGHT.heavy * f, PRINT.cool))(x, y, half), arrowHead(x + 1.3 * f, y, 0, 2.6 * f, PRINT.cool)] },
  break: { words: 'drawn shorter, length as printed', draw: (x, y, half, f) => [...across(pen(WEIGHT.heavy * f, PRINT.cool))(x, y, half), ...breakSymbol(x, y, 0, f)] },
  node: {
    words: 'number of a node, see its table',
    draw: (x, y, half, f) => [ring(pen(WEIGHT.thin * f), [x - half * 0.5, y - 1.5 * f, x + half * 0.5, y - 1.5 * f, x + half * 0.5, y + 1.5 * f, x - half * 0.5, y + 1.5 * f], PRINT.paper), segments(pen(WEIGHT.thin * f), [x, y - 0.8 * f, x, y + 0.8 * f])],
  },
  fitting: {
    words: 'elbow or tee, ticks on its legs',
    draw: (x, y, half, f) => [line(pen(WEIGHT.heavy * f, PRINT.cool), x - half, y, x, y, x, y + 2 * f), ...fittingSymbol(x, y, 'fitting', [Math.PI], PRINT.cool, f)],
  },
  'street-elbow': {
    words: 'street elbow, tick: inside thread',
    draw: (x, y, half, f) => [line(pen(WEIGHT.heavy * f, PRINT.cool), x - half, y, x, y, x, y + 2 * f), ...fittingSymbol(x, y, 'street-elbow', [Math.PI, -Math.PI / 2], PRINT.cool, f)],
  },
  reducer: { words: 'reducer, tip with the flow', draw: (x, y, half, f) => [...across(pen(WEIGHT.heavy * f, PRINT.cool))(x, y, half), reducerSymbol(x, y, 0, PRINT.cool, f)] },
  coupling: { words: 'coupling, weld or grooved joint', draw: through('coupling') },
  union: { words: 'union', draw: through('union') },
  cap: { words: 'cap', draw: atEnd('cap') },
  plug: { words: 'plug', draw: atEnd('plug') },
  drain: { words: 'drain', draw: atEnd('drain') },
  'dirt-trap': { words: 'dirt trap: capped nipple', draw: atEnd('dirt-trap') },
  rise: { words: 'pipe rising, with both heights', draw: (x, y, _half, f) => riserSymbol(x, y + 1.2 * f, 'riser', f) },
  drop: { words: 'pipe dropping, with both heights', draw: (x, y, _half, f) => riserSymbol(x, y - 1.2 * f, 'drop', f) },
  'support-rigid': { words: 'rigid support', draw: support('rigid') },
  'support-guide': { words: 'guide: pipe slides along it', draw: support('guide') },
  'support-hanger': { words: 'hanger: only carries', draw: support('hanger') },
  'support-sling': { words: 'sling: only carries, loose', draw: support('sling') },
  nozzle: { words: 'nozzle, one stroke per hole', draw: (x, y, _half, f) => nozzleSymbol(x, y, [0, Math.PI], f) },
  ray: {
    words: 'jet to the first thing it meets',
    draw: (x, y, half, f) => [line(pen(WEIGHT.hair, PRINT.quiet, [4 * f, f, 0.6 * f, f]), x - half, y, x + half, y), arrowHead(x + half, y, 0, 1.8 * f, PRINT.quiet)],
  },
  patch: {
    words: 'room to move without a call',
    draw: (x, y, half, f) => [
      ring(pen(WEIGHT.hair, PRINT.quiet), [x - half * 0.6, y - 1.1 * f, x + half * 0.6, y - 1.1 * f, x + half * 0.6, y + 1.1 * f, x - half * 0.6, y + 1.1 * f]),
      ...[-1, 1].flatMap((sx) => [-1, 1].map((sy) => line(pen(WEIGHT.thin, PRINT.quiet), x + sx * half * 0.4, y + sy * 1.7 * f, x + sx * half * 0.75, y + sy * 1.7 * f, x + sx * half * 0.75, y + sy * 0.7 * f))),
    ],
  },
  corner: { words: 'corner of the room, its letter beside it', draw: (x, y, _half, f) => [circle(undefined, x, y, 0.9 * f, PRINT.ink)] },
  diagonal: { words: 'diagonal to be measured', draw: across(pen(WEIGHT.thin, PRINT.quiet, [6, 1.5, 1, 1.5])) },
  'ceiling-place': { words: 'ceiling height measured here', draw: (x, y, _half, f) => [ceilingPlaceSymbol(x, y, f)] },
  'pipe-mark': { words: 'place of the pipe to be measured', draw: (x, y, _half, f) => [pipeMarkSymbol(x, y, f)] },
  'drawn-place': { words: 'drawn, not built so: struck through', draw: (x, y, _half, f) => [drawnPlaceSymbol(x, y, f)] },
  'built-place': { words: 'as built', draw: (x, y, _half, f) => [builtPlaceSymbol(x, y, f)] },
  coverage: {
    words: 'edge of a nozzle’s floor, ticks inward',
    draw: (x, y, half, f) => [
      line(pen(WEIGHT.thin, PRINT.faint, [3 * f, 1.2 * f]), x - half, y, x + half, y),
      segments(pen(WEIGHT.thin, PRINT.faint), [x - half * 0.5, y, x - half * 0.5, y - 1.6 * f, x + half * 0.5, y, x + half * 0.5, y - 1.6 * f]),
    ],
  },
  uncovered: {
    words: 'floor that no nozzle covers',
    draw: (x, y, half, f) => [
      segments(
        pen(0.5 * f),
        [-0.8, -0.3, 0.1, 0.4, 0.6, 0.8].flatMap((t) => [-0.8, 0.8].flatMap((v) => [x + half * t - 0.25 * f, y + v * f, x + half * t + 0.25 * f, y + v * f])),
      ),
    ],
  },
  datum: { words: 'datum: corner of finished faces', draw: (x, y, _half, f) => datumSymbol(x, y, f * 0.8) },
  cloud: {
    words: 'changed with this revision',
    draw: (x, y, half, f) => [...cloudMarks({ left: x - half * 0.8, right: x + half * 0.2, top: y - 1.2 * f, bottom: y + 1.2 * f }, f * 0.6), ...revisionTriangle(x + half * 0.75, y, 'A', 2 * f, f)],
  },
  'section-cut': {
    words: 'section, arrow the way it looks',
    draw: (x, y, half, f) => [
      line(pen(WEIGHT.heavy * f), x - half * 0.6, y + 1.4 * f, x + half * 0.2, y + 1.4 * f),
      line(pen(WEIGHT.thin * f), x + half * 0.2, y + 1.4 * f, x + half * 0.2, y - 1.6 * f),
      arrowHead(x + half * 0.2, y - 1.8 * f, Math.PI / 2, 1.8 * f, PRINT.ink),
    ],
  },
  stop: { words: 'stop, with its number', draw: (x, y, _half, f) => verdictMark(x, y, 3.2 * f, 'stop') },
  warn: { words: 'warning, with its number', draw: (x, y, _half, f) => verdictMark(x, y, 3.2 * f, 'warn') },
  underlay: { words: 'imported floor plan, no texts', draw: (x, y, half) => across(pen(WEIGHT.hair, PRINT.underlay))(x, y, half) },
};

/** A legend of the symbols in use and of no others. */
export function legendTable(used: ReadonlySet<SymbolName>, { factor, text_mm }: TypeSizes): Table {
  const width = 11 * factor;
  const height = text_mm * 1.5;
  return {
    title: 'Legend',
    columns: [{ head: '' }, { head: '', isWide: true }],
    rows: SYMBOL_NAMES.filter((name) => used.has(name)).map((name) => [
      { kind: 'drawing', width_mm: width, height_mm: height, draw: (x, y) => ENTRIES[name].draw(x + width / 2, y + height / 2, width * 0.45, factor) },
      ENTRIES[name].words,
    ]),
    isPlain: true,
    isTight: true,
  };
}
