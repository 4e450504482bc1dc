import type { Ref } from '#shared/model/plan';
import { isSameRef } from '#shared/model/plan';
import { type Px, gap_px } from '../pen.ts';
import { type Viewport, toScreen } from '../viewport.ts';
import { CYLINDER_px, type PlacedAssembly, type Stretch, nodeRef, runRefs, runStretch } from './isometric-things.ts';
import type { ShownIsometric } from './keep-isometric.ts';

/** Distance from a place to a straight stretch [px]. */
function besideStretch_px(p: Px, { a, b }: Stretch): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length2 = dx * dx + dy * dy;
  const share = length2 === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / length2));
  return gap_px(p, { x: a.x + dx * share, y: a.y + dy * share });
}

interface Candidate {
  readonly refs: readonly Ref[];
  readonly gap: number;
}

const nearest = (candidates: readonly Candidate[], reach_px: number): readonly Ref[] | undefined => {
  const near = candidates.filter(({ gap }) => gap <= reach_px);
  return near.length === 0 ? undefined : near.reduce((best, each) => (each.gap < best.gap ? each : best)).refs;
};

/**
 * What a click at a place of the isometric picks: a nozzle before a cylinder, a support, a node, and the pipe of a run;
 * on the discharge assembly the network. Empty where nothing is.
 * @param reach_px how near the pointer picks
 */
export function isometricRefsAt(view: Viewport, shown: ShownIsometric, assembly: PlacedAssembly | undefined, p: Px, reach_px: number): readonly Ref[] {
  const { iso } = shown;
  const nodes = (isNozzle: boolean): Candidate[] =>
    iso.nodes.filter(({ nozzle }) => (nozzle !== undefined) === isNozzle).map((node) => ({ refs: [nodeRef(iso, node)], gap: gap_px(toScreen(view, node.place), p) }));
  const found =
    nearest(nodes(true), reach_px) ??
    nearest((assembly?.cylinders ?? []).map(({ ref, at }) => ({ refs: [ref], gap: gap_px(at, p) - CYLINDER_px })), reach_px / 2) ??
    nearest(iso.supports.map(({ placed, place }) => ({ refs: [placed.ref], gap: gap_px(toScreen(view, place), p) })), reach_px) ??
    nearest(nodes(false), reach_px * 0.8) ??
    nearest(iso.runs.map((run) => ({ refs: runRefs(iso, run), gap: besideStretch_px(p, runStretch(view, run)) })), reach_px);
  if (found) return found;
  const whole: Ref = { kind: 'network', id: iso.network.network.id };
  return nearest((assembly?.line.lines ?? []).map(({ a, b }) => ({ refs: [whole], gap: besideStretch_px(p, { a: assembly?.at(a) ?? p, b: assembly?.at(b) ?? p }) })), reach_px) ?? [];
}

/** The selection after a click: what was picked alone; with Shift it is added, or taken away where all of it was selected. */
export function selectionAfter(before: readonly Ref[], picked: readonly Ref[], isAdding: boolean): readonly Ref[] {
  if (!isAdding) return picked;
  const has = (ref: Ref): boolean => before.some((each) => isSameRef(each, ref));
  if (picked.length > 0 && picked.every(has)) return before.filter((each) => !picked.some((ref) => isSameRef(ref, each)));
  return [...before, ...picked.filter((ref) => !has(ref))];
}
