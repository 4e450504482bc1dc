import { jetsOf } from '#shared/derived/jets';
import { type Box, boxesTouch } from '#shared/geometry/outline';
import { refKey } from '#shared/model/plan';
import { dimensionLine } from '../tools/level-things.ts';
import { DEVICE_REACH_px, deviceMiddle_px } from './device-labels.ts';
import { cylinderRadius_px } from './draw-cylinders.ts';
import { MARK_SHIFT } from './draw-findings.ts';
import { endsAtNozzle, isPoint } from './draw-pipes.ts';
import { type LabelBox, placeLabels } from './label-placer.ts';
import { type Label, fixedPx, isInBox, labelsOf } from './label-wishes.ts';
import { detailAt } from './level-of-detail.ts';
import { lineHeight_px, textWidth_px, write } from './lettering.ts';
import { type Pen, line, setLine } from './pen.ts';
import { type Scene, isShown, levelOf, networksOf, roomsOf, solidsOf } from './scene.ts';
import { ANEW } from './paint.ts';
import { type Viewport, toScreen, visibleBox } from './viewport.ts';

interface PlacedLabels {
  readonly scale_px_m: number;
  readonly region: Box;
  readonly labels: readonly Label[];
  readonly boxes: ReadonlyMap<string, LabelBox>;
}

const NO_LABELS: PlacedLabels = { scale_px_m: 0, region: { minX: 0, minY: 0, maxX: 0, maxY: 0 }, labels: [], boxes: new Map() };

let kept = new WeakMap<Scene, PlacedLabels>();

/** Places all texts anew: the letters have become wider or narrower. */
export function forgetLabels(): void {
  kept = new WeakMap();
}

/**
 * Texts beside things, placed once for a scale so that they stay put while the board moves.
 * @returns that all must be drawn anew, where the board has come to texts that were not placed together with the others
 */
export function drawLabels(pen: Pen, view: Viewport, scene: Scene): typeof ANEW | undefined {
  const placed = placedLabels(pen, view, scene);
  if (!placed) return ANEW;
  const { labels, boxes } = placed;
  const origin = toScreen(view, { x: 0, y: 0 });
  for (const label of labels) {
    const box = boxes.get(label.key);
    if (!box) continue;
    const x = box.x + origin.x;
    const y = box.y + origin.y;
    if (x + box.width < 0 || y + box.height < 0 || x > view.width || y > view.height) continue;
    if (label.flagFor) drawFlag(pen, { ...box, x, y }, { x: label.flagFor.x + origin.x, y: label.flagFor.y + origin.y }, scene);
    let top = y;
    for (const { text, colour, ...lettering } of label.lines) {
      const height = lineHeight_px(lettering);
      write(pen, text, { x: x + 1, y: top + height / 2 }, { colour, halo: scene.ink.paper, ...lettering });
      top += height;
    }
  }
  return undefined;
}

/** The line under a nozzle's id and the leader to the nozzle. */
function drawFlag(pen: Pen, box: LabelBox, at: { x: number; y: number }, { ink }: Scene): void {
  const foot = box.y + box.height + 1;
  const isRight = box.x + box.width / 2 >= at.x;
  const near = { x: isRight ? box.x : box.x + box.width, y: foot };
  const far = { x: isRight ? box.x + box.width : box.x, y: foot };
  setLine(pen, { colour: ink.quiet, width: 1 });
  line(pen, near, far);
  const length = Math.hypot(near.x - at.x, near.y - at.y);
  if (length > 9) line(pen, { x: at.x + ((near.x - at.x) * 7) / length, y: at.y + ((near.y - at.y) * 7) / length }, near);
}

/** A level with more things than this places only the texts around what the board shows. */
const MOST_AT_ONCE = 600;

/** How much farther than what is drawn the texts of a large level are placed, in widths and heights of it. */
const FARTHER = 0.5;

/** The part of a level in which texts are placed: all of a small one. */
function regionOf(view: Viewport, scene: Scene): Box {
  const count = solidsOf(scene).length + networksOf(scene).reduce((sum, { pipes, nozzles }) => sum + pipes.length + nozzles.length, 0);
  if (count <= MOST_AT_ONCE) return { minX: -Infinity, minY: -Infinity, maxX: Infinity, maxY: Infinity };
  const { minX, minY, maxX, maxY } = visibleBox(view);
  const [x, y] = [(maxX - minX) * FARTHER, (maxY - minY) * FARTHER];
  return { minX: minX - x, minY: minY - y, maxX: maxX + x, maxY: maxY + y };
}

const holds = (outer: Box, inner: Box): boolean => outer.minX <= inner.minX && outer.minY <= inner.minY && outer.maxX >= inner.maxX && outer.maxY >= inner.maxY;

/** The texts with their places; undefined where a strip is to be drawn for which none were placed. */
function placedLabels(pen: Pen, view: Viewport, scene: Scene): PlacedLabels | undefined {
  const { scale_px_m } = view.camera;
  const detail = detailAt(scale_px_m);
  const last = kept.get(scene);
  if (last && last.scale_px_m === scale_px_m && holds(last.region, visibleBox(view))) return last;
  if (!detail.names) return NO_LABELS;
  if (view.isStrip) return undefined;
  const region = regionOf(view, scene);
  const labels = labelsOf({ scene, view, detail, region, measure: (text, lettering) => textWidth_px(pen, text, lettering) });
  const boxes = labels.length === 0 ? new Map<string, LabelBox>() : placeLabels(labels, { boxes: symbolBoxes(view, scene, region), lines: avoidedLines(view, scene, region) });
  const placed = { scale_px_m, region, labels, boxes };
  kept.set(scene, placed);
  return placed;
}

const around = ({ x, y }: { x: number; y: number }, half: number): LabelBox => ({ x: x - half, y: y - half, width: 2 * half, height: 2 * half });

/** The mark of a finding, with room for the number of findings before it. */
const markBox = ({ x, y }: { x: number; y: number }): LabelBox => ({ x: x + MARK_SHIFT.x - 18, y: y + MARK_SHIFT.y - 9, width: 27, height: 18 });

/** Symbols that no text should cover. */
function symbolBoxes(view: Viewport, scene: Scene, region: Box): LabelBox[] {
  const faults = scene.evaluation.found.open
    .filter(({ verdict, place }) => (verdict === 'stop' || verdict === 'warn') && place?.level === scene.level)
    .flatMap(({ place }) => (place?.at[0] && isInBox(place.at[0], region) ? [markBox(fixedPx(view, place.at[0]))] : []));
  return networksOf(scene)
    .flatMap((network) => [
      ...network.nozzles.flatMap(({ at }) => (at && isInBox(at, region) ? [around(fixedPx(view, at), 10)] : [])),
      ...network.pipes.filter((pipe) => isPoint(pipe) && isInBox(pipe.from, region) && !endsAtNozzle(pipe)).map(({ from }) => around(fixedPx(view, from), 11)),
      ...Object.values(network.network.supports).filter(({ at }) => isInBox(at, region)).map(({ at }) => around(fixedPx(view, at), 8)),
      ...Object.values(network.network.cylinders).filter(({ at }) => isInBox(at, region)).map(({ at }) => around(fixedPx(view, at), cylinderRadius_px(view, network) + 2)),
    ])
    .concat(faults)
    .concat(isShown(scene, 'devices') ? Object.values(levelOf(scene)?.devices ?? {}).filter(({ at }) => isInBox(at, region)).map((device) => around(deviceMiddle_px(view, device), DEVICE_REACH_px)) : []);
}

type Line4 = readonly [number, number, number, number];

/** Lines that a text should keep off. */
function avoidedLines(view: Viewport, scene: Scene, region: Box): Line4[] {
  const straight = (a: { x: number; y: number }, b: { x: number; y: number }): Line4 => {
    const from = fixedPx(view, a);
    const to = fixedPx(view, b);
    return [from.x, from.y, to.x, to.y];
  };
  const dimensions = Object.values(levelOf(scene)?.dimensions ?? {}).map((dimension) => {
    const { a, b } = dimensionLine(dimension);
    return straight(a, b);
  });
  const areJetsShown = isShown(scene, 'jets') && detailAt(view.camera.scale_px_m).fine;
  return [
    ...(areJetsShown ? networksOf(scene).flatMap((network) => network.nozzles.filter(({ at }) => at && isInBox(at, region)).flatMap((nozzle) => jetsOf(nozzle).map(({ from, to }) => straight(from, to)))) : []),
    ...networksOf(scene).flatMap((network) => network.pipes.filter((pipe) => !isPoint(pipe) && (isInBox(pipe.from, region) || isInBox(pipe.to, region))).map(({ from, to }) => straight(from, to))),
    ...roomsOf(scene).filter(({ bounds }) => boxesTouch(bounds, region)).flatMap((room) => room.walls.map(({ segment }) => straight(segment.a, segment.b))),
    ...solidsOf(scene)
      .filter(({ ref, bounds }) => boxesTouch(bounds, region) && scene.shows(refKey(ref)))
      .flatMap(({ footprint }) => footprint.map((a, i) => straight(a, footprint[(i + 1) % footprint.length] ?? a))),
    ...dimensions,
  ];
}
