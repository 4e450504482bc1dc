import { angleBetween_rad, axisAngle_rad } from '../geometry/angle.ts';
import { type PlanPoint, distance_m } from '../geometry/point.ts';
import type { Derived, DerivedNozzle, Space, WallFace } from './derived.ts';

/** The one inside corner that all dimensions of an enclosure start from, and its two finished faces. */
export interface Datum {
  readonly corner: PlanPoint;
  /** Face that east-west distances are measured from, then the one for north-south. */
  readonly faces: readonly [WallFace, WallFace];
}

/** How far from square two faces may stand and still be the first choice [rad]. */
const NEARLY_SQUARE_rad = (1 * Math.PI) / 180;

const faceLength_m = ({ segment }: WallFace): number => distance_m(segment.a, segment.b);

/** Signed distance of a place from a finished face, into the room positive [m]. */
export const fromFace_m = (face: WallFace, at: PlanPoint): number =>
  (at.x - face.segment.a.x) * Math.cos(face.inward_rad) + (at.y - face.segment.a.y) * Math.sin(face.inward_rad);

/** Whether a laser on the face, square to it, can meet the place: its foot lies on the face. */
const isAbreast = ({ segment: { a, b } }: WallFace, at: PlanPoint): boolean => {
  const length2 = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
  const t = ((at.x - a.x) * (b.x - a.x) + (at.y - a.y) * (b.y - a.y)) / (length2 || 1);
  return t >= -1e-9 && t <= 1 + 1e-9;
};

/**
 * Chooses the datum corner of a space: square rather than not, with both faces abreast of the most nozzles,
 * then with the longer faces, then the one farthest south-west. It does not follow a nozzle that is moved a little.
 * @returns undefined for a space without a corner that a person can stand a laser in
 */
export function findDatum(space: Space, nozzles: readonly DerivedNozzle[]): Datum | undefined {
  const places = nozzles.flatMap(({ at }) => (at ? [at] : []));
  const choices = space.convexCorners.map(({ at, faces }) => {
    const [first, second] = faces;
    const skew = Math.abs(axisAngle_rad(first.inward_rad, second.inward_rad) - Math.PI / 2);
    const missed = places.reduce((sum, place) => sum + faces.filter((face) => !isAbreast(face, place)).length, 0);
    const reach = Math.round((faceLength_m(first) + faceLength_m(second)) * 1000);
    return { at, faces, skew: skew <= NEARLY_SQUARE_rad ? 0 : skew, missed, reach };
  });
  choices.sort((a, b) => a.skew - b.skew || a.missed - b.missed || b.reach - a.reach || a.at.x + a.at.y - (b.at.x + b.at.y));
  const best = choices[0];
  if (!best) return undefined;
  const [first, second] = best.faces;
  const isFirstEastWest = axisAngle_rad(first.inward_rad, 0) <= axisAngle_rad(second.inward_rad, 0);
  return { corner: best.at, faces: isFirstEastWest ? [first, second] : [second, first] };
}

/** Datum of every space that belongs to an enclosure with nozzles, by space key: a room and its voids share one corner. */
export function datumsOf({ spaces, nozzles }: Derived): ReadonlyMap<string, Datum> {
  const byEnclosure = new Map<string, DerivedNozzle[]>();
  for (const nozzle of nozzles) {
    const id = nozzle.space?.enclosure.id;
    if (id !== undefined) byEnclosure.set(id, [...(byEnclosure.get(id) ?? []), nozzle]);
  }
  const found = new Map<string, Datum>();
  for (const space of spaces) {
    const own = byEnclosure.get(space.enclosure.id);
    const datum = own && findDatum(space, own);
    if (datum) found.set(space.key, datum);
  }
  return found;
}

const COMPASS = ['east', 'north-east', 'north', 'north-west', 'west', 'south-west', 'south', 'south-east'] as const;

/** Name of a direction on the plan: the nearest of eight points of the compass. */
export const compassName = (direction_rad: number): string =>
  COMPASS.reduce((best, name, i) => {
    const angle = (i * Math.PI) / 4;
    return angleBetween_rad(direction_rad, angle) < angleBetween_rad(direction_rad, COMPASS.indexOf(best) * (Math.PI / 4)) ? name : best;
  }, COMPASS[0] as (typeof COMPASS)[number]);

/** How a fitter names a face: "west face". */
export const faceName = (face: WallFace): string => `${compassName(face.inward_rad + Math.PI)} face`;
