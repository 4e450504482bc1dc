import { fittingSign } from '../isometric/fitting-sign.ts';
import { type Isometric, type IsometricNode, type IsometricRun, holeHeadings } from '../isometric/layout-isometric.ts';
import { formatLength } from '../units/length-text.ts';
import { fittingsText, orificeText } from './isometric-table.ts';
import { type LabelLine, type LabelWay, addLabel, addLabelWays } from './labels.ts';
import { circle, line, pen, segments, text } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import { heightText, sizeText } from './sheet-text.ts';
import { NOZZLE_REACH_mm, arrowHead, breakSymbol, fittingSymbol, nozzleSymbol, pipeLine, reducerSymbol, supportSymbol, zoneColour } from './symbols.ts';
import { type ViewDraft, addLine, inLayer, uprightBox } from './view-draft.ts';

const ownerOf = ({ id }: Pick<IsometricNode, 'id'>): string => `node ${id}`;

/** Shares of a run where its signs may stand, the best liked first: the flow arrow, and the break of one that is drawn shorter. */
const ARROW_AT = [0.62, 0.55, 0.7, 0.48, 0.77, 0.4, 0.84, 0.3];
const BREAK_AT = [0.4, 0.33, 0.47, 0.27, 0.54, 0.6, 0.7, 0.8];
/** Signs on one run keep so far apart where they can [mm at factor 1]. */
const SIGNS_APART_mm = 4;
/** A shorter run has no room for an arrow [mm at factor 1]. */
const LEAST_WITH_ARROW_mm = 9;

/** The first share of a run that is clear of what stands on it; the clearest where none is. */
function clearShare(shares: readonly number[], taken_mm: readonly number[], length: number, apart: number): number {
  const gapAt = (share: number): number => Math.min(...taken_mm.map((mm) => Math.abs(mm - share * length)), Infinity);
  return shares.find((share) => gapAt(share) >= apart) ?? shares.reduce((best, share) => (gapAt(share) > gapAt(best) ? share : best));
}

function drawRun(view: ViewDraft, run: IsometricRun, { supports, zone }: Isometric): void {
  const { frame, sizes, placer } = view;
  const { factor } = sizes;
  const [ax, ay, bx, by] = [frame.x(run.a.x), frame.y(run.a.y), frame.x(run.b.x), frame.y(run.b.y)];
  const length = Math.hypot(bx - ax, by - ay);
  if (length === 0) return;
  const at = (mm: number): [number, number] => [ax + ((bx - ax) * mm) / length, ay + ((by - ay) * mm) / length];
  const heading_rad = Math.atan2(ay - by, bx - ax);
  const taken_mm = supports.filter(({ placed }) => placed.pipe && run.pipes.includes(placed.pipe.ref.id)).map(({ place }) => Math.hypot(frame.x(place.x) - ax, frame.y(place.y) - ay));
  const colour = zoneColour(zone);
  view.used.add(zone === 'high' ? 'run-high' : 'run');
  // What lies behind is parted where a nearer pipe runs over it.
  const bared = Math.min(2.2 * factor, length / 3);
  view.lines.push(line(pen(3 * factor, PRINT.paper), ...at(bared), ...at(length - bared)));
  addLine(view, [ax, ay, bx, by], pipeLine(zone, factor, ax, ay, bx, by), 24);
  if (length >= LEAST_WITH_ARROW_mm * factor) {
    view.used.add('flow');
    const middle = length * clearShare(ARROW_AT, taken_mm, length, SIGNS_APART_mm * factor);
    taken_mm.push(middle);
    view.lines.push(arrowHead(...at(middle + 1.3 * factor), heading_rad, 2.6 * factor, colour));
    const [x, y] = at(middle);
    placer.block({ x, y, halfWidth: 1.4 * factor, halfHeight: 1.2 * factor, rotation_rad: heading_rad });
  }
  if (run.isBroken) {
    view.used.add('break');
    const [x, y] = at(length * clearShare(BREAK_AT, taken_mm, length, SIGNS_APART_mm * factor));
    view.lines.push(...breakSymbol(x, y, heading_rad, factor));
    placer.block({ x, y, halfWidth: 2 * factor, halfHeight: 1.7 * factor, rotation_rad: heading_rad });
  }
}

function drawFittings(view: ViewDraft, { network, zone, fittings }: Isometric): void {
  const { frame, sizes } = view;
  const { factor } = sizes;
  const colour = zoneColour(zone);
  for (const { fitting, place, legs_rad } of fittings) {
    const [x, y] = [frame.x(place.x), frame.y(place.y)];
    const [feed = 0, next] = legs_rad;
    if (fitting.kind === 'reducer') {
      const away = next ?? feed;
      view.used.add('reducer');
      view.lines.push(reducerSymbol(x + Math.cos(away) * 3.9 * factor, y - Math.sin(away) * 3.9 * factor, away, colour, factor));
    } else {
      const sign = fittingSign(network, fitting);
      view.used.add(sign);
      view.lines.push(...fittingSymbol(x, y, sign, legs_rad, colour, factor));
    }
  }
}

function drawNozzle(view: ViewDraft, { view: from }: Isometric, { place, nozzle, ...node }: IsometricNode): void {
  if (!nozzle) return;
  const { frame, sizes, placer } = view;
  const [x, y] = [frame.x(place.x), frame.y(place.y)];
  view.used.add('nozzle');
  const holes = holeHeadings(nozzle, from);
  view.lines.push(...nozzleSymbol(x, y, holes, sizes.factor));
  for (const hole of holes) {
    const reach = (NOZZLE_REACH_mm / 2) * sizes.factor;
    placer.block({ x: x + Math.cos(hole) * reach, y: y - Math.sin(hole) * reach, halfWidth: reach, halfHeight: 0.5 * sizes.factor, rotation_rad: hole }, ownerOf(node));
  }
}

/** Whether a node is drawn as a dot: ends, unions and nozzles have a sign of their own there. */
const isJoint = ({ network }: Isometric, { nozzle, fittings }: IsometricNode): boolean =>
  !nozzle && fittings.every((fitting) => ['fitting', 'reducer'].includes(fittingSign(network, fitting)));

/** Draws pipe from the back to the front, then what sits on it. */
export function drawIsometric(view: ViewDraft, iso: Isometric): void {
  const { frame, sizes, placer } = view;
  const { factor } = sizes;
  inLayer(view, 'pipe', () => {
    for (const run of [...iso.runs].sort((a, b) => a.nearness - b.nearness)) drawRun(view, run, iso);
    drawFittings(view, iso);
  });
  for (const { placed, place, pipe_rad } of iso.supports) {
    const [x, y] = [frame.x(place.x), frame.y(place.y)];
    view.used.add(`support-${placed.support.kind}`);
    inLayer(view, 'supports', () => view.lines.push(...supportSymbol(x, y, placed.support.kind, { pipe_rad }, factor)));
    placer.block({ x, y, halfWidth: 1.5 * factor, halfHeight: 1.7 * factor, rotation_rad: pipe_rad }, `support ${placed.ref.id}`);
  }
  for (const node of iso.nodes) {
    const [x, y] = [frame.x(node.place.x), frame.y(node.place.y)];
    inLayer(view, 'nozzles', () => drawNozzle(view, iso, node));
    if (isJoint(iso, node)) inLayer(view, 'pipe', () => view.lines.push(circle(undefined, x, y, 0.8 * factor, zoneColour(iso.zone))));
    placer.block(uprightBox(x, y, 1.5 * factor, 1.5 * factor), ownerOf(node));
  }
}

/**
 * Writes what stands at each node.
 * @param isTerse  less may stand where the whole finds no good room, at last the number alone: the table tells the rest
 */
export function labelIsometricNodes(view: ViewDraft, { nodes, network }: Isometric, isTerse: boolean): void {
  const { frame, sizes, lengths } = view;
  view.used.add('node');
  // Nozzles first: what is read off most stands nearest.
  for (const node of [...nodes.filter(({ nozzle }) => nozzle), ...nodes.filter(({ nozzle }) => !nozzle)]) {
    const { number, nozzle, changesHeight, isSource, at, place } = node;
    const flag: LabelLine = { text: String(number), font: 'bold', flag: true };
    const height = changesHeight ? heightText(at.z, lengths) : '';
    const parts = [...(isSource ? ['pipe begins'] : []), ...fittingsText(network, node, lengths)];
    const [only = '', ...more] = parts;
    const isShort = !nozzle && more.length === 0;
    const words: LabelLine[] = [
      flag,
      ...(nozzle ? [{ text: `${nozzle.nozzle.name} ${height}`, font: 'bold' } as const, { text: orificeText(nozzle.nozzle.orificeArea_m2, lengths) }] : []),
      ...(isShort ? [{ text: `${only} ${height}`.trim() }] : [...parts.map((text) => ({ text })), ...(nozzle ? [] : [{ text: height, font: 'bold' } as const])]),
    ];
    const wish = { x: frame.x(place.x), y: frame.y(place.y), clearance_mm: (nozzle ? 2.4 : 2) * sizes.factor, owner: ownerOf(node), toward_rad: nozzle ? -Math.PI / 4 : Math.PI / 5 };
    // The name of a nozzle stays with its number, however little room there is.
    const least: LabelLine = nozzle ? { ...flag, text: `${number} ${nozzle.nozzle.name}` } : flag;
    const middling = isShort ? [flag, { text: height }] : words.filter(({ font }) => font === 'bold');
    const ways = [words, middling, [least]].map((lines) => ({ lines, wish }));
    // A lone elbow tells its kind by its sign: a far label would tell less than a short one at hand.
    inLayer(view, nozzle ? 'nozzles' : 'pipe', () => addLabelWays(view, isTerse || isShort ? ways : ways.slice(0, 1), `node ${number}`));
  }
}

/** Writes size and true length beside each run. */
export function labelIsometricRuns(view: ViewDraft, { runs, network }: Isometric): void {
  const { frame, sizes, lengths } = view;
  for (const run of runs) {
    const [ax, ay, bx, by] = [frame.x(run.a.x), frame.y(run.a.y), frame.x(run.b.x), frame.y(run.b.y)];
    const words = [{ text: `${sizeText(run.size, lengths)} · ${formatLength(run.length_m, lengths)}` }];
    const split = [{ text: sizeText(run.size, lengths) }, { text: formatLength(run.length_m, lengths) }];
    const wish = { x: (ax + bx) / 2, y: (ay + by) / 2, clearance_mm: 1.7 * sizes.factor };
    const ways: LabelWay[] = [
      { lines: words, wish: { ...wish, along: { ax, ay, bx, by }, farthest_mm: 12 * sizes.factor } },
      { lines: split, wish },
    ];
    addLabelWays(view, ways, `a pipe of ${network.network.name}`);
  }
}

/** Draws which way plan north runs on the drawing, at a place of paper that stays free of texts. */
export function drawNorth(view: ViewDraft, { north_rad }: Isometric, x: number, y: number): void {
  const { factor, text_mm } = view.sizes;
  const reach = 6 * factor;
  const [dx, dy] = [Math.cos(north_rad), -Math.sin(north_rad)];
  const tip: [number, number] = [x + dx * reach, y + dy * reach];
  const letter: [number, number] = [tip[0] + dx * 2.6 * factor, tip[1] + dy * 2.6 * factor + text_mm / 2];
  view.lines.push(segments(pen(WEIGHT.medium * factor), [x - dx * reach, y - dy * reach, ...tip]), arrowHead(...tip, north_rad, 3 * factor, PRINT.ink));
  view.texts.push(text(...letter, 'N', { height_mm: text_mm, font: 'bold', align: 'middle' }));
  view.placer.block(uprightBox(x, y, 10 * factor, 7 * factor), 'north');
}

/** Says that a support could not be put on a pipe, so that none is missed in silence. */
export function labelLooseSupports(view: ViewDraft, { looseSupports }: Isometric): void {
  if (looseSupports === 0) return;
  const { left, bottom } = view.room;
  const words = `${looseSupports} ${looseSupports === 1 ? 'support lies' : 'supports lie'} on no pipe and ${looseSupports === 1 ? 'is' : 'are'} not drawn`;
  addLabel(view, [{ text: words }], { x: left + 30, y: bottom - 4, clearance_mm: 0, isLoose: true }, 'supports without pipe');
}
