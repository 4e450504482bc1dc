import type { Derived, Solid } from '../derived/derived.ts';
import { sidesOf } from '../geometry/outline.ts';
import type { PlanPoint3 } from '../geometry/point.ts';
import type { Settings } from '../model/plan.ts';
import { formatLength } from '../units/length-text.ts';
import { compassName } from './datum.ts';
import { addDimension, slotsOutward } from './dimension-line.ts';
import { isOverhead } from './draw-solids.ts';
import { circle, doubleLine, line, pen, ring, segments } from './marks.ts';
import { joinNames } from './nozzle-dimensions.ts';
import { networkStretches } from './pipe-stretches.ts';
import type { ComposedView } from './plan-view.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import { IN_CUT_m, type SectionCut, alongCut_m, behindCut_m } from './section-cuts.ts';
import { heightText } from './sheet-text.ts';
import { type PaperBox, marksBox } from './text-box.ts';
import type { TypeSizes } from './type-sizes.ts';
import { addLabel, settleLabels } from './labels.ts';
import { type ViewDraft, addLine, marksOf, uprightBox, viewDraft, viewFrame } from './view-draft.ts';

/** Paper kept around a section for heights and labels [mm at factor 1]. */
const SIDE_mm = 41;
const ABOVE_mm = 13;

/** Heights that a section reaches [m]. */
interface Heights {
  readonly lowest_m: number;
  readonly highest_m: number;
  /** Slab under the raised floor; undefined without one. */
  readonly slab_m: number | undefined;
  /** Underside of the slab above the ceiling void; undefined without one. */
  readonly soffit_m: number | undefined;
}

function heightsOf({ room, nozzles }: SectionCut): Heights {
  const { underFloor, ceilingVoid } = room.enclosure;
  const ceiling = room.tallest_m;
  const slab_m = underFloor ? -underFloor.depth_m : undefined;
  const soffit_m = ceilingVoid && ceiling !== undefined ? ceiling + ceilingVoid.depth_m : undefined;
  const pipes = nozzles.flatMap(({ network, at }) => [...network.pipes.flatMap(({ from, to }) => [from.z, to.z]), ...(at ? [at.z] : [])]);
  return {
    lowest_m: Math.min(0, slab_m ?? 0, ...pipes),
    highest_m: Math.max(2, soffit_m ?? ceiling ?? 0, ...pipes),
    slab_m,
    soffit_m,
  };
}

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

/** Draws one section to scale in the middle of the paper it is given. */
export function composeSection(derived: Derived, cut: SectionCut, scale: number, sizes: TypeSizes, lengths: Settings['lengths'], room: PaperBox): ComposedView {
  const heights = heightsOf(cut);
  const width_mm = ((cut.to_m - cut.from_m) * 1000) / scale;
  const height_mm = ((heights.highest_m - heights.lowest_m) * 1000) / scale;
  const left = (room.left + room.right - width_mm) / 2;
  const bottom = (room.top + room.bottom + height_mm) / 2;
  const view = viewDraft(viewFrame(scale, cut.from_m, heights.lowest_m, left, bottom), sizes, lengths, room);
  view.regionAt = (x, y) => (x >= left && x <= left + width_mm && y <= bottom && y >= bottom - height_mm ? 'room' : undefined);
  const pieces = insidePieces(cut);
  const ceilings = drawRoom(view, cut, heights, pieces);
  const solids = cut.room.solids.filter((solid) => span(solid.footprint, (p) => behindCut_m(cut, p))[1] >= -IN_CUT_m);
  drawSolidsCut(view, cut, solids);
  drawCylinders(view, derived, cut);
  drawPipes(view, cut);
  const groups = drawNozzles(view, cut);
  dimensionHeights(view, cut, groups);
  labelHeights(view, cut, heights, ceilings, solids);
  labelNozzles(view, groups);
  settleLabels(view);
  const marks = marksOf(view);
  return { marks, box: marksBox(marks), scale, used: view.used, unplaced: view.unplaced };
}

const span = <T>(items: readonly T[], value: (item: T) => number): readonly [number, number] => {
  const values = items.map(value);
  return [Math.min(...values), Math.max(...values)];
};

/** Pieces of the cut that lie inside the room, as ways along the cut [m]. */
function insidePieces(cut: SectionCut): (readonly [number, number])[] {
  const crossings = [cut.room.outline, ...cut.room.holes]
    .flatMap((outline) => sidesOf(outline))
    .flatMap(({ a, b }) => {
      const [da, db] = [behindCut_m(cut, a), behindCut_m(cut, b)];
      if (da > 0 === db > 0) return [];
      const t = da / (da - db);
      return [alongCut_m(cut, { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t })];
    })
    .sort((a, b) => a - b);
  const pieces: (readonly [number, number])[] = [];
  for (let i = 0; i + 1 < crossings.length; i += 2) pieces.push([crossings[i] ?? 0, crossings[i + 1] ?? 0]);
  return pieces.length > 0 ? pieces : [[cut.from_m, cut.to_m]];
}

const placeAt = ({ through, along_rad }: SectionCut, way_m: number) => ({ x: through.x + Math.cos(along_rad) * way_m, y: through.y + Math.sin(along_rad) * way_m });

/** Draws floor, ceiling, voids and cut walls; answers the ceiling heights that occur, each with a place [m]. */
function drawRoom(view: ViewDraft, cut: SectionCut, { lowest_m, highest_m, slab_m, soffit_m }: Heights, pieces: readonly (readonly [number, number])[]): ReadonlyMap<number, number> {
  const { frame, sizes } = view;
  const heavy = pen(WEIGHT.heavy * sizes.factor);
  const medium = pen(WEIGHT.medium * sizes.factor);
  const hatch: number[] = [];
  const slab = slab_m ?? 0;
  const ceilings = new Map<number, number>();
  for (const [from, to] of pieces) {
    const base = [frame.x(from), frame.y(slab), frame.x(to), frame.y(slab)];
    addLine(view, base, line(heavy, ...base), 20);
    const step = 2.4 * sizes.factor;
    for (let x = (base[0] ?? 0) + step / 2; x < (base[2] ?? 0); x += step) hatch.push(x, base[1] ?? 0, x - 1.3 * sizes.factor, (base[1] ?? 0) + 1.3 * sizes.factor);
    if (slab_m !== undefined) {
      const floor = [frame.x(from), frame.y(0), frame.x(to), frame.y(0)];
      addLine(view, floor, line(medium, ...floor), 14);
    }
    const profile: number[] = [];
    const samples = 160;
    let last: number | undefined;
    for (let i = 0; i <= samples; i += 1) {
      const way = from + ((to - from) * Math.min(Math.max(i, 0.01), samples - 0.01)) / samples;
      const height = cut.room.ceilingAt_m(placeAt(cut, way));
      if (height === undefined) continue;
      const at = from + ((to - from) * i) / samples;
      if (last !== undefined && Math.abs(height - last) > 1e-9) profile.push(frame.x(at), frame.y(last));
      if (last === undefined || Math.abs(height - last) > 1e-9 || i === samples) profile.push(frame.x(at), frame.y(height));
      if (!ceilings.has(Math.round(height * 1000) / 1000) && ceilings.size < 4) ceilings.set(Math.round(height * 1000) / 1000, at);
      last = height;
    }
    if (profile.length >= 4) addLine(view, profile, line(soffit_m === undefined ? heavy : medium, ...profile), 20);
    if (soffit_m !== undefined) {
      const above = [frame.x(from), frame.y(soffit_m), frame.x(to), frame.y(soffit_m)];
      addLine(view, above, line(heavy, ...above), 20);
    }
    const top = soffit_m ?? last ?? highest_m;
    for (const [way, out] of [
      [from, -1],
      [to, 1],
    ] as const) {
      const wall = [frame.x(way), frame.y(Math.min(slab, lowest_m)), frame.x(way), frame.y(top)];
      addLine(view, wall, line(heavy, ...wall), 20);
      for (let y = (wall[3] ?? 0) + step / 2; y < (wall[1] ?? 0); y += step) hatch.push(frame.x(way), y, frame.x(way) + out * 1.3 * sizes.factor, y - 1.3 * sizes.factor);
    }
  }
  view.lines.push(segments(pen(WEIGHT.hair), hatch));
  return ceilings;
}

/** Draws solids: those in the cut hatched and heavier, those behind it thin. */
function drawSolidsCut(view: ViewDraft, cut: SectionCut, solids: readonly Solid[]): void {
  const { frame, sizes } = view;
  for (const solid of solids) {
    const [from, to] = span(solid.footprint, (p) => alongCut_m(cut, p));
    const [near, far] = span(solid.footprint, (p) => behindCut_m(cut, p));
    const isCut = near <= IN_CUT_m && far >= -IN_CUT_m;
    const [left, right, top, bottom] = [frame.x(from), frame.x(to), frame.y(solid.top_m), frame.y(solid.bottom_m)];
    const places = [left, top, right, top, right, bottom, left, bottom];
    addLine(view, places, ring(pen((isCut ? WEIGHT.medium : WEIGHT.hair) * sizes.factor, PRINT.solid), places, isCut ? PRINT.solidFill : undefined), isCut ? 6 : 2, true);
    if (!isCut) continue;
    const lines: number[] = [];
    const step = 2.6 * sizes.factor;
    for (let k = left - (bottom - top); k < right; k += step) {
      const x0 = Math.max(k, left);
      const x1 = Math.min(k + (bottom - top), right);
      if (x1 > x0) lines.push(x0, bottom - (x0 - k), x1, bottom - (x1 - k));
    }
    view.lines.push(segments(pen(WEIGHT.hair, PRINT.faint), lines));
  }
}

function drawCylinders(view: ViewDraft, derived: Derived, cut: SectionCut): void {
  const { frame, sizes } = view;
  const networks = new Set(cut.nozzles.map(({ network }) => network.ref.id));
  for (const { ref, network, profile } of derived.networks) {
    if (!networks.has(ref.id)) continue;
    const radius = (profile?.limits.cylinderDiameter_m?.value ?? 0.2) / 2;
    const outlet = profile?.limits.outletHeight_m?.value;
    const columns = new Map<number, string[]>();
    for (const { at, name, railHeight_m } of Object.values(network.cylinders)) {
      const way = alongCut_m(cut, at);
      if (way < cut.from_m || way > cut.to_m) continue;
      const key = Math.round(way * 1000) / 1000;
      const known = columns.get(key);
      if (known) known.push(name);
      else columns.set(key, [name]);
      if (known || outlet === undefined) continue;
      const [left, right, foot, top] = [frame.x(way - radius), frame.x(way + radius), frame.y(0), frame.y(outlet)];
      const round = Math.min((right - left) / 2, (foot - top) / 2);
      const places = [left, foot, left, top + round, left + round * 0.35, top + round * 0.35, left + round * 0.7, top, right - round * 0.7, top, right - round * 0.35, top + round * 0.35, right, top + round, right, foot];
      view.used.add('cylinder');
      addLine(view, places, ring(pen(WEIGHT.medium * sizes.factor), places, PRINT.paper), 5, true);
      if (railHeight_m !== null) view.lines.push(line(pen(WEIGHT.heavy * sizes.factor), left - sizes.factor, frame.y(railHeight_m), right + sizes.factor, frame.y(railHeight_m)));
    }
    const source = network.source ? network.nodes[network.source]?.at : undefined;
    if (source && outlet !== undefined && columns.size > 0) drawAssembly(view, cut, source, outlet, [...columns.keys()]);
    for (const [way, names] of columns) {
      const middle = frame.y((outlet ?? 1.5) / 2);
      const words = names.length > 3 ? `${names[0] ?? ''} to ${names.at(-1) ?? ''}` : joinNames(names);
      addLabel(view, [{ text: words, font: 'bold' }], { x: frame.x(way), y: middle, clearance_mm: frame.mm(radius) + 0.6, toward_rad: 0 }, words);
    }
  }
}

/** The discharge assembly from the outlet of the nearest cylinder up to where the pipe begins. */
function drawAssembly(view: ViewDraft, cut: SectionCut, source: PlanPoint3, outlet_m: number, ways: readonly number[]): void {
  const { frame, sizes } = view;
  const end = alongCut_m(cut, source);
  const from = ways.reduce((best, way) => (Math.abs(way - end) < Math.abs(best - end) ? way : best), ways[0] ?? end);
  const places = [frame.x(from), frame.y(outlet_m), frame.x(end), frame.y(source.z)];
  if (Math.hypot((places[2] ?? 0) - (places[0] ?? 0), (places[3] ?? 0) - (places[1] ?? 0)) < sizes.factor) return;
  view.used.add('high-pressure');
  addLine(view, places, doubleLine(PRINT.warm, sizes.factor, places), 10);
}

function drawPipes(view: ViewDraft, cut: SectionCut): void {
  const { frame, sizes } = view;
  const networks = new Map(cut.nozzles.map(({ network }) => [network.ref.id, network]));
  const onView = (p: PlanPoint3): [number, number] => [frame.x(alongCut_m(cut, p)), frame.y(p.z)];
  for (const network of networks.values()) {
    for (const { from, to } of networkStretches(network, network.pipes)) {
      view.used.add('pipe');
      const [ax, ay] = onView(from);
      const [bx, by] = onView(to);
      if (Math.hypot(bx - ax, by - ay) < 0.3) {
        view.lines.push(circle(pen(WEIGHT.medium * sizes.factor, PRINT.cool), ax, ay, 0.8 * sizes.factor, PRINT.paper));
        continue;
      }
      const places = [ax, ay, bx, by];
      addLine(view, places, line(pen(WEIGHT.heavy * sizes.factor, PRINT.cool), ...places), 10);
    }
  }
}

/** Nozzles that stand over one place of the section. */
interface NozzleGroup {
  readonly x: number;
  readonly y: number;
  readonly z_m: number;
  readonly names: string[];
  readonly below: string;
}

function drawNozzles(view: ViewDraft, cut: SectionCut): NozzleGroup[] {
  const { frame, sizes } = view;
  const groups: NozzleGroup[] = [];
  for (const nozzle of cut.nozzles) {
    const { at, localCeiling_m } = nozzle;
    if (!at) continue;
    const [x, y] = [frame.x(alongCut_m(cut, at)), frame.y(at.z)];
    const known = groups.find((group) => Math.hypot(group.x - x, group.y - y) < 0.3);
    if (known) {
      known.names.push(nozzle.nozzle.name);
      continue;
    }
    const below = localCeiling_m === undefined ? '' : `${formatLength(localCeiling_m - at.z, view.lengths)} below ${nozzle.space?.kind === 'under-floor' ? 'floor' : 'ceiling'}`;
    groups.push({ x, y, z_m: at.z, names: [nozzle.nozzle.name], below });
    view.used.add('nozzle');
    const reach = 2.6 * sizes.factor;
    view.lines.push(
      line(pen(WEIGHT.wide * sizes.factor), x - reach, y, x + reach, y),
      ring(pen(WEIGHT.medium * sizes.factor), [x - sizes.factor, y - 0.9 * sizes.factor, x + sizes.factor, y - 0.9 * sizes.factor, x + 0.6 * sizes.factor, y + 0.9 * sizes.factor, x - 0.6 * sizes.factor, y + 0.9 * sizes.factor], PRINT.paper),
    );
    view.placer.block(uprightBox(x, y, reach, 1.1 * sizes.factor), `nozzle ${x} ${y}`);
  }
  return groups;
}

/** Dimensions the heights at the left: the room, then each height of an orifice, all from the finished floor. */
function dimensionHeights(view: ViewDraft, cut: SectionCut, groups: readonly NozzleGroup[]): void {
  const { frame, sizes, lengths } = view;
  const heights = new Map<string, { z_m: number; names: string[]; aside: number[] }>();
  const left = frame.x(cut.from_m);
  for (const { z_m, names, x } of groups) {
    if (z_m <= 0) continue;
    const key = formatLength(z_m, lengths);
    const known = heights.get(key) ?? { z_m, names: [], aside: [] };
    heights.set(key, { z_m, names: [...known.names, ...names], aside: [...known.aside, left - x] });
  }
  const draw = (z_m: number, words: string, aside: readonly number[], isBold: boolean): void => {
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
    });
  };
  for (const [words, { z_m, names, aside }] of [...heights].sort(([, a], [, b]) => a.z_m - b.z_m)) draw(z_m, names.length > 3 ? words : `${joinNames(names)}: ${words}`, aside, true);
  const ceiling = cut.room.ceilingAt_m(placeAt(cut, cut.from_m + 1e-4)) ?? cut.room.tallest_m;
  if (ceiling !== undefined) draw(ceiling, formatLength(ceiling, lengths), [0], false);
}

function labelHeights(view: ViewDraft, cut: SectionCut, { slab_m, soffit_m }: Heights, ceilings: ReadonlyMap<number, number>, solids: readonly Solid[]): void {
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
