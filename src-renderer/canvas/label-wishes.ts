import type { DerivedNetwork, DerivedPipe, Space } from '#shared/derived/derived';
import { type Box, boundsOf, boxesTouch, isInside } from '#shared/geometry/outline';
import { refKey } from '#shared/model/plan';
import { PIPE_TABLE, type PipeSize } from '#shared/profile/pipe-table';
import { formatLength } from '#shared/units/length-text';
import { formatQuantity } from '#shared/units/quantity-text';
import { OBSTRUCTION_WORDS } from '#shared/model/thing-name';
import { adjoiningNames, deviceNames } from './device-labels.ts';
import { cylinderRadius_px } from './draw-cylinders.ts';
import { isOverhead } from './draw-obstructions.ts';
import { endsAtNozzle, isPoint } from './draw-pipes.ts';
import { spotsAround } from './label-placer.ts';
import type { Detail } from './level-of-detail.ts';
import { type Lettering, lineHeight_px } from './lettering.ts';
import { type Px, gap_px } from './pen.ts';
import { type Scene, isShown, networksOf, roomsOf, solidsOf } from './scene.ts';
import type { Viewport } from './viewport.ts';

export interface LabelLine extends Lettering {
  readonly text: string;
  readonly colour: string;
}

/** A text of one or more lines that looks for a place, in pixels from the plan's origin. */
export interface Label {
  readonly key: string;
  readonly lines: readonly LabelLine[];
  readonly width: number;
  readonly height: number;
  readonly spots: readonly Px[];
  readonly must?: boolean;
  /** A nozzle's flag: underlined, with a leader to this place. */
  readonly flagFor?: Px;
}

/** Width of a text as the board would write it [px]. */
export type MeasureText = (text: string, lettering: Lettering) => number;

export interface LabelContext {
  readonly scene: Scene;
  readonly view: Viewport;
  readonly detail: Detail;
  readonly measure: MeasureText;
  /** Part of the plan in which texts are wanted [m]. */
  readonly region: Box;
}

/** Whether a place lies in a box. */
export const isInBox = ({ x, y }: { readonly x: number; readonly y: number }, box: Box): boolean => x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY;

/** Screen place with the plan's origin at 0, 0: it does not change while the board is only moved. */
export const fixedPx = ({ camera }: Viewport, p: { readonly x: number; readonly y: number }): Px => ({ x: p.x * camera.scale_px_m, y: -p.y * camera.scale_px_m });

/** Lines of a text with the room that they take. */
export const sizedLabel = (measure: MeasureText, lines: readonly LabelLine[]): { lines: readonly LabelLine[]; width: number; height: number } => ({
  lines,
  width: Math.max(...lines.map((line) => measure(line.text, line))) + 2,
  height: lines.reduce((sum, line) => sum + lineHeight_px(line), 0),
});

/** A pipe size as the plan's users say it: "NPS 3/4" or "DN 20". */
const pipeSizeText = (size: PipeSize, lengths: 'feet' | 'metric'): string => (lengths === 'feet' ? `NPS ${size}` : `DN ${PIPE_TABLE[size].dn}`);

/** Every text beside a thing, the most needed first. */
export function labelsOf(context: LabelContext): Label[] {
  if (!context.detail.names) return [];
  const { scene } = context;
  const networks = networksOf(scene);
  return [
    ...(isShown(scene, 'nozzles') ? networks.flatMap((network) => nozzleFlags(context, network)) : []),
    ...(isShown(scene, 'pipes') ? networks.flatMap((network) => cylinderNames(context, network)) : []),
    ...(isShown(scene, 'enclosures') ? roomsOf(scene).flatMap((room) => roomName(context, room)) : []),
    ...(isShown(scene, 'pipes') && context.detail.heights ? networks.flatMap((network) => uprightHeights(context, network)) : []),
    ...(isShown(scene, 'pipes') && context.detail.figures ? networks.flatMap((network) => pipeSizes(context, network)) : []),
    ...(isShown(scene, 'devices') ? deviceNames(context) : []),
    ...(isShown(scene, 'obstructions') ? obstructionNames(context) : []),
    ...(isShown(scene, 'adjoining') ? adjoiningNames(context) : []),
  ];
}

function nozzleFlags({ scene, view, detail, measure, region }: LabelContext, network: DerivedNetwork): Label[] {
  return network.nozzles.flatMap(({ ref, nozzle, at }) => {
    if (!at || !isInBox(at, region) || !scene.shows(refKey(ref))) return [];
    const lines: LabelLine[] = [{ text: nozzle.name || 'nozzle', bold: true, size: 13, colour: scene.ink.ink }];
    if (detail.figures) lines.push({ text: `at ${formatLength(at.z, scene.lengths)}`, colour: scene.ink.quiet });
    const box = sizedLabel(measure, lines);
    const place = fixedPx(view, at);
    return [{ key: refKey(ref), ...box, spots: spotsAround(place, 18, box.width, box.height), must: true, flagFor: place }];
  });
}

function cylinderNames({ scene, view, measure, region }: LabelContext, network: DerivedNetwork): Label[] {
  const radius = cylinderRadius_px(view, network);
  return Object.values(network.network.cylinders).flatMap((cylinder) => {
    const key = refKey({ kind: 'cylinder', network: network.network.id, id: cylinder.id });
    if (!cylinder.name || !isInBox(cylinder.at, region) || !scene.shows(key)) return [];
    const box = sizedLabel(measure, [{ text: cylinder.name, bold: true, colour: scene.ink.ink }]);
    const place = fixedPx(view, cylinder.at);
    const front = { x: Math.cos(cylinder.back_rad + Math.PI), y: -Math.sin(cylinder.back_rad + Math.PI) };
    const beside = { x: place.x + front.x * (radius + 6 + box.width / 2) - box.width / 2, y: place.y + front.y * (radius + 6 + box.height / 2) - box.height / 2 };
    return [{ key, ...box, spots: [beside, ...spotsAround(place, radius + 5, box.width, box.height)], must: true }];
  });
}

function roomName({ scene, view, measure, region }: LabelContext, room: Space): Label[] {
  const key = refKey(room.enclosureRef);
  if (!boxesTouch(room.bounds, region) || !scene.shows(key)) return [];
  const { ink, lengths } = scene;
  const height = room.enclosure.height_m === null ? 'height not known' : `${formatLength(room.enclosure.height_m, lengths)} high`;
  const floor = formatQuantity(room.area_m2, 'area', lengths);
  const box = sizedLabel(measure, [
    { text: room.enclosure.name || 'Enclosure', bold: true, size: 14, colour: ink.ink },
    { text: `${floor}, ${height}`, colour: ink.quiet },
  ]);
  const spots = spotsInside(room, view, box);
  return spots.length > 0 ? [{ key, ...box, spots }] : [];
}

/** Spots for a box inside a room, those near its middle first. */
function spotsInside(room: Space, view: Viewport, box: { width: number; height: number }): Px[] {
  const scale = view.camera.scale_px_m;
  const { minX, minY, maxX, maxY } = room.bounds;
  const middle = fixedPx(view, { x: (minX + maxX) / 2, y: (minY + maxY) / 2 });
  const found: Px[] = [];
  const columns = 7;
  const rows = 7;
  for (let i = 0; i < columns; i += 1) {
    for (let j = 0; j < rows; j += 1) {
      const spot = {
        x: minX * scale + 8 + ((maxX - minX) * scale - box.width - 16) * (i / (columns - 1)),
        y: -maxY * scale + 8 + ((maxY - minY) * scale - box.height - 16) * (j / (rows - 1)),
      };
      const corners = [
        [spot.x, spot.y],
        [spot.x + box.width, spot.y],
        [spot.x, spot.y + box.height],
        [spot.x + box.width, spot.y + box.height],
      ] as const;
      const fits = corners.every(([x, y]) => {
        const p = { x: x / scale, y: -y / scale };
        return isInside(p, room.outline) && !room.holes.some((hole) => isInside(p, hole));
      });
      if (fits) found.push(spot);
    }
  }
  const away = (p: Px): number => gap_px({ x: p.x + box.width / 2, y: p.y + box.height / 2 }, middle);
  return found.sort((a, b) => away(a) - away(b));
}

function uprightHeights({ scene, view, measure, region }: LabelContext, network: DerivedNetwork): Label[] {
  return network.pipes.flatMap((pipe) => {
    if (!isPoint(pipe) || !isInBox(pipe.from, region) || endsAtNozzle(pipe) || !scene.shows(refKey(pipe.ref))) return [];
    const way = pipe.to.z >= pipe.from.z ? 'up' : 'down';
    const text = `${formatLength(pipe.from.z, scene.lengths)} ${way} to ${formatLength(pipe.to.z, scene.lengths)}`;
    const box = sizedLabel(measure, [{ text, colour: scene.ink.cool }]);
    return [{ key: `${refKey(pipe.ref)} heights`, ...box, spots: spotsAround(fixedPx(view, pipe.from), 15, box.width, box.height) }];
  });
}

/** Same size and network nearer than this needs no second label [px]. */
const SIZE_REPEAT_px = 170;
/** Shorter pipes carry no size [px]. */
const SIZE_LEAST_px = 46;

function pipeSizes({ scene, view, measure, region }: LabelContext, network: DerivedNetwork): Label[] {
  const labels: Label[] = [];
  const written: { text: string; at: Px }[] = [];
  const ends = (pipe: DerivedPipe): [Px, Px] => [fixedPx(view, pipe.from), fixedPx(view, pipe.to)];
  const length = (pipe: DerivedPipe): number => gap_px(...ends(pipe));
  const longest = network.pipes.filter((pipe) => !isPoint(pipe) && (isInBox(pipe.from, region) || isInBox(pipe.to, region)) && scene.shows(refKey(pipe.ref))).sort((a, b) => length(b) - length(a));
  for (const pipe of longest) {
    const run = length(pipe);
    if (run < SIZE_LEAST_px) break;
    const [a, b] = ends(pipe);
    const text = pipeSizeText(pipe.pipe.size, scene.lengths);
    const box = sizedLabel(measure, [{ text, colour: scene.ink.cool }]);
    const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
    if (written.some((other) => other.text === text && gap_px(other.at, middle) < SIZE_REPEAT_px)) continue;
    written.push({ text, at: middle });
    const nx = -(b.y - a.y) / run;
    const ny = (b.x - a.x) / run;
    const away = 7 + Math.abs(nx) * (box.width / 2) + Math.abs(ny) * (box.height / 2);
    const spots = [0.5, 0.35, 0.65, 0.2, 0.8].flatMap((share) =>
      [1, -1].map((side) => ({
        x: a.x + (b.x - a.x) * share + nx * side * away - box.width / 2,
        y: a.y + (b.y - a.y) * share + ny * side * away - box.height / 2,
      })),
    );
    labels.push({ key: `${refKey(pipe.ref)} size`, ...box, spots });
  }
  return labels;
}

function obstructionNames({ scene, view, detail, measure, region }: LabelContext): Label[] {
  const { ink, lengths } = scene;
  return solidsOf(scene).flatMap((each) => {
    const key = refKey(each.ref);
    if (!boxesTouch(each.bounds, region) || !scene.shows(key)) return [];
    const lines: LabelLine[] = [{ text: each.obstruction.name || OBSTRUCTION_WORDS[each.obstruction.kind], colour: ink.solid }];
    if (detail.figures) {
      lines.push({ text: isOverhead(each) ? `underside ${formatLength(each.bottom_m, lengths)}` : `top ${formatLength(each.top_m, lengths)}`, colour: ink.solid });
    }
    const box = sizedLabel(measure, lines);
    const { minX, minY, maxX, maxY } = boundsOf(each.footprint.map((p) => fixedPx(view, p)));
    if (Math.max(maxX - minX, maxY - minY) < Math.min(box.width, 40)) return [];
    const centre = { x: (minX + maxX) / 2 - box.width / 2, y: (minY + maxY) / 2 - box.height / 2 };
    const spots = [0, 0.25, -0.25, 0.38, -0.38].flatMap((dy) => [0, 0.25, -0.25].map((dx) => ({ x: centre.x + dx * (maxX - minX), y: centre.y + dy * (maxY - minY) })));
    return [{ key, ...box, spots }];
  });
}
