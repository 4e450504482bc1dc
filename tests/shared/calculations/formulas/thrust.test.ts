import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Jet, elbowThrust_N, holeThrust_N, nozzleThrust } from '#shared/calculations/formulas/thrust';

const MM2_m2 = 1e-6;

/** Holes evenly all round, each pushing alike. */
const allRound = (count: number, thrust_N: number): Jet[] => Array.from({ length: count }, (_, index) => ({ thrust_N, azimuth_rad: (2 * Math.PI * index) / count }));

describe('thrust of a hole', () => {
  // F = ṁ·v + (p_e − p_a)·A of a convergent hole of 100 mm², nitrogen as an ideal gas from 15 °C, step by step from the state at the exit.
  test.each([
    ['choked, 10 bar', 10e5, 116.655],
    ['choked, 40 bar', 40e5, 497.018],
    ['choked, 60 bar', 60e5, 750.593],
    ['not choked, 1.5 bar', 1.5e5, 8.41267],
    ['not choked, 1.2 bar', 1.2e5, 3.51219],
  ])('momentum at the exit: %s', (_, pressure_Pa, expected) => {
    expect(holeThrust_N(pressure_Pa, 100 * MM2_m2, 1) / expected).toBeCloseTo(1, 5);
  });

  test('the factor of a choked hole is 1.267876 with γ 1.4', () => {
    expect(holeThrust_N(1e7, 1, 1, 1e-3) / 1e7).toBeCloseTo(1.267876, 6);
  });

  test('by hand: a coefficient of 0.8 takes a fifth off the first term only', () => {
    expect(holeThrust_N(40e5, 100 * MM2_m2, 0.8)).toBeCloseTo(0.8 * 1.267876 * 400 - 10.1325, 3);
  });

  test('it grows with pressure and area without a step where the hole chokes, and is nothing without pressure', () => {
    const choking_Pa = 101_325 / 0.5282817877;
    expect(holeThrust_N(choking_Pa * (1 + 1e-9), 1e-4, 1)).toBeCloseTo(holeThrust_N(choking_Pa * (1 - 1e-9), 1e-4, 1), 6);
    expect(holeThrust_N(101_325, 1e-4, 0.8)).toBe(0);
    fc.assert(
      fc.property(fc.double({ min: 1.02e5, max: 3e7, noNaN: true }), fc.double({ min: 1.001, max: 3, noNaN: true }), (pressure, factor) => {
        expect(holeThrust_N(pressure * factor, 1e-4, 1)).toBeGreaterThan(holeThrust_N(pressure, 1e-4, 1));
        expect(holeThrust_N(pressure, 1e-4 * factor, 1) / holeThrust_N(pressure, 1e-4, 1)).toBeCloseTo(factor, 6);
      }),
    );
  });

  test('a pressure below that of the room is refused', () => {
    expect(() => holeThrust_N(1e5, 1e-4, 1)).toThrow('pressure_Pa');
  });
});

describe('thrust of a nozzle', () => {
  test.each([2, 3, 4, 8, 16])('vector sum: %d holes all round cancel, and one blocked leaves its own thrust', (count) => {
    const thrust = nozzleThrust(allRound(count, 80));
    expect(thrust.size_N).toBeCloseTo(0, 9);
    expect(thrust.blocked_N).toBeCloseTo(80, 9);
    expect(thrust.worst_N).toBeCloseTo(80, 9);
  });

  // Vector sums by hand.
  test.each([
    ['one side, three holes at 0, 90 and 180°: 100 N south; an end blocked: √2·100 N', [0, 90, 180], 100, Math.SQRT2 * 100, 0],
    ['two holes at a right angle: √2·100 N; one blocked: 100 N', [0, 90], Math.SQRT2 * 100, 100, 0],
    ['one hole: 100 N; blocked: nothing', [45], 100, 0, 0],
    ['half round, holes at 0, 45, 90, 135 and 180°: (1 + √2)·100 N', [0, 45, 90, 135, 180], (1 + Math.SQRT2) * 100, 100 * Math.hypot(1, 1 + Math.SQRT2), 0],
  ])('by hand: %s', (_, degrees, size_N, blocked_N, hole) => {
    const thrust = nozzleThrust(degrees.map((each) => ({ thrust_N: 100, azimuth_rad: (each * Math.PI) / 180 })));
    expect(thrust.size_N).toBeCloseTo(size_N, 9);
    expect(thrust.blocked_N).toBeCloseTo(blocked_N, 9);
    expect(thrust.worst_N).toBeCloseTo(Math.max(size_N, blocked_N), 9);
    expect(thrust.blockedHole).toBe(hole);
  });

  test('it pushes against the jets, up when they blow down', () => {
    const [x, y, z] = nozzleThrust([{ thrust_N: 100, azimuth_rad: 0, elevation_rad: -Math.PI / 6 }]).force_N;
    expect([x, y, z]).toEqual([expect.closeTo(-86.6025, 4), expect.closeTo(0, 9), expect.closeTo(50, 9)]);
  });

  test('a nozzle turned about its axis pushes as hard', () => {
    const jets = fc.array(fc.record({ thrust_N: fc.double({ min: 0, max: 500, noNaN: true }), azimuth_rad: fc.double({ min: 0, max: 6.28, noNaN: true }) }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(jets, fc.double({ min: -3, max: 3, noNaN: true }), (holes, turn) => {
        const before = nozzleThrust(holes);
        const after = nozzleThrust(holes.map((hole) => ({ ...hole, azimuth_rad: hole.azimuth_rad + turn })));
        expect(after.size_N).toBeCloseTo(before.size_N, 6);
        expect(after.worst_N).toBeCloseTo(before.worst_N, 6);
        expect(before.worst_N).toBeGreaterThanOrEqual(before.size_N);
        expect(before.size_N).toBeLessThanOrEqual(holes.reduce((sum, { thrust_N }) => sum + thrust_N, 0) + 1e-6);
      }),
    );
  });

  test('a nozzle without holes is refused', () => {
    expect(() => nozzleThrust([])).toThrow('jets');
    expect(() => nozzleThrust([{ thrust_N: -1, azimuth_rad: 0 }])).toThrow('thrust_N');
  });
});

describe('thrust of an elbow', () => {
  // Momentum balance by components: inflow along x, outflow turned by θ; by hand.
  test.each([
    ['90°', 90, 2969.848],
    ['45°', 45, 1607.27],
    ['180°', 180, 4200],
    ['straight', 0, 0],
  ])('by hand: 40 bar on 500 mm², 1 kg/s at 100 m/s, %s', (_, degrees, expected) => {
    expect(elbowThrust_N(4e6, 500 * MM2_m2, 1, 100, (degrees * Math.PI) / 180)).toBeCloseTo(expected, 2);
  });

  test('vector sum of what comes in and what goes out', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 2e7, noNaN: true }), fc.double({ min: 0, max: 1000, noNaN: true }), fc.double({ min: 0, max: Math.PI, noNaN: true }), (pressure, flow_N, turn) => {
        const end_N = pressure * 5e-4 + flow_N;
        const vector_N = Math.hypot(end_N - end_N * Math.cos(turn), -end_N * Math.sin(turn));
        expect(Math.abs(elbowThrust_N(pressure, 5e-4, 1, flow_N, turn) - vector_N)).toBeLessThanOrEqual(1e-6 * (1 + end_N));
      }),
    );
  });
});
