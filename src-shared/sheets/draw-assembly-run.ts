import type { AssemblyPiece } from '../derived/assembly-run.ts';
import { assemblySymbol, manifoldSymbol, partSymbolName } from './assembly-symbols.ts';
import { circle, line, pen } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import type { Mark } from './sheet.ts';
import { pipeLine, zoneColour } from './symbols.ts';
import { type ViewDraft, addLine, uprightBox } from './view-draft.ts';

/** Below this scale the parts run into each other, and a view draws the assembly as a schematic [mm of paper for a metre, at factor 1]: 1:50. */
export const PIECES_mm_m = 19.9;
/** A part nearer to end on than this is a ring; one shorter than the other has no room for its sign [mm at factor 1]. */
const END_ON_mm = 0.6;
const SIGN_mm = 1.6;
/** How wide a sign is drawn in full [mm at factor 1]. */
const FULL_mm = 4.6;

/** A hose as it lies: a double line with bars across, as its braid shows. */
export const hoseLine = (factor: number, places: readonly number[]): Mark[] => [line(pen(1.5 * factor, PRINT.warm), ...places), line(pen(0.8 * factor, PRINT.paper, [1.2 * factor, 0.4 * factor]), ...places)];

/**
 * Draws the discharge assembly as it is built: hoses along their curve with bars across, a heavy double line up to the
 * regulator, a single one behind it, valves with their arrows.
 * @param shown  every part with its middle line on paper, x and y in turn, in flow order
 */
export function drawAssemblyRun(view: ViewDraft, shown: readonly { readonly piece: AssemblyPiece; readonly places: readonly number[] }[]): void {
  const { factor } = view.sizes;
  const rank = ({ piece: { part, zone } }: (typeof shown)[number]): number => (zone === 'low' ? 0 : part.kind === 'manifold' ? 2 : 1);
  for (const { piece, places } of [...shown].sort((a, b) => rank(a) - rank(b))) {
    const { zone, part } = piece;
    view.used.add(zone === 'high' ? 'high-pressure' : 'pipe');
    if (part.kind === 'manifold') view.used.add('manifold');
    if (part.kind === 'hose' && zone === 'high') {
      view.used.add('laid-hose');
      addLine(view, places, hoseLine(factor, places), 12);
    } else addLine(view, places, part.kind === 'manifold' ? manifoldSymbol(zone, factor * 0.8, ...places) : pipeLine(zone, factor * 0.75, ...places), 12);
  }
  for (const { piece, places } of shown) {
    const { part, zone } = piece;
    if (part.kind === 'hose' || part.kind === 'manifold') continue;
    const [ax = 0, ay = 0] = places;
    const [bx = 0, by = 0] = places.slice(-2);
    const [x, y, long] = [(ax + bx) / 2, (ay + by) / 2, Math.hypot(bx - ax, by - ay)];
    if (long < END_ON_mm * factor) {
      view.lines.push(circle(pen(WEIGHT.thin * factor, zoneColour(zone)), x, y, 0.8 * factor, PRINT.paper));
      continue;
    }
    if (long < SIGN_mm * factor) continue;
    view.used.add(partSymbolName(part));
    const size = factor * Math.min(1, Math.max(0.55, long / (FULL_mm * factor)));
    view.lines.push(...assemblySymbol(x, y, part, Math.atan2(ay - by, bx - ax), zone, size));
    view.placer.block(uprightBox(x, y, 2.2 * size, 2.2 * size), part.id);
  }
}
