import { freeze, produce } from 'immer';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { workedDischarge } from '#shared/calculations/discharge/worked-discharge';
import { calculationsOf } from '#shared/calculations/lines/calculations-of';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { movePipeNode } from '#shared/commands/move-pipe-node';
import { moveThings } from '#shared/commands/move-things';
import { type Evaluation, evaluate } from '#shared/evaluate';
import { makeLive } from '#shared/live';
import type { PlanPoint3 } from '#shared/geometry/point';
import { refKey, type Plan } from '#shared/model/plan';
import { type CheckContext, defineRule } from '#shared/rules/rule';
import type { RuleFindings } from '#shared/rules/rule-findings';
import { type NozzleSubject, nozzleSubjects } from '#shared/rules/subjects';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { place3 } from '../../support/plan-builder.ts';
import { KNOWN_ROOM, finishRoom, wholePlan } from '../../support/whole-plan.ts';

/** Two rooms, each with its own unit. */
function twoRooms(): Plan {
  const built = wholePlan();
  finishRoom(built.room(4, 3, 2.6, { x: 6, y: 0 }, structuredClone(KNOWN_ROOM)), 0.03)
    .network()
    .cylinder(6.2, 0.5, Math.PI)
    .run([place3(6.2, 0.5, 2), place3(6.2, 0.5, 2.3), place3(8, 0.5, 2.3), place3(8, 0.5, 2.2)])
    .nozzle(8, 0.5, 2.2, [0, Math.PI], { orificeArea_m2: 2.2e-5 })
    .support(7, 0.5, 2.3);
  return freeze(built.plan, true);
}

const none = () => undefined;
const pick = fc.nat(1000);
const number = fc.integer({ min: -100, max: 1000 }).map((n) => n / 100);
const one = <T>(things: readonly T[], i: number): T | undefined => things[i % Math.max(1, things.length)];
const anyNetwork = (draft: Plan, i: number) => one(Object.values(draft.networks), i);
const anyEnclosure = (draft: Plan, i: number) => one(Object.values(draft.levels).flatMap(({ enclosures }) => Object.values(enclosures)), i);

const anyChange: fc.Arbitrary<(draft: Plan) => void> = fc.oneof(
  fc.tuple(pick, pick, number, number).map(([i, j, x, y]) => (draft: Plan) => {
    const node = one(Object.values(anyNetwork(draft, i)?.nodes ?? {}), j);
    if (node) Object.assign(node.at, { x, y });
  }),
  fc.tuple(pick, pick, number).map(([i, j, x]) => (draft: Plan) => {
    const corner = one(anyEnclosure(draft, i)?.outline ?? [], j);
    if (corner) Object.assign(corner, { x });
  }),
  fc.tuple(pick, fc.constantFrom('Vault', 'Store')).map(([i, name]) => (draft: Plan) => {
    const room = anyEnclosure(draft, i);
    if (room) room.name = name;
  }),
  fc.tuple(pick, fc.constantFrom(null, 38, 45)).map(([i, concentration_pct]) => (draft: Plan) => {
    const room = anyEnclosure(draft, i);
    if (room) room.concentration_pct = concentration_pct;
  }),
  fc.tuple(pick, fc.constantFrom('Unit A', 'Unit B')).map(([i, name]) => (draft: Plan) => {
    const network = anyNetwork(draft, i);
    if (network) network.name = name;
  }),
  pick.map((i) => (draft: Plan) => {
    const network = anyNetwork(draft, i);
    if (network) network.supports = {};
  }),
  fc.tuple(pick, pick, number, number, number).map(([i, j, x, y, back_rad]) => (draft: Plan) => {
    const cylinder = one(Object.values(anyNetwork(draft, i)?.cylinders ?? {}), j);
    if (cylinder) Object.assign(cylinder, { at: { x, y }, back_rad });
  }),
  fc.tuple(pick, pick, number, number, number).map(([i, j, x, y, z]) => (draft: Plan) => {
    const cylinder = one(Object.values(anyNetwork(draft, i)?.cylinders ?? {}), j);
    if (cylinder) cylinder.hoseEnd = { x, y, z };
  }),
  fc.tuple(pick, pick, number).map(([i, j, z]) => (draft: Plan) => {
    const support = one(Object.values(anyNetwork(draft, i)?.supports ?? {}), j);
    if (support) support.at.z = z;
  }),
  fc.tuple(pick, pick, fc.constantFrom(0, 0.025), fc.constantFrom('threaded' as const, 'welded' as const)).map(([i, j, insulation_m, joint]) => (draft: Plan) => {
    const pipe = one(Object.values(anyNetwork(draft, i)?.pipes ?? {}), j);
    if (pipe) Object.assign(pipe, { insulation_m, joint });
  }),
  fc.tuple(pick, pick, number, number).map(([i, j, x, y]) => (draft: Plan) => {
    const thing = one(Object.values(draft.levels).flatMap(({ obstructions }) => Object.values(obstructions)), i);
    const corner = one(thing?.footprint ?? [], j);
    if (corner) Object.assign(corner, { x, y });
  }),
  fc.constantFrom('unknown' as const, 'not-required' as const, 'required' as const).map((seismic) => (draft: Plan) => {
    draft.basis.seismic = seismic;
  }),
  fc.constantFrom(0.2, 0.4, 1.2).map((width) => (draft: Plan) => {
    for (const { limits } of Object.values(draft.profiles)) if (limits.removalWidth_m) limits.removalWidth_m.value = width;
  }),
  fc.constantFrom('feet' as const, 'metric' as const).map((lengths) => (draft: Plan) => {
    draft.settings.lengths = lengths;
  }),
  fc.constantFrom('older' as const, 'newer' as const).map((stressSet) => (draft: Plan) => {
    draft.basis.stressSet = stressSet;
  }),
  fc.constantFrom('stricter' as const, 'oxygen' as const, 'concentration' as const).map((exposureBy) => (draft: Plan) => {
    draft.basis.exposureBy = exposureBy;
  }),
  fc.constantFrom(10, 60, null).map((greatestDelay_s) => (draft: Plan) => {
    draft.basis.greatestDelay_s = greatestDelay_s;
  }),
  fc.constantFrom(0.02, 0.5, 2).map((peak) => (draft: Plan) => {
    for (const { limits } of Object.values(draft.profiles)) if (limits.peakFlow_kg_s) limits.peakFlow_kg_s.value = peak;
  }),
);

/** What somebody reads of an evaluation. */
const read = (evaluation: Evaluation) => ({ findings: evaluation.findings, lines: calculationsOf(evaluation) });

describe('what is kept of the last plan', () => {
  const source = workedDischarge();

  test('findings and lines after any changes are those of a plan that is seen for the first time', () => {
    fc.assert(
      fc.property(fc.array(anyChange, { minLength: 1, maxLength: 6 }), (changes) => {
        let plan = twoRooms();
        const live = makeLive();
        read(live.check(plan, none));
        for (const change of changes) {
          plan = produce(plan, change);
          expect(read(live.check(plan, none))).toEqual(read(evaluate(structuredClone(plan))));
        }
      }),
      { numRuns: 30 },
    );
  }, 300_000);

  test.each(['F1', 'F2', 'F3'] as const)('so they are after any drags of the demo %s', async (demo) => {
    const { plan: start } = await buildDemo(demo);
    const offset = fc.integer({ min: -60, max: 60 }).map((n) => n / 100);
    const drag = fc.tuple(fc.constantFrom('nozzle' as const, 'node' as const, 'cylinder' as const), pick, pick, offset, offset, offset);
    fc.assert(
      fc.property(fc.array(drag, { minLength: 2, maxLength: 5 }), (drags) => {
        let plan = start;
        const live = makeLive();
        read(live.check(plan, none));
        for (const [kind, i, j, x, y, z] of drags) {
          const network = anyNetwork(plan, i);
          if (!network) continue;
          const moved = (at: PlanPoint3): PlanPoint3 => ({ x: at.x + x, y: at.y + y, z: at.z + z });
          const nozzle = one(Object.values(network.nozzles), j);
          const node = kind === 'nozzle' ? network.nodes[nozzle?.node ?? ''] : one(Object.values(network.nodes), j);
          const cylinder = one(Object.values(network.cylinders), j);
          if (!node || !nozzle || !cylinder) continue;
          const outcome =
            kind === 'nozzle'
              ? moveNozzle({ kind, network: network.id, id: nozzle.id }, moved(node.at))(plan)
              : kind === 'node'
                ? movePipeNode({ kind, network: network.id, id: node.id }, moved(node.at))(plan)
                : moveThings([{ kind, network: network.id, id: cylinder.id }], x, y)(plan);
          if (!outcome.ok) continue;
          plan = outcome.next;
          expect(read(live.check(plan, none))).toEqual(read(evaluate(structuredClone(plan))));
        }
      }),
      { numRuns: 8 },
    );
  });

  test('so they are with discharges', () => {
    const start = twoRooms();
    const kept = makeLive();
    read(kept.check(start, source));
    const moved = produce(start, (draft) => {
      const node = Object.values(anyNetwork(draft, 0)?.nodes ?? {}).find(({ at }) => at.z === 2.2);
      if (node) node.at.x -= 0.2;
    });
    const live = read(kept.check(moved, source));
    expect(live).toEqual(read(evaluate(structuredClone(moved), source)));
    expect(live.lines.some(({ topic, lines }) => topic === 'discharge' && lines.length > 10)).toBe(true);
  });

  test('a nozzle that moves leaves every finding, design and line of the other room untouched', () => {
    const start = twoRooms();
    const live = makeLive();
    const before = live.check(start, source);
    const after = live.check(
      produce(start, (draft) => {
        const node = Object.values(anyNetwork(draft, 0)?.nodes ?? {}).find(({ at }) => at.z === 2.2);
        if (node) node.at.x += 0.1;
      }),
      source,
    );
    expect(after.design.networks[0]).not.toBe(before.design.networks[0]);
    expect(after.design.networks[1]).toBe(before.design.networks[1]);
    expect(after.design.enclosures[1]).toBe(before.design.enclosures[1]);
    const other = refKey(after.design.networks[1]?.ref ?? { kind: 'network', id: '' });
    const linesOf = (evaluation: Evaluation) => calculationsOf(evaluation, (ref) => refKey(ref) === other);
    expect(linesOf(after)).toHaveLength(6);
    for (const [i, lines] of linesOf(after).entries()) expect(lines).toBe(linesOf(before)[i]);
    const about = (evaluation: Evaluation) => evaluation.findings.filter(({ rule, subject }) => rule.startsWith('P1') && (subject.kind === 'network' || subject.kind === 'pipe') && refKey(subject).includes(after.design.networks[1]?.ref.id ?? '?'));
    expect(about(after).length).toBeGreaterThan(0);
    for (const [i, finding] of about(after).entries()) expect(finding).toBe(about(before)[i]);
  });

  test('a plan that is not frozen is asked about anew', () => {
    const built = wholePlan();
    const live = makeLive();
    const spans = () => live.check(built.plan, none).findings.filter(({ rule }) => rule === 'L1').map(({ verdict }) => verdict);
    const before = spans();
    for (const network of Object.values(built.plan.networks)) network.release = null;
    expect(spans()).not.toEqual(before);
  });
});

describe('a check', () => {
  const asked: string[] = [];
  const ruleThat = (look: (context: CheckContext) => unknown) =>
    defineRule<NozzleSubject>({
      id: 'X1',
      title: 'Try',
      severity: 'note',
      measure: 'count',
      basis: { formula: '', source: '' },
      subjects: nozzleSubjects,
      check(nozzle, context) {
        asked.push(nozzle.nozzle.id);
        look(context);
        return { kind: 'judged', isKept: true, text: '' };
      },
    });
  const timesAsked = (rule: ReturnType<typeof ruleThat>): number => {
    const plan = twoRooms();
    const renamed = produce(plan, (draft) => {
      draft.info.project = 'Renamed';
    });
    asked.length = 0;
    let found: RuleFindings | undefined;
    for (const each of [plan, renamed]) {
      const { derived, design } = evaluate(each);
      found = rule.ask(derived, design, found);
    }
    return asked.length;
  };

  test('of its subject alone is asked once', () => {
    expect(timesAsked(ruleThat(({ lengths, basis, levels }) => [lengths, basis, levels]))).toBe(2);
  });
  test('that looks at the whole plan is asked every time', () => {
    expect(timesAsked(ruleThat(({ derived }) => derived.nozzles))).toBe(4);
    expect(timesAsked(ruleThat(({ design }) => design.networks))).toBe(4);
  });
});
