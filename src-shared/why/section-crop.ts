import type { Derived, Solid, Space } from '../derived/derived.ts';
import { type Outline, isInside } from '../geometry/outline.ts';
import { type PlanPoint, type PlanPoint3, bearing_rad, distance_m, planPoint, polar } from '../geometry/point.ts';
import type { Finding } from '../rules/finding.ts';
import { cropAround } from './plan-crop.ts';
import type { WhyDrawing, WhyShape } from './why-drawing.ts';

/** How far the cut reaches on each side of what is measured [m]. */
const BESIDE_m = 4;
/** Pipe and nozzles this near to the cut are shown in it [m]. */
const NEAR_m = 0.6;
/** Floor and ceiling farther than this from what is measured are left out, so that it is not too small to read [m]. */
const CLOSE_m = 1.3;
/** Ceiling heights are taken at so many places along the cut. */
const STEPS = 48;
/** The name of a nozzle stands below it [m]. */
const NAME_m = 0.2;
/** Nearer than this two places lie upright over each other [m]. */
const UPRIGHT_m = 0.02;

/** A cut through the plan: where it begins, which way it goes, how long it is. */
interface Cut {
  readonly from: PlanPoint;
  readonly direction_rad: number;
  readonly length_m: number;
}

const alongOf = ({ from, direction_rad }: Cut, { x, y }: PlanPoint): number => (x - from.x) * Math.cos(direction_rad) + (y - from.y) * Math.sin(direction_rad);

/** The cut through heights: from the first to the one that lies farthest off, else square to the nearest wall. */
function cutThrough(heights: readonly PlanPoint3[], space: Space | undefined): Cut {
  const [first] = heights;
  const start = first ?? { x: 0, y: 0 };
  const far = heights.reduce((best, each) => (distance_m(start, each) > distance_m(start, best) ? each : best), start as PlanPoint);
  const apart_m = distance_m(start, far);
  const direction_rad = apart_m > UPRIGHT_m ? bearing_rad(start, far) : nearestWall_rad(start, space);
  return { from: polar(start, direction_rad + Math.PI, BESIDE_m), direction_rad, length_m: apart_m + 2 * BESIDE_m };
}

function nearestWall_rad(at: PlanPoint, space: Space | undefined): number {
  const squares = (space?.walls ?? []).map(({ segment, inward_rad }) => ({ off_m: Math.abs((at.x - segment.a.x) * Math.cos(inward_rad) + (at.y - segment.a.y) * Math.sin(inward_rad)), inward_rad }));
  return squares.reduce((best, each) => (each.off_m < best.off_m ? each : best), { off_m: Infinity, inward_rad: 0 }).inward_rad;
}

/** Where the cut runs inside a ring: from and to along it [m], the widest stretch. */
function stretchIn(cut: Cut, ring: Outline): readonly [number, number] | undefined {
  const inside = Array.from({ length: STEPS * 8 + 1 }, (_, i) => (i / (STEPS * 8)) * cut.length_m).filter((along_m) => isInside(polar(cut.from, cut.direction_rad, along_m), ring));
  const [first] = inside;
  const last = inside.at(-1);
  return first === undefined || last === undefined || last <= first ? undefined : [first, last];
}

function solidShape(cut: Cut, { footprint, bottom_m, top_m }: Solid): WhyShape[] {
  const on = stretchIn(cut, footprint);
  if (!on) return [];
  const [from, to] = on;
  return [{ kind: 'area', as: 'thing', rings: [[planPoint(from, bottom_m), planPoint(to, bottom_m), planPoint(to, top_m), planPoint(from, top_m)]] }];
}

function roomShapes(cut: Cut, space: Space): WhyShape[] {
  const on = stretchIn(cut, space.outline);
  if (!on) return [];
  const [from, to] = on;
  const at = (i: number): number => from + ((to - from) * i) / STEPS;
  const ceiling = Array.from({ length: STEPS + 1 }, (_, i) => ({ along_m: at(i), height_m: space.ceilingAt_m(polar(cut.from, cut.direction_rad, at(i))) }));
  const lines = ceiling.slice(1).flatMap(({ along_m, height_m }, i): WhyShape[] => {
    const before = ceiling[i];
    return before?.height_m === undefined || height_m === undefined ? [] : [{ kind: 'line', as: 'ceiling', a: planPoint(before.along_m, before.height_m), b: planPoint(along_m, height_m) }];
  });
  const walls = [from, to].filter((along_m) => along_m > 1e-6 && along_m < cut.length_m - 1e-6);
  const top_m = space.tallest_m ?? space.floor_m + CLOSE_m;
  return [
    { kind: 'line', as: 'floor', a: planPoint(from, space.floor_m), b: planPoint(to, space.floor_m) },
    ...lines,
    ...walls.map((along_m): WhyShape => ({ kind: 'line', as: 'wall', a: planPoint(along_m, space.floor_m), b: planPoint(along_m, top_m) })),
  ];
}

/**
 * What a finding measured, from the side: floor and ceiling along a cut through its heights, what the cut goes through,
 * and its own heights.
 * @param label  what is written along the measuring line
 */
export function sectionCrop(finding: Finding, { spaces, solids, nozzles, networks }: Derived, label: string): WhyDrawing | undefined {
  const { place } = finding;
  const heights = place?.heights ?? [];
  const [first] = heights;
  if (!place || !first) return undefined;
  const near = spaces.filter(({ level, outline }) => level.id === place.level && isInside(first, outline));
  const cut = cutThrough(heights, near.find(({ kind }) => kind === 'room') ?? near[0]);
  const onCut = (p: PlanPoint3): PlanPoint => planPoint(alongOf(cut, p), p.z);
  const marked = heights.map(onCut);
  const [a] = marked;
  const b = marked.at(-1);
  const beside = (p: PlanPoint): boolean => {
    const along_m = alongOf(cut, p);
    return along_m >= 0 && along_m <= cut.length_m && distance_m(polar(cut.from, cut.direction_rad, along_m), p) < NEAR_m;
  };
  const pipes = networks.filter(({ level }) => level.id === place.level).flatMap((network) => network.pipes.filter(({ from, to }) => beside(from) && beside(to)));
  const drops = nozzles.filter(({ network, at }) => network.level.id === place.level && at && beside(at));
  const shapes: WhyShape[] = [
    ...near.flatMap((space) => roomShapes(cut, space)),
    ...solids.filter(({ ref }) => ref.level === place.level).flatMap((solid) => solidShape(cut, solid)),
    ...pipes.map(({ from, to }): WhyShape => ({ kind: 'line', as: 'pipe', a: onCut(from), b: onCut(to) })),
    ...drops.flatMap(({ at, nozzle }): WhyShape[] => (at ? [{ kind: 'dot', as: 'nozzle', at: onCut(at) }, { kind: 'text', at: onCut({ ...at, x: at.x, z: at.z - NAME_m }), words: nozzle.name, isMain: false }] : [])),
  ];
  const measures = marked.length === 2 && a !== undefined && b !== undefined && distance_m(a, b) > UPRIGHT_m;
  if (measures) shapes.push({ kind: 'line', as: 'measure', a, b }, ...(label === '' ? [] : [{ kind: 'text' as const, at: planPoint((a.x + b.x) / 2, (a.y + b.y) / 2), words: label, isMain: true }]));
  else for (const at of marked) shapes.push({ kind: 'dot', as: 'place', at });
  const whole = near.flatMap(({ floor_m, tallest_m }) => [floor_m, ...(tallest_m === undefined ? [] : [tallest_m])]).map((z) => planPoint(a?.x ?? 0, z));
  const isClose = ({ y }: PlanPoint): boolean => marked.some((at) => Math.abs(at.y - y) <= CLOSE_m);
  const bounds = cropAround([...marked, ...whole.filter(isClose)]);
  return { view: 'section', bounds, shapes: [...shapes, ...groundLine(shapes, bounds.minX, bounds.maxX)], words: `Seen from the side: ${finding.name}, ${finding.title.toLowerCase()}.` };
}

/** A floor for what hangs in no drawn room. */
const groundLine = (shapes: readonly WhyShape[], from: number, to: number): WhyShape[] =>
  shapes.some((shape) => shape.kind === 'line' && shape.as === 'floor') ? [] : [{ kind: 'line', as: 'floor', a: planPoint(from, 0), b: planPoint(to, 0) }];

