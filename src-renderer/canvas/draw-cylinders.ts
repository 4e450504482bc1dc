import type { DerivedNetwork } from '#shared/derived/derived';
import { type PlanPoint, type PlanPoint3, distance_m } from '#shared/geometry/point';
import { type Cylinder, refKey } from '#shared/model/plan';
import { detailAt } from './level-of-detail.ts';
import { type Pen, type Px, between, disc, gap_px, heading_rad } from './pen.ts';
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
export function sourceOf({ network }: DerivedNetwork): PlanPoint3 | undefined {
  return network.source === null ? undefined : network.nodes[network.source]?.at;
}

/** The way of the high-pressure side on the plan: past every cylinder, the farthest first, to where the pipe begins. */
export function highPressureRun(network: DerivedNetwork): PlanPoint[] {
  const cylinders = Object.values(network.network.cylinders);
  const source = sourceOf(network);
  const first = cylinders[0];
  if (!first) return [];
  const end: PlanPoint = source ?? first.at;
  const sorted = cylinders.map(({ at }) => at).sort((a, b) => distance_m(b, end) - distance_m(a, end));
  return source ? [...sorted, { x: source.x, y: source.y }] : sorted;
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
    drawHighPressureSide(pen, view, scene, network);
  }
}

function drawHighPressureSide(pen: Pen, view: Viewport, { ink }: Scene, network: DerivedNetwork): void {
  const run = highPressureRun(network).map((p) => toScreen(view, p));
  const source = sourceOf(network);
  if (run.length >= 2 && lengthOf(run) > 4) {
    drawHighPressureLine(pen, run, ink.warm, ink.paper);
    drawParts(pen, run, network, ink);
  }
  if (source) drawHighPressureUpright(pen, toScreen(view, source), ink.warm, ink.paper);
}

const lengthOf = (run: readonly Px[]): number => run.slice(1).reduce((sum, p, i) => sum + gap_px(run[i] ?? p, p), 0);

/** Parts along the last leg, where there is room for all of them; the section strip shows them otherwise. */
function drawParts(pen: Pen, run: readonly Px[], { network }: DerivedNetwork, look: { warm: string; paper: string }): void {
  const a = run.at(-2);
  const b = run.at(-1);
  if (!a || !b || gap_px(a, b) < (network.assembly.length + 1) * ASSEMBLY_SYMBOL_px * 1.4) return;
  network.assembly.forEach((part, i) => {
    drawAssemblyPart(pen, between(a, b, (i + 1) / (network.assembly.length + 1)), heading_rad(a, b), part, look);
  });
}
