import type { Derived, Solid } from '../derived/derived.ts';
import type { Settings } from '../model/plan.ts';
import { formatLength } from '../units/length-text.ts';
import { compassName } from '../derived/datum.ts';
import { addDimension, slotsOutward } from './dimension-line.ts';
import { drawInRounds, handPlaced } from './hand-placed.ts';
import { cloudSection } from './draw-side-clouds.ts';
import { isOverhead } from './draw-solids.ts';
import { drawSupportsFromSide } from './draw-supports.ts';
import { addLabel, settleLabels } from './labels.ts';
import { line, pen } from './marks.ts';
import { joinNames } from './nozzle-dimensions.ts';
import type { ComposedView } from './plan-view.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import { IN_CUT_m, type SectionCut, alongCut_m, behindCut_m } from './section-cuts.ts';
import { type Heights, type NozzleGroup, drawCylinders, drawNozzles, drawPipes, drawRoom, drawSolidsCut, heightsOf, insidePieces, placeAt, span } from './section-drawing.ts';
import { heightText } from './sheet-text.ts';
import { type PaperBox, marksBox } from './text-box.ts';
import type { TypeSizes } from '../paper/type-sizes.ts';
import { type ViewDraft, inLayer, marksOf, viewDraft, viewFrame } from './view-draft.ts';

/** Paper kept around a section for heights and labels [mm at factor 1]. */
const SIDE_mm = 41;
const ABOVE_mm = 13;

/** Paper that a section needs at a scale [mm]. */
export function sectionSize(cut: SectionCut, scale: number, sizes: TypeSizes): { readonly width_mm: number; readonly height_mm: number } {
  const { lowest_m, highest_m } = heightsOf(cut);
  return {
    width_mm: ((cut.to_m - cut.from_m) * 1000) / scale + 2 * SIDE_mm * sizes.factor,
    height_mm: ((highest_m - lowest_m) * 1000) / scale + 2 * ABOVE_mm * sizes.factor,
  };
}

/** Words under a section: its letter, its room, and where the viewer looks. */
export const sectionTitle = ({ letter, room, along_rad }: SectionCut): string => `Section ${letter}–${letter}: ${room.name}, looking ${compassName(along_rad + Math.PI / 2)}`;

/** The same for the same room, whatever letter its section bears. */
export const sectionKey = ({ room }: SectionCut): string => `section/${room.enclosure.id}`;

/** Draws one section to scale in the middle of the paper it is given. */
export function composeSection(derived: Derived, cut: SectionCut, scale: number, sizes: TypeSizes, lengths: Settings['lengths'], room: PaperBox): ComposedView {
  const heights = heightsOf(cut);
  const width_mm = ((cut.to_m - cut.from_m) * 1000) / scale;
  const height_mm = ((heights.highest_m - heights.lowest_m) * 1000) / scale;
  const left = (room.left + room.right - width_mm) / 2;
  const bottom = (room.top + room.bottom + height_mm) / 2;
  const view = viewDraft(viewFrame(scale, cut.from_m, heights.lowest_m, left, bottom), sizes, lengths, room);
  view.hand = handPlaced(sectionKey(cut), derived.plan.settings.sheets.dimensions);
  view.regionAt = (x, y) => (x >= left && x <= left + width_mm && y <= bottom && y >= bottom - height_mm ? 'room' : undefined);
  const pieces = insidePieces(cut);
  let ceilings: ReadonlyMap<number, number> = new Map();
  let groups: readonly NozzleGroup[] = [];
  inLayer(view, 'building', () => {
    ceilings = drawRoom(view, cut, heights, pieces);
  });
  const solids = cut.room.solids.filter((solid) => span(solid.footprint, (p) => behindCut_m(cut, p))[1] >= -IN_CUT_m);
  inLayer(view, 'building', () => drawSolidsCut(view, cut, solids));
  inLayer(view, 'cylinders', () => drawCylinders(view, derived, cut));
  inLayer(view, 'pipe', () => drawPipes(view, cut));
  inLayer(view, 'supports', () => drawSupportsFromSide(view, cut));
  inLayer(view, 'nozzles', () => {
    groups = drawNozzles(view, cut);
  });
  inLayer(view, 'findings', () => cloudSection(view, derived, cut, solids, heights));
  inLayer(view, 'dimensions', () => drawInRounds(view, () => dimensionHeights(view, cut, groups)));
  inLayer(view, 'dimensions', () => labelHeights(view, cut, heights, ceilings));
  inLayer(view, 'building', () => labelSolidsCut(view, cut, solids));
  inLayer(view, 'nozzles', () => labelNozzles(view, groups));
  settleLabels(view);
  const marks = marksOf(view);
  return { marks, box: marksBox(marks), scale, used: view.used, unplaced: view.unplaced };
}

/** Dimensions the heights at the left: the room, then each height of an orifice, all from the finished floor. */
function dimensionHeights(view: ViewDraft, cut: SectionCut, groups: readonly NozzleGroup[]): void {
  const { frame, sizes, lengths } = view;
  const heights = new Map<string, { z_m: number; names: string[]; ids: string[]; aside: number[] }>();
  const left = frame.x(cut.from_m);
  for (const { z_m, names, ids, x } of groups) {
    if (z_m <= 0) continue;
    const key = formatLength(z_m, lengths);
    const known = heights.get(key) ?? { z_m, names: [], ids: [], aside: [] };
    heights.set(key, { z_m, names: [...known.names, ...names], ids: [...known.ids, ...ids], aside: [...known.aside, left - x] });
  }
  const draw = (z_m: number, words: string, aside: readonly number[], of: readonly string[], isBold: boolean): void => {
    addDimension(view, {
      x: left,
      y: frame.y(0),
      along_rad: Math.PI / 2,
      length_mm: frame.mm(z_m),
      words,
      isBold,
      fromAside_mm: [0],
      toAside_mm: [Math.max(...aside)],
      slots: slotsOutward(7 * sizes.factor, 1, 5, 7 * sizes.factor, 0),
      fromDatum: isBold,
      of,
    });
  };
  for (const [words, { z_m, names, ids, aside }] of [...heights].sort(([, a], [, b]) => a.z_m - b.z_m)) draw(z_m, names.length > 3 ? words : `${joinNames(names)}: ${words}`, aside, ids.map((id) => `height/${id}`), true);
  const ceiling = cut.room.ceilingAt_m(placeAt(cut, cut.from_m + 1e-4)) ?? cut.room.tallest_m;
  if (ceiling !== undefined) draw(ceiling, formatLength(ceiling, lengths), [0], [`ceiling/${cut.room.key}`], false);
}

function labelHeights(view: ViewDraft, cut: SectionCut, { slab_m, soffit_m }: Heights, ceilings: ReadonlyMap<number, number>): void {
  const { frame, sizes, lengths } = view;
  const right = frame.x(cut.to_m);
  const rows: { readonly z_m: number; readonly words: string }[] = [
    { z_m: 0, words: `finished floor ${formatLength(0, lengths)}` },
    ...[...ceilings.keys()].map((z_m) => ({ z_m, words: `ceiling ${heightText(z_m, lengths)}` })),
    ...(slab_m === undefined ? [] : [{ z_m: slab_m, words: `slab ${heightText(slab_m, lengths)}` }]),
    ...(soffit_m === undefined ? [] : [{ z_m: soffit_m, words: `slab above ${heightText(soffit_m, lengths)}` }]),
  ];
  if (ceilings.size === 0) rows.push({ z_m: 2, words: 'ceiling height not known' });
  // Bottom up: a label that would meet the one below it moves up, with a leader back to its height.
  let lowest = Infinity;
  for (const { z_m, words } of rows.sort((a, b) => a.z_m - b.z_m)) {
    const y = frame.y(z_m);
    const at = Math.min(y, lowest - sizes.text_mm * 1.9);
    lowest = at;
    view.lines.push(line(pen(WEIGHT.thin), right + 1.5 * sizes.factor, y, right + 4 * sizes.factor, y, right + 6 * sizes.factor, at));
    addLabel(view, [{ text: words }], { x: right + 6.5 * sizes.factor, y: at, clearance_mm: 0, toward_rad: 0, isLoose: true, farthest_mm: 30 * sizes.factor }, words);
  }
}

function labelSolidsCut(view: ViewDraft, cut: SectionCut, solids: readonly Solid[]): void {
  const { frame, lengths } = view;
  for (const solid of solids) {
    const [from, to] = span(solid.footprint, (p) => alongCut_m(cut, p));
    const [near] = span(solid.footprint, (p) => behindCut_m(cut, p));
    if (near > IN_CUT_m) continue;
    const [x, y] = [frame.x((from + to) / 2), frame.y((solid.top_m + solid.bottom_m) / 2)];
    const name = solid.obstruction.name || solid.obstruction.kind;
    const words = isOverhead(solid) ? [name, `underside ${heightText(solid.bottom_m, lengths)}`] : [name, `top ${heightText(solid.top_m, lengths)}`];
    addLabel(view, words.map((text) => ({ text, colour: PRINT.solid })), { x, y, clearance_mm: 1, spots: [x, y], toward_rad: -Math.PI / 2 }, name);
  }
}

function labelNozzles(view: ViewDraft, groups: readonly NozzleGroup[]): void {
  for (const { x, y, z_m, names, below } of groups) {
    addLabel(
      view,
      [{ text: joinNames(names), font: 'bold', flag: true }, { text: heightText(z_m, view.lengths), font: 'bold' }, { text: below }],
      { x, y, clearance_mm: 2.6 * view.sizes.factor, owner: `nozzle ${x} ${y}`, toward_rad: -Math.PI / 4 },
      `nozzle ${joinNames(names)}`,
    );
  }
}
