import type { AssemblyPiece } from '#shared/derived/assembly-run';
import type { Ink } from '../ink.ts';
import { type Pen, type Px, between, gap_px, heading_rad, line, polyline, ring, setLine } from './pen.ts';
import { ASSEMBLY_SYMBOL_px, drawAssemblyPart } from './symbols/assembly-symbols.ts';
import { drawHighPressureLine, drawLowPressureLine } from './symbols/pressure-line.ts';

/** A part of the discharge assembly as a view shows it: its middle line on the screen, in flow order. */
export interface ShownPiece {
  readonly piece: AssemblyPiece;
  readonly places: readonly Px[];
}

/** Below this scale the parts run into each other, and a view draws the assembly as a schematic [px/m]. */
export const PIECES_px_m = 45;

/** A part nearer to end on than this is a ring [px]. */
const END_ON_px = 2;
const isValve = ({ part: { kind } }: AssemblyPiece): boolean => kind !== 'hose' && kind !== 'manifold';

/** Draws the discharge assembly as it is built: hoses along their curve, a heavy double line up to the regulator, a single one behind it, valves with their arrows. */
export function drawAssemblyPieces(pen: Pen, shown: readonly ShownPiece[], scale_px_m: number, { warm, cool, paper }: Pick<Ink, 'warm' | 'cool' | 'paper'>): void {
  const width = Math.max(5, Math.min(9, 0.04 * scale_px_m));
  for (const { places } of shown.filter(({ piece }) => piece.zone === 'low')) drawLowPressureLine(pen, places, cool, Math.max(2.5, width / 2));
  const high = shown.filter(({ piece }) => piece.zone === 'high');
  // The manifold comes last: hoses and valves run into it.
  for (const { piece, places } of [...high.filter(({ piece: { part } }) => part.kind !== 'manifold'), ...high.filter(({ piece: { part } }) => part.kind === 'manifold')]) {
    if (piece.part.kind === 'hose') drawHoseLine(pen, places, warm, paper, width);
    else drawHighPressureLine(pen, places, warm, paper, piece.part.kind === 'manifold' ? width + 2 : width);
    if (piece.part.kind === 'manifold') drawBlindEnd(pen, places, warm, width);
  }
  const signs: Px[] = [];
  // Where there is room for one sign only, the regulator has it.
  for (const { piece, places } of [...shown].sort((a, b) => Number(b.piece.part.kind === 'regulator') - Number(a.piece.part.kind === 'regulator'))) {
    const [from, to] = [places[0], places.at(-1)];
    if (!from || !to || !isValve(piece)) continue;
    const look = { warm: piece.zone === 'high' ? warm : cool, paper };
    const at = between(from, to, 0.5);
    if (gap_px(from, to) < END_ON_px) {
      setLine(pen, { colour: look.warm, width: 1.5 });
      ring(pen, at, width * 0.75, paper);
      continue;
    }
    if (signs.some((other) => gap_px(other, at) < ASSEMBLY_SYMBOL_px) || gap_px(from, to) < ASSEMBLY_SYMBOL_px * 0.45) continue;
    drawAssemblyPart(pen, at, heading_rad(from, to), piece.part, look);
    signs.push(at);
  }
}

/** A hose: the double line with bars across, as its braid shows. */
function drawHoseLine(pen: Pen, places: readonly Px[], warm: string, paper: string, width_px: number): void {
  setLine(pen, { colour: warm, width: width_px, join: 'round' });
  polyline(pen, places);
  setLine(pen, { colour: paper, width: Math.max(1.5, width_px - 3.5), join: 'round', dash: [4, 1.5] });
  polyline(pen, places);
}

/** The closed end of a manifold: a bar across it. */
function drawBlindEnd(pen: Pen, [from, to]: readonly Px[], warm: string, width_px: number): void {
  if (!from || !to || gap_px(from, to) < END_ON_px) return;
  const [ux, uy] = [(to.x - from.x) / gap_px(from, to), (to.y - from.y) / gap_px(from, to)];
  const half = width_px / 2 + 3;
  setLine(pen, { colour: warm, width: 2.5 });
  line(pen, { x: from.x - uy * half, y: from.y + ux * half }, { x: from.x + uy * half, y: from.y - ux * half });
}
