import { produce } from 'immer';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Plan, Ref } from '#shared/model/plan';
import { cutSection, straightened } from '../../../src-renderer/canvas/section-cut.ts';
import { compassOf, findSectionPath } from '../../../src-renderer/canvas/section-path.ts';
import { smallPlan } from './support/small-plan.ts';

const level = 'level-0';
const section = (plan: Plan, selection: Ref[] = [], cut: { a: { x: number; y: number }; b: { x: number; y: number } } | null = null) => {
  const derived = derivePlan(plan);
  const path = findSectionPath(derived, { level, cut, selection });
  if (!path) throw new Error('there is a way');
  return cutSection(derived, path, level);
};
const nozzle: Ref = { kind: 'nozzle', network: 'net', id: 'z1' };

describe('which way is shown', () => {
  test('nothing drawn has no section', () => {
    const empty = produce(smallPlan(), (draft) => {
      draft.networks = {};
      const each = draft.levels[level];
      if (each) each.enclosures = {};
    });
    expect(findSectionPath(derivePlan(empty), { level, cut: null, selection: [] })).toBeUndefined();
  });

  test('nothing selected: through the middle of the room, along its longer side', () => {
    const { path, length_m } = section(smallPlan());
    expect(path.kind).toBe('middle');
    expect(path.places.map(({ y }) => y)).toEqual([2, 2]);
    expect(length_m).toBeCloseTo(6.7);
    expect(path.title).toBe('Pump room from the south');
  });

  test('a cut that the user set comes before what is selected', () => {
    const { path } = section(smallPlan(), [nozzle], { a: { x: 2, y: -1 }, b: { x: 2, y: 5 } });
    expect(path.kind).toBe('line');
    expect(path.title).toBe('Section, looking west');
  });

  test.each<Ref>([
    nozzle,
    { kind: 'pipe', network: 'net', id: 'p2' },
    { kind: 'node', network: 'net', id: 'n1' },
    { kind: 'cylinder', network: 'net', id: 'c1' },
    { kind: 'network', id: 'net' },
  ])('a selected part of a run shows the run unfolded: $kind', (ref) => {
    const { path } = section(smallPlan(), [ref]);
    expect(path.kind).toBe('run');
    expect(path.title).toBe('Pipe run to N1, unfolded');
  });

  test('directions of the compass', () => {
    expect([0, Math.PI / 2, Math.PI, -Math.PI / 2, Math.PI / 4, 2 * Math.PI].map(compassOf)).toEqual(['east', 'north', 'west', 'south', 'north-east', 'east']);
  });
});

describe('what a cut goes through', () => {
  test('the room lies between its finished faces, with its void under it', () => {
    const { bays } = section(smallPlan());
    expect(bays.map(({ space }) => space.kind)).toEqual(['room', 'under-floor']);
    for (const bay of bays) {
      expect(bay.from_m).toBeCloseTo(0.35);
      expect(bay.to_m).toBeCloseTo(6.35);
      expect([bay.wallAtStart, bay.wallAtEnd]).toEqual([true, true]);
    }
    expect(bays[1]?.floor[0]?.z).toBeCloseTo(-0.3);
  });

  test('the ceiling steps down under the soffit exactly where the soffit begins', () => {
    const ceiling = section(smallPlan()).bays[0]?.ceiling ?? [];
    expect(ceiling.map(({ z }) => z)).toEqual([2.4, 2.4, 2.1, 2.1]);
    expect(ceiling[1]?.s).toBeCloseTo(4.35, 3);
    expect(ceiling[2]?.s).toBeCloseTo(4.35, 3);
  });

  test('a ceiling that is not known is not drawn as known', () => {
    const unknown = produce(smallPlan(), (draft) => {
      const room = draft.levels[level]?.enclosures.room;
      if (room) room.height_m = null;
    });
    expect(section(unknown).bays[0]?.ceiling).toEqual([]);
  });

  test('a solid on the cut is cut between its faces, one beside it is seen beyond', () => {
    const { solids } = section(smallPlan());
    const rack = solids.find(({ solid }) => solid.ref.id === 'rack');
    expect(rack?.isCut).toBe(true);
    expect(rack?.from_m).toBeCloseTo(1.35);
    expect(rack?.to_m).toBeCloseTo(2.35);
    const beam = solids.find(({ solid }) => solid.ref.id === 'beam');
    expect(beam?.isCut).toBe(false);
    expect([beam?.from_m, beam?.to_m]).toEqual([1.35, 5.35]);
  });

  test('a line shows only what lies in front of the viewer', () => {
    const north = section(smallPlan(), [], { a: { x: -1, y: 3 }, b: { x: 7, y: 3 } });
    expect(north.solids.map(({ solid }) => solid.ref.id)).toEqual(['beam']);
    expect(north.nozzles).toEqual([]);
    const south = section(smallPlan(), [], { a: { x: 7, y: 3 }, b: { x: -1, y: 3 } });
    expect(south.solids.map(({ solid }) => solid.ref.id)).toEqual(['rack']);
    expect(south.nozzles.map(({ at }) => at.s)).toEqual([4]);
  });

  test('pipe, nozzle and cylinder stand at their true heights', () => {
    const { pipes, nozzles, cylinders } = section(smallPlan());
    expect(pipes).toHaveLength(3);
    expect(nozzles[0]?.at.z).toBe(2.2);
    expect(nozzles[0]?.at.s).toBeCloseTo(3.35);
    expect(nozzles[0]?.isBeyond).toBe(false);
    expect(cylinders[0]).toMatchObject({ name: 'C1', railHeight_m: 1.2 });
    expect(cylinders[0]?.outletHeight_m).toBeCloseTo(66 * 0.0254);
    expect(cylinders[0]?.source?.z).toBe(1.9);
  });

  test('nothing of another room is shown', () => {
    const away = produce(smallPlan(), (draft) => {
      for (const corner of draft.levels[level]?.enclosures.room?.outline ?? []) corner.x += 20;
    });
    const { pipes, nozzles, cylinders } = section(away);
    expect([pipes, nozzles, cylinders]).toEqual([[], [], []]);
  });
});

describe('an unfolded run', () => {
  const bent = (): Plan =>
    produce(smallPlan(), (draft) => {
      const nodes = draft.networks.net?.nodes;
      if (nodes?.n2 && nodes.n3) {
        nodes.n2.at = { x: 3, y: 2, z: 2.3 };
        nodes.n3.at = { x: 3, y: 3, z: 2.2 };
      }
    });

  test('lengths along it are those of the pipe on the plan', () => {
    const { nozzles, pipes, path } = section(bent(), [nozzle]);
    const start = path.run?.nodes.get('n0') ?? Number.NaN;
    expect(nozzles[0]?.at.s).toBeCloseTo(start + 2.7 + 1);
    expect(pipes.map(({ ref }) => ref.id)).toEqual(['p1', 'p2', 'p3']);
  });

  test('it shows the wall behind the cylinder and the wall in front of the last nozzle', () => {
    const { bays } = section(bent(), [nozzle]);
    const rooms = bays.filter(({ space }) => space.kind === 'room');
    expect(rooms[0]?.wallAtStart).toBe(true);
    expect(rooms.at(-1)?.wallAtEnd).toBe(true);
  });

  test('the beam over the second leg is cut where the leg runs under it', () => {
    const long = produce(bent(), (draft) => {
      const n3 = draft.networks.net?.nodes.n3;
      if (n3) n3.at = { x: 3, y: 3.8, z: 2.2 };
    });
    const { solids, path } = section(long, [nozzle]);
    const corner = path.run?.nodes.get('n2') ?? Number.NaN;
    const beam = solids.find(({ solid, isCut }) => solid.ref.id === 'beam' && isCut);
    expect(beam?.from_m).toBeCloseTo(corner + 1.2);
    expect(beam?.to_m).toBeCloseTo(corner + 1.5);
  });
});

test('places on a straight line are left out, corners stay', () => {
  expect(straightened([{ s: 0, z: 2 }, { s: 1, z: 2 }, { s: 2, z: 2 }, { s: 2, z: 3 }, { s: 3, z: 3 }])).toEqual([
    { s: 0, z: 2 },
    { s: 2, z: 2 },
    { s: 2, z: 3 },
    { s: 3, z: 3 },
  ]);
});
