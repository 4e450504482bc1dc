import { describe, expect, test } from 'vitest';
import type { Plan, Ref } from '#shared/model/plan';
import { pickAt, pickInBox } from '../../../src-renderer/tools/pick.ts';
import { indexUnderlay } from '../../../src-renderer/tools/underlay-index.ts';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import type { LayerName, Session } from '../../../src-renderer/store/state.ts';
import { lineDrawing } from '../../support/line-drawing.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';

const built = planBuilder()
  .room(6, 4, 2.7)
  .opening(0, 2, 1)
  .ceilingZone([{ x: 4, y: 0.5 }, { x: 5.5, y: 0.5 }, { x: 5.5, y: 1.5 }, { x: 4, y: 1.5 }], 2.4)
  .obstruction('rack', [{ x: 3, y: 1 }, { x: 4, y: 1 }, { x: 4, y: 2 }, { x: 3, y: 2 }], 0, 2)
  .dimension({ x: 0, y: -1 }, { x: 6, y: -1 }, -0.5)
  .note(1, 6, 'Ask the owner')
  .network()
  .cylinder(0.2, 3, Math.PI)
  .run([place3(0.2, 3, 2), place3(0.2, 3, 2.4), place3(3.5, 3, 2.4), place3(3.5, 3, 2.2)])
  .nozzle(3.5, 3, 2.2)
  .underlay();
const { plan } = built;
const whole = built.enclosure;
const session = startSession('test');
const drawing = lineDrawing([[8, 0, 8, 4]]);

const indexes = (of: Plan) => Object.values(of.levels['level-0']?.underlays ?? {}).map((each) => indexUnderlay(drawing, each));
const pick = (x: number, y: number, change: Partial<Session> = {}, of: Plan = plan): Ref | undefined => pickAt(of, { ...session, ...change }, indexes(of), { x, y }, 0.1);
const layer = (name: LayerName, change: { visible?: boolean; locked?: boolean }): Partial<Session> => ({ layers: { ...session.layers, [name]: { visible: true, locked: false, ...change } } });

describe('a click means', () => {
  test.each<readonly [string, number, number, Ref | undefined]>([
    ['a nozzle before its pipe', 3.45, 3.03, built.lastNozzle],
    ['a cylinder before the pipe end on it', 0.25, 3.02, built.inNetwork('cylinder')],
    ['a pipe', 1.5, 3.05, undefined],
    ['an opening before its wall', 2.2, 0.05, built.lastOpening],
    ['an obstruction, inside too', 3.5, 1.5, built.onLevel('obstruction')],
    ['a dimension on its line', 3, -1.45, built.onLevel('dimension')],
    ['a note', 1.05, 6, built.onLevel('note')],
    ['a ceiling zone on its edge', 5, 1.45, built.lastZone],
    ['an enclosure by its edge', 5, -0.05, whole],
    ['an enclosure inside, above a closed ceiling zone', 5, 1, whole],
    ['an underlay line', 8.05, 2, built.onLevel('underlay')],
  ])('%s', (title, x, y, ref) => {
    if (title === 'a pipe') expect(pick(x, y)?.kind).toBe('pipe');
    else expect(pick(x, y)).toEqual(ref);
  });

  test('nothing on empty ground', () => {
    expect(pick(12, 2)).toBeUndefined();
  });

  test('corners and walls once their enclosure or a part of it is selected', () => {
    expect(pick(5.95, 4.02, { selection: [whole] })).toEqual(built.corner(2));
    expect(pick(5, 3.95, { selection: [whole] })).toEqual(built.wall(2));
    expect(pick(5, 3.95, { selection: [built.corner(0)] })).toEqual(built.wall(2));
    expect(pick(5, 3.95)).toEqual(whole);
    expect(pick(5, 1, { selection: [whole] })).toEqual(built.lastZone);
  });

  test('the smallest of enclosures in each other', () => {
    const nested = planBuilder().room(8, 8, 3).room(2, 2, 3, { x: 3, y: 3 });
    expect(pick(4, 4, {}, nested.plan)).toEqual(nested.enclosure);
  });

  test('nothing on a hidden or locked layer', () => {
    expect(pick(3.55, 3.03, layer('nozzles', { locked: true }))?.kind).toBe('node');
    const free = planBuilder().network().nozzle(3, 3, 2.2);
    expect(pick(3, 3, {}, free.plan)).toEqual(free.lastNozzle);
    expect(pick(3, 3, layer('nozzles', { locked: true }), free.plan)).toBeUndefined();
    expect(pick(3.5, 1.5, layer('obstructions', { visible: false }))).toEqual(whole);
    expect(pick(8.05, 2, layer('underlays', { locked: true }))).toBeUndefined();
    const locked = planBuilder().underlay().plan;
    for (const each of Object.values(locked.levels['level-0']?.underlays ?? {})) each.locked = true;
    expect(pick(8.05, 2, {}, locked)).toBeUndefined();
  });

  test('nothing of another level', () => {
    const above = planBuilder().room(6, 4, 2.7).level('Upper', 3).room(6, 4, 2.7, { x: 20, y: 0 });
    expect(pick(22, 2, {}, above.plan)).toBeUndefined();
    expect(pick(22, 2, { level: above.levelId }, above.plan)).toEqual(above.enclosure);
  });
});

describe('a box', () => {
  const box = (a: [number, number], b: [number, number], change: Partial<Session> = {}) => pickInBox(plan, { ...session, ...change }, { x: a[0], y: a[1] }, { x: b[0], y: b[1] });

  test('names what lies wholly inside, whichever corner it began at', () => {
    const kinds = box([4.2, 3.2], [2.9, 0.9]).map(({ kind }) => kind);
    expect(kinds).toEqual(['nozzle', 'pipe', 'obstruction']);
  });

  test('names pipe nodes only where nothing of theirs is inside', () => {
    expect(box([0.1, 2.9], [0.3, 3.1]).map(({ kind }) => kind)).toEqual(['pipe']);
    const open = planBuilder().network().run([place3(0, 0, 2), place3(3, 0, 2)]);
    expect(pickInBox(open.plan, session, { x: 2.5, y: -1 }, { x: 3.5, y: 1 })).toEqual([open.nodeAt(3, 0, 2)]);
  });

  test('names openings and ceiling zones only without their enclosure', () => {
    expect(box([-0.5, -0.5], [6.5, 4.5]).map(({ kind }) => kind)).toEqual(['nozzle', 'cylinder', 'pipe', 'pipe', 'pipe', 'obstruction', 'enclosure']);
    expect(box([1.4, -0.1], [2.6, 0.1])).toEqual([built.lastOpening]);
  });

  test('leaves locked layers and underlays out', () => {
    expect(box([-1, -3], [30, 8], layer('pipes', { locked: true })).map(({ kind }) => kind)).toEqual(['nozzle', 'obstruction', 'dimension', 'note', 'enclosure']);
  });
});
