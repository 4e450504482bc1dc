import type { Derived, DerivedNetwork, Solid } from '../derived/derived.ts';
import type { Elevation } from '../elevation/elevation.ts';
import type { WallPlace } from '../elevation/wall-frame.ts';
import type { PlanPoint3 } from '../geometry/point.ts';
import type { Isometric } from '../isometric/layout-isometric.ts';
import { type Issue, refKey } from '../model/plan.ts';
import { boxAround, cloudBoxes } from './draw-clouds.ts';
import { type SectionCut, alongCut_m } from './section-cuts.ts';
import { type Heights, heightsOf } from './section-drawing.ts';
import type { ViewDraft } from './view-draft.ts';

type Spot = readonly [x: number, y: number];

/** What a view shows, by key, as the places of it on paper. */
type Shown = Map<string, readonly Spot[]>;

/** Clouds what of the last revision's changes a view shows. */
function cloudShown(view: ViewDraft, shown: Shown, issue: Issue): void {
  const boxes = issue.changed.flatMap((key) => boxAround(shown.get(key) ?? [], view.sizes.factor) ?? []);
  cloudBoxes(view, boxes, issue.mark);
}

/** Adds pipe, the places it meets in, nozzles and supports of a network. */
function addNetwork(shown: Shown, { ref, network }: DerivedNetwork, onView: (p: PlanPoint3) => Spot): void {
  const key = (kind: 'node' | 'pipe' | 'nozzle' | 'support', id: string): string => refKey({ kind, network: ref.id, id });
  const spotsOf = (...nodes: readonly string[]): Spot[] => nodes.flatMap((id) => (network.nodes[id] ? [onView(network.nodes[id].at)] : []));
  const piped = new Set(Object.values(network.pipes).flatMap(({ from, to }) => [from, to]));
  // A place shows by the pipe and fittings at it.
  for (const id of piped) shown.set(key('node', id), spotsOf(id));
  for (const { id, from, to } of Object.values(network.pipes)) shown.set(key('pipe', id), spotsOf(from, to));
  for (const { id, node } of Object.values(network.nozzles)) shown.set(key('nozzle', id), spotsOf(node));
  for (const { id, at } of Object.values(network.supports)) shown.set(key('support', id), [onView(at)]);
}

const cornersOf = (left: number, right: number, top: number, bottom: number): Spot[] => [[left, top], [right, bottom]];

/** Clouds the changes that a section shows: its room, what stands in it, and the pipework of its networks. */
export function cloudSection(view: ViewDraft, derived: Derived, cut: SectionCut, solids: readonly Solid[], heights: Heights = heightsOf(cut)): void {
  const issue = derived.plan.lastIssue;
  if (!issue || issue.changed.length === 0) return;
  const { frame } = view;
  const shown: Shown = new Map();
  const { enclosure, level } = cut.room;
  shown.set(refKey({ kind: 'enclosure', level: level.id, id: enclosure.id }), cornersOf(frame.x(cut.from_m), frame.x(cut.to_m), frame.y(heights.highest_m), frame.y(heights.lowest_m)));
  for (const { obstruction, footprint, top_m, bottom_m } of solids) {
    const ways = footprint.map((p) => alongCut_m(cut, p));
    shown.set(refKey({ kind: 'obstruction', level: level.id, id: obstruction.id }), cornersOf(frame.x(Math.min(...ways)), frame.x(Math.max(...ways)), frame.y(top_m), frame.y(bottom_m)));
  }
  for (const network of new Set(cut.nozzles.map((nozzle) => nozzle.network))) {
    addNetwork(shown, network, (p) => [frame.x(alongCut_m(cut, p)), frame.y(p.z)]);
    const outlet_m = network.profile?.limits.outletHeight_m?.value;
    for (const { id, at } of Object.values(network.network.cylinders)) {
      const way = alongCut_m(cut, at);
      if (outlet_m !== undefined && way >= cut.from_m && way <= cut.to_m) shown.set(refKey({ kind: 'cylinder', network: network.ref.id, id }), cornersOf(frame.x(way), frame.x(way), frame.y(outlet_m), frame.y(0)));
    }
  }
  // Nozzles of the room alone are drawn, whatever else their networks serve.
  const drawn = new Set(cut.nozzles.map(({ ref }) => refKey(ref)));
  for (const key of [...shown.keys()]) if (key.startsWith('nozzle/') && !drawn.has(key)) shown.delete(key);
  cloudShown(view, shown, issue);
}

/** Clouds the changes that an isometric shows: pipe, its numbered places, nozzles and supports. */
export function cloudIsometric(view: ViewDraft, { network: { ref }, nodes, runs, supports }: Isometric, issue: Issue | null): void {
  if (!issue || issue.changed.length === 0) return;
  const { frame } = view;
  const shown: Shown = new Map();
  const spot = ({ x, y }: { readonly x: number; readonly y: number }): Spot => [frame.x(x), frame.y(y)];
  for (const { id, place, nozzle } of nodes) {
    shown.set(refKey({ kind: 'node', network: ref.id, id }), [spot(place)]);
    if (nozzle) shown.set(refKey(nozzle.ref), [spot(place)]);
  }
  for (const { pipes, a, b } of runs) for (const id of pipes) shown.set(refKey({ kind: 'pipe', network: ref.id, id }), [spot(a), spot(b)]);
  for (const { placed, place } of supports) shown.set(refKey(placed.ref), [spot(place)]);
  cloudShown(view, shown, issue);
}

/** Clouds the changes that a cylinder wall shows: cylinders, openings, what stands before it, pipe along it and supports. */
export function cloudElevation(view: ViewDraft, elevation: Elevation, issue: Issue | null): void {
  if (!issue || issue.changed.length === 0) return;
  const { frame } = view;
  const { room, network, cylinders, openings, solids, pipes, supports, shown: stretch } = elevation;
  const shown: Shown = new Map();
  const on = (s: number): number => frame.x(Math.min(Math.max(s, stretch.from_m), stretch.to_m));
  const spot = ({ s, z }: WallPlace): Spot => [on(s), frame.y(z)];
  for (const { ref, at, radius_m, outlet_m } of cylinders) shown.set(refKey(ref), cornersOf(on(at.s - radius_m), on(at.s + radius_m), frame.y(outlet_m ?? 0), frame.y(0)));
  for (const { ref, from_m, to_m, top_m, bottom_m } of openings) shown.set(refKey(ref), cornersOf(on(from_m), on(to_m), frame.y(top_m), frame.y(bottom_m)));
  for (const { solid, from_m, to_m } of solids) {
    shown.set(refKey({ kind: 'obstruction', level: room.level.id, id: solid.obstruction.id }), cornersOf(on(from_m), on(to_m), frame.y(Math.min(solid.top_m, elevation.top_m)), frame.y(solid.bottom_m)));
  }
  for (const { pipe, from, to } of pipes) {
    shown.set(refKey(pipe.ref), [spot(from), spot(to)]);
    shown.set(refKey({ kind: 'node', network: network.ref.id, id: pipe.pipe.from }), [spot(from)]);
    shown.set(refKey({ kind: 'node', network: network.ref.id, id: pipe.pipe.to }), [spot(to)]);
  }
  for (const { support, at } of supports) shown.set(refKey(support.ref), [spot(at)]);
  cloudShown(view, shown, issue);
}
