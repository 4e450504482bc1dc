import { jetsOf } from '#shared/derived/jets';
import { refKey } from '#shared/model/plan';
import { dimensionLine } from '../tools/level-things.ts';
import { cylinderRadius_px } from './draw-cylinders.ts';
import { MARK_SHIFT } from './draw-findings.ts';
import { endsAtNozzle, isPoint } from './draw-pipes.ts';
import { type LabelBox, placeLabels } from './label-placer.ts';
import { type Label, fixedPx, labelsOf } from './label-wishes.ts';
import { detailAt } from './level-of-detail.ts';
import { lineHeight_px, textWidth_px, write } from './lettering.ts';
import { type Pen, line, setLine } from './pen.ts';
import { type Scene, isShown, levelOf, networksOf, roomsOf, solidsOf } from './scene.ts';
import { type Viewport, toScreen } from './viewport.ts';

interface PlacedLabels {
  readonly scale_px_m: number;
  readonly labels: readonly Label[];
  readonly boxes: ReadonlyMap<string, LabelBox>;
}

let kept = new WeakMap<Scene, PlacedLabels>();

/** Places all texts anew: the letters have become wider or narrower. */
export function forgetLabels(): void {
  kept = new WeakMap();
}

/** Texts beside things, placed once for a scale so that they stay put while the board moves. */
export function drawLabels(pen: Pen, view: Viewport, scene: Scene): void {
  const { labels, boxes } = placedLabels(pen, view, scene);
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

function placedLabels(pen: Pen, view: Viewport, scene: Scene): PlacedLabels {
  const last = kept.get(scene);
  if (last && last.scale_px_m === view.camera.scale_px_m) return last;
  const detail = detailAt(view.camera.scale_px_m);
  const labels = labelsOf({ scene, view, detail, measure: (text, lettering) => textWidth_px(pen, text, lettering) });
  const boxes = placeLabels(labels, { boxes: symbolBoxes(view, scene), lines: avoidedLines(view, scene) });
  const placed = { scale_px_m: view.camera.scale_px_m, labels, boxes };
  kept.set(scene, placed);
  return placed;
}

const around = ({ x, y }: { x: number; y: number }, half: number): LabelBox => ({ x: x - half, y: y - half, width: 2 * half, height: 2 * half });

/** The mark of a finding, with room for the number of findings before it. */
const markBox = ({ x, y }: { x: number; y: number }): LabelBox => ({ x: x + MARK_SHIFT.x - 18, y: y + MARK_SHIFT.y - 9, width: 27, height: 18 });

/** Symbols that no text should cover. */
function symbolBoxes(view: Viewport, scene: Scene): LabelBox[] {
  const faults = scene.evaluation.findings
    .filter(({ verdict, place }) => (verdict === 'stop' || verdict === 'warn') && place?.level === scene.level)
    .flatMap(({ place }) => (place?.at[0] ? [markBox(fixedPx(view, place.at[0]))] : []));
  return networksOf(scene)
    .flatMap((network) => [
      ...network.nozzles.flatMap(({ at }) => (at ? [around(fixedPx(view, at), 10)] : [])),
      ...network.pipes.filter((pipe) => isPoint(pipe) && !endsAtNozzle(pipe)).map(({ from }) => around(fixedPx(view, from), 11)),
      ...Object.values(network.network.cylinders).map(({ at }) => around(fixedPx(view, at), cylinderRadius_px(view, network) + 2)),
    ])
    .concat(faults);
}

type Line4 = readonly [number, number, number, number];

/** Lines that a text should keep off. */
function avoidedLines(view: Viewport, scene: Scene): Line4[] {
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
    ...(areJetsShown ? networksOf(scene).flatMap((network) => network.nozzles.flatMap((nozzle) => jetsOf(nozzle).map(({ from, to }) => straight(from, to)))) : []),
    ...networksOf(scene).flatMap((network) => network.pipes.filter((pipe) => !isPoint(pipe)).map(({ from, to }) => straight(from, to))),
    ...roomsOf(scene).flatMap((room) => room.walls.map(({ segment }) => straight(segment.a, segment.b))),
    ...solidsOf(scene)
      .filter(({ ref }) => scene.shows(refKey(ref)))
      .flatMap(({ footprint }) => footprint.map((a, i) => straight(a, footprint[(i + 1) % footprint.length] ?? a))),
    ...dimensions,
  ];
}
