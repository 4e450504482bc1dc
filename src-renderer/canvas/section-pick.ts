import type { PlanPoint3 } from '#shared/geometry/point';
import type { Ref, RefOf } from '#shared/model/plan';
import { type Px, gap_px } from './pen.ts';
import type { SectionCut } from './section-cut.ts';
import type { SectionSupport } from './section-things.ts';
import { type SectionView, sectionPx } from './section-view.ts';

/** A thing of the section whose height can be changed. */
export type HeightHandle =
  | { readonly kind: 'nozzle'; readonly ref: RefOf<'nozzle'>; readonly z_m: number }
  | { readonly kind: 'node'; readonly ref: RefOf<'node'>; readonly z_m: number; readonly place: PlanPoint3 }
  | { readonly kind: 'pipe'; readonly ref: RefOf<'pipe'>; readonly z_m: number }
  | { readonly kind: 'device'; readonly ref: RefOf<'device'>; readonly z_m: number }
  | { readonly kind: 'support'; readonly ref: RefOf<'support'>; readonly z_m: number; readonly place: PlanPoint3 };

/** A pipe that rises less than this is level [m]. */
const LEVEL_m = 0.02;

/** Distance from a place to a straight piece [px]. */
function besidePiece_px(p: Px, a: Px, b: Px): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const length2 = dx * dx + dy * dy;
  const t = length2 === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / length2));
  return gap_px(p, { x: a.x + dx * t, y: a.y + dy * t });
}

/** The thing under the pointer whose height can be dragged or typed: a nozzle before a pipe end or a support of upright pipe before a level pipe. */
export function heightHandleAt(cut: SectionCut, view: SectionView, p: Px, reach_px: number): HeightHandle | undefined {
  const nearest = <T>(things: readonly T[], distance: (thing: T) => number): T | undefined => {
    let best: { thing: T; gap: number } | undefined;
    for (const thing of things) {
      const gap = distance(thing);
      if (gap <= reach_px && (!best || gap < best.gap)) best = { thing, gap };
    }
    return best?.thing;
  };
  const nozzle = nearest(cut.nozzles, ({ at }) => gap_px(sectionPx(view, at), p));
  if (nozzle) return { kind: 'nozzle', ref: nozzle.nozzle.ref, z_m: nozzle.at.z };
  const atNozzle = new Set(cut.nozzles.map(({ nozzle: each }) => `${each.ref.network}/${each.nozzle.node}`));
  const free = cut.nodes.filter(({ ref }) => !atNozzle.has(`${ref.network}/${ref.id}`));
  const node = nearest(free, ({ at }) => gap_px(sectionPx(view, at), p));
  const support = nearest(cut.supports, ({ at }) => gap_px(sectionPx(view, at), p));
  const isSupportNearer = support && (!node || gap_px(sectionPx(view, support.at), p) < gap_px(sectionPx(view, node.at), p));
  // A support of level pipe has no height of its own to be dragged to.
  if (isSupportNearer) return heightOfSupport(support);
  const device = nearest(cut.devices, ({ at }) => gap_px(sectionPx(view, at), p));
  if (device && (!node || gap_px(sectionPx(view, device.at), p) < gap_px(sectionPx(view, node.at), p))) return { kind: 'device', ref: device.ref, z_m: device.at.z };
  if (node) return { kind: 'node', ref: node.ref, z_m: node.at.z, place: node.place };
  const level = cut.pipes.filter(({ a, b }) => Math.abs(a.z - b.z) < LEVEL_m && Math.abs(a.s - b.s) > LEVEL_m);
  const pipe = nearest(level, ({ a, b, outside_m }) => Math.max(0, besidePiece_px(p, sectionPx(view, a), sectionPx(view, b)) - (outside_m * view.scale_px_m) / 2));
  return pipe && { kind: 'pipe', ref: pipe.ref, z_m: pipe.a.z };
}

/** The height of a support that can slide up and down its pipe; undefined on pipe that is level. */
export const heightOfSupport = ({ ref, at, place, pipe }: SectionSupport): HeightHandle | undefined =>
  Math.abs(pipe.a.s - pipe.b.s) <= LEVEL_m && Math.abs(pipe.a.z - pipe.b.z) > LEVEL_m ? { kind: 'support', ref, z_m: at.z, place } : undefined;

/** Anything under the pointer that can be selected. */
export function sectionThingAt(cut: SectionCut, view: SectionView, p: Px, reach_px: number): Ref | undefined {
  const handle = heightHandleAt(cut, view, p, reach_px);
  if (handle) return handle.ref;
  const support = cut.supports.find(({ at }) => gap_px(sectionPx(view, at), p) <= reach_px);
  if (support) return support.ref;
  const pipe = cut.pipes.find(({ a, b }) => besidePiece_px(p, sectionPx(view, a), sectionPx(view, b)) <= reach_px);
  if (pipe) return pipe.ref;
  const cylinder = cut.cylinders.find(({ along_m, outletHeight_m }) => {
    const foot = sectionPx(view, { s: along_m, z: 0 });
    const top = sectionPx(view, { s: along_m, z: outletHeight_m ?? 1.6 });
    return besidePiece_px(p, foot, top) <= reach_px + 0.13 * view.scale_px_m;
  });
  if (cylinder) return cylinder.ref;
  return cut.solids.find(({ solid, from_m, to_m, isCut }) => {
    const a = sectionPx(view, { s: from_m, z: solid.top_m });
    const b = sectionPx(view, { s: to_m, z: solid.bottom_m });
    return isCut && p.x >= a.x && p.x <= b.x && p.y >= a.y && p.y <= b.y;
  })?.solid.ref;
}

/** A height rounded to what a fitter reads off: a quarter of an inch or five millimetres; finer with `fine`. */
export function handyHeight_m(z_m: number, lengths: 'feet' | 'metric', fine: boolean): number {
  const step = lengths === 'feet' ? (fine ? 0.0254 / 16 : 0.0254 / 4) : fine ? 0.001 : 0.005;
  return Math.round(z_m / step) * step;
}
