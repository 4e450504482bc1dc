import { assemblyRunOf } from '#shared/derived/assembly-run';
import type { DerivedNetwork } from '#shared/derived/derived';
import { type PlanPoint3, distance_m } from '#shared/geometry/point';
import { type Cylinder, refKey } from '#shared/model/plan';
import { PIECES_px_m, drawAssemblyPieces } from './draw-assembly-pieces.ts';
import { detailAt } from './level-of-detail.ts';
import { type Pen, type Px, along, between, disc, gap_px, heading_rad } from './pen.ts';
import { type Scene, networksOf } from './scene.ts';
import { ASSEMBLY_SYMBOL_px, drawAssemblyPart } from './symbols/assembly-symbols.ts';
import { drawCylinder, drawRail } from './symbols/cylinder-symbol.ts';
import { drawHighPressureLine, drawHighPressureUpright } from './symbols/pressure-line.ts';
import { type Viewport, toScreen } from './viewport.ts';

/** Drawn where the profile does not give the diameter [m]. */
const UNKNOWN_DIAMETER_m = 0.25;

/** Diameter that a network's cylinders are drawn with [m]. */
export const cylinderDiameter_m = ({ profile }: Pick<DerivedNetwork, 'profile'>): number =>
  profile?.limits.cylinderDiameter_m?.value ?? UNKNOWN_DIAMETER_m;

/** Radius of the symbol [px]: true to scale, never too small to be seen. */
export const cylinderRadius_px = (view: Viewport, network: Pick<DerivedNetwork, 'profile'>): number =>
  Math.max(7, (cylinderDiameter_m(network) / 2) * view.camera.scale_px_m);

/** Where the pipe of a network begins; undefined while it has none. */
function sourceOf({ network }: DerivedNetwork): PlanPoint3 | undefined {
  return network.source === null ? undefined : network.nodes[network.source]?.at;
}

/** How far in front of the cylinders the line that joins their outlets is drawn [px]. */
const IN_FRONT_px = 7;

/** The way of the high-pressure side on the screen: past the outlet of every cylinder, the farthest first, to where the pipe begins. */
export function highPressureRun(view: Viewport, network: DerivedNetwork): { readonly run: readonly Px[]; readonly outlets: readonly (readonly [Px, Px])[] } {
  const cylinders = Object.values(network.network.cylinders);
  const source = sourceOf(network);
  const radius = cylinderRadius_px(view, network);
  const end = source ?? cylinders[0]?.at;
  if (!end) return { run: [], outlets: [] };
  const outlets = [...cylinders]
    .sort((a, b) => distance_m(b.at, end) - distance_m(a.at, end))
    .map(({ at, back_rad }) => {
      const axis = toScreen(view, at);
      return [along(axis, back_rad + Math.PI, radius * 0.6), along(axis, back_rad + Math.PI, radius + IN_FRONT_px)] as const;
    });
  const run = outlets.map(([, front]) => front);
  if (!source) return { run, outlets };
  const last = outlets.at(-1);
  const place = toScreen(view, source);
  // A pipe that begins above the last cylinder needs no way round its front.
  if (last && cylinders.length === 1 && gap_px(place, last[0]) < radius) return { run: [], outlets: [] };
  return { run: [...run, place], outlets };
}

/** Cylinders on their rails, and the high-pressure side up to where the pipe begins. */
export function drawCylinders(pen: Pen, view: Viewport, scene: Scene): void {
  const detail = detailAt(view.camera.scale_px_m);
  const { ink } = scene;
  for (const network of networksOf(scene)) {
    const cylinders = Object.values(network.network.cylinders);
    const shows = (cylinder: Cylinder): boolean => scene.shows(refKey({ kind: 'cylinder', network: network.network.id, id: cylinder.id }));
    const shown = cylinders.filter(shows);
    if (shown.length === 0) continue;
    const radius = cylinderRadius_px(view, network);
    if (!detail.symbols) {
      for (const { at } of shown) disc(pen, toScreen(view, at), 4, ink.ink);
      continue;
    }
    for (const { at, back_rad } of shown) drawRail(pen, toScreen(view, at), radius, back_rad, ink.quiet);
    for (const { at, back_rad } of shown) {
      drawCylinder(pen, toScreen(view, at), { colour: ink.ink, paper: ink.paper, warm: ink.warm, radius_px: radius, back_rad });
    }
    const run = assemblyRunOf(network);
    if (run.isPlaced && view.camera.scale_px_m >= PIECES_px_m) {
      const pieces = run.pieces.filter(({ cylinder }) => cylinder === null || shown.some(({ id }) => id === cylinder));
      drawAssemblyPieces(pen, pieces.map((piece) => ({ piece, places: piece.curve.map((p) => toScreen(view, p)) })), view.camera.scale_px_m, ink);
    } else drawHighPressureSide(pen, view, scene, network);
  }
}

function drawHighPressureSide(pen: Pen, view: Viewport, { ink }: Scene, network: DerivedNetwork): void {
  const { run, outlets } = highPressureRun(view, network);
  const source = sourceOf(network);
  const radius = cylinderRadius_px(view, network);
  const width = radius < 12 ? 4.5 : 6;
  for (const outlet of outlets) drawHighPressureLine(pen, outlet, ink.warm, ink.paper, width);
  if (run.length >= 2) {
    drawHighPressureLine(pen, run, ink.warm, ink.paper, width);
    drawParts(pen, run, network, ink);
  }
  if (source) drawHighPressureUpright(pen, toScreen(view, source), ink.warm, ink.paper, Math.max(6.5, Math.min(11, radius * 0.7)));
}

/** Parts along the last leg, where there is room for all of them; the section strip shows them otherwise. */
function drawParts(pen: Pen, run: readonly Px[], { network }: DerivedNetwork, look: { warm: string; paper: string }): void {
  const a = run.at(-2);
  const b = run.at(-1);
  if (!a || !b || gap_px(a, b) < (network.assembly.length + 1) * ASSEMBLY_SYMBOL_px * 1.4) return;
  network.assembly.forEach((part, i) => {
    drawAssemblyPart(pen, between(a, b, (i + 1) / (network.assembly.length + 1)), heading_rad(a, b), part, look);
  });
}
