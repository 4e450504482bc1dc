import type { Ref } from '#shared/model/plan';
import { newPlan } from '#shared/model/plan';
import { describe, expect, test } from 'vitest';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { fitLevel, fitPlaces, placesOfLevel, placesOfThing } from '../../../src-renderer/actions/fit-view.ts';
import { toScreen } from '../../../src-renderer/canvas/viewport.ts';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import { makeStore } from '../../../src-renderer/store/store.ts';
import type { UnderlayDrawings } from '../../../src-renderer/store/underlay-drawings.ts';

const noDrawings = { find: () => undefined } as unknown as UnderlayDrawings;

describe('showing a whole level', () => {
  test('everything that is drawn lies on the board, with room around it', async () => {
    const { plan } = await buildDemo('F2');
    const store = makeStore(plan, startSession('test'));
    const [level] = Object.keys(plan.levels);
    store.session({ level: level ?? '' });
    fitLevel({ store, drawings: noDrawings });
    const { camera, board } = store.get().session;
    const places = placesOfLevel(plan, level ?? '');
    expect(places.length).toBeGreaterThan(20);
    for (const place of places) {
      const p = toScreen({ camera, ...board }, place);
      expect(p.x).toBeGreaterThan(10);
      expect(p.y).toBeGreaterThan(10);
      expect(p.x).toBeLessThan(board.width - 10);
      expect(p.y).toBeLessThan(board.height - 10);
    }
  });

  test('an empty level shows a room’s worth of paper with the origin on it', () => {
    const store = makeStore(newPlan('metric'), startSession('test'));
    fitLevel({ store, drawings: noDrawings });
    const { camera, board } = store.get().session;
    const origin = toScreen({ camera, ...board }, { x: 0, y: 0 });
    expect(origin.x).toBeGreaterThan(0);
    expect(origin.x).toBeLessThan(board.width / 2);
    expect(origin.y).toBeGreaterThan(board.height / 2);
    expect(origin.y).toBeLessThan(board.height);
  });

  test('a single place is shown with something around it', () => {
    const store = makeStore(newPlan('metric'), startSession('test'));
    fitPlaces(store, [{ x: 100, y: -40 }], 4);
    const { camera, board } = store.get().session;
    expect(camera.at).toMatchObject({ x: 100, y: -40 });
    expect(board.height / camera.scale_px_m).toBeGreaterThanOrEqual(4);
  });
});

describe('where a thing is', () => {
  test('every kind of thing of a demo has a place, and what has gone has none', async () => {
    const { plan } = await buildDemo('F2');
    const [level] = Object.values(plan.levels);
    const [network] = Object.values(plan.networks);
    const [enclosure] = Object.values(level?.enclosures ?? {});
    if (!level || !network || !enclosure) throw new Error('The demo has no room.');
    const inLevel = (kind: 'enclosure' | 'obstruction', record: object): Ref[] => Object.keys(record).map((id) => ({ kind, level: level.id, id }));
    const inNetwork = (kind: 'cylinder' | 'node' | 'pipe' | 'nozzle', record: object): Ref[] => Object.keys(record).map((id) => ({ kind, network: network.id, id }));
    const refs: Ref[] = [
      ...inLevel('enclosure', level.enclosures),
      ...inLevel('obstruction', level.obstructions),
      ...inNetwork('cylinder', network.cylinders),
      ...inNetwork('node', network.nodes),
      ...inNetwork('pipe', network.pipes),
      ...inNetwork('nozzle', network.nozzles),
      { kind: 'network', id: network.id },
      ...enclosure.outline.map(({ id }): Ref => ({ kind: 'wall', level: level.id, enclosure: enclosure.id, id })),
      ...Object.keys(enclosure.openings).map((id): Ref => ({ kind: 'opening', level: level.id, enclosure: enclosure.id, id })),
    ];
    for (const ref of refs) expect(placesOfThing(plan, ref).length, ref.kind).toBeGreaterThan(0);
    for (const ref of refs) expect(placesOfThing(newPlan('metric'), ref)).toEqual([]);
  });
});
