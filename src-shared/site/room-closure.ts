import type { Derived, Space } from '../derived/derived.ts';
import { datumsOf } from '../derived/datum.ts';
import { type FieldDimension, fieldDimensionsOf } from '../derived/field-dimensions.ts';
import { type FittedRing, type RingLength, fitRing } from '../geometry/fit-ring.ts';
import { type PlanPoint, distance_m } from '../geometry/point.ts';
import type { Corner, Measurement, RefOf } from '../model/plan.ts';
import { closureWords } from './closure-words.ts';

/**
 * `closes`: the lengths agree within the tolerance. `not-proven`: no length checks another, so that nothing shows an error.
 * `not-fitted`: the outline has too many corners, or the lengths belong to no ring at all.
 */
export type ClosureAnswer = 'closes' | 'does-not-close' | 'not-proven' | 'not-measured' | 'not-fitted';

/** One measured wall or diagonal in the ring that fits all of them best. */
export interface ClosureLength {
  readonly dimension: FieldDimension;
  readonly measured_m: number;
  readonly fitted_m: number;
  /** Fitted less measured [m]. */
  readonly residual_m: number;
  /** Another length would show an error of this one. */
  readonly isChecked: boolean;
}

/** Whether a measured room closes, told before anything else of it is judged. */
export interface RoomClosure {
  readonly room: RefOf<'enclosure'>;
  readonly name: string;
  readonly answer: ClosureAnswer;
  /** Best fit of all corners, by corner id. */
  readonly corners: ReadonlyMap<string, PlanPoint>;
  readonly lengths: readonly ClosureLength[];
  /** Walls and diagonals that nobody measured: drawn directions and lengths stand in for them. */
  readonly missing: readonly FieldDimension[];
  /** The length that most likely is wrong, what the others say it should be [m], and whether they can tell it from the rest. */
  readonly doubtful: { readonly length: ClosureLength; readonly othersSay_m: number; readonly isCertain: boolean } | null;
  /** A sentence for the user: what, and what to do. */
  readonly words: string;
}

/** Outlines with more corners are not fitted: nobody measures them wall by wall. */
const MOST_CORNERS = 60;
/** A length whose error would show by less than this share is checked by no other. */
const LEAST_CHECK = 1e-3;
/** Lengths that are doubtful to within this share of the most doubtful one cannot be told from it. */
const TIE = 0.05;

/** Places of the two corners of a wall or diagonal in the outline. */
function endsOf(outline: readonly Corner[], { kind, part }: FieldDimension): readonly [number, number] | undefined {
  const placeOf = (id: string): number => outline.findIndex((corner) => corner.id === id);
  if (kind === 'wall') {
    const from = placeOf(part);
    return from < 0 ? undefined : [from, (from + 1) % outline.length];
  }
  for (const [from, corner] of outline.entries()) {
    const to = part.startsWith(`${corner.id}-`) ? placeOf(part.slice(corner.id.length + 1)) : -1;
    if (to >= 0) return [from, to];
  }
  return undefined;
}

interface Measured extends RingLength {
  readonly dimension: FieldDimension;
}

const lengthBetween_m = (corners: readonly PlanPoint[], { from, to }: RingLength): number => {
  const [a, b] = [corners[from], corners[to]];
  return a && b ? distance_m(a, b) : Number.NaN;
};

/**
 * The length that is most likely wrong: how far it is off what the rest says, against how well the rest checks it (the test of
 * a single wrong observation in surveying). With one spare length all are equally doubtful; then the one farthest off the plan.
 */
function mostDoubtful(fit: FittedRing, measured: readonly Measured[]): { readonly i: number; readonly isCertain: boolean } | undefined {
  const weights = measured.map((_, i) => ((fit.redundancy[i] ?? 0) > LEAST_CHECK ? Math.abs(fit.residuals_m[i] ?? 0) / Math.sqrt(fit.redundancy[i] ?? 1) : -1));
  const worst = Math.max(-1, ...weights);
  if (worst < 0) return undefined;
  const tied = measured.map((_, i) => i).filter((i) => (weights[i] ?? -1) >= worst * (1 - TIE));
  const off = (i: number): number => Math.abs((measured[i]?.length_m ?? 0) - (measured[i]?.dimension.planned_m ?? 0));
  const i = tied.reduce((best, each) => (off(each) > off(best) ? each : best), tied[0] ?? 0);
  return { i, isCertain: tied.length === 1 };
}

/** What a room's measured walls and diagonals say about it. */
function closureOf(space: Space, held: PlanPoint | undefined, along: string | undefined, own: readonly FieldDimension[], measurements: Readonly<Record<string, Measurement>>, tolerance_m: number, lengthText: (length_m: number) => string): RoomClosure {
  const { outline } = space.enclosure;
  const room: RefOf<'enclosure'> = { kind: 'enclosure', level: space.level.id, id: space.enclosure.id };
  const drawn = new Map(outline.map(({ id, x, y }) => [id, { x, y }]));
  const missing = own.filter(({ id }) => !Object.hasOwn(measurements, id));
  const measured = own.flatMap((dimension): Measured[] => {
    const ends = endsOf(outline, dimension);
    const value_m = measurements[dimension.id]?.value_m;
    return ends && value_m !== undefined ? [{ dimension, from: ends[0], to: ends[1], length_m: value_m }] : [];
  });
  const said = (answer: ClosureAnswer, rest: Partial<RoomClosure> = {}): RoomClosure => {
    const closure = { room, name: space.name, answer, corners: drawn, lengths: [], missing, doubtful: null, ...rest };
    return { ...closure, words: closureWords(closure, lengthText) };
  };
  if (measured.length === 0) return said('not-measured');
  const heldAt = Math.max(0, held ? outline.findIndex(({ x, y }) => Math.hypot(x - held.x, y - held.y) < 1e-6) : 0);
  const alongAt = Math.max(0, outline.findIndex(({ id }) => id === along));
  const fit = outline.length <= MOST_CORNERS ? fitRing(outline, measured, heldAt, alongAt) : undefined;
  if (!fit || fit.corners.some(({ x, y }) => !Number.isFinite(x + y))) return said('not-fitted');
  const lengths = measured.map(({ dimension, length_m }, i): ClosureLength => {
    const residual_m = fit.residuals_m[i] ?? 0;
    return { dimension, measured_m: length_m, fitted_m: length_m + residual_m, residual_m, isChecked: (fit.redundancy[i] ?? 0) > LEAST_CHECK };
  });
  const corners = new Map(outline.map(({ id }, i) => [id, fit.corners[i] ?? { x: Number.NaN, y: Number.NaN }]));
  const greatest_m = Math.max(...lengths.map(({ residual_m }) => Math.abs(residual_m)));
  const worst = mostDoubtful(fit, measured);
  if (!worst) return said(greatest_m > tolerance_m ? 'does-not-close' : 'not-proven', { corners, lengths });
  const suspect = measured[worst.i];
  const length = lengths[worst.i];
  const without = suspect && fitRing(outline, measured.filter((each) => each !== suspect), heldAt, alongAt);
  if (!suspect || !length || !without) return said('not-fitted');
  const othersSay_m = lengthBetween_m(without.corners, suspect);
  const isOff = Math.max(Math.abs(othersSay_m - length.measured_m), greatest_m) > tolerance_m;
  return said(isOff ? 'does-not-close' : 'closes', { corners, lengths, doubtful: isOff ? { length, othersSay_m, isCertain: worst.isCertain } : null });
}

/**
 * Whether every measured room closes: corners are fitted to its measured walls and diagonals by least squares, and the length
 * that disagrees most with the rest is named. A room closes when that length is off what the others say of it by no more than the
 * site tolerance of the plan. Its datum corner and first datum face stay where they are drawn.
 * @param dimensions  of the plan
 */
export function roomClosures(derived: Derived, measurements: Readonly<Record<string, Measurement>>, lengthText: (length_m: number) => string, dimensions: readonly FieldDimension[] = fieldDimensionsOf(derived)): RoomClosure[] {
  const datums = datumsOf(derived);
  const { siteTolerance_m } = derived.plan.settings;
  const byRoom = new Map<string, FieldDimension[]>();
  for (const dimension of dimensions) {
    if (dimension.kind !== 'wall' && dimension.kind !== 'diagonal') continue;
    const key = 'level' in dimension.about ? `${dimension.about.level}/${dimension.about.id}` : '';
    byRoom.set(key, [...(byRoom.get(key) ?? []), dimension]);
  }
  return derived.spaces.flatMap((space) => {
    const own = space.kind === 'room' ? byRoom.get(`${space.level.id}/${space.enclosure.id}`) : undefined;
    const datum = datums.get(space.key);
    return own ? [closureOf(space, datum?.corner, datum?.faces[0].ref.id, own, measurements, siteTolerance_m, lengthText)] : [];
  });
}
