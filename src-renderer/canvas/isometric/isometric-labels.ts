import type { IsometricNode } from '#shared/isometric/layout-isometric';
import { fittingsText } from '#shared/sheets/isometric-table';
import { heightText, sizeText } from '#shared/sheets/sheet-text';
import { assemblyPartWords } from '#shared/sheets/schedules';
import { formatLength } from '#shared/units/length-text';
import type { Ink } from '../../ink.ts';
import { type LabelBox, type LabelObstacles, type LabelWish, placeLabels, spotsAround } from '../label-placer.ts';
import { type Lettering, lineHeight_px, textWidth_px, wrapped, write } from '../lettering.ts';
import { type Pen, type Px, between, gap_px, line, setLine } from '../pen.ts';
import { type Viewport, toScreen } from '../viewport.ts';
import { ABOVE_px, SIDE_px, extentAt } from './isometric-camera.ts';
import { isometricDetail } from './isometric-detail.ts';
import { placedAssembly, runStretch } from './isometric-things.ts';
import type { ShownIsometric } from './keep-isometric.ts';

type Lengths = 'feet' | 'metric';

interface TextLine extends Lettering {
  readonly text: string;
  readonly colour: string;
}

interface IsoLabel extends LabelWish {
  readonly lines: readonly TextLine[];
  readonly isFramed: boolean;
  /** What it names, to be led to where it stands apart. */
  readonly at: Px;
}

interface Placed {
  readonly scale_px_m: number;
  readonly ink: Ink;
  readonly labels: readonly IsoLabel[];
  readonly boxes: ReadonlyMap<string, LabelBox>;
}

/** Gaps at which a label looks for its place around a thing [px]. */
const GAPS_px = [11, 20, 34, 52];
/** A label farther from its thing than this gets a leader [px]. */
const LED_px = 20;
/** Longer words go on in another line [px]. */
const WIDEST_px = 130;
const SHARES = [0.5, 0.3, 0.7, 0.2, 0.8];

let kept = new WeakMap<ShownIsometric, Placed>();

/** Places all texts anew: the letters have become wider or narrower. */
export function forgetIsometricLabels(): void {
  kept = new WeakMap();
}

function labelsFor(pen: Pen, view: Viewport, shown: ShownIsometric, lengths: Lengths, ink: Ink): IsoLabel[] {
  const { iso } = shown;
  const { network } = iso;
  const detail = isometricDetail(view.camera.scale_px_m, iso);
  const label = (key: string, at: Px, lines: readonly TextLine[], spots: (width: number, height: number) => readonly Px[], isFramed = false): IsoLabel => {
    const width = Math.max(...lines.map(({ text, ...lettering }) => textWidth_px(pen, text, lettering))) + 6;
    const height = lines.reduce((sum, each) => sum + lineHeight_px(each), 0) + 2;
    return { key, lines, width, height, spots: spots(width, height), at, isFramed };
  };
  const around = (at: Px) => (width: number, height: number) => GAPS_px.flatMap((gap) => spotsAround(at, gap, width, height));
  const nodes = iso.nodes.map((node) => ({ node, at: toScreen(view, node.place) }));
  const numbered = ({ number, nozzle }: IsometricNode): string => (nozzle ? `${number} ${nozzle.nozzle.name}` : String(number));

  const numbers = nodes
    .filter(({ node }) => node.nozzle || detail.numbers)
    .sort((a, b) => Number(b.node.nozzle !== undefined) - Number(a.node.nozzle !== undefined))
    .map(({ node, at }) => label(`number ${node.id}`, at, [{ text: detail.numbers ? numbered(node) : (node.nozzle?.nozzle.name ?? ''), colour: ink.ink, bold: true }], around(at), true));
  const sizes = detail.lengths
    ? iso.runs.map((run, i) => {
        const { a, b } = runStretch(view, run);
        const text = `${sizeText(run.size, lengths)} · ${formatLength(run.length_m, lengths)}`;
        const beside = (width: number, height: number): Px[] =>
          [4, 12].flatMap((gap) => SHARES.flatMap((share) => {
            const at = between(a, b, share);
            const falls = (b.x - a.x) * (b.y - a.y) > 0;
            const isUpright = Math.abs(b.x - a.x) < 2;
            const [right, left] = [{ x: at.x + gap, y: isUpright ? at.y - height / 2 : falls ? at.y - gap - height : at.y + gap }, { x: at.x - gap - width, y: isUpright ? at.y - height / 2 : falls ? at.y + gap : at.y - gap - height }];
            return [right, left];
          }));
        return gap_px(a, b) < 26 ? undefined : label(`run ${i}`, between(a, b, 0.5), [{ text, colour: iso.zone === 'high' ? ink.warm : ink.cool }], beside);
      })
    : [];
  const words = detail.words
    ? nodes.flatMap(({ node, at }) => {
        const height = node.changesHeight ? heightText(node.at.z, lengths) : '';
        const lines = [...(node.isSource ? ['pipe begins'] : []), ...fittingsText(network, node, lengths), ...(height ? [height] : [])].flatMap((text) => wrapped(pen, text, WIDEST_px));
        return lines.length === 0 ? [] : [label(`words ${node.id}`, at, lines.map((text) => ({ text, colour: ink.quiet })), around(at))];
      })
    : [];
  return [...numbers, ...assemblyLabels(view, shown, lengths, ink, detail.words, label), ...sizes.filter((each) => each !== undefined), ...words];
}

/** Names of the cylinders, and of the regulator; of every part where there is room. */
function assemblyLabels(
  view: Viewport,
  shown: ShownIsometric,
  lengths: Lengths,
  ink: Ink,
  isWordy: boolean,
  label: (key: string, at: Px, lines: readonly TextLine[], spots: (width: number, height: number) => readonly Px[], isFramed?: boolean) => IsoLabel,
): IsoLabel[] {
  const assembly = placedAssembly(view, shown);
  if (!assembly) return [];
  const around = (at: Px, gaps = GAPS_px) => (width: number, height: number) => gaps.flatMap((gap) => spotsAround(at, gap, width, height));
  const names = assembly.cylinders.map(({ name, ref, at }) => label(`cylinder ${ref.id}`, at, [{ text: name, colour: ink.ink, bold: true }], around(at, [13, 22])));
  const parts = assembly.line.spots
    .filter(({ part }, i, all) => all.findIndex((each) => each.part === part) === i && (isWordy || part.kind === 'regulator' || !part.arrowDownstream))
    .map(({ part, zone: side, ...place }) => label(`part ${part.id}`, assembly.at(place), [{ text: assemblyPartWords(part, lengths), colour: side === 'high' ? ink.warm : ink.cool }], around(assembly.at(place), [14, 26, 44])));
  return [...names, ...parts];
}

function obstaclesOf(view: Viewport, shown: ShownIsometric): LabelObstacles {
  const { iso } = shown;
  const box = ({ x, y }: Px, half: number): LabelBox => ({ x: x - half, y: y - half, width: 2 * half, height: 2 * half });
  const assembly = placedAssembly(view, shown);
  const lines = [...iso.runs.map((run) => runStretch(view, run)), ...(assembly?.line.lines ?? []).map(({ a, b }) => ({ a: assembly?.at(a) ?? { x: 0, y: 0 }, b: assembly?.at(b) ?? { x: 0, y: 0 } }))];
  const { left, right, top, bottom } = extentAt(view.camera.scale_px_m, shown);
  const far = 600;
  return {
    boxes: [
      // Beyond the frame that shows all no text should begin.
      { x: left - SIDE_px - far, y: top - far, width: far, height: bottom - top + 2 * far },
      { x: right + SIDE_px, y: top - far, width: far, height: bottom - top + 2 * far },
      { x: left - SIDE_px, y: top - ABOVE_px - far, width: right - left + 2 * SIDE_px, height: far },
      { x: left - SIDE_px, y: bottom + ABOVE_px, width: right - left + 2 * SIDE_px, height: far },
      ...iso.nodes.map(({ place, nozzle }) => box(toScreen(view, place), nozzle ? 12 : 6)),
      ...iso.supports.map(({ place }) => box(toScreen(view, place), 7)),
      ...(assembly?.cylinders ?? []).map(({ at }) => box(at, 12)),
      ...(assembly?.line.spots ?? []).map((place) => box(assembly?.at(place) ?? { x: 0, y: 0 }, 11)),
    ],
    lines: lines.map(({ a, b }) => [a.x, a.y, b.x, b.y]),
  };
}

/** Texts of the drawing with the boxes they take, placed once for a scale so that they stay put while the view moves. */
export function placedIsometricLabels(pen: Pen, view: Viewport, shown: ShownIsometric, lengths: Lengths, ink: Ink): Pick<Placed, 'labels' | 'boxes'> {
  const last = kept.get(shown);
  if (last && last.scale_px_m === view.camera.scale_px_m && last.ink === ink) return last;
  const still = { ...view, camera: { ...view.camera, at: { x: 0, y: 0 } }, width: 0, height: 0 };
  const labels = labelsFor(pen, still, shown, lengths, ink);
  const placed = { scale_px_m: view.camera.scale_px_m, ink, labels, boxes: placeLabels(labels, obstaclesOf(still, shown)) };
  kept.set(shown, placed);
  return placed;
}

/** Writes the texts of the drawing. */
export function drawIsometricLabels(pen: Pen, view: Viewport, shown: ShownIsometric, lengths: Lengths, ink: Ink): void {
  const { labels, boxes } = placedIsometricLabels(pen, view, shown, lengths, ink);
  const origin = toScreen(view, { x: 0, y: 0 });
  for (const { key, lines, isFramed, at } of labels) {
    const found = boxes.get(key);
    if (!found) continue;
    const box = { ...found, x: found.x + origin.x, y: found.y + origin.y };
    if (box.x + box.width < 0 || box.y + box.height < 0 || box.x > view.width || box.y > view.height) continue;
    drawLeader(pen, box, { x: at.x + origin.x, y: at.y + origin.y }, key.startsWith('run'), ink);
    if (isFramed) {
      pen.fillStyle = ink.paper;
      pen.fillRect(box.x, box.y, box.width, box.height);
      setLine(pen, { colour: ink.quiet, width: 1 });
      pen.strokeRect(box.x + 0.5, box.y + 0.5, box.width - 1, box.height - 1);
    }
    let top = box.y + 1;
    for (const { text, colour, ...lettering } of lines) {
      const height = lineHeight_px(lettering);
      write(pen, text, { x: box.x + 3, y: top + height / 2 }, { colour, ...(isFramed ? {} : { halo: ink.paper }), ...lettering });
      top += height;
    }
  }
}

/** A thin line from what a label names to the nearest place of its box, where it stands apart. */
function drawLeader(pen: Pen, box: LabelBox, at: Px, isBesidePipe: boolean, ink: Ink): void {
  const near = { x: Math.max(box.x, Math.min(box.x + box.width, at.x)), y: Math.max(box.y, Math.min(box.y + box.height, at.y)) };
  const gap = gap_px(near, at);
  if (isBesidePipe || gap < LED_px) return;
  setLine(pen, { colour: ink.quiet, width: 1 });
  line(pen, between(at, near, 7 / gap), near);
}
