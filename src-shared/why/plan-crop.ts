import type { Derived, DerivedNozzle } from '../derived/derived.ts';
import { type Box, boundsOf, boxesTouch } from '../geometry/outline.ts';
import { type PlanPoint, distance_m, midpoint, polar } from '../geometry/point.ts';
import type { Finding, Place } from '../rules/finding.ts';
import type { WhyDrawing, WhyShape } from './why-drawing.ts';

/** Nothing is shown smaller than this, so that a place can be found again [m]. */
const LEAST_m = 1.6;
/** Share of what is shown that is added on each side. */
const MARGIN = 0.22;
/** Width of a crop over its height. */
const SHAPE = 1.7;
/** Stroke of a hole beside its nozzle, as a share of the crop. */
const HOLE = 0.06;
/** More pipe and things than this make a small drawing unreadable, and slow. */
const MOST_SHAPES = 400;

/** Every place that a finding shows on the plan. */
const placesOf = ({ at, dimension, rays = [], areas = [] }: Place): PlanPoint[] => [...at, ...(dimension ? [dimension.a, dimension.b] : []), ...rays.flatMap(({ from, to }) => [from, to]), ...areas.flat(2)];

/** A box around places, with a margin, no smaller than it can be read, as wide as the drawing is. */
export function cropAround(places: readonly PlanPoint[]): Box {
  const { minX, minY, maxX, maxY } = boundsOf(places);
  const wide_m = Math.max(LEAST_m, maxX - minX) * (1 + 2 * MARGIN);
  const tall_m = Math.max(LEAST_m / SHAPE, maxY - minY) * (1 + 2 * MARGIN);
  const width_m = Math.max(wide_m, tall_m * SHAPE);
  const height_m = width_m / SHAPE;
  const x = (minX + maxX) / 2;
  const y = (minY + maxY) / 2;
  return { minX: x - width_m / 2, maxX: x + width_m / 2, minY: y - height_m / 2, maxY: y + height_m / 2 };
}

function nozzleShapes({ at, holes_rad, nozzle }: DerivedNozzle, stroke_m: number): WhyShape[] {
  if (!at) return [];
  return [...holes_rad.map((hole_rad): WhyShape => ({ kind: 'line', as: 'hole', a: at, b: polar(at, hole_rad, stroke_m) })), { kind: 'dot', as: 'nozzle', at }, { kind: 'text', at: { x: at.x, y: at.y + stroke_m * 0.6 }, words: nozzle.name, isMain: false }];
}

/**
 * What a finding measured, from above: the rooms and things around it, pipe and nozzles, and its own line, jets and
 * areas. A measured distance that must be kept stands with a circle at its limit.
 * @param label  what is written along the measuring line, e.g. the measured length
 */
export function planCrop(finding: Finding, { spaces, solids, networks, nozzles }: Derived, label: string): WhyDrawing | undefined {
  const { place, measure, limit } = finding;
  if (!place) return undefined;
  const shown = placesOf(place);
  if (shown.length === 0) return undefined;
  const isDistance = measure === 'length' && limit !== undefined && limit > 0 && place.dimension !== undefined;
  // The place at the limit is worth seeing too, unless it lies far away.
  const reach_m = isDistance && place.dimension && limit < 4 * Math.max(LEAST_m, distance_m(place.dimension.a, place.dimension.b)) ? limit : 0;
  const ends = place.dimension && reach_m > 0 ? [0, 1, 2, 3].map((quarter) => polar(place.dimension?.a ?? shown[0] ?? { x: 0, y: 0 }, (quarter * Math.PI) / 2, reach_m)) : [];
  const bounds = cropAround([...shown, ...ends]);
  const isIn = ({ x, y }: PlanPoint): boolean => x >= bounds.minX && x <= bounds.maxX && y >= bounds.minY && y <= bounds.maxY;
  const here = networks.filter(({ level }) => level.id === place.level);
  const rooms = spaces.filter(({ level, kind, bounds: box }) => level.id === place.level && kind === 'room' && boxesTouch(box, bounds));
  const things = solids.filter(({ ref, bounds: box }) => ref.level === place.level && boxesTouch(box, bounds)).slice(0, MOST_SHAPES);
  const pipes = here.flatMap((network) => network.pipes.filter(({ from, to }) => boxesTouch(boundsOf([from, to]), bounds))).slice(0, MOST_SHAPES);
  const shapes: WhyShape[] = [
    ...rooms.map(({ outline, holes }): WhyShape => ({ kind: 'area', as: 'room', rings: [outline, ...holes] })),
    ...things.map(({ footprint }): WhyShape => ({ kind: 'area', as: 'thing', rings: [footprint] })),
    ...pipes.map(({ from, to }): WhyShape => ({ kind: 'line', as: 'pipe', a: from, b: to })),
    ...here.flatMap(({ network, profile }) => Object.values(network.cylinders).flatMap(({ at }): WhyShape[] => (isIn(at) ? [{ kind: 'circle', as: 'cylinder', at, radius_m: (profile?.limits.cylinderDiameter_m?.value ?? 0.25) / 2 }] : []))),
    ...nozzles.filter(({ network, at }) => network.level.id === place.level && at && isIn(at)).flatMap((nozzle) => nozzleShapes(nozzle, (bounds.maxX - bounds.minX) * HOLE)),
    ...(place.areas ?? []).map((rings): WhyShape => ({ kind: 'area', as: 'zone', rings })),
    ...(place.rays ?? []).map(({ from, to }): WhyShape => ({ kind: 'line', as: 'ray', a: from, b: to })),
  ];
  const { dimension } = place;
  if (dimension) {
    if (reach_m > 0) shapes.push({ kind: 'circle', as: 'limit', at: dimension.a, radius_m: reach_m });
    shapes.push({ kind: 'line', as: 'measure', a: dimension.a, b: dimension.b });
    if (label !== '' && distance_m(dimension.a, dimension.b) > 0) shapes.push({ kind: 'text', at: midpoint(dimension.a, dimension.b), words: label, isMain: true });
  } else if ((place.areas ?? []).length === 0 && (place.rays ?? []).length === 0) for (const at of place.at.slice(0, MOST_SHAPES)) shapes.push({ kind: 'dot', as: 'place', at });
  return { view: 'plan', bounds, shapes, words: `Seen from above: ${finding.name}, ${finding.title.toLowerCase()}.` };
}
