import fc from 'fast-check';
import { freeze, produce } from 'immer';
import { describe, expect, test } from 'vitest';
import { moveNozzle } from '#shared/commands/move-nozzle';
import type { ClashThing, PipeContacts } from '#shared/derived/clash-contacts';
import { clashPass } from '#shared/derived/clash-pass';
import { pipeToPipe_m, pipeToSolid_m } from '#shared/derived/clash';
import { derivePlan } from '#shared/derived/derive-plan';
import { rectangle } from '#shared/geometry/outline';
import { distance3_m, planPoint } from '#shared/geometry/point';
import type { Plan } from '#shared/model/plan';
import { pipeOutside_m } from '#shared/profile/pipe-table';
import { inches_m } from '#shared/units/convert';
import { planBuilder, place3 as p } from '../../support/plan-builder.ts';
import { archive, ft } from './demo-layouts.ts';
import { anyPlacing, movedPlan } from './placed-plan.ts';

const passOf = (plan: Plan): readonly (readonly PipeContacts[])[] => clashPass(derivePlan(plan));
const radius_m = pipeOutside_m('3/4') / 2;
const straight = () => planBuilder().room(20, 20, 4).network().run([p(2, 5, 3), p(9, 5, 3)]).nozzle(9, 5, 3);

function idOf(thing: ClashThing): string {
  switch (thing.kind) {
    case 'solid':
      return thing.solid.ref.id;
    case 'pipe':
      return thing.pipe.ref.id;
    case 'ceiling':
      return thing.ceiling.enclosure.id;
    case 'floor':
      return thing.floor.enclosure.id;
    case 'wall':
      return thing.wall.face.ref.id;
  }
}

/** What a pass found, in words that do not depend on which objects say so. */
const told = (pass: readonly (readonly PipeContacts[])[], digits = 6): string[] =>
  pass.flat().flatMap(({ pipe, contacts }) =>
    contacts.map(({ thing, clearance_m }) => `${pipe.ref.id} ${thing.kind} ${idOf(thing)} ${clearance_m.toFixed(digits)}`),
  );

describe('what is near the pipe of a plan', () => {
  test('solids, nearest first, and not those of another level', () => {
    const built = straight()
      .obstruction('beam', rectangle(1, 1, planPoint(4, 5.1)), 2.5, 3.5)
      .obstruction('duct', rectangle(1, 1, planPoint(7, 5.05)), 2.5, 3.5)
      .level('Level 2', 4)
      .obstruction('beam', rectangle(1, 1, planPoint(4, 4.5)), 2.5, 3.5);
    const contacts = passOf(built.plan)[0]?.[0]?.contacts ?? [];
    expect(contacts.map(({ thing }) => thing.kind === 'solid' && thing.solid.obstruction.kind)).toEqual(['duct', 'beam']);
    expect(contacts[0]?.clearance_m).toBeCloseTo(0.05 - radius_m, 12);
  });

  test('F2: the main lies clear under the beam; raised to 8 ft 1 in it has 0.17 in left', () => {
    const least_m = (raise_m: number) => {
      const built = archive();
      for (const { at } of Object.values(Object.values(built.plan.networks)[0]?.nodes ?? {})) if (Math.abs(at.z - ft(7, 10)) < 1e-9) at.z += raise_m;
      return Math.min(...passOf(built.plan).flat().flatMap(({ contacts }) => contacts.map(({ clearance_m }) => clearance_m)));
    };
    expect(least_m(0)).toBeCloseTo(inches_m(4 - 1.66 / 2), 9);
    expect(least_m(ft(0, 3))).toBeCloseTo(inches_m(0.17), 9);
  });

  test('pipes of any network, each pair once, but not those joined at a node', () => {
    const built = straight().run([p(9, 5, 3), p(9, 9, 3)]).run([p(2, 5.2, 3), p(8, 5.2, 3)]).network().run([p(4, 1, 3.1), p(4, 9, 3.1)]);
    const pass = passOf(built.plan);
    expect(pass.map((network) => network.map(({ contacts }) => contacts.length))).toEqual([[2, 0, 1], [0]]);
    expect(pass[0]?.[0]?.contacts[0]?.clearance_m).toBeCloseTo(0.1 - 2 * radius_m, 12);
  });

  test('a return bend over one short nipple is no clash, over a longer way it is', () => {
    const pairs = (gap_m: number) => told(passOf(straight().run([p(9, 5, 3), p(9, 5 + gap_m, 3), p(2, 5 + gap_m, 3)]).plan)).length;
    expect(pairs(0.06)).toBe(0);
    const back = straight().run([p(9, 5, 3), p(9, 6, 3), p(8, 6, 3), p(8, 5.03, 3)]);
    expect(told(passOf(back.plan))).toHaveLength(1);
  });

  const dm = fc.integer({ min: 0, max: 60 }).map((n) => n / 10);
  const place = fc.record({ x: dm, y: dm, z: dm });
  const building = fc
    .record({
      runs: fc.array(fc.tuple(place, place), { minLength: 2, maxLength: 10 }),
      things: fc.array(fc.record({ at: place, width: fc.integer({ min: 1, max: 9 }), height: fc.integer({ min: 0, max: 9 }) }), { maxLength: 6 }),
    })
    .map(({ runs, things }) => {
      const built = planBuilder().room(20, 20, 9);
      for (const { at, width, height } of things) built.obstruction('other', rectangle(width / 10, 0.5, at), at.z, at.z + height / 10);
      for (const [from, to] of runs) if (distance3_m(from, to) > 0) built.network().run([from, to]);
      return built;
    });

  test('misses nothing that asking every pair finds', () => {
    fc.assert(
      fc.property(building, (built) => {
        const derived = derivePlan(built.plan);
        const pipes = derived.networks.flatMap((network) => network.pipes);
        const within_m = 0.25;
        const tried: string[] = [];
        for (const [i, pipe] of pipes.entries()) {
          for (const solid of derived.solids) if (pipeToSolid_m(pipe, solid) <= within_m) tried.push(`${pipe.ref.id} solid ${solid.ref.id} ${pipeToSolid_m(pipe, solid).toFixed(6)}`);
          for (const other of pipes.slice(i + 1)) if (pipeToPipe_m(pipe, other) <= within_m) tried.push(`${pipe.ref.id} pipe ${other.ref.id} ${pipeToPipe_m(pipe, other).toFixed(6)}`);
        }
        const found = told(clashPass(derived)).filter((each) => each.includes(' solid ') || each.includes(' pipe '));
        expect(found).toEqual(expect.arrayContaining(tried));
        // What it finds beyond lies between there and the clearance that the sample profile wants besides.
        expect(found.filter((each) => !tried.includes(each)).every((each) => Number(each.split(' ')[3]) > within_m)).toBe(true);
      }),
      { numRuns: 100 },
    );
  });

  test('does not change when the building is turned, shifted or mirrored', () => {
    const built = archive();
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        // Told apart from their figures, so that float noise cannot fall on either side of a rounding.
        const facts = (plan: Plan): [string, number][] =>
          told(passOf(plan), 12)
            .map((each): [string, number] => [each.slice(0, each.lastIndexOf(' ')), Number(each.slice(each.lastIndexOf(' ')))])
            .sort(([a], [b]) => (a < b ? -1 : 1));
        const [moved, drawn] = [facts(movedPlan(built.plan, placing)), facts(built.plan)];
        expect(moved.map(([what]) => what)).toEqual(drawn.map(([what]) => what));
        for (const [k, [, clearance_m]] of moved.entries()) expect(clearance_m).toBeCloseTo(drawn[k]?.[1] ?? NaN, 6);
      }),
      { numRuns: 20 },
    );
  });
});

describe('after an edit', () => {
  const plan = freeze(
    straight()
      .obstruction('beam', rectangle(1, 1, planPoint(4, 5.1)), 2.5, 3.5)
      .network()
      .run([p(2, 15, 3), p(9, 15, 3)])
      .obstruction('beam', rectangle(1, 1, planPoint(4, 15.1)), 2.5, 3.5).plan,
    true,
  );
  const [network] = Object.values(plan.networks);
  const [nozzle] = Object.values(network?.nozzles ?? {});
  const moved = (x: number, y: number): Plan => {
    const outcome = moveNozzle({ kind: 'nozzle', network: network?.id ?? '', id: nozzle?.id ?? '' }, p(x, y, 3))(plan);
    if (!outcome.ok) throw new Error(outcome.reason);
    return outcome.next;
  };

  test('only what it touches is asked again', () => {
    const before = passOf(plan);
    const after = passOf(moved(9, 4.9));
    expect(after[0]).not.toBe(before[0]);
    expect(after[1]).toBe(before[1]);
  });

  test('the answer is what a fresh pass gives, also where a thing has moved', () => {
    passOf(plan);
    const next = produce(plan, (draft) => {
      for (const { obstructions } of Object.values(draft.levels)) for (const corner of Object.values(obstructions)[0]?.footprint ?? []) corner.y += 0.05;
    });
    for (const edited of [moved(9, 5.2), next, moved(8, 15.2), plan]) expect(told(passOf(edited))).toEqual(told(passOf(structuredClone(edited))));
    const before = passOf({ ...plan });
    const after = passOf({ ...next });
    expect(after[0]).not.toBe(before[0]);
    expect(after[1]).toBe(before[1]);
  });

  test('of one large network only the pipes near the edit are asked again', () => {
    const built = planBuilder().room(200, 20, 4).network();
    for (let i = 0; i < 100; i += 1) built.run([p(1 + 1.9 * i, 5, 3), p(2.9 + 1.9 * i, 5, 3)]).run([p(2.9 + 1.9 * i, 5, 3), p(2.9 + 1.9 * i, 8, 3)]);
    const large = freeze(built.plan, true);
    const [id = ''] = Object.keys(large.networks);
    const far = built.nodeAt(2.9, 8, 3).id;
    const before = passOf(large)[0] ?? [];
    const after = passOf(
      produce(large, (draft) => {
        const node = draft.networks[id]?.nodes[far];
        if (node) node.at = { ...node.at, y: 8.5 };
      }),
    )[0] ?? [];
    expect(after.filter((each, i) => each !== before[i]).length).toBeLessThanOrEqual(4);
    expect(after).toHaveLength(before.length);
  });

  const dm = fc.integer({ min: 0, max: 60 }).map((n) => n / 10);
  const place = fc.record({ x: dm, y: dm, z: dm });
  const edit = fc.record({ what: fc.constantFrom('node', 'drop pipe', 'add pipe', 'beam', 'wall', 'height', 'clearance', 'void', 'insulation'), which: fc.nat(20), to: place });

  /** One change of a plan: what it touches is another object, all else the very same. */
  const edited = (before: Plan, { what, which, to }: { what: string; which: number; to: { x: number; y: number; z: number } }): Plan =>
    produce(before, (draft) => {
      const networks = Object.values(draft.networks);
      const changed = networks[which % networks.length];
      const nodes = Object.values(changed?.nodes ?? {});
      const pipes = Object.values(changed?.pipes ?? {});
      const [level] = Object.values(draft.levels);
      const [room] = Object.values(level?.enclosures ?? {});
      const [profile] = Object.values(draft.profiles);
      const pipe = pipes[which % pipes.length];
      if (!changed || !room || !level || !pipe) return;
      if (what === 'node') (nodes[which % nodes.length] ?? { at: to }).at = { ...to };
      if (what === 'drop pipe') delete changed.pipes[pipe.id];
      if (what === 'add pipe') {
        const id = `added-${Object.keys(changed.pipes).length}-${which}`;
        changed.nodes[id] = { id, part: null, at: { ...to } };
        changed.pipes[id] = { ...pipe, id, to: id };
      }
      if (what === 'beam') for (const corner of Object.values(level.obstructions)[0]?.footprint ?? []) corner.x += to.x / 60;
      if (what === 'wall') (room.outline[which % 4] ?? { x: 0 }).x += to.x / 60;
      if (what === 'height') room.height_m = 3 + to.z;
      if (what === 'clearance' && profile) profile.limits.pipeClearance_m = { value: to.z / 50, source: 'test' };
      if (what === 'void') room.underFloor = which % 2 ? null : { depth_m: 0.1 + to.z / 10, isProtected: false, exclusion: null };
      if (what === 'insulation') pipe.insulation_m = to.z / 100;
    });

  test('whatever is edited, one edit after the other, the answer is what a fresh pass gives', () => {
    const start = freeze(
      planBuilder()
        .room(7, 7, 4)
        .room(7, 7, 4, planPoint(7.15, 0))
        .obstruction('beam', rectangle(1, 1, planPoint(4, 5.1)), 2.5, 3.5)
        .network()
        .run([p(1, 5, 3), p(3, 5, 3), p(6, 5, 3), p(6, 5, 2)])
        .run([p(3, 5, 3), p(3, 1, 3), p(3, 1, 0.5)])
        .network()
        .run([p(1, 4, 3.1), p(5, 4, 3.1), p(5, 6, 3.1)]).plan,
      true,
    );
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 6 }), (edits) => {
        let now = start;
        passOf(now);
        for (const each of edits) {
          now = edited(now, each);
          expect(told(passOf(now))).toEqual(told(passOf(structuredClone(now))));
          // Back on the kept track: the clone has pushed it out.
          passOf({ ...now });
        }
      }),
      { numRuns: 60 },
    );
  });
});
