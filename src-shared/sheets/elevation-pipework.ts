import { pipeZoneOf } from '../derived/pipe-zone.ts';
import type { Elevation } from '../elevation/elevation.ts';
import type { WallPlace } from '../elevation/wall-frame.ts';
import { type LabelWay, addLabelWays } from './labels.ts';
import { circle, doubleLine, line, pen } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import { sizeText } from './sheet-text.ts';
import { supportLie } from './support-shape.ts';
import { checkValveSymbol, pipeLine, regulatorSymbol, supportSymbol, zoneColour } from './symbols.ts';
import { type ViewDraft, addLine, uprightBox } from './view-draft.ts';

/** A piece shorter than this on paper runs toward the viewer [mm at factor 1]. */
const END_ON_mm = 0.6;

const onPaper = ({ frame }: ViewDraft, places: readonly WallPlace[]): number[] => places.flatMap(({ s, z }) => [frame.x(s), frame.y(z)]);

/** Draws the discharge assembly: a heavy double line at cylinder pressure, a single one behind the regulator, valves with their arrows. */
export function drawAssemblyPieces(view: ViewDraft, { pieces }: Elevation): void {
  const { sizes, placer } = view;
  const { factor } = sizes;
  for (const { piece, places } of pieces) {
    const run = onPaper(view, places);
    const isHigh = piece.zone === 'high';
    view.used.add(isHigh ? 'high-pressure' : 'pipe');
    addLine(view, run, isHigh ? doubleLine(PRINT.warm, factor * 0.75, run) : line(pen(WEIGHT.heavy * factor, PRINT.cool), ...run), 12);
  }
  const named = new Set<string>();
  for (const { piece, places } of [...pieces].reverse()) {
    const [first, last] = [places[0], places.at(-1)];
    if (!first || !last) continue;
    const [ax = 0, ay = 0, bx = 0, by = 0] = onPaper(view, [first, last]);
    const [x, y] = [(ax + bx) / 2, (ay + by) / 2];
    const isEndOn = Math.hypot(bx - ax, by - ay) < END_ON_mm * factor;
    const flow_rad = Math.atan2(ay - by, bx - ax) + (piece.part.arrowDownstream ? 0 : Math.PI);
    const { kind } = piece.part;
    if (kind === 'regulator' || kind === 'check-valve') {
      view.used.add(kind);
      if (isEndOn) view.lines.push(circle(pen(WEIGHT.medium * factor), x, y, 1.2 * factor, PRINT.paper));
      else view.lines.push(...(kind === 'regulator' ? regulatorSymbol : checkValveSymbol)(x, y, flow_rad, factor * 0.75));
      placer.block(uprightBox(x, y, 1.7 * factor, 1.7 * factor), piece.part.id);
    } else if (kind !== 'hose' && kind !== 'manifold' && !isEndOn) {
      const [ux, uy] = [(bx - ax) / Math.hypot(bx - ax, by - ay), (by - ay) / Math.hypot(bx - ax, by - ay)];
      const half = 1.3 * factor;
      view.lines.push(line(pen(WEIGHT.wide * factor, PRINT.warm), x - uy * half, y + ux * half, x + uy * half, y - ux * half));
    }
    if (named.has(piece.part.id)) continue;
    named.add(piece.part.id);
    const middle = kind === 'hose' ? places[Math.floor(places.length / 2)] : undefined;
    const [nameX = x, nameY = y] = middle ? onPaper(view, [middle]) : [];
    const words = piece.part.name || kind.replace('-', ' ');
    const way: LabelWay = { lines: [{ text: words }], wish: { x: nameX, y: nameY, clearance_mm: 1.8 * factor, owner: piece.part.id, toward_rad: Math.PI / 3 } };
    addLabelWays(view, [way], words);
  }
}

/** Draws the first pipe and what else of it runs along the wall; a ring where it leaves the wall. */
export function drawWallPipes(view: ViewDraft, { pipes, supports, network }: Elevation): void {
  const { frame, sizes, lengths } = view;
  const { factor } = sizes;
  const zone = pipeZoneOf(network.network);
  const colour = zoneColour(zone);
  for (const { from, to } of pipes) {
    view.used.add(zone === 'high' ? 'pipe-high' : 'pipe');
    const run = onPaper(view, [from, to]);
    const [ax = 0, ay = 0, bx = 0, by = 0] = run;
    if (Math.hypot(bx - ax, by - ay) < END_ON_mm * factor) view.lines.push(circle(pen(WEIGHT.medium * factor, colour), ax, ay, 1.1 * factor, PRINT.paper), circle(undefined, ax, ay, 0.35 * factor, colour));
    else addLine(view, run, pipeLine(zone, factor, ...run), 12);
  }
  for (const { support, at } of supports) {
    if (!support.pipe) continue;
    view.used.add(`support-${support.support.kind}`);
    const [x, y] = [frame.x(at.s), frame.y(at.z)];
    const held = pipes.find(({ pipe }) => pipe.pipe.id === support.pipe?.pipe.id);
    const lie = held ? supportLie({ x: held.from.s, y: held.from.z }, { x: held.to.s, y: held.to.z }, Math.PI / 2) : { beside_rad: Math.PI / 2 };
    view.lines.push(...supportSymbol(x, y, support.support.kind, lie, factor * 0.9));
    view.placer.block(uprightBox(x, y, 2 * factor, 2 * factor), 'support');
  }
  const first = pipes.find(({ pipe: { pipe } }) => pipe.from === network.network.source || pipe.to === network.network.source);
  if (!first) return;
  const [x, y] = [frame.x((first.from.s + first.to.s) / 2), frame.y((first.from.z + first.to.z) / 2)];
  const words = `${sizeText(first.pipe.pipe.size, lengths)} pipe`;
  addLabelWays(view, [{ lines: [{ text: words, colour }], wish: { x, y, clearance_mm: 1.5 * factor, toward_rad: 0 } }], words);
}
