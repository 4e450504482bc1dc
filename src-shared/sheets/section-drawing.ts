import { assemblyRunOf } from '../derived/assembly-run.ts';
import type { Derived, Solid } from '../derived/derived.ts';
import { pipeZoneOf } from '../derived/pipe-zone.ts';
import { sidesOf } from '../geometry/outline.ts';
import type { PlanPoint3 } from '../geometry/point.ts';
import { PIECES_mm_m, drawAssemblyRun } from './draw-assembly-run.ts';
import { addLabel } from './labels.ts';
import { circle, doubleLine, line, pen, ring, segments } from './marks.ts';
import { joinNames } from './nozzle-dimensions.ts';
import { networkStretches } from './pipe-stretches.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import { IN_CUT_m, type SectionCut, alongCut_m, behindCut_m } from './section-cuts.ts';
import type { Mark } from './sheet.ts';
import { dropText } from './sheet-text.ts';
import { pipeLine, zoneColour } from './symbols.ts';
import { type ViewDraft, addLine, uprightBox } from './view-draft.ts';

/** Heights that a section reaches [m]. */
export interface Heights {
  readonly lowest_m: number;
  readonly highest_m: number;
  /** Slab under the raised floor; undefined without one. */
  readonly slab_m: number | undefined;
  /** Underside of the slab above the ceiling void; undefined without one. */
  readonly soffit_m: number | undefined;
}

/** How low and how high a section reaches: voids, ceiling and all pipe of its networks. */
export function heightsOf({ room, nozzles }: SectionCut): Heights {
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

/** Least and greatest value of a list. */
export const span = <T>(items: readonly T[], value: (item: T) => number): readonly [number, number] => {
  const values = items.map(value);
  return [Math.min(...values), Math.max(...values)];
};

/** Pieces of the cut that lie inside the room, as ways along the cut [m]. */
export function insidePieces(cut: SectionCut): (readonly [number, number])[] {
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

/** The place on a cut at a way along it [m]. */
export const placeAt = ({ through, along_rad }: SectionCut, way_m: number) => ({ x: through.x + Math.cos(along_rad) * way_m, y: through.y + Math.sin(along_rad) * way_m });

/** Draws floor, ceiling, voids and cut walls; answers the ceiling heights that occur, each with a place [m]. */
export function drawRoom(view: ViewDraft, cut: SectionCut, { lowest_m, highest_m, slab_m, soffit_m }: Heights, pieces: readonly (readonly [number, number])[]): ReadonlyMap<number, number> {
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
  view.lines.push(segments(pen(WEIGHT.hair), hatch), ...beyondCut(view, cut, pieces));
  return ceilings;
}

/** Parts of the room that lie only behind the cut, in thin lines. */
function beyondCut({ frame }: ViewDraft, cut: SectionCut, pieces: readonly (readonly [number, number])[]): Mark[] {
  const top = cut.room.tallest_m;
  if (top === undefined) return [];
  const bounds = [cut.from_m, ...pieces.flat(), cut.to_m];
  const gaps = bounds.flatMap((from, i) => (i % 2 === 0 ? [[from, bounds[i + 1] ?? from] as const] : []));
  return gaps
    .filter(([from, to]) => to - from > 1e-3)
    .map(([from, to]) => ring(pen(WEIGHT.hair, PRINT.faint), [frame.x(from), frame.y(0), frame.x(to), frame.y(0), frame.x(to), frame.y(top), frame.x(from), frame.y(top)]));
}

/** Draws solids: those in the cut hatched and heavier, those behind it thin. */
export function drawSolidsCut(view: ViewDraft, cut: SectionCut, solids: readonly Solid[]): void {
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

/** Draws the cylinders of the room's networks in elevation, with rail and discharge assembly, and names them. */
export function drawCylinders(view: ViewDraft, derived: Derived, cut: SectionCut): void {
  const { frame, sizes } = view;
  const networks = new Set(cut.nozzles.map(({ network }) => network.ref.id));
  for (const derivedNetwork of derived.networks) {
    const { ref, network, profile } = derivedNetwork;
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
    const run = assemblyRunOf(derivedNetwork);
    const isBuilt = run.isPlaced && frame.mm(1) >= PIECES_mm_m * sizes.factor;
    if (isBuilt && columns.size > 0) drawAssemblyRun(view, run.pieces.map((piece) => ({ piece, places: piece.curve.flatMap((p) => [frame.x(alongCut_m(cut, p)), frame.y(p.z)]) })));
    else if (source && outlet !== undefined && columns.size > 0) drawAssembly(view, cut, source, outlet, [...columns.keys()]);
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

/** Draws all pipe of the room's networks as seen; pipe that runs toward the viewer is a small ring. */
export function drawPipes(view: ViewDraft, cut: SectionCut): void {
  const { frame, sizes } = view;
  const networks = new Map(cut.nozzles.map(({ network }) => [network.ref.id, network]));
  const onView = (p: PlanPoint3): [number, number] => [frame.x(alongCut_m(cut, p)), frame.y(p.z)];
  for (const network of networks.values()) {
    const zone = pipeZoneOf(network.network);
    for (const { from, to } of networkStretches(network, network.pipes)) {
      view.used.add(zone === 'high' ? 'pipe-high' : 'pipe');
      const [ax, ay] = onView(from);
      const [bx, by] = onView(to);
      if (Math.hypot(bx - ax, by - ay) < 0.3) {
        view.lines.push(circle(pen(WEIGHT.medium * sizes.factor, zoneColour(zone)), ax, ay, 0.8 * sizes.factor, PRINT.paper));
        if (zone === 'high') view.lines.push(circle(pen(WEIGHT.medium * sizes.factor, PRINT.warm), ax, ay, 1.5 * sizes.factor));
        continue;
      }
      const places = [ax, ay, bx, by];
      addLine(view, places, pipeLine(zone, sizes.factor, ...places), 10);
    }
  }
}

/** Nozzles that stand over one place of the section. */
export interface NozzleGroup {
  readonly x: number;
  readonly y: number;
  readonly z_m: number;
  readonly names: string[];
  /** `network/nozzle` of each. */
  readonly ids: string[];
  readonly below: string;
}

/** Draws the nozzles; those that stand behind each other are one group. */
export function drawNozzles(view: ViewDraft, cut: SectionCut): NozzleGroup[] {
  const { frame, sizes } = view;
  const groups: NozzleGroup[] = [];
  for (const nozzle of cut.nozzles) {
    const { at, localCeiling_m } = nozzle;
    if (!at) continue;
    const [x, y] = [frame.x(alongCut_m(cut, at)), frame.y(at.z)];
    const known = groups.find((group) => Math.hypot(group.x - x, group.y - y) < 0.3);
    if (known) {
      known.names.push(nozzle.nozzle.name);
      known.ids.push(`${nozzle.ref.network}/${nozzle.ref.id}`);
      continue;
    }
    const below = localCeiling_m === undefined ? '' : dropText(localCeiling_m, at.z, nozzle.space?.kind, view.lengths);
    groups.push({ x, y, z_m: at.z, names: [nozzle.nozzle.name], ids: [`${nozzle.ref.network}/${nozzle.ref.id}`], below });
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
