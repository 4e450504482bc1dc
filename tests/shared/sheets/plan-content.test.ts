import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { contentBounds, planContents, roomContents } from '#shared/sheets/plan-content';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';

const first = (plan: Parameters<typeof derivePlan>[0]) => {
  const [content] = planContents(derivePlan(plan));
  if (!content) throw new Error('A plan has a level.');
  return content;
};

describe('plan contents', () => {
  test('levels come from the lowest up, voids after their room', async () => {
    const built = planBuilder().level('Upper', 4).level('Cellar', -3);
    expect(planContents(derivePlan(built.plan)).map(({ title }) => title)).toEqual(['Cellar', 'Level 1', 'Upper']);
    const annex = planContents(derivePlan((await buildDemo('F2')).plan));
    expect(annex.map(({ layer }) => layer)).toEqual(['room', 'under-floor']);
    expect(annex.map(({ networks }) => networks[0]?.nozzles.map(({ nozzle }) => nozzle.name).join(' '))).toEqual(['N1 N2 N3 N4 N5', 'U1 U2 U3']);
  });

  test('no pipe is left out of all views', async () => {
    const derived = derivePlan((await buildDemo('F2')).plan);
    const shown = new Set(planContents(derived).flatMap(({ networks }) => networks.flatMap(({ pipes }) => pipes.map(({ ref }) => ref.id))));
    expect(shown.size).toBe(derived.networks[0]?.pipes.length);
  });

  test('bounds hold rooms, open doors, pipe, cylinders, notes and dimensions', () => {
    expect(contentBounds(first(planBuilder().plan))).toBeUndefined();
    const built = planBuilder().room(5, 4, 2.5).opening(0, 2, 0.9).note(7, 1, 'x').network().cylinder(-1, 2, 0).run([place3(1, 1, 2), place3(1, 6, 2)]);
    expect(contentBounds(first(built.plan))).toEqual({ minX: -1, minY: -0.9, maxX: 7, maxY: 6 });
  });

  test('a level is parted into rooms when each network belongs to one, and not when pipe would be lost', async () => {
    const rooms = roomContents(first((await buildDemo('F3')).plan));
    expect(rooms?.map(({ title }) => title)).toEqual(['Room 201', 'Room 202', 'Room 203', 'Room 204', 'Room 205', 'Room 206']);
    expect(rooms?.every(({ networks }) => networks.length === 1)).toBe(true);
    const shared = planBuilder().room(4, 4, 2.5).room(4, 4, 2.5, { x: 8, y: 0 });
    shared.network().run([place3(2, 2, 2.3), place3(5, 2, 2.3), place3(7, 2, 2.3), place3(10, 2, 2.3)]).nozzle(2, 2, 2.3).nozzle(10, 2, 2.3);
    expect(roomContents(first(shared.plan))).toBeUndefined();
  });
});
