import { type PlanPoint, bearing_rad, polar } from '#shared/geometry/point';
import type { Segment } from '#shared/geometry/segment';
import type { Corner, Dimension, Enclosure, Level, Network, Opening, Plan, Ref, RefKind, RefOf } from '#shared/model/plan';
import type { LayerName } from '../store/state.ts';

const LAYERS: Readonly<Record<RefKind, LayerName>> = {
  underlay: 'underlays',
  enclosure: 'enclosures',
  corner: 'enclosures',
  wall: 'enclosures',
  opening: 'enclosures',
  'ceiling-zone': 'enclosures',
  obstruction: 'obstructions',
  dimension: 'dimensions',
  note: 'notes',
  device: 'devices',
  adjoining: 'adjoining',
  network: 'pipes',
  cylinder: 'pipes',
  node: 'pipes',
  pipe: 'pipes',
  nozzle: 'nozzles',
  support: 'pipes',
};

/** Layer that shows and locks a thing. */
export const layerOf = ({ kind }: Pick<Ref, 'kind'>): LayerName => LAYERS[kind];

/** Networks that hang on one level. */
export const networksOn = (plan: Plan, level: string): Network[] => Object.values(plan.networks).filter((network) => network.level === level);

/** A wall with its owner and its neighbours round the ring. */
export interface PlacedWall {
  readonly ref: RefOf<'wall'>;
  readonly segment: Segment;
  /** Corner before the one it starts at. */
  readonly before: string;
  /** Corner it ends at. */
  readonly after: string;
}

const ringWalls = (level: string, enclosure: string, ring: readonly Corner[]): PlacedWall[] =>
  ring.map((corner, i) => {
    const next = ring[(i + 1) % ring.length] ?? corner;
    return {
      ref: { kind: 'wall', level, enclosure, id: corner.id },
      segment: { a: { x: corner.x, y: corner.y }, b: { x: next.x, y: next.y } },
      before: (ring[(i + ring.length - 1) % ring.length] ?? corner).id,
      after: next.id,
    };
  });

/** Every wall of an enclosure, those of its holes included. */
export const wallsOf = (level: string, enclosure: Enclosure): PlacedWall[] =>
  [enclosure.outline, ...enclosure.holes].flatMap((ring) => ringWalls(level, enclosure.id, ring));

/** Every wall of a level. */
export const wallsOn = (level: Level): PlacedWall[] => Object.values(level.enclosures).flatMap((enclosure) => wallsOf(level.id, enclosure));

/** Where an opening sits in its wall: from one jamb to the other; undefined when its wall has gone. */
export function openingSegment(level: string, enclosure: Enclosure, opening: Opening): Segment | undefined {
  const wall = wallsOf(level, enclosure).find(({ ref }) => ref.id === opening.wall);
  if (!wall) return undefined;
  const direction_rad = bearing_rad(wall.segment.a, wall.segment.b);
  return {
    a: polar(wall.segment.a, direction_rad, opening.along_m - opening.width_m / 2),
    b: polar(wall.segment.a, direction_rad, opening.along_m + opening.width_m / 2),
  };
}

/** The line on which a dimension is written, beside the places it measures. */
export function dimensionLine({ a, b, offset_m }: Pick<Dimension, 'a' | 'b' | 'offset_m'>): Segment {
  const left_rad = bearing_rad(a, b) + Math.PI / 2;
  return { a: polar(a, left_rad, offset_m), b: polar(b, left_rad, offset_m) };
}

/** Signed distance of a place from the line a → b, left positive [m]; 0 when a and b are one place. */
export function leftOf_m(p: PlanPoint, { a, b }: Segment): number {
  const length_m = Math.hypot(b.x - a.x, b.y - a.y);
  return length_m === 0 ? 0 : ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / length_m;
}
