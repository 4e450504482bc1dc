import { distance3_m } from '#shared/geometry/point';
import { type AssemblyLine, assemblyLine } from '#shared/isometric/assembly-line';
import type { Isometric, IsometricNode, IsometricRun } from '#shared/isometric/layout-isometric';
import type { IsoPlace } from '#shared/isometric/project';
import { type Ref, refKey } from '#shared/model/plan';
import type { Px } from '../pen.ts';
import { type Viewport, toScreen } from '../viewport.ts';
import { isometricDetail } from './isometric-detail.ts';
import type { ShownIsometric } from './keep-isometric.ts';

/** Pixels that one part of the discharge assembly takes along its line, and while the drawing is small. */
const PITCH_px = 24;
const SMALL_PITCH_px = 16;
/** Radius of a cylinder's sign [px]. */
export const CYLINDER_px = 9;

/** A straight stretch of the drawing on the screen with what it stands for. */
export interface Stretch {
  readonly a: Px;
  readonly b: Px;
}

/** A cylinder on the screen. */
export interface CylinderSpot {
  readonly ref: Ref;
  readonly name: string;
  readonly at: Px;
}

/** The discharge assembly on the screen; undefined where no pipe begins or nothing is entered. */
export interface PlacedAssembly {
  readonly line: AssemblyLine;
  readonly at: (place: IsoPlace) => Px;
  readonly cylinders: readonly CylinderSpot[];
}

/** Lays the discharge assembly out on the screen: its signs have one size, whatever the scale. */
export function placedAssembly(view: Viewport, { iso, ways }: ShownIsometric): PlacedAssembly | undefined {
  const source = iso.nodes.find(({ isSource }) => isSource);
  if (!source || !ways) return undefined;
  const { network } = iso.network;
  const line = assemblyLine(network, ways);
  const from = toScreen(view, source.place);
  const pitch = isometricDetail(view.camera.scale_px_m, iso).assembly ? PITCH_px : SMALL_PITCH_px;
  const at = ({ x, y }: IsoPlace): Px => ({ x: from.x + x * pitch, y: from.y - y * pitch });
  return {
    line,
    at,
    cylinders: line.cylinders.map((place) => ({ ref: { kind: 'cylinder', network: network.id, id: place.id }, name: network.cylinders[place.id]?.name ?? '', at: at(place) })),
  };
}

/** A run on the screen. */
export const runStretch = (view: Viewport, { a, b }: Pick<IsometricRun, 'a' | 'b'>): Stretch => ({ a: toScreen(view, a), b: toScreen(view, b) });

/** What a node is picked as: its nozzle, or the place itself. */
export const nodeRef = ({ network }: Isometric, { id, nozzle }: Pick<IsometricNode, 'id' | 'nozzle'>): Ref => nozzle?.ref ?? { kind: 'node', network: network.network.id, id };

/** What a run is picked as: every pipe of it. */
export const runRefs = ({ network }: Isometric, { pipes }: Pick<IsometricRun, 'pipes'>): Ref[] => pipes.map((id) => ({ kind: 'pipe', network: network.network.id, id }));

/** Where a place of a run's pipe lies on the drawing: its share of the run's length. */
function onRun(run: IsometricRun, at: Parameters<typeof distance3_m>[0]): IsoPlace {
  const share = run.length_m > 0 ? Math.min(1, distance3_m(run.start, at) / run.length_m) : 0;
  return { x: run.a.x + (run.b.x - run.a.x) * share, y: run.a.y + (run.b.y - run.a.y) * share };
}

const list = <T,>(thing: T | undefined): T[] => (thing === undefined ? [] : [thing]);

/** What is marked on the drawing for things of the plan: stretches of pipe and single places [m of the drawing]. */
export interface IsometricMarks {
  readonly stretches: readonly { readonly a: IsoPlace; readonly b: IsoPlace }[];
  readonly places: readonly IsoPlace[];
  readonly cylinders: ReadonlySet<string>;
  /** The network itself: its assembly is marked. */
  readonly isWhole: boolean;
}

/** Finds things of the plan on a drawing, one or many; those of other networks are on none. */
export function marksOf(iso: Isometric, refs: readonly Ref[]): IsometricMarks {
  const { network } = iso;
  const stretches: { a: IsoPlace; b: IsoPlace }[] = [];
  const places: IsoPlace[] = [];
  const cylinders = new Set<string>();
  let isWhole = false;
  const supports = new Map(iso.supports.map((support) => [refKey(support.placed.ref), support.place]));
  for (const ref of refs) {
    if (ref.kind === 'network') isWhole ||= ref.id === network.network.id;
    if (!('network' in ref) || ref.network !== network.network.id) continue;
    if (ref.kind === 'cylinder') cylinders.add(ref.id);
    else if (ref.kind === 'support') places.push(...list(supports.get(refKey(ref))));
    else if (ref.kind === 'pipe') {
      const run = iso.runs.find(({ pipes }) => pipes.includes(ref.id));
      const pipe = network.pipes.find((each) => each.pipe.id === ref.id);
      if (run && pipe) stretches.push({ a: onRun(run, pipe.from), b: onRun(run, pipe.to) });
    } else {
      const id = ref.kind === 'nozzle' ? network.network.nozzles[ref.id]?.node : ref.id;
      const node = iso.nodes.find((each) => each.id === id);
      if (node) places.push(node.place);
      else places.push(...passedPlace(iso, id));
    }
  }
  return { stretches, places, cylinders, isWhole };
}

/** A node that the drawing only goes straight through has no number, but lies on a run. */
function passedPlace({ runs, network }: Isometric, id: string | undefined): IsoPlace[] {
  const at = id === undefined ? undefined : network.network.nodes[id]?.at;
  if (!at) return [];
  const pipe = network.pipes.find(({ pipe: { from, to } }) => from === id || to === id);
  const run = pipe && runs.find(({ pipes }) => pipes.includes(pipe.pipe.id));
  return run ? [onRun(run, at)] : [];
}
