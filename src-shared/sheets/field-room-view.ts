import { type Datum, faceName } from '../derived/datum.ts';
import { type FieldDimension, ceilingPlaces, cornerLetter, fieldDimensionsAbout } from '../derived/field-dimensions.ts';
import type { Space } from '../derived/derived.ts';
import type { PlanPoint } from '../geometry/point.ts';
import type { FieldRoomAnswer } from '../margins/field-room.ts';
import { refKey } from '../model/plan.ts';
import { formatLength } from '../units/length-text.ts';
import { drawCylinders, labelCylinders } from './draw-cylinders.ts';
import { drawNozzles } from './draw-nozzles.ts';
import { drawPatches } from './draw-patches.ts';
import { drawPipes } from './draw-pipes.ts';
import { drawWalls } from './draw-walls.ts';
import { type LabelLine, addLabel, settleLabels } from './labels.ts';
import { circle, line, pen } from './marks.ts';
import type { PlanContent } from './plan-content.ts';
import type { PlanViewOptions } from './plan-view.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import { shiftText, turnText } from './room-table.ts';
import { ceilingPlaceSymbol, datumSymbol, pipeMarkSymbol } from './symbols.ts';
import { type ViewDraft, addLine, inLayer, uprightBox } from './view-draft.ts';

/** The small letter that ends a dimension's name: "a" of "Room 1 a". */
const shortName = ({ name }: FieldDimension): string => name.slice(name.lastIndexOf(' ') + 1);

/** Corners with their letters, walls and diagonals with their lengths, the places where the ceiling is measured. */
export function drawFieldRoom(view: ViewDraft, { enclosure, level }: Space, datum: Datum | undefined, all: readonly FieldDimension[], wordsOf: (dimension: FieldDimension) => readonly LabelLine[]): void {
  const { frame, sizes } = view;
  const { factor } = sizes;
  const corners = enclosure.outline;
  const at = ({ x, y }: PlanPoint): [number, number] => [frame.x(x), frame.y(y)];
  const middle = corners.reduce((sum, { x, y }) => ({ x: sum.x + x / corners.length, y: sum.y + y / corners.length }), { x: 0, y: 0 });
  const own = fieldDimensionsAbout(all, { kind: 'enclosure', level: level.id, id: enclosure.id });
  const along = (dimension: FieldDimension, a: PlanPoint, b: PlanPoint): void => {
    const [ax, ay, bx, by] = [...at(a), ...at(b)];
    const turn = Math.atan2(b.y - a.y, b.x - a.x);
    const isLeft = (b.x - a.x) * (middle.y - a.y) - (b.y - a.y) * (middle.x - a.x) > 0;
    addLabel(view, wordsOf(dimension), { x: (ax + bx) / 2, y: (ay + by) / 2, clearance_mm: 1.2 * factor, along: { ax, ay, bx, by }, toward_rad: turn + (isLeft ? -Math.PI / 2 : Math.PI / 2) }, dimension.name);
  };
  if (datum) {
    view.used.add('datum');
    view.lines.push(...datumSymbol(...at(datum.corner), factor));
  }
  for (const [i, corner] of corners.entries()) {
    view.used.add('corner');
    const [x, y] = at(corner);
    view.lines.push(circle(undefined, x, y, 0.9 * factor, PRINT.ink));
    addLabel(view, [{ text: cornerLetter(i), font: 'bold', height_mm: sizes.heading_mm }], { x, y, clearance_mm: 2 * factor, owner: `corner ${i}`, toward_rad: Math.atan2(corner.y - middle.y, corner.x - middle.x) }, `corner ${cornerLetter(i)}`);
  }
  const places = ceilingPlaces(corners, datum);
  for (const dimension of own) {
    const { kind, part } = dimension;
    if (kind === 'wall') {
      const i = corners.findIndex(({ id }) => id === part);
      const [a, b] = [corners[i], corners[(i + 1) % corners.length]];
      if (a && b) along(dimension, a, b);
    } else if (kind === 'diagonal') {
      const pair = corners.flatMap((a) => corners.map((b) => [a, b] as const)).find(([a, b]) => `${a.id}-${b.id}` === part);
      if (!pair) continue;
      view.used.add('diagonal');
      const ends = [...at(pair[0]), ...at(pair[1])];
      addLine(view, ends, line(pen(WEIGHT.thin * factor, PRINT.quiet, [6, 1.5, 1, 1.5].map((each) => each * factor)), ...ends), 4);
      along(dimension, pair[0], pair[1]);
    } else {
      const place = places[Number(part) - 1];
      if (!place) continue;
      view.used.add('ceiling-place');
      const [x, y] = at(place.at);
      view.lines.push(ceilingPlaceSymbol(x, y, factor));
      view.placer.block(uprightBox(x, y, 1.8 * factor, 1.8 * factor), dimension.id);
      addLabel(view, wordsOf(dimension), { x, y, clearance_mm: 2 * factor, owner: dimension.id, toward_rad: -Math.PI / 4 }, dimension.name);
    }
  }
}

/** The pipe marks of a content by node: name as in the table, and place. */
export function pipeMarks(content: PlanContent, all: readonly FieldDimension[]): { readonly key: string; readonly name: string; readonly at: PlanPoint }[] {
  const shown = content.networks.flatMap(({ network, fittings }) => fittings.map(({ node, at }) => ({ key: refKey({ kind: 'node', network: network.ref.id, id: node }), at })));
  const names = new Map(all.flatMap(({ kind, about, name }) => (kind === 'pipe' ? [[refKey(about), /P\d+(?= \w+$)/.exec(name)?.[0] ?? name] as const] : [])));
  return [...new Map(shown.map((each) => [each.key, each])).values()].flatMap(({ key, at }) => {
    const name = names.get(key);
    return name === undefined ? [] : [{ key, name, at }];
  });
}

/** Draws the marks of the pipe with their names. */
export function drawPipeMarks(view: ViewDraft, content: PlanContent, all: readonly FieldDimension[]): void {
  const { frame, sizes } = view;
  for (const { key, name, at } of pipeMarks(content, all)) {
    view.used.add('pipe-mark');
    const [x, y] = [frame.x(at.x), frame.y(at.y)];
    view.lines.push(pipeMarkSymbol(x, y, sizes.factor));
    view.placer.block(uprightBox(x, y, 1.4 * sizes.factor, 1.4 * sizes.factor), key);
    addLabel(view, [{ text: name, font: 'bold' }], { x, y, clearance_mm: 1.6 * sizes.factor, owner: key, toward_rad: Math.PI / 4 }, `pipe mark ${name}`);
  }
}

/** What a nozzle's flag says: how far it may be shifted off each datum face, and which ways its first hole may point. */
function roomWords(answer: FieldRoomAnswer | undefined, datum: Datum | undefined, lengths: 'feet' | 'metric'): LabelLine[] {
  if (!answer?.isKnown) return [{ text: 'ask before any change' }];
  const { box } = answer.room;
  const [first, second] = datum ? datum.faces.map(faceName) : ['east', 'north'];
  return [{ text: `${first} ${shiftText(box.minus1_m, box.plus1_m, lengths)}` }, { text: `${second} ${shiftText(box.minus2_m, box.plus2_m, lengths)}` }, { text: `first hole ${turnText(answer, lengths)}` }];
}

/** A room as the fitter measures it: corners, diagonals, ceiling places, what is placed in it under the names of the table, and the room to move of each nozzle. */
export const drawFieldSheet =
  (all: readonly FieldDimension[]): NonNullable<PlanViewOptions['draw']> =>
  (view, content, { datums, rooms = new Map() }) => {
    const [room] = content.rooms;
    const [space] = content.spaces;
    if (!room || !space) return;
    const datum = datums.get(space.key);
    const nozzles = content.networks.flatMap((network) => network.nozzles);
    const { lengths, sizes, frame } = view;
    inLayer(view, 'building', () => drawWalls(view, [room]));
    for (const network of content.networks) inLayer(view, 'pipe', () => drawPipes(view, network));
    for (const network of content.networks) inLayer(view, 'cylinders', () => drawCylinders(view, network));
    inLayer(view, 'nozzles', () => drawNozzles(view, nozzles));
    inLayer(view, 'nozzles', () => drawPatches(view, nozzles, rooms));
    inLayer(view, 'dimensions', () => drawFieldRoom(view, room, datum, content.layer === 'room' ? all : [], (dimension) => [{ text: `${shortName(dimension)} ${formatLength(dimension.planned_m, lengths)}` }]));
    inLayer(view, 'pipe', () => drawPipeMarks(view, content, all));
    for (const { at, ref, nozzle } of nozzles) {
      if (!at) continue;
      inLayer(view, 'nozzles', () => addLabel(view, [{ text: nozzle.name, font: 'bold', flag: true }, ...roomWords(rooms.get(refKey(ref)), datum, lengths)], { x: frame.x(at.x), y: frame.y(at.y), clearance_mm: 3 * sizes.factor, owner: ref.id, toward_rad: Math.PI / 5 }, `nozzle ${nozzle.name}`));
    }
    for (const network of content.networks) inLayer(view, 'cylinders', () => labelCylinders(view, network));
    settleLabels(view);
  };
