import { addLevel } from '#shared/commands/add-level';
import type { Host } from '#shared/host/contract';
import { describe, expect, test } from 'vitest';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { findAction, runAction } from '../../../src-renderer/actions/actions.ts';
import { makeDesk } from '../../../src-renderer/actions/desk.ts';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import { makeStore } from '../../../src-renderer/store/store.ts';
import type { UnderlayDrawings } from '../../../src-renderer/store/underlay-drawings.ts';

async function openHut() {
  const { plan } = await buildDemo('F1');
  const store = makeStore(plan, startSession('test'));
  const desk = makeDesk();
  const [level] = Object.values(plan.levels);
  const [solid] = Object.values(level?.obstructions ?? {});
  if (!level || !solid) throw new Error('The demo has no cabinets.');
  store.session({ level: level.id, selection: [{ kind: 'obstruction', level: level.id, id: solid.id }] });
  const context = { store, desk, host: {} as Host, drawings: { find: () => undefined } as unknown as UnderlayDrawings };
  const run = async (id: string): Promise<void> => {
    const action = findAction(id);
    if (!action) throw new Error(`There is no action ${id}.`);
    await runAction(context, action);
  };
  const solids = () => Object.values(store.get().history.present.levels[level.id]?.obstructions ?? {});
  return { store, desk, run, solids, solid };
}

describe('copying and pasting', () => {
  test('a copy is pasted at the pointer, and again', async () => {
    const { store, run, solids } = await openHut();
    const before = solids().length;
    await run('copy');
    store.session({ pointer: { x: 1, y: 1 } });
    await run('paste');
    store.session({ pointer: { x: 3, y: 0.5 } });
    await run('paste');
    expect(solids()).toHaveLength(before + 2);
  });

  test('what was cut stays until it is pasted, is moved then, and can be pasted no second time but as a copy', async () => {
    const { store, run, solids, solid } = await openHut();
    const before = solids().length;
    await run('cut');
    expect(solids()).toHaveLength(before);
    store.session({ pointer: { x: 3, y: 1 } });
    await run('paste');
    expect(solids()).toHaveLength(before);
    expect(solids().find(({ id }) => id === solid.id)?.footprint).not.toEqual(solid.footprint);
    await run('paste');
    expect(solids()).toHaveLength(before + 1);
  });

  test('on another level a copy comes straight above the first, then at the pointer; what was cut goes there', async () => {
    const { store, run, solids, solid } = await openHut();
    const before = solids().length;
    await run('copy');
    store.commit(addLevel('Upper', 3));
    const upper = store.get().session.level;
    const above = () => Object.values(store.get().history.present.levels[upper]?.obstructions ?? {});
    store.session({ pointer: { x: 1, y: 1 } });
    await run('paste');
    expect(above().map(({ footprint }) => footprint)).toEqual([solid.footprint]);
    await run('paste');
    expect(above()).toHaveLength(2);
    expect(above()[1]?.footprint).not.toEqual(solid.footprint);
    expect(solids()).toHaveLength(before);

    await run('cut');
    store.session({ level: 'level-0' });
    await run('paste');
    expect(above()).toHaveLength(1);
    expect(solids()).toHaveLength(before + 1);
    await run('undo');
    expect(above()).toHaveLength(2);
  });

  test('with nothing copied the status line says so and nothing is done', async () => {
    const { store, run } = await openHut();
    await run('paste');
    expect(store.get().session.refusal).toBe('Nothing was copied yet.');
    expect(store.get().history.past).toHaveLength(0);
  });
});

describe('undo, nudge and delete', () => {
  test('undo and redo say what they would do', async () => {
    const { store, run } = await openHut();
    await run('nudge-east');
    expect(findAction('undo')?.nameNow?.(store.get())).toMatch(/^Undo move /);
    await run('undo');
    expect(findAction('redo')?.nameNow?.(store.get())).toMatch(/^Redo move /);
  });

  test('a nudge is a grid step, ten steps, or the finest step', async () => {
    const { store, run, solids, solid } = await openHut();
    const grid_m = store.get().history.present.settings.grid_m;
    const x = () => solids().find(({ id }) => id === solid.id)?.footprint[0]?.x ?? Number.NaN;
    const start = x();
    await run('nudge-east');
    expect(x() - start).toBeCloseTo(grid_m, 9);
    await run('nudge-west-ten');
    expect(x() - start).toBeCloseTo(-9 * grid_m, 9);
    await run('nudge-east-fine');
    expect(x() - start).toBeCloseTo(-9 * grid_m + 0.0254 / 16, 9);
  });

  test('with nothing selected the arrows move the view instead', async () => {
    const { store, run } = await openHut();
    store.session({ selection: [] });
    const { at } = store.get().session.camera;
    await run('nudge-north');
    expect(store.get().session.camera.at.y).toBeGreaterThan(at.y);
    expect(store.get().history.past).toHaveLength(0);
  });

  test('delete empties the selection', async () => {
    const { store, run, solids } = await openHut();
    const before = solids().length;
    await run('delete');
    expect(solids()).toHaveLength(before - 1);
    expect(store.get().session.selection).toEqual([]);
  });

  test('everything on the level is selected, but nothing of a locked layer', async () => {
    const { store, run } = await openHut();
    await run('select-all');
    const kinds = new Set(store.get().session.selection.map(({ kind }) => kind));
    expect(kinds).toContain('nozzle');
    store.session(({ layers }) => ({ layers: { ...layers, nozzles: { visible: true, locked: true } } }));
    await run('select-all');
    expect(store.get().session.selection.some(({ kind }) => kind === 'nozzle')).toBe(false);
  });
});
