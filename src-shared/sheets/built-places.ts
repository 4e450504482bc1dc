import { fromFace_m } from '../derived/datum.ts';
import type { Datum } from '../derived/datum.ts';
import type { FieldDimension } from '../derived/field-dimensions.ts';
import type { PlanPoint } from '../geometry/point.ts';
import { type Ref, type SiteRecord, refKey } from '../model/plan.ts';

/** Something whose place was measured. */
export interface BuiltPlace {
  readonly key: string;
  readonly about: Ref;
  readonly drawn: PlanPoint;
  /** The same as drawn where only heights were measured. */
  readonly built: PlanPoint;
  /** Dimensions of it that were measured. */
  readonly measured: readonly FieldDimension[];
}

/** Faces that stand less than this out of parallel place nothing [sine of the angle]. */
const LEAST_SINE = 1e-3;

/**
 * Where something is that stands at other distances from the two datum faces than drawn; a distance that was not measured is as drawn.
 * @param first_m, second_m  measured distances off the faces [m]
 */
export function placeOffFaces({ faces: [a, b] }: Datum, drawn: PlanPoint, first_m: number | undefined, second_m: number | undefined): PlanPoint {
  const [ax, ay] = [Math.cos(a.inward_rad), Math.sin(a.inward_rad)];
  const [bx, by] = [Math.cos(b.inward_rad), Math.sin(b.inward_rad)];
  const sine = ax * by - ay * bx;
  if (Math.abs(sine) < LEAST_SINE) return drawn;
  const off1 = first_m === undefined ? 0 : first_m - fromFace_m(a, drawn);
  const off2 = second_m === undefined ? 0 : second_m - fromFace_m(b, drawn);
  return { ...drawn, x: drawn.x + (off1 * by - off2 * ay) / sine, y: drawn.y + (off2 * ax - off1 * bx) / sine };
}

/**
 * Everything that is placed off datum faces and was measured, where it was drawn and where it is.
 * @param placeOf  where a thing is drawn, and the datum that it is placed from; undefined for what is not asked
 */
export function builtPlaces(all: readonly FieldDimension[], measurements: SiteRecord['measurements'], placeOf: (about: Ref) => { readonly at: PlanPoint; readonly datum: Datum | undefined } | undefined): BuiltPlace[] {
  const byThing = new Map<string, FieldDimension[]>();
  for (const dimension of all) if (measurements[dimension.id] && dimension.about.kind !== 'enclosure') byThing.set(refKey(dimension.about), [...(byThing.get(refKey(dimension.about)) ?? []), dimension]);
  return [...byThing].flatMap(([key, measured]) => {
    const about = measured[0]?.about;
    const place = about && placeOf(about);
    if (!about || !place) return [];
    const measured_m = (part: string): number | undefined => {
      const dimension = measured.find((each) => each.part === part);
      return dimension && measurements[dimension.id]?.value_m;
    };
    const built = place.datum ? placeOffFaces(place.datum, place.at, measured_m('first'), measured_m('second')) : place.at;
    return [{ key, about, drawn: place.at, built, measured }];
  });
}
