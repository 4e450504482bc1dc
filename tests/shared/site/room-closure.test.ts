import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { fieldDimensionsOf } from '#shared/derived/field-dimensions';
import { fitRing } from '#shared/geometry/fit-ring';
import { solveSymmetric } from '#shared/geometry/solve-symmetric';
import type { Measurement, Plan } from '#shared/model/plan';
import { closureWords, lengthName } from '#shared/site/closure-words';
import { roomClosures } from '#shared/site/room-closure';
import { planBuilder } from '../../support/plan-builder.ts';

const measured = (value_m: number): Measurement => ({ value_m, by: '', at: '', instrument: '', reason: '', approvedBy: '', photos: [] });
const text = (length_m: number): string => `${length_m.toFixed(3)} m`;

/** Law of cosines, by hand: the side across from the angle between a and b. */
const across_m = (a: number, b: number, angle_rad: number): number => Math.sqrt(a * a + b * b - 2 * a * b * Math.cos(angle_rad));
/** The angle between a and b across from c. */
const between_rad = (a: number, b: number, c: number): number => Math.acos((a * a + b * b - c * c) / (2 * a * b));

const RECTANGLE = [{ x: 0, y: 0 }, { x: 6, y: 0 }, { x: 6, y: 4 }, { x: 0, y: 4 }];
const L_SHAPE = [{ x: 0, y: 0 }, { x: 9, y: 0 }, { x: 9, y: 4 }, { x: 6, y: 4 }, { x: 6, y: 7 }, { x: 0, y: 7 }];

const planOf = (ring: readonly { x: number; y: number }[]): Plan =>
  planBuilder().outline(ring, 2.7).network().cylinder(0.2, 2, Math.PI).run([{ x: 0.2, y: 2, z: 2 }, { x: 0.2, y: 2, z: 2.5 }, { x: 3, y: 2, z: 2.5 }, { x: 3, y: 2, z: 2.3 }]).nozzle(3, 2, 2.3).plan;

/** Closure of a room whose walls and diagonals are measured as drawn, but for what is said otherwise by kind and number. */
function closureWith(ring: readonly { x: number; y: number }[], change: (kind: string, i: number, planned_m: number) => number | undefined) {
  const plan = planOf(ring);
  const derived = derivePlan(plan);
  const count: Record<string, number> = {};
  const measurements: Record<string, Measurement> = {};
  for (const { id, kind, planned_m } of fieldDimensionsOf(derived)) {
    if (kind !== 'wall' && kind !== 'diagonal') continue;
    const i = count[kind] ?? 0;
    count[kind] = i + 1;
    const value_m = change(kind, i, planned_m);
    if (value_m !== undefined) measurements[id] = measured(value_m);
  }
  const [closure] = roomClosures(derived, measurements, text);
  if (!closure) throw new Error('no room');
  return { closure, tolerance_m: plan.settings.siteTolerance_m };
}

describe('a room of four walls', () => {
  test('measured as drawn it closes, and stays as drawn', () => {
    const { closure } = closureWith(RECTANGLE, (_, __, planned_m) => planned_m);
    expect(closure.answer).toBe('closes');
    for (const [i, at] of [...closure.corners.values()].entries()) expect(Math.hypot(at.x - (RECTANGLE[i]?.x ?? 9), at.y - (RECTANGLE[i]?.y ?? 9))).toBeLessThan(1e-9);
  });

  test('one diagonal makes it the parallelogram of the law of cosines, and proves nothing', () => {
    const { closure } = closureWith(RECTANGLE, (kind, i, planned_m) => (kind === 'wall' ? planned_m : i === 0 ? 7.3 : undefined));
    expect(closure.answer).toBe('not-proven');
    const [a, b, c, d] = [...closure.corners.values()];
    if (!a || !b || !c || !d) throw new Error('four corners');
    // Corner B between the south and the east wall, across from diagonal AC.
    const atB = between_rad(6, 4, 7.3);
    expect(Math.hypot(c.x - a.x, c.y - a.y)).toBeCloseTo(7.3, 5);
    // The other diagonal, by the law of cosines with the angle beside it.
    expect(Math.hypot(d.x - b.x, d.y - b.y)).toBeCloseTo(across_m(6, 4, Math.PI - atB), 5);
  });

  test.each([
    ['as the law of cosines has it', 0, 'closes'],
    ['just within the tolerance', 0.0099, 'closes'],
    ['just outside', 0.0102, 'does-not-close'],
    ['far outside', 0.08, 'does-not-close'],
    ['far outside, too short', -0.08, 'does-not-close'],
  ])('second diagonal %s', (_, off_m, answer) => {
    const other_m = across_m(6, 4, Math.PI - between_rad(6, 4, 7.22));
    const { closure, tolerance_m } = closureWith(RECTANGLE, (kind, i, planned_m) => (kind === 'wall' ? planned_m : i === 0 ? 7.22 : other_m + off_m));
    expect(tolerance_m).toBe(0.01);
    expect(closure.answer).toBe(answer);
    if (closure.doubtful) {
      // One spare length cannot tell which is wrong; the one farthest off the plan is named, and what the others say of it is the law of cosines.
      expect(closure.doubtful.isCertain).toBe(false);
      expect(closure.doubtful.length.dimension.kind).toBe('diagonal');
      const isFirst = closure.doubtful.length.measured_m === 7.22;
      const expected_m = isFirst ? across_m(6, 4, Math.PI - between_rad(6, 4, other_m + off_m)) : other_m;
      expect(closure.doubtful.othersSay_m).toBeCloseTo(expected_m, 6);
      expect(closure.words).toContain('measure walls and diagonals again');
    }
  });

  test('two walls alone keep it square: what is not measured keeps its direction', () => {
    const { closure } = closureWith(RECTANGLE, (kind, i) => (kind === 'wall' && i === 0 ? 5.98 : kind === 'wall' && i === 3 ? 4.01 : undefined));
    expect(closure.answer).toBe('not-proven');
    expect(closure.missing).toHaveLength(4);
    const [a, b, c, d] = [...closure.corners.values()];
    expect(Math.hypot(a?.x ?? 9, a?.y ?? 9)).toBeLessThan(1e-9);
    expect(b?.x).toBeCloseTo(5.98, 6);
    expect(c?.x).toBeCloseTo(5.98, 4);
    expect(c?.y).toBeCloseTo(4.01, 4);
    expect(d?.y).toBeCloseTo(4.01, 6);
  });

  test('nothing measured: as drawn, and said', () => {
    const { closure } = closureWith(RECTANGLE, () => undefined);
    expect(closure.answer).toBe('not-measured');
    expect(closure.words).toContain('stays as drawn');
  });

  test('a wall longer than all others together belongs to no room', () => {
    const { closure } = closureWith(RECTANGLE, (kind, i, planned_m) => (kind === 'wall' && i === 0 ? 59 : planned_m));
    expect(closure.answer).toBe('does-not-close');
  });
});

describe('a room of six corners', () => {
  test('a wall that is built longer closes with the diagonals of the law of cosines', () => {
    // East wall 4.00 and step 3.00 stay; south wall 9.05: step 3.05, everything square. Diagonals by the law of cosines with a right angle.
    const square = Math.PI / 2;
    const built = (planned_m: number): number => [[Math.hypot(9, 4), across_m(9.05, 4, square)], [Math.hypot(3, 4), across_m(3.05, 4, square)]].find(([drawn = 0]) => Math.abs(drawn - planned_m) < 1e-9)?.[1] ?? planned_m;
    const { closure } = closureWith(L_SHAPE, (kind, i, planned_m) => (kind === 'wall' ? (i === 0 ? 9.05 : i === 2 ? 3.05 : planned_m) : built(planned_m)));
    expect(closure.answer).toBe('closes');
    const corners = [...closure.corners.values()];
    expect(corners[1]?.x).toBeCloseTo(9.05, 4);
    expect(corners[3]?.x).toBeCloseTo(6, 4);
  });

  test('one diagonal that is wrong is told, with what the others say', () => {
    const { closure } = closureWith(L_SHAPE, (kind, i, planned_m) => (kind === 'diagonal' && i === 0 ? planned_m + 0.06 : planned_m));
    expect(closure.answer).toBe('does-not-close');
    expect(closure.doubtful?.othersSay_m).toBeCloseTo(Math.hypot(9, 4), 3);
  });
});

describe('the pieces', () => {
  test('a symmetric matrix is solved, one that is not positive definite refused', () => {
    const answer = solveSymmetric([[4], [2, 3]])?.([2, 3]);
    expect(answer?.map((each) => each.toFixed(9))).toEqual(['0.000000000', '1.000000000']);
    expect(solveSymmetric([[0]])).toBeUndefined();
  });

  test('every error of one length is shared out so that its redundancy tells it', () => {
    const lengths = [[0, 1, 6], [1, 2, 4], [2, 3, 6], [3, 0, 4], [0, 2, Math.hypot(6, 4) + 0.02], [1, 3, Math.hypot(6, 4)]].map(([from = 0, to = 0, length_m = 0]) => ({ from, to, length_m }));
    const fit = fitRing(RECTANGLE, lengths, 0, 0);
    // Stress of a braced rectangle: diagonals 1, walls side over diagonal; squares sum to 4, so a diagonal shows a quarter of its error.
    expect(fit?.redundancy[4]).toBeCloseTo(0.25, 2);
    expect(fit?.redundancy[0]).toBeCloseTo(36 / 52 / 4, 2);
    expect(fit?.redundancy.reduce((sum, each) => sum + each, 0)).toBeCloseTo(1, 3);
    expect(fit?.residuals_m[4]).toBeCloseTo(-0.005, 3);
  });

  test('words name the length', () => {
    const { closure } = closureWith(RECTANGLE, (_, __, planned_m) => planned_m);
    const [first] = closure.lengths;
    expect(first && lengthName(first)).toBe('the wall from corner A to corner B');
    expect(closureWords({ ...closure, answer: 'not-fitted' }, text)).toContain('could not be fitted');
  });
});
