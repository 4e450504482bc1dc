import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addNozzle } from '#shared/commands/add-nozzle';
import { applyCure } from '#shared/commands/apply-cure';
import { editNozzle } from '#shared/commands/edit-nozzle';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { setHeight } from '#shared/commands/nozzle-drops';
import { setNozzleHeight } from '#shared/commands/set-nozzle-height';
import { turnNozzle } from '#shared/commands/turn-nozzle';
import { type Plan, newPlan } from '#shared/model/plan';
import { feet_m, inches_m } from '#shared/units/convert';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { done, networkIn, nozzlePlace, only, pipesAsText, refusal } from '../../support/try-command.ts';

const HOLES = [0, Math.PI];
const pipes = (plan: Plan): string[] => pipesAsText(networkIn(plan));
const simple = () => planBuilder().network().run([place3(0, 0, 2), place3(0, 0, 2.5), place3(4, 0, 2.5), place3(4, 0, 2.3)]).nozzle(4, 0, 2.3);
const placeOf = (plan: Plan, name = 'N1'): number[] => {
  const nozzle = Object.values(networkIn(plan).nozzles).find((each) => each.name === name);
  return nozzlePlace(networkIn(plan), nozzle?.id ?? '');
};

describe('addNozzle', () => {
  test('stands free where there is no pipe, in a new network', () => {
    const { next, created } = done(newPlan(), addNozzle(null, place3(1, 2, 2.4), [-Math.PI / 2, 0], 'level-0'));
    const nozzle = only(networkIn(next).nozzles);
    expect(nozzle).toMatchObject({ name: 'N1', rotation_rad: 0, tilt_rad: 0, orificeArea_m2: null, serves: null });
    expect(nozzle.holes_rad[0]).toBeCloseTo(1.5 * Math.PI, 12);
    expect(placeOf(next)).toEqual([1, 2, 2.4]);
    expect(created).toEqual([{ kind: 'nozzle', network: networkIn(next).id, id: nozzle.id }]);
    expect(done(newPlan(), addNozzle(null, place3(1, 2, 2.4), HOLES)).next.networks).toEqual(done(newPlan(), addNozzle(null, place3(1, 2, 2.4), HOLES, 'level-0')).next.networks);
  });
  test('uses the open pipe end that is there', () => {
    const built = planBuilder().network().run([place3(0, 0, 2), place3(4, 0, 2)]);
    const { next } = done(built.plan, addNozzle(null, place3(4, 0.0005, 2), HOLES, 'level-0'));
    expect(only(networkIn(next).nozzles).node).toBe(built.nodeAt(4, 0, 2).id);
    expect(Object.keys(networkIn(next).nodes)).toHaveLength(2);
  });
  test('drops from the open end over it, on the same side of the floor', () => {
    const built = planBuilder().network().run([place3(0, 0, 2.5), place3(4, 0, 2.5)], '1');
    const { next } = done(built.plan, addNozzle(null, place3(4, 0, 2.3), HOLES, 'level-0'));
    expect(pipes(next)).toEqual(['0,0,2.5 → 4,0,2.5', '4,0,2.5 → 4,0,2.3']);
    expect(Object.values(networkIn(next).pipes).map(({ size }) => size)).toEqual(['1', '1']);
    expect(pipes(done(built.plan, addNozzle(null, place3(4, 0, -0.2), HOLES, 'level-0')).next)).toHaveLength(1);
  });
  test('cuts the pipe that it is placed on', () => {
    const built = planBuilder().network().run([place3(0, 0, 2), place3(4, 0, 2)]);
    expect(pipes(done(built.plan, addNozzle(null, place3(1, 0, 2), HOLES, 'level-0')).next)).toEqual(['0,0,2 → 1,0,2', '1,0,2 → 4,0,2']);
  });
  test('goes to the nearest network of the level when none is named', () => {
    const built = planBuilder().network().cylinder(0, 0, 0).network().cylinder(50, 0, 0);
    const [near, far] = Object.keys(built.plan.networks);
    expect(Object.keys(done(built.plan, addNozzle(null, place3(2, 2, 2), HOLES, 'level-0')).next.networks[near ?? '']?.nozzles ?? {})).toHaveLength(1);
    expect(Object.keys(done(built.plan, addNozzle(null, place3(48, 2, 2), HOLES, 'level-0')).next.networks[far ?? '']?.nozzles ?? {})).toHaveLength(1);
    const upper = planBuilder().network().cylinder(0, 0, 0).network().cylinder(50, 0, 0).level('Upper', 3);
    expect(Object.keys(done(upper.plan, addNozzle(null, place3(2, 2, 2), HOLES, upper.levelId)).next.networks)).toHaveLength(3);
  });
  test('is called N above the floor and U under it, in turn', () => {
    const built = planBuilder().network().nozzle(0, 0, 2);
    let { plan } = built;
    for (const z of [2, -0.2, -0.2, 2]) plan = done(plan, addNozzle(built.networkId, place3(Object.keys(networkIn(plan).nozzles).length, 3, z), HOLES)).next;
    expect(Object.values(networkIn(plan).nozzles).map(({ name }) => name)).toEqual(['N1', 'N2', 'U1', 'U2', 'N3']);
  });
  test('is refused where one is already, without network, and without a place', () => {
    const built = simple();
    expect(refusal(built.plan, addNozzle(null, place3(4, 0, 2.3), HOLES, 'level-0'))).toContain('“N1” is already here');
    expect(refusal(built.plan, addNozzle('gone', place3(1, 1, 2), HOLES))).toContain('network is no longer');
    expect(refusal(built.plan, addNozzle(null, place3(Number.NaN, 1, 2), HOLES, 'level-0'))).toContain('too far off');
    expect(refusal(built.plan, addNozzle(null, place3(1, 1, 2), [Number.NaN], 'level-0'))).toContain('degrees');
    expect(refusal(built.plan, addNozzle(null, place3(1, 1, 2), Array.from({ length: 361 }, () => 0), 'level-0'))).toContain('360');
  });
});

describe('moveNozzle', () => {
  test('takes its drop along, the run to it stretches, and the label names it', () => {
    const built = simple();
    const outcome = done(built.plan, moveNozzle(built.lastNozzle, place3(5, 0, 2.3)));
    expect(pipes(outcome.next)).toEqual(['0,0,2 → 0,0,2.5', '0,0,2.5 → 5,0,2.5', '5,0,2.5 → 5,0,2.3']);
    expect(outcome.label).toBe('Move nozzle N1');
  });

  test('demo hut: moved from (8-0, 5-6) to (9-9, 5-6), the run grows by 1-9 and keeps its three elbows', () => {
    const ft = (feet: number, inches = 0): number => feet_m(feet) + inches_m(inches);
    const built = planBuilder().network().run([place3(ft(0, 9), ft(9, 6), ft(6, 6)), place3(ft(0, 9), ft(9, 6), ft(7, 8)), place3(ft(8), ft(9, 6), ft(7, 8)), place3(ft(8), ft(5, 6), ft(7, 8)), place3(ft(8), ft(5, 6), ft(7, 4))]).nozzle(ft(8), ft(5, 6), ft(7, 4));
    const lengthOf = (plan: Plan): number => {
      const { nodes, pipes: laid } = networkIn(plan);
      return Object.values(laid).reduce((sum, { from, to }) => sum + Math.hypot(...(['x', 'y', 'z'] as const).map((axis) => (nodes[to]?.at[axis] ?? 0) - (nodes[from]?.at[axis] ?? 0))), 0);
    };
    const { next } = done(built.plan, moveNozzle(built.lastNozzle, place3(ft(9, 9), ft(5, 6), ft(7, 4))));
    expect(lengthOf(built.plan)).toBeCloseTo(ft(12, 9), 9);
    expect(lengthOf(next)).toBeCloseTo(ft(12, 9) + ft(1, 9), 9);
    for (const { from, to } of Object.values(networkIn(next).pipes)) {
      const [a, b] = [networkIn(next).nodes[from]?.at, networkIn(next).nodes[to]?.at];
      const isSquare = a && b && [a.x - b.x, a.y - b.y, a.z - b.z].filter((d) => Math.abs(d) > 1e-9).length === 1;
      expect(isSquare).toBe(true);
    }
  });

  test('a branch does not slide: the arm goes askew and the main stays', () => {
    const built = planBuilder().network().run([place3(0, 0, 2.5), place3(4, 0, 2.5), place3(8, 0, 2.5)]).run([place3(4, 0, 2.5), place3(4, 3, 2.5), place3(4, 3, 2.3)]).nozzle(4, 3, 2.3);
    expect(pipes(done(built.plan, moveNozzle(built.lastNozzle, place3(5, 3, 2.3))).next)).toEqual(['0,0,2.5 → 4,0,2.5', '4,0,2.5 → 5,3,2.5', '4,0,2.5 → 8,0,2.5', '5,3,2.5 → 5,3,2.3']);
  });

  test('an elbow that would turn its run back stays', () => {
    const built = planBuilder().network().run([place3(0, 0, 2.5), place3(1, 0, 2.5), place3(1, 4, 2.5)]).nozzle(1, 4, 2.5);
    expect(pipes(done(built.plan, moveNozzle(built.lastNozzle, place3(-3, 4, 2.5))).next)).toEqual(['0,0,2.5 → 1,0,2.5', '1,0,2.5 → -3,4,2.5']);
  });

  test('its height changes the drop alone', () => {
    const built = simple();
    expect(pipes(done(built.plan, moveNozzle(built.lastNozzle, place3(4, 0, 2.1))).next)).toEqual(['0,0,2 → 0,0,2.5', '0,0,2.5 → 4,0,2.5', '4,0,2.5 → 4,0,2.1']);
  });

  test('a free one joins the pipe end it is moved onto, one with a drop does not', () => {
    const built = planBuilder().network().run([place3(0, 0, 2), place3(4, 0, 2)]).nozzle(1, 3, 2);
    const { next } = done(built.plan, moveNozzle(built.lastNozzle, place3(4, 0, 2)));
    expect(only(networkIn(next).nozzles).node).toBe(built.nodeAt(4, 0, 2).id);
    expect(Object.keys(networkIn(next).nodes)).toHaveLength(2);
  });

  test('upright pipe stays upright, wherever it is moved', () => {
    const far = fc.double({ min: -20, max: 20, noNaN: true });
    fc.assert(
      fc.property(far, far, (x, y) => {
        const built = planBuilder().network().run([place3(0, 0, 2), place3(0, 0, 2.5), place3(4, 0, 2.5), place3(4, 3, 2.5), place3(4, 3, 2.4), place3(4, 3, 2.3)]).nozzle(4, 3, 2.3);
        const outcome = moveNozzle(built.lastNozzle, place3(x, y, 2.3))(built.plan);
        if (!outcome.ok) return;
        const { nodes, pipes: laid } = networkIn(outcome.next);
        const before = networkIn(built.plan);
        for (const pipe of Object.values(before.pipes)) {
          const [a, b] = [before.nodes[pipe.from]?.at, before.nodes[pipe.to]?.at];
          const after = laid[pipe.id];
          const [c, d] = [nodes[after?.from ?? '']?.at, nodes[after?.to ?? '']?.at];
          if (a && b && a.x === b.x && a.y === b.y) expect(Math.hypot((c?.x ?? 0) - (d?.x ?? 0), (c?.y ?? 0) - (d?.y ?? 0))).toBeLessThan(1e-9);
        }
        expect(placeOf(outcome.next)).toEqual([x, y, 2.3].map((v) => Math.round(v * 1e4) / 1e4 + 0));
      }),
    );
  });

  test('is refused where a pipe would have no length, and when it has gone', () => {
    const built = simple();
    expect(refusal(built.plan, moveNozzle(built.lastNozzle, place3(0, 0, 2.3)))).toContain('no length');
    expect(refusal(built.plan, moveNozzle({ ...built.lastNozzle, id: 'gone' }, place3(0, 0, 0)))).toBe('This nozzle is no longer in the plan.');
    expect(refusal(built.plan, moveNozzle({ ...built.lastNozzle, network: 'gone' }, place3(0, 0, 0)))).toBe('This network is no longer in the plan.');
    const two = planBuilder().network().nozzle(1, 1, 2).nozzle(3, 1, 2);
    expect(refusal(two.plan, moveNozzle(two.lastNozzle, place3(1, 1, 2)))).toContain('“N1” is already there');
  });
});

describe('setNozzleHeight', () => {
  test('undo names the nozzle, as it does after any other change of one', () => {
    const built = simple();
    expect(done(built.plan, setNozzleHeight(built.lastNozzle, 2.2)).label).toBe('Set height of nozzle N1');
    expect(done(built.plan, editNozzle(built.lastNozzle, { tilt_rad: 0.1 })).label).toBe('Edit nozzle N1');
  });
  test('lengthens the drop', () => {
    const built = simple();
    expect(placeOf(done(built.plan, setNozzleHeight(built.lastNozzle, 2)).next)).toEqual([4, 0, 2]);
  });
  test('gives a nozzle straight on a run a drop, and takes it away again', () => {
    const built = planBuilder().network().run([place3(0, 0, 2.5), place3(4, 0, 2.5)], '1').nozzle(4, 0, 2.5);
    const { next } = done(built.plan, setNozzleHeight(built.lastNozzle, 2.2));
    expect(pipes(next)).toEqual(['0,0,2.5 → 4,0,2.5', '4,0,2.5 → 4,0,2.2']);
    expect(networkIn(next).source).toBe(networkIn(built.plan).source);
    expect(pipes(done(next, setNozzleHeight(built.lastNozzle, 2.5)).next)).toEqual(['0,0,2.5 → 4,0,2.5']);
    expect(done(built.plan, setNozzleHeight(built.lastNozzle, 2.5)).patches).toEqual([]);
  });
  test('moves a free nozzle', () => {
    const built = planBuilder().network().nozzle(1, 1, 2);
    expect(placeOf(done(built.plan, setNozzleHeight(built.lastNozzle, -0.2)).next)).toEqual([1, 1, -0.2]);
  });
  test('is refused without a number, when gone, and up to a run that has a nozzle', () => {
    const built = simple();
    expect(refusal(built.plan, setNozzleHeight(built.lastNozzle, Number.NaN))).toContain('too far off');
    expect(refusal(built.plan, setNozzleHeight({ ...built.lastNozzle, id: 'gone' }, 2))).toContain('nozzle is no longer');
    const above = simple().nozzle(4, 0, 2.5);
    const lower = Object.values(networkIn(above.plan).nozzles)[0];
    expect(refusal(above.plan, setNozzleHeight({ ...above.lastNozzle, id: lower?.id ?? '' }, 2.5))).toContain('“N2” is already there');
  });
  test('the part does the same on its own', () => {
    const plan = structuredClone(simple().plan);
    setHeight(plan, networkIn(plan), only(networkIn(plan).nozzles), 2.1);
    expect(placeOf(plan)).toEqual([4, 0, 2.1]);
  });
});

describe('turnNozzle and editNozzle', () => {
  const built = simple().nozzle(9, 9, 2).room(20, 20, 3);
  const ref = built.lastNozzle;
  const nozzleIn = (plan: Plan) => networkIn(plan).nozzles[ref.id];
  test('turn and change', () => {
    expect(nozzleIn(done(built.plan, turnNozzle(ref, -Math.PI / 4)).next)?.rotation_rad).toBeCloseTo(1.75 * Math.PI, 12);
    const serves = { enclosure: built.enclosure.id, space: 'under-floor' } as const;
    expect(nozzleIn(done(built.plan, editNozzle(ref, { name: 'N7', holes_rad: [1], tilt_rad: 0.1, orificeArea_m2: 1e-5, serves, rotation_rad: 2 })).next)).toMatchObject({ name: 'N7', holes_rad: [1], tilt_rad: 0.1, orificeArea_m2: 1e-5, serves, rotation_rad: 2 });
  });
  test.each<[string, Parameters<typeof editNozzle>[1], string]>([
    ['a name that another has', { name: 'N1' }, 'Another nozzle is called “N1”'],
    ['no name', { name: '' }, 'needs a name'],
    ['a tilt beyond half a turn', { tilt_rad: 4 }, 'Tilt must be at most'],
    ['a space that has gone', { serves: { enclosure: 'gone', space: 'room' } }, 'enclosure is no longer'],
    ['an area below 0', { orificeArea_m2: -1 }, 'Orifice area cannot be less than 0'],
  ])('are refused for %s', (_, change, reason) => {
    expect(refusal(built.plan, editNozzle(ref, change))).toContain(reason);
  });
  test('are refused when gone, or without a number', () => {
    expect(refusal(built.plan, turnNozzle({ ...ref, id: 'gone' }, 0))).toContain('nozzle is no longer');
    expect(refusal(built.plan, turnNozzle(ref, Number.NaN))).toContain('degrees');
    expect(refusal(built.plan, editNozzle({ ...ref, id: 'gone' }, {}))).toContain('nozzle is no longer');
  });
});

describe('applyCure', () => {
  const built = simple();
  const nozzle = { network: built.networkId, id: built.lastNozzle.id };
  test('carries a cure out', () => {
    expect(placeOf(done(built.plan, applyCure({ kind: 'move-nozzle', text: '', nozzle, to: place3(4.5, 0, 2.3) })).next)).toEqual([4.5, 0, 2.3]);
    expect(only(networkIn(done(built.plan, applyCure({ kind: 'turn-nozzle', text: '', nozzle, rotation_rad: 1 })).next).nozzles).rotation_rad).toBe(1);
    const tilted = done(built.plan, editNozzle(built.lastNozzle, { tilt_rad: 0.2 })).next;
    expect(only(networkIn(done(tilted, applyCure({ kind: 'level-nozzle', text: '', nozzle })).next).nozzles).tilt_rad).toBe(0);
  });
  test('an advice is for a person', () => {
    expect(refusal(built.plan, applyCure({ kind: 'advice', text: 'Choose a shorter way.' }))).toBe('This has to be done by hand: Choose a shorter way.');
  });
});
