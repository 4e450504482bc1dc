import RBush from 'rbush';
import { type Box, boundsOf, sidesOf } from '../geometry/outline.ts';
import { type PlanPoint, bearing_rad, distance_m, planPoint, polar } from '../geometry/point.ts';
import { counterClockwise } from '../geometry/ring-order.ts';
import type { Segment } from '../geometry/segment.ts';
import type { Adjoining, Enclosure, Level, RefOf } from '../model/plan.ts';
import type { WallFace } from './derived.ts';
import { shapeOf } from './enclosure-shape.ts';

/** A drawn space on the other side of a wall, floor or ceiling. */
export type Beyond =
  | { readonly kind: 'enclosure'; readonly ref: RefOf<'enclosure'>; readonly enclosure: Enclosure }
  | { readonly kind: 'adjoining'; readonly ref: RefOf<'adjoining'>; readonly adjoining: Adjoining };

/** A stretch of a wall of an enclosure with a space right behind it. */
export interface WallStretch {
  readonly wall: RefOf<'wall'>;
  /** On the face of the enclosure. */
  readonly stretch: Segment;
  /** From the face to the space behind [m]: the thickness of the wall; below 0 where the two overlap. */
  readonly off_m: number;
  readonly beyond: Beyond;
}

/** Faces farther apart than this have no wall in common [m]. */
const THICKEST_WALL_m = 0.6;
/** A space that is drawn this far into the wall or past it still lies behind it [m]. */
const OVERDRAWN_m = 0.05;
/** Rooms that meet in less than this touch at a corner only [m]. */
const CORNER_m = 0.01;
/** The far face looks back at least this squarely: within 60°. */
const FACING = 0.5;

interface FarSide extends Box {
  /** In the order of the plan. */
  readonly order: number;
  readonly beyond: Beyond;
  readonly side: Segment;
  /** Into the space it bounds [rad]. */
  readonly inward_rad: number;
}

/** The stretch of a face behind which a straight side lies no farther than a wall is thick; undefined where it does not. */
function stretchBehind({ segment: { a, b }, inward_rad }: WallFace, side: Segment): { readonly stretch: Segment; readonly off_m: number } | undefined {
  const length_m = distance_m(a, b);
  const along_rad = bearing_rad(a, b);
  const out_rad = inward_rad + Math.PI;
  const inFrame = ({ x, y }: PlanPoint) => ({
    u: (x - a.x) * Math.cos(along_rad) + (y - a.y) * Math.sin(along_rad),
    v: (x - a.x) * Math.cos(out_rad) + (y - a.y) * Math.sin(out_rad),
  });
  const [from, to] = [inFrame(side.a), inFrame(side.b)];
  let [start, end] = [0, 1];
  for (const [at, rise, least, most] of [
    [from.u, to.u - from.u, 0, length_m],
    [from.v, to.v - from.v, -OVERDRAWN_m, THICKEST_WALL_m],
  ] as const) {
    if (rise === 0) {
      if (at < least || at > most) return undefined;
      continue;
    }
    const [enter, leave] = [(least - at) / rise, (most - at) / rise].sort((one, other) => one - other);
    start = Math.max(start, enter ?? 0);
    end = Math.min(end, leave ?? 1);
  }
  const uAt = (share: number): number => from.u + share * (to.u - from.u);
  const vAt = (share: number): number => from.v + share * (to.v - from.v);
  if (end <= start || Math.abs(uAt(end) - uAt(start)) < CORNER_m) return undefined;
  const on = (share: number): PlanPoint => polar(planPoint(a.x, a.y), along_rad, uAt(share));
  return { stretch: { a: on(start), b: on(end) }, off_m: Math.min(vAt(start), vAt(end)) };
}

const grown = ({ minX, minY, maxX, maxY }: Box, by_m: number): Box => ({ minX: minX - by_m, minY: minY - by_m, maxX: maxX + by_m, maxY: maxY + by_m });

/**
 * The stretches of wall that the enclosures of a level share with each other and with the adjoining spaces drawn beside
 * them, by enclosure id: two faces that look at each other no farther apart than a wall is thick (0.6 m) are one wall.
 * What stands between two such faces is not looked at, so that rather too much is said to touch.
 */
export function sharedWallsOf(enclosures: Level['enclosures'], adjoining: Level['adjoining'], level: string): ReadonlyMap<string, readonly WallStretch[]> {
  const index = new RBush<FarSide>();
  const walls = Object.values(enclosures).map((enclosure) => ({ enclosure, faces: shapeOf(enclosure, level).walls }));
  const far = (beyond: Beyond, side: Segment, inward_rad: number): Omit<FarSide, 'order'> => ({ ...boundsOf([side.a, side.b]), beyond, side, inward_rad });
  const sides = [
    ...walls.flatMap(({ enclosure, faces }) => {
      const beyond: Beyond = { kind: 'enclosure', ref: { kind: 'enclosure', level, id: enclosure.id }, enclosure };
      return faces.map(({ segment, inward_rad }) => far(beyond, segment, inward_rad));
    }),
    ...Object.values(adjoining).flatMap((space) => {
      const beyond: Beyond = { kind: 'adjoining', ref: { kind: 'adjoining', level, id: space.id }, adjoining: space };
      return sidesOf(counterClockwise(space.outline)).map((side) => far(beyond, side, bearing_rad(side.a, side.b) + Math.PI / 2));
    }),
  ];
  index.load(sides.map((side, order) => ({ ...side, order })));
  const near = ({ a, b }: Segment): FarSide[] => index.search(grown(boundsOf([a, b]), THICKEST_WALL_m)).toSorted((one, other) => one.order - other.order);
  return new Map(
    walls.map(({ enclosure, faces }) => [
      enclosure.id,
      faces.flatMap((face) =>
        near(face.segment).flatMap(({ beyond, side, inward_rad }) => {
          if (beyond.kind === 'enclosure' && beyond.ref.id === enclosure.id) return [];
          if (Math.cos(inward_rad - face.inward_rad - Math.PI) < FACING) return [];
          const found = stretchBehind(face, side);
          return found ? [{ wall: face.ref, beyond, ...found }] : [];
        }),
      ),
    ]),
  );
}
