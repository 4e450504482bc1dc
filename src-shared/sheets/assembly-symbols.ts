import type { PressureZone } from '../derived/pipe-zone.ts';
import type { AssemblyPart } from '../model/plan.ts';
import { line, pen, ring } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import type { Mark } from './sheet.ts';
import type { SymbolName } from './symbol-names.ts';
import { arrowHead, checkValveSymbol, regulatorSymbol, zoneColour } from './symbols.ts';

/** How far the sign of a part reaches from its middle [mm at factor 1]. */
export const PART_REACH_mm = 2.3;

/** The legend's name of a part's sign. */
export const partSymbolName = ({ kind }: Pick<AssemblyPart, 'kind'>): SymbolName => (kind === 'manifold' ? 'manifold' : kind);

const along = (x: number, y: number, angle_rad: number, length: number): [number, number] => [x + Math.cos(angle_rad) * length, y - Math.sin(angle_rad) * length];

/** A wave along the line. */
function hose(x: number, y: number, flow_rad: number, factor: number, colour: string): Mark[] {
  const wave = Array.from({ length: 17 }, (_, i) => {
    const foot = along(x, y, flow_rad, ((i - 8) / 8) * PART_REACH_mm * factor);
    return along(foot[0], foot[1], flow_rad + Math.PI / 2, 1.1 * factor * Math.sin((i / 16) * 3 * Math.PI));
  });
  const ends = [...along(x, y, flow_rad, -PART_REACH_mm * factor), ...along(x, y, flow_rad, PART_REACH_mm * factor)];
  return [line(pen(3.4 * factor, PRINT.paper), ...ends), line(pen(WEIGHT.wide * factor, colour), ...wave.flat())];
}

/** Two triangles tip to tip. */
function stopValve(x: number, y: number, flow_rad: number, factor: number): Mark[] {
  const half = (sense: number): number[] => {
    const foot = along(x, y, flow_rad, sense * 1.8 * factor);
    return [x, y, ...along(foot[0], foot[1], flow_rad + Math.PI / 2, 1.3 * factor), ...along(foot[0], foot[1], flow_rad - Math.PI / 2, 1.3 * factor)];
  };
  return [1, -1].map((sense) => ring(pen(WEIGHT.medium * factor), half(sense), PRINT.paper));
}

/** A triangle across the line with an arrow that leaves sideways. */
function reliefValve(x: number, y: number, flow_rad: number, factor: number): Mark[] {
  const side = flow_rad + Math.PI / 2;
  const foot = along(x, y, side, 1.7 * factor);
  const tip = along(x, y, side, 3.6 * factor);
  return [
    ring(pen(WEIGHT.medium * factor), [x, y, ...along(foot[0], foot[1], flow_rad, 1.2 * factor), ...along(foot[0], foot[1], flow_rad, -1.2 * factor)], PRINT.paper),
    line(pen(WEIGHT.thin * factor), ...foot, ...tip),
    arrowHead(tip[0], tip[1], side, 1.4 * factor, PRINT.ink),
  ];
}

/** Two bars across the line. */
const adapter = (x: number, y: number, flow_rad: number, factor: number, colour: string): Mark[] =>
  [-0.5, 0.5].map((shift) => {
    const foot = along(x, y, flow_rad, shift * factor);
    return line(pen(WEIGHT.wide * factor, colour), ...along(foot[0], foot[1], flow_rad + Math.PI / 2, 1.6 * factor), ...along(foot[0], foot[1], flow_rad - Math.PI / 2, 1.6 * factor));
  });

/** A part of the discharge assembly on its line; a reversed one shows its arrow against the flow. */
export function assemblySymbol(x: number, y: number, part: Pick<AssemblyPart, 'kind' | 'arrowDownstream'>, flow_rad: number, zone: PressureZone, factor: number): Mark[] {
  const way = part.arrowDownstream ? flow_rad : flow_rad + Math.PI;
  switch (part.kind) {
    case 'regulator':
      return regulatorSymbol(x, y, way, factor);
    case 'check-valve':
      return checkValveSymbol(x, y, way, factor);
    case 'stop-valve':
      return stopValve(x, y, flow_rad, factor);
    case 'relief-valve':
      return reliefValve(x, y, flow_rad, factor);
    case 'hose':
      return hose(x, y, flow_rad, factor, zoneColour(zone));
    default:
      return adapter(x, y, flow_rad, factor, zoneColour(zone));
  }
}

/** Manifold: a hollow bar that the branches of the cylinders run into. */
export function manifoldSymbol(zone: PressureZone, factor: number, ...places: number[]): Mark[] {
  return [line(pen(2.6 * factor, zoneColour(zone)), ...places), line(pen(1.5 * factor, PRINT.paper), ...places)];
}
