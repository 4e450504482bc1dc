import type { FieldDimension } from '../derived/field-dimensions.ts';
import { bearing_rad, distance_m } from '../geometry/point.ts';
import { type SiteRecord, refKey } from '../model/plan.ts';
import { type BuiltPlace, builtPlaces } from './built-places.ts';
import { drawCylinders } from './draw-cylinders.ts';
import { drawNozzles } from './draw-nozzles.ts';
import { drawPipes } from './draw-pipes.ts';
import { drawWalls } from './draw-walls.ts';
import { drawFieldRoom, pipeMarks } from './field-room-view.ts';
import { type LabelLine, addLabel, settleLabels } from './labels.ts';
import { line, pen } from './marks.ts';
import type { PlanContent } from './plan-content.ts';
import type { PlanViewOptions } from './plan-view.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import { lengthText } from './sheet-text.ts';
import { arrowHead, builtPlaceSymbol, drawnPlaceSymbol } from './symbols.ts';
import { cornersOf, textBoxOf } from './text-box.ts';
import { type ViewDraft, inLayer, uprightBox } from './view-draft.ts';

/** Begins a figure that does not hold any more: the sheet strikes it through. */
const WAS = 'was ';

/** What a dimension's label says: what was drawn, to be struck through, and what was built; what was not measured says nothing. */
const builtWords = (measurements: SiteRecord['measurements'], lengths: 'feet' | 'metric') => (dimension: FieldDimension): LabelLine[] => {
  const measured = measurements[dimension.id];
  if (!measured) return [];
  const short = dimension.name.slice(dimension.name.lastIndexOf(' ') + 1);
  const [was, is] = [lengthText(dimension.planned_m, lengths), lengthText(measured.value_m, lengths)];
  return was === is ? [{ text: `${short} ${is}`, font: 'bold' }] : [{ text: `${WAS}${was}`, colour: PRINT.quiet }, { text: `${short} ${is}`, font: 'bold' }];
};

/** Strikes through every figure that does not hold any more. */
function strikeThrough(view: ViewDraft): void {
  for (const mark of [...view.texts]) {
    if (mark.kind !== 'text' || !mark.text.startsWith(WAS)) continue;
    const [ax = 0, ay = 0, bx = 0, by = 0, cx = 0, cy = 0, dx = 0, dy = 0] = cornersOf(textBoxOf(mark));
    view.texts.push({ ...line(pen(WEIGHT.medium * view.sizes.factor), (ax + dx) / 2, (ay + dy) / 2, (bx + cx) / 2, (by + cy) / 2), ...(mark.layer ? { layer: mark.layer } : {}) });
  }
}

/** Shorter ways on paper are not drawn as an arrow [mm at factor 1]. */
const LEAST_WAY_mm = 3;

function drawPlace(view: ViewDraft, { drawn, built, measured, key }: BuiltPlace, name: string, words: readonly LabelLine[], isMoved: boolean): void {
  const { frame, sizes } = view;
  const { factor } = sizes;
  const [x, y] = [frame.x(built.x), frame.y(built.y)];
  view.used.add('built-place');
  view.lines.push(builtPlaceSymbol(x, y, factor));
  view.placer.block(uprightBox(x, y, 3 * factor, 3 * factor), key);
  if (isMoved) {
    const [fromX, fromY] = [frame.x(drawn.x), frame.y(drawn.y)];
    view.used.add('drawn-place');
    view.lines.push(drawnPlaceSymbol(fromX, fromY, factor));
    view.placer.block(uprightBox(fromX, fromY, 2 * factor, 2 * factor), key);
    if (frame.mm(distance_m(drawn, built)) >= LEAST_WAY_mm * factor) {
      view.lines.push(line(pen(WEIGHT.wide * factor), fromX, fromY, x, y), arrowHead(x, y, bearing_rad(drawn, built), 2.4 * factor, PRINT.ink));
    }
  }
  addLabel(view, [{ text: name, font: 'bold', flag: true }, ...words], { x, y, clearance_mm: 3.2 * factor, owner: key, toward_rad: Math.PI / 4 }, `${name}, ${measured.length} measured`);
}

/** Whether anything of a content was measured. */
export const isAnyMeasured = (content: PlanContent, all: readonly FieldDimension[], measurements: SiteRecord['measurements']): boolean => {
  const shown = new Set([
    ...content.networks.flatMap(({ nozzles }) => nozzles.map(({ ref }) => refKey(ref))),
    ...pipeMarks(content, all).map(({ key }) => key),
    ...(content.layer === 'room' ? content.networks.flatMap(({ network }) => Object.keys(network.network.cylinders).map((id) => refKey({ kind: 'cylinder', network: network.ref.id, id }))) : []),
    ...(content.layer === 'room' ? content.rooms.map(({ enclosure, level }) => refKey({ kind: 'enclosure', level: level.id, id: enclosure.id })) : []),
  ]);
  return all.some(({ id, about }) => measurements[id] !== undefined && shown.has(refKey(about)));
};

/** A room with red lines: what was drawn otherwise struck through, what was built in heavy line with its figures. Nothing is told by colour. */
export const drawAsBuilt =
  (all: readonly FieldDimension[], measurements: SiteRecord['measurements'], siteTolerance_m: number): NonNullable<PlanViewOptions['draw']> =>
  (view, content, { datums }) => {
    const [room] = content.rooms;
    const [space] = content.spaces;
    if (!room || !space) return;
    const datum = datums.get(space.key);
    const words = builtWords(measurements, view.lengths);
    const nozzles = new Map(content.networks.flatMap((network) => network.nozzles.map((nozzle) => [refKey(nozzle.ref), nozzle] as const)));
    const marks = new Map(pipeMarks(content, all).map((mark) => [mark.key, mark]));
    const cylinders = new Map(content.networks.flatMap(({ network, hasCylinders }) => (hasCylinders ? Object.values(network.network.cylinders).map((cylinder) => [refKey({ kind: 'cylinder', network: network.ref.id, id: cylinder.id }), cylinder] as const) : [])));
    inLayer(view, 'building', () => drawWalls(view, [room]));
    for (const network of content.networks) inLayer(view, 'pipe', () => drawPipes(view, network));
    for (const network of content.networks) inLayer(view, 'cylinders', () => drawCylinders(view, network));
    inLayer(view, 'nozzles', () => drawNozzles(view, [...nozzles.values()]));
    inLayer(view, 'dimensions', () => drawFieldRoom(view, room, datum, content.layer === 'room' ? all.filter(({ id }) => measurements[id]) : [], words));
    const placeOf = (key: string): { at: { x: number; y: number }; name: string } | undefined => {
      const [nozzle, mark, cylinder] = [nozzles.get(key), marks.get(key), cylinders.get(key)];
      if (nozzle?.at) return { at: nozzle.at, name: nozzle.nozzle.name };
      return mark ?? cylinder;
    };
    const placed = builtPlaces(all, measurements, (about) => {
      const found = placeOf(refKey(about));
      return found && { at: found.at, datum };
    });
    for (const each of placed) {
      const isMoved = each.measured.some(({ id, planned_m }) => Math.abs((measurements[id]?.value_m ?? planned_m) - planned_m) > siteTolerance_m);
      inLayer(view, nozzles.has(each.key) ? 'nozzles' : marks.has(each.key) ? 'pipe' : 'cylinders', () => drawPlace(view, each, placeOf(each.key)?.name ?? '', each.measured.flatMap(words), isMoved));
    }
    settleLabels(view);
    strikeThrough(view);
  };
