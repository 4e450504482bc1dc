import { type Ref, refKey } from '#shared/model/plan';
import { supportLie } from '#shared/sheets/support-shape';
import { formatLength } from '#shared/units/length-text';
import type { Ink } from '../ink.ts';
import { cylinderDiameter_m } from './draw-cylinders.ts';
import { PIECES_px_m, drawAssemblyPieces } from './draw-assembly-pieces.ts';
import { pipeWidth_px } from './level-of-detail.ts';
import { textWidth_px, write } from './lettering.ts';
import { type Pen, type Px, aside, between, disc, fillRing, gap_px, heading_rad, line, polyline, ring, setLine } from './pen.ts';
import type { Bay, SectionCut } from './section-cut.ts';
import type { SectionCylinder, SectionPoint } from './section-things.ts';
import { drawSectionNozzles, drawSectionTexts } from './draw-section-nozzles.ts';
import { HEIGHTS_WIDTH_px, type SectionView, heightStep_m, sectionPx } from './section-view.ts';
import { drawAssemblyPart } from './symbols/assembly-symbols.ts';
import { drawCylinderFromSide } from './symbols/cylinder-symbol.ts';
import { hatchRings } from './symbols/hatch.ts';
import { drawDevice } from './symbols/device-symbol.ts';
import { zigzagRing } from './symbols/zigzag.ts';
import { drawHandle } from './symbols/handle.ts';
import { drawSupport, drawSupportTick } from './symbols/support-symbol.ts';
import { HIGH_PRESSURE_LEAST_px, drawHighPressureLine, drawLowPressureLine } from './symbols/pressure-line.ts';

export interface SectionLook {
  readonly ink: Ink;
  readonly lengths: 'feet' | 'metric';
  readonly selection: ReadonlySet<string>;
  /** Thing whose height is being dragged. */
  readonly held: Ref | null;
}

/** Slabs and walls are drawn this thick; the plan knows only their faces [m]. */
const SLAB_m = 0.12;
const WALL_m = 0.15;
/** Below this scale supports are ticks, as on the board. */
const SIGNS_px_m = 24;
/** Two rooms nearer than this share a wall [m]. */
const SHARED_WALL_m = 0.6;

/** Draws the whole section strip. */
export function drawSection(pen: Pen, view: SectionView, cut: SectionCut, look: SectionLook): void {
  const { ink } = look;
  pen.fillStyle = ink.paper;
  pen.fillRect(0, 0, view.width, view.height);
  aside(pen, () => {
    pen.beginPath();
    pen.rect(HEIGHTS_WIDTH_px, 0, view.width - HEIGHTS_WIDTH_px, view.height);
    pen.clip();
    drawTurns(pen, view, cut, ink);
    drawShell(pen, view, cut, look);
    drawSolids(pen, view, cut, look);
    for (const cylinder of cut.cylinders) drawCylinder(pen, view, cylinder, look);
    if (view.scale_px_m >= PIECES_px_m) drawAssemblyPieces(pen, cut.assembly.map(({ piece, places }) => ({ piece, places: places.map((p) => sectionPx(view, p)) })), view.scale_px_m, ink);
    drawPipes(pen, view, cut, look);
    drawSupports(pen, view, cut, look);
    drawDevices(pen, view, cut, look);
    drawSectionNozzles(pen, view, cut, look);
    drawMarks(pen, view, cut, look);
    drawSectionTexts(pen, view, cut, look);
  });
  drawHeights(pen, view, cut, look);
}

/** Where an unfolded run turns on the plan: a thin upright line. */
function drawTurns(pen: Pen, view: SectionView, { path, bottom_m, top_m }: SectionCut, ink: Ink): void {
  if (path.kind !== 'run') return;
  let along = 0;
  setLine(pen, { colour: ink.rule, width: 1, dash: [1, 4] });
  path.places.forEach((p, i) => {
    const before = path.places[i - 1];
    if (!before) return;
    along += Math.hypot(p.x - before.x, p.y - before.y);
    if (i === path.places.length - 1) return;
    line(pen, sectionPx(view, { s: along, z: bottom_m }), sectionPx(view, { s: along, z: top_m }));
  });
}

/** Floors, ceilings, voids and the walls that the way crosses. */
function drawShell(pen: Pen, view: SectionView, cut: SectionCut, { ink }: SectionLook): void {
  for (const bay of cut.bays) {
    if (bay.space.kind === 'room') continue;
    pen.globalAlpha = 0.5;
    fillRing(pen, faceOf(view, bay), ink.grid);
    pen.globalAlpha = 1;
  }
  for (const wall of wallsOf(cut.bays)) drawPoche(pen, view, [wall.from_m, wall.to_m], [wall.bottom_m, wall.top_m], ink);
  for (const bay of cut.bays) {
    const { kind } = bay.space;
    const heavy = { colour: ink.wall, width: 2.5 };
    if (kind !== 'ceiling-void' && bay.floor.length > 0 && !hasUnderFloor(cut.bays, bay)) {
      drawSlab(pen, view, bay.floor, -SLAB_m, ink);
      setLine(pen, heavy);
      polyline(pen, bay.floor.map((p) => sectionPx(view, p)));
    } else if (kind === 'room') {
      setLine(pen, { colour: ink.wall, width: 1.75 });
      polyline(pen, bay.floor.map((p) => sectionPx(view, p)));
    }
    if (kind === 'under-floor') continue;
    if (bay.ceiling.length === 0) {
      drawUnknownCeiling(pen, view, bay, ink);
      continue;
    }
    const hasVoid = kind === 'room' && bay.space.enclosure.ceilingVoid !== null;
    if (!hasVoid) drawSlab(pen, view, bay.ceiling, SLAB_m, ink);
    setLine(pen, hasVoid ? { colour: ink.wall, width: 1.75 } : heavy);
    polyline(pen, bay.ceiling.map((p) => sectionPx(view, p)));
  }
}

const hasUnderFloor = (bays: readonly Bay[], { space }: Bay): boolean =>
  space.kind === 'room' && bays.some((other) => other.space.kind === 'under-floor' && other.space.enclosure.id === space.enclosure.id);

const faceOf = (view: SectionView, { floor, ceiling }: Bay): Px[] => [...floor, ...[...ceiling].reverse()].map((p) => sectionPx(view, p));

/** Cut walls: between two rooms that stand close, otherwise of a nominal thickness. */
export function wallsOf(bays: readonly Bay[]): { from_m: number; to_m: number; bottom_m: number; top_m: number }[] {
  const rooms = bays.filter(({ space }) => space.kind === 'room').sort((a, b) => a.from_m - b.from_m);
  const rangeOf = (bay: Bay): [number, number] => {
    const { underFloor, ceilingVoid } = bay.space.enclosure;
    const top = Math.max(2.4, ...bay.ceiling.map(({ z }) => z)) + (ceilingVoid?.depth_m ?? 0) + SLAB_m;
    return [-(underFloor?.depth_m ?? 0) - SLAB_m, top];
  };
  return rooms.flatMap((bay, i) => {
    const [bottom_m, top_m] = rangeOf(bay);
    const before = rooms[i - 1];
    const after = rooms[i + 1];
    const walls: { from_m: number; to_m: number; bottom_m: number; top_m: number }[] = [];
    const isShared = before !== undefined && bay.from_m - before.to_m < SHARED_WALL_m;
    if (bay.wallAtStart) walls.push({ from_m: isShared && before ? before.to_m : bay.from_m - WALL_m, to_m: bay.from_m, bottom_m, top_m });
    if (bay.wallAtEnd && !(after && after.from_m - bay.to_m < SHARED_WALL_m)) walls.push({ from_m: bay.to_m, to_m: bay.to_m + WALL_m, bottom_m, top_m });
    return walls;
  });
}

function drawPoche(pen: Pen, view: SectionView, [from_m, to_m]: [number, number], [bottom_m, top_m]: [number, number], { wall }: Ink): void {
  const corners = [
    { s: from_m, z: bottom_m },
    { s: to_m, z: bottom_m },
    { s: to_m, z: top_m },
    { s: from_m, z: top_m },
  ].map((p) => sectionPx(view, p));
  pen.globalAlpha = 0.22;
  fillRing(pen, corners, wall);
  pen.globalAlpha = 0.55;
  hatchRings(pen, [corners], sectionPx(view, { s: 0, z: 0 }), view, { colour: wall, spacing_px: 6 });
  pen.globalAlpha = 1;
  setLine(pen, { colour: wall, width: 2 });
  polyline(pen, [corners[0], corners[3]].flatMap((p) => p ?? []));
  polyline(pen, [corners[1], corners[2]].flatMap((p) => p ?? []));
}

/** A hatched band on the outer side of a floor or ceiling face. */
function drawSlab(pen: Pen, view: SectionView, face: readonly SectionPoint[], thickness_m: number, { wall }: Ink): void {
  const band = [...face, ...[...face].reverse().map(({ s, z }) => ({ s, z: z + thickness_m }))].map((p) => sectionPx(view, p));
  pen.globalAlpha = 0.22;
  fillRing(pen, band, wall);
  pen.globalAlpha = 1;
}

function drawUnknownCeiling(pen: Pen, view: SectionView, bay: Bay, ink: Ink): void {
  const a = sectionPx(view, { s: bay.from_m, z: 2.4 });
  const b = sectionPx(view, { s: bay.to_m, z: 2.4 });
  setLine(pen, { colour: ink.verdict['not-checked'], width: 1.5, dash: [4, 5] });
  line(pen, a, b);
  write(pen, 'height not known', { x: (a.x + b.x) / 2, y: a.y - 9 }, { colour: ink.verdict['not-checked'], align: 'center', halo: ink.paper });
}

function drawSolids(pen: Pen, view: SectionView, cut: SectionCut, { ink, selection }: SectionLook): void {
  for (const { solid, from_m, to_m, isCut } of cut.solids) {
    const corners = [
      { s: from_m, z: solid.bottom_m },
      { s: to_m, z: solid.bottom_m },
      { s: to_m, z: solid.top_m },
      { s: from_m, z: solid.top_m },
    ].map((p) => sectionPx(view, p));
    const colour = selection.has(refKey(solid.ref)) ? ink.selection : ink.solid;
    if (isCut) {
      fillRing(pen, corners, ink.paper);
      if (solid.obstruction.kind === 'live-part') zigzagRing(pen, corners, sectionPx(view, { s: 0, z: 0 }), view, colour);
      else if (solid.obstruction.kind !== 'work-place') {
        pen.globalAlpha = 0.6;
        hatchRings(pen, [corners], sectionPx(view, { s: 0, z: 0 }), view, { colour, spacing_px: 7, slant_rad: Math.PI / 4 });
        pen.globalAlpha = 1;
      }
    }
    setLine(pen, { colour, width: isCut ? 2 : 1, dash: isCut ? [] : [5, 4] });
    polyline(pen, corners, true);
  }
}

function drawPipes(pen: Pen, view: SectionView, cut: SectionCut, { ink, selection }: SectionLook): void {
  for (const { ref, zone, a, b, outside_m, isBeyond } of cut.pipes) {
    const from = sectionPx(view, a);
    const to = sectionPx(view, b);
    pen.globalAlpha = isBeyond ? 0.75 : 1;
    const width = pipeWidth_px(outside_m, view.scale_px_m);
    if (selection.has(refKey(ref))) {
      pen.globalAlpha = 0.35;
      drawLowPressureLine(pen, [from, to], ink.selection, width + 7);
      pen.globalAlpha = 1;
    }
    if (gap_px(from, to) < 1) {
      setLine(pen, { colour: zone === 'high' ? ink.warm : ink.cool, width: 1.75 });
      ring(pen, from, Math.max(3, width / 2), ink.paper);
      if (zone === 'high') ring(pen, from, Math.max(6, width / 2 + 3));
    } else if (zone === 'high') drawHighPressureLine(pen, [from, to], ink.warm, ink.paper, Math.max(HIGH_PRESSURE_LEAST_px, width));
    else drawLowPressureLine(pen, [from, to], ink.cool, width);
    pen.globalAlpha = 1;
  }
}

/** Detectors, signs, switches and the like at their heights. */
function drawDevices(pen: Pen, view: SectionView, { devices }: SectionCut, { ink, selection }: SectionLook): void {
  for (const { ref, device, at } of devices) {
    const p = sectionPx(view, at);
    const isMarked = selection.has(refKey(ref));
    if (isMarked) {
      pen.globalAlpha = 0.3;
      disc(pen, p, 15, ink.selection);
      pen.globalAlpha = 1;
    }
    const colour = isMarked ? ink.selection : ink.ink;
    if (view.scale_px_m < SIGNS_px_m) disc(pen, p, 2, colour);
    else drawDevice(pen, p, device, { colour, paper: ink.paper });
  }
}

function drawSupports(pen: Pen, view: SectionView, { supports }: SectionCut, { ink, selection }: SectionLook): void {
  for (const { ref, kind, at, pipe } of supports) {
    const p = sectionPx(view, at);
    const isMarked = selection.has(refKey(ref));
    if (isMarked) {
      pen.globalAlpha = 0.3;
      disc(pen, p, 13, ink.selection);
      pen.globalAlpha = 1;
    }
    const [a, b] = [
      { x: pipe.a.s, y: pipe.a.z },
      { x: pipe.b.s, y: pipe.b.z },
    ];
    // Seen end on, it hangs from above.
    const lie = supportLie(a, b, Math.PI / 2);
    if (view.scale_px_m < SIGNS_px_m) drawSupportTick(pen, p, lie, isMarked ? ink.selection : ink.ink);
    else drawSupport(pen, p, { kind, lie, colour: isMarked ? ink.selection : ink.ink, pipe_px: pipeWidth_px(pipe.outside_m, view.scale_px_m) });
  }
}

function drawCylinder(pen: Pen, view: SectionView, cylinder: SectionCylinder, { ink, selection }: SectionLook): void {
  const { along_m, railHeight_m, outletHeight_m, network, source } = cylinder;
  const foot = sectionPx(view, { s: along_m, z: 0 });
  const width = Math.max(8, cylinderDiameter_m(network) * view.scale_px_m);
  const outlet_px = (outletHeight_m ?? 1.6) * view.scale_px_m;
  const colour = selection.has(refKey(cylinder.ref)) ? ink.selection : ink.ink;
  drawCylinderFromSide(pen, foot, { colour, paper: ink.paper, width_px: width, outlet_px });
  if (railHeight_m !== null) {
    const { y } = sectionPx(view, { s: 0, z: railHeight_m });
    setLine(pen, { colour: ink.quiet, width: 3 });
    line(pen, { x: foot.x - width / 2 - 5, y }, { x: foot.x + width / 2 + 5, y });
  }
  if (outletHeight_m === undefined) return;
  const outlet = { x: foot.x, y: foot.y - outlet_px };
  if (!source || (cylinder.hasPieces && view.scale_px_m >= PIECES_px_m)) return;
  const end = sectionPx(view, source);
  const way = [outlet, { x: outlet.x, y: end.y }, end].filter((p, i, all) => i === 0 || gap_px(p, all[i - 1] ?? p) > 0.5);
  drawHighPressureLine(pen, way, ink.warm, ink.paper);
  const last = way.at(-2);
  if (!last) return;
  const parts = network.network.assembly;
  if (gap_px(last, end) < parts.length * 14) return;
  parts.forEach((part, i) => {
    drawAssemblyPart(pen, between(last, end, (i + 1) / (parts.length + 1)), heading_rad(last, end), part, ink);
  });
}

/** Squares where a height can be dragged. */
function drawMarks(pen: Pen, view: SectionView, cut: SectionCut, { ink, selection, held }: SectionLook): void {
  const heldKey = held && refKey(held);
  for (const { ref, at } of cut.nodes) {
    const key = refKey(ref);
    const isWanted = selection.has(key) || key === heldKey || cut.path.kind === 'run';
    const p = sectionPx(view, at);
    const isAtNozzle = cut.nozzles.some((nozzle) => gap_px(sectionPx(view, nozzle.at), p) < 14);
    if (isWanted && !isAtNozzle) drawHandle(pen, p, key === heldKey || selection.has(key) ? ink.selection : ink.quiet, ink.paper);
  }
}

/** Room that the buttons of the strip take at its right edge [px]. */
const BUTTONS_WIDTH_px = 190;

/** A title as far as there is room for it. */
function fittedTitle(pen: Pen, title: string, most_px: number): string {
  if (textWidth_px(pen, title, { bold: true }) <= most_px) return title;
  const words = Array.from({ length: title.length }, (_, cut) => `${title.slice(0, title.length - cut).trimEnd()}…`);
  return words.find((each) => textWidth_px(pen, each, { bold: true }) <= most_px) ?? '';
}

/** Heights above the finished floor along the left edge, and the title. */
function drawHeights(pen: Pen, view: SectionView, cut: SectionCut, { ink, lengths }: SectionLook): void {
  pen.fillStyle = ink.paper;
  pen.fillRect(0, 0, HEIGHTS_WIDTH_px, view.height);
  setLine(pen, { colour: ink.rule, width: 1 });
  line(pen, { x: HEIGHTS_WIDTH_px - 0.5, y: 0 }, { x: HEIGHTS_WIDTH_px - 0.5, y: view.height });
  const step = heightStep_m(view.scale_px_m, lengths);
  for (let k = Math.floor(cut.bottom_m / step) - 1; k * step <= cut.top_m + step; k += 1) {
    const { y } = sectionPx(view, { s: 0, z: k * step });
    if (y < 30 || y > view.height - 8) continue;
    setLine(pen, { colour: ink.quiet, width: k === 0 ? 2 : 1 });
    line(pen, { x: HEIGHTS_WIDTH_px - 6, y }, { x: HEIGHTS_WIDTH_px, y });
    write(pen, formatLength(k * step, lengths), { x: HEIGHTS_WIDTH_px - 9, y }, { colour: k === 0 ? ink.ink : ink.quiet, align: 'right', bold: k === 0 });
  }
  const title = fittedTitle(pen, cut.path.title, view.width - BUTTONS_WIDTH_px - HEIGHTS_WIDTH_px - 10);
  write(pen, title, { x: HEIGHTS_WIDTH_px + 10, y: 14 }, { colour: ink.ink, halo: ink.paper, bold: true });
  const x = HEIGHTS_WIDTH_px + 22 + textWidth_px(pen, title, { bold: true });
  const fitting = ['heights above finished floor', 'above finished floor', 'heights'].find((words) => x + textWidth_px(pen, words) <= view.width - BUTTONS_WIDTH_px);
  if (fitting) write(pen, fitting, { x, y: 14 }, { colour: ink.quiet, halo: ink.paper });
}
