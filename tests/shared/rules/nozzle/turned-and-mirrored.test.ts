import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { designOf } from '#shared/calculations/design/design-of';
import { derivePlan } from '#shared/derived/derive-plan';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { newDevice } from '#shared/model/new-device';
import type { Obstruction, Plan } from '#shared/model/plan';
import { n08JetAtPeople } from '#shared/rules/nozzle/n08-jet-at-people';
import { n12NozzleSpacing } from '#shared/rules/nozzle/n12-nozzle-spacing';
import { n13PartialPartition } from '#shared/rules/nozzle/n13-partial-partition';
import { n14BeamPocket } from '#shared/rules/nozzle/n14-beam-pocket';
import { n15AboveEquipment } from '#shared/rules/nozzle/n15-above-equipment';
import { n16FloorVoid } from '#shared/rules/nozzle/n16-floor-void';
import { n17CeilingVoid } from '#shared/rules/nozzle/n17-ceiling-void';
import { n18VoidNozzle } from '#shared/rules/nozzle/n18-void-nozzle';
import { n19LiveParts } from '#shared/rules/nozzle/n19-live-parts';
import { n23TilesClipped } from '#shared/rules/nozzle/n23-tiles-clipped';
import { n24DriveNoise } from '#shared/rules/nozzle/n24-drive-noise';
import type { Finding } from '#shared/rules/finding';
import { type LayoutSpec, anyPlacing, at3, layout } from '../../../support/layout.ts';
import { placedPlan } from '../../../support/placed-plan.ts';

const RULES = [n08JetAtPeople, n12NozzleSpacing, n13PartialPartition, n14BeamPocket, n15AboveEquipment, n16FloorVoid, n17CeilingVoid, n18VoidNozzle, n19LiveParts, n23TilesClipped, n24DriveNoise];
const KINDS = ['beam', 'duct', 'rack', 'cabinet', 'tray', 'partition', 'live-part', 'work-place', 'other'] as const;
/** The sample without a few figures that only the cures look at: what is asked here are verdicts. */
const limits = { cornerZone_m: null };

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const known = fc.option(fc.boolean(), { nil: null });
const spot = fc.record({ x: between(0.2, 7.8), y: between(0.2, 4.8) });
const thing: fc.Arbitrary<Obstruction> = fc
  .record({ kind: fc.constantFrom(...KINDS), at: spot, width_m: between(0.1, 3), depth_m: between(0.1, 3), heights: fc.oneof(fc.tuple(fc.constant(0), between(1.5, 2.7)), fc.tuple(between(1.8, 2.6), fc.constant(2.7)), fc.tuple(fc.constant(-0.4), between(-0.35, 0)), fc.tuple(between(-0.4, 2.7), between(-0.4, 2.7))), hasLooseItems: known, hasDrives: known, voltage_V: fc.option(between(0, 50_000), { nil: null }) })
  .map(({ kind, at, width_m, depth_m, heights, ...rest }) => ({ id: '', name: kind, kind, footprint: rectangle(width_m, depth_m, planPoint(at.x - width_m / 2, at.y - depth_m / 2)).map(({ x, y }) => ({ x, y })), bottom_m: Math.min(...heights), top_m: Math.max(...heights), front_rad: null, isPermeable: true, ...rest }));
const hole = between(0, 2 * Math.PI);
const nozzle = fc.record({ at: fc.oneof(fc.tuple(spot, between(2, 2.65)), fc.tuple(spot, between(-0.35, -0.05))), holes_rad: fc.array(hole, { minLength: 1, maxLength: 4 }) }).map(({ at: [{ x, y }, z], holes_rad }) => ({ at: at3(x, y, z), holes_rad }));
const spec: fc.Arbitrary<LayoutSpec> = fc
  .record({ nozzles: fc.array(nozzle, { minLength: 1, maxLength: 3 }), things: fc.array(thing, { minLength: 2, maxLength: 10 }), intake: fc.option(fc.tuple(spot, fc.option(between(0.5, 2.6), { nil: null })), { nil: null }), make: fc.constantFrom('unknown', 'hard', 'tiles'), isProtected: fc.boolean() })
  .map(({ nozzles, things, intake, make, isProtected }) => ({
    room: rectangle(8, 5),
    nozzles,
    runs: [{ places: [at3(0.5, 0.5, 2.5), at3(0.5, 4, 2.5)] }],
    obstructions: things.map(({ id: _, name: __, ...each }) => each),
    enclosure: { underFloor: { depth_m: 0.4, isProtected, exclusion: null }, ceiling: { make, clipped_m: null } },
    level: intake ? { devices: { d1: { ...newDevice('air-intake', 'd1', 'Intake', intake[0]), height_m: intake[1] } } } : {},
    limits,
  }));

const findingsOf = (plan: Plan): Finding[] => {
  const derived = derivePlan(plan);
  const design = designOf(derived, () => undefined);
  return RULES.flatMap((rule) => rule.run(derived, design));
};
const verdicts = (findings: readonly Finding[]): string[] => findings.map(({ rule, subject, name, verdict }) => `${rule} ${subject.id} ${name} ${verdict}`);

describe('checks of nozzles', () => {
  test('say the same of a building wherever it stands, turned and mirrored', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(spec, anyPlacing, (layoutSpec, placing) => {
        const plan = layout(layoutSpec);
        const here = findingsOf(plan);
        expect(verdicts(findingsOf(placedPlan(plan, placing)))).toEqual(verdicts(here));
        for (const { rule, verdict } of here) seen.add(`${rule} ${verdict}`);
      }),
      { numRuns: 120 },
    );
    // The plans are worth asking: every check that finds faults found one, and kept one.
    expect(['N8 warn', 'N8 ok', 'N8 not-checked', 'N12 warn', 'N12 ok', 'N13 warn', 'N13 ok', 'N14 warn', 'N14 ok', 'N15 warn', 'N15 ok', 'N16 stop', 'N18 warn', 'N18 ok', 'N19 stop', 'N19 ok', 'N24 warn'].filter((each) => !seen.has(each))).toEqual([]);
  });
});
