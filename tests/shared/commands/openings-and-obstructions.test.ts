import { produce } from 'immer';
import { describe, expect, test } from 'vitest';
import { addCeilingZone } from '#shared/commands/add-ceiling-zone';
import { addObstruction } from '#shared/commands/add-obstruction';
import { addOpening } from '#shared/commands/add-opening';
import { editCeilingZone } from '#shared/commands/edit-ceiling-zone';
import { editObstruction } from '#shared/commands/edit-obstruction';
import { editOpening } from '#shared/commands/edit-opening';
import { asItStood } from '#shared/commands/as-it-stood';
import { highestNumber, namesIn, nextName, nextObstructionName, nextOpeningName } from '#shared/commands/next-name';
import { isCounterClockwise, rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { type Plan, newPlan } from '#shared/model/plan';
import { planBuilder } from '../../support/plan-builder.ts';
import { done, levelIn, only, refusal } from '../../support/try-command.ts';

const roomIn = (plan: Plan) => only(levelIn(plan).enclosures);
const bowTie = [planPoint(0, 0), planPoint(1, 1), planPoint(1, 0), planPoint(0, 1)];

describe('addOpening', () => {
  test('a new one sits at round figures of the plan’s own lengths', () => {
    const heights = (lengths: 'feet' | 'metric') => {
      const built = planBuilder(lengths).room(6, 4, 2.7);
      const { next } = done(built.plan, addOpening(built.wall(0), 'relief-vent', 2, 0.5));
      return Object.values(next.levels['level-0']?.enclosures[built.enclosure.id]?.openings ?? {}).map(({ bottom_m, height_m }) => [bottom_m, height_m]);
    };
    expect(heights('metric')).toEqual([[1.8, 0.3]]);
    expect(heights('feet')).toEqual([[6 * 0.3048, 0.3048]]);
  });
  const built = planBuilder().room(6, 4, 2.7);
  test('puts a door into a wall, nothing known of where it leads', () => {
    const { next, created } = done(built.plan, addOpening(built.wall(0), 'door', 2, 0.9));
    const door = only(roomIn(next).openings);
    expect(door).toMatchObject({ name: 'Door 1', kind: 'door', wall: built.wall(0).id, along_m: 2, width_m: 0.9, bottom_m: 0, swing: 'out', closes: null, freeArea_m2: null, leadsTo: 'unknown' });
    expect(created).toEqual([{ kind: 'opening', level: 'level-0', enclosure: built.enclosure.id, id: door.id }]);
  });
  test.each([['relief-vent', 'Vent 1'], ['damper', 'Damper 1'], ['grille', 'Grille 1'], ['penetration', 'Penetration 1'], ['window', 'Window 1']] as const)('a %s has no swing', (kind, name) => {
    expect(only(roomIn(done(built.plan, addOpening(built.wall(1), kind, 2, 0.4)).next).openings)).toMatchObject({ name, kind, swing: 'none' });
  });
  test('is moved into the wall where it would stick out', () => {
    expect(only(roomIn(done(built.plan, addOpening(built.wall(0), 'door', 0, 1)).next).openings).along_m).toBe(0.5);
    expect(only(roomIn(done(built.plan, addOpening(built.wall(0), 'door', 99, 1)).next).openings).along_m).toBe(5.5);
    expect(only(roomIn(done(built.plan, addOpening(built.wall(0), 'door', 1, 6)).next).openings).along_m).toBe(3);
  });
  test('is refused when wider than its wall, without width, or in a wall that has gone', () => {
    expect(refusal(built.plan, addOpening(built.wall(0), 'door', 2, 6.5))).toContain('no longer fit');
    expect(refusal(built.plan, addOpening(built.wall(0), 'door', 2, 0))).toContain('Width must be more than 0');
    expect(refusal(built.plan, addOpening(built.wall(0), 'door', Number.NaN, 1))).toContain('too far off');
    expect(refusal(built.plan, addOpening({ ...built.wall(0), id: 'gone' }, 'door', 2, 1))).toContain('wall is no longer');
  });
});

describe('editOpening', () => {
  const built = planBuilder().room(6, 4, 2.7).opening(0, 3, 1);
  const ref = built.lastOpening;
  const edited = (change: Parameters<typeof editOpening>[1]) => only(roomIn(done(built.plan, editOpening(ref, change)).next).openings);
  test('changes what is known and where it is', () => {
    expect(edited({ along_m: 5.5, leadsTo: 'corridor', closes: true, freeArea_m2: 0.02, swing: 'in', hinge: 'end' })).toMatchObject({ along_m: 5.5, leadsTo: 'corridor', closes: true, swing: 'in', hinge: 'end' });
    expect(edited({ wall: built.wall(1).id, along_m: 2 })).toMatchObject({ wall: built.wall(1).id, along_m: 2 });
  });
  test('only a door swings', () => {
    expect(edited({ kind: 'relief-vent' })).toMatchObject({ kind: 'relief-vent', swing: 'none' });
    expect(edited({ kind: 'window', swing: 'in' }).swing).toBe('none');
    const vent = done(built.plan, editOpening(ref, { kind: 'relief-vent' })).next;
    expect(only(roomIn(done(vent, editOpening(ref, { kind: 'door' })).next).openings).swing).toBe('out');
  });
  test.each<[string, Parameters<typeof editOpening>[1], string]>([
    ['a place beyond the wall', { along_m: 5.6 }, 'stick out'],
    ['a width beyond the wall', { width_m: 7 }, 'no longer fit'],
    ['a width that sticks out', { along_m: 1, width_m: 2.5 }, 'stick out'],
    ['a shorter wall', { wall: built.wall(1).id, along_m: 3.8 }, 'stick out'],
    ['a wall that has gone', { wall: 'gone' }, 'wall is no longer'],
    ['no name', { name: ' ' }, 'needs a name'],
    ['no height', { height_m: 0 }, 'Height must be more than 0'],
    ['a free area below 0', { freeArea_m2: -1 }, 'Free area cannot be less than 0'],
  ])('is refused for %s', (_, change, reason) => {
    expect(refusal(built.plan, editOpening(ref, change))).toContain(reason);
  });
  test('is refused for one that has gone', () => {
    expect(refusal(built.plan, editOpening({ ...ref, id: 'gone' }, {}))).toBe('This opening is no longer in the plan.');
  });
});

describe('ceiling zones', () => {
  const built = planBuilder().room(6, 4, 2.7);
  test('are drawn and changed', () => {
    const { next, created } = done(built.plan, addCeilingZone(built.enclosure, rectangle(2, 2).reverse(), 2.4));
    const zone = only(roomIn(next).ceilingZones);
    expect(zone).toMatchObject({ name: 'Zone 1', height_m: 2.4 });
    expect(isCounterClockwise(zone.outline)).toBe(true);
    const [ref] = created;
    if (ref?.kind !== 'ceiling-zone') throw new Error('No zone was made.');
    expect(only(roomIn(done(next, editCeilingZone(ref, { name: 'Soffit', height_m: 2.2, outline: rectangle(1, 1).map(({ x, y }) => ({ x, y })) })).next).ceilingZones)).toMatchObject({ name: 'Soffit', height_m: 2.2, outline: rectangle(1, 1) });
    expect(refusal(next, editCeilingZone(ref, { height_m: 0 }))).toContain('Height');
    expect(refusal(next, editCeilingZone(ref, { name: '' }))).toContain('needs a name');
    expect(refusal(next, editCeilingZone(ref, { outline: bowTie.map(({ x, y }) => ({ x, y })) }))).toContain('cross');
    expect(refusal(next, editCeilingZone({ ...ref, id: 'gone' }, {}))).toContain('ceiling zone is no longer');
  });
  test('are refused without area or height', () => {
    expect(refusal(built.plan, addCeilingZone(built.enclosure, bowTie, 2.4))).toContain('The ceiling zone would cross');
    expect(refusal(built.plan, addCeilingZone(built.enclosure, rectangle(1, 1), 0))).toContain('Height must be more than 0');
  });
});

describe('obstructions', () => {
  test('are drawn; only beams and columns come off the volume unless told', () => {
    const { next, created } = done(newPlan(), addObstruction('level-0', 'beam', rectangle(0.3, 4).reverse(), 2.4, 2.7));
    expect(only(levelIn(next).obstructions)).toMatchObject({ name: 'Beam 1', kind: 'beam', bottom_m: 2.4, top_m: 2.7, isPermeable: false });
    expect(created).toEqual([{ kind: 'obstruction', level: 'level-0', id: only(levelIn(next).obstructions).id }]);
    expect(only(levelIn(done(newPlan(), addObstruction('level-0', 'rack', rectangle(1, 1), 0, 2)).next).obstructions).isPermeable).toBe(true);
  });
  test('are changed', () => {
    const built = planBuilder().obstruction('rack', rectangle(1, 1), 0, 2);
    const ref = built.onLevel('obstruction');
    expect(only(levelIn(done(built.plan, editObstruction(ref, { name: 'Shelf', top_m: 2.2, isPermeable: true, footprint: rectangle(2, 1).map(({ x, y }) => ({ x, y })) })).next).obstructions)).toMatchObject({ name: 'Shelf', top_m: 2.2, isPermeable: true });
    expect(refusal(built.plan, editObstruction(ref, { bottom_m: 2 }))).toContain('above the bottom');
    expect(refusal(built.plan, editObstruction(ref, { name: '' }))).toContain('needs a name');
    expect(refusal(built.plan, editObstruction(ref, { footprint: bowTie.map(({ x, y }) => ({ x, y })) }))).toContain('cross');
    expect(refusal(built.plan, editObstruction({ ...ref, id: 'gone' }, {}))).toContain('obstacle is no longer');
  });
  test('are refused without area, height or level', () => {
    expect(refusal(newPlan(), addObstruction('level-0', 'beam', bowTie, 0, 1))).toContain('The footprint would cross');
    expect(refusal(newPlan(), addObstruction('level-0', 'beam', rectangle(1, 1), 1, 1))).toContain('above the bottom');
    expect(refusal(newPlan(), addObstruction('gone', 'beam', rectangle(1, 1), 0, 1))).toContain('level is no longer');
  });
});

describe('names', () => {
  test('count on from the highest in use', () => {
    expect(highestNumber([], 'N')).toBe(0);
    expect(highestNumber(['N1', 'N7', 'N', 'Nx', 'N07a', 'U9'], 'N')).toBe(7);
    const { plan } = planBuilder().room(6, 4, 3).opening(0, 1, 1).ceilingZone(rectangle(1, 1), 2).obstruction('beam', rectangle(1, 1), 0, 1, { name: 'Beam 4' }).network().cylinder(1, 1, 0).nozzle(1, 1, 2);
    expect((['enclosure', 'opening', 'ceiling-zone', 'obstruction', 'network', 'cylinder', 'nozzle'] as const).flatMap((kind) => namesIn(plan, kind))).toEqual(['Room 1', 'Door 1', 'Zone 1', 'Beam 4', 'Network 1', 'C1', 'N1']);
    expect(nextObstructionName(plan, 'beam')).toBe('Beam 5');
    expect(nextOpeningName(plan, 'window')).toBe('Window 1');
    expect([nextName(plan, 'enclosure', 'Room '), nextName(plan, 'enclosure', 'Room ')]).toEqual(['Room 2', 'Room 3']);
  });
  test('are sought in the plan as it stood before the command', () => {
    const { plan } = planBuilder().room(6, 4, 3);
    produce(plan, (draft) => {
      draft.info.project = 'Hut';
      expect(asItStood(draft)).toBe(plan);
    });
    expect(asItStood(plan)).toBe(plan);
  });
});
