import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Plan, Ref } from '#shared/model/plan';
import { middleRun_m } from '#shared/isometric/layout-isometric';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { drawIsometric, drawIsometricMarks } from '../../../src-renderer/canvas/isometric/draw-isometric.ts';
import { fittedIsometric } from '../../../src-renderer/canvas/isometric/isometric-camera.ts';
import { isometricDetail } from '../../../src-renderer/canvas/isometric/isometric-detail.ts';
import { placedIsometricLabels } from '../../../src-renderer/canvas/isometric/isometric-labels.ts';
import { isometricRefsAt, selectionAfter } from '../../../src-renderer/canvas/isometric/isometric-pick.ts';
import { marksOf, placedAssembly, runRefs, runStretch } from '../../../src-renderer/canvas/isometric/isometric-things.ts';
import { type ShownIsometric, isometricKeeper } from '../../../src-renderer/canvas/isometric/keep-isometric.ts';
import { type Viewport, toScreen } from '../../../src-renderer/canvas/viewport.ts';
import { DARK_INK, LIGHT_INK } from '../../../src-renderer/ink.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { named, recordingPen } from './support/recording-pen.ts';

const SIZE = { width: 460, height: 620 };
const shownOf = (plan: Plan): ShownIsometric => {
  const [network] = derivePlan(plan).networks;
  if (!network) throw new Error('The plan has a network.');
  return isometricKeeper().shown(network, false);
};
const fitted = (shown: ShownIsometric): Viewport => ({ camera: fittedIsometric(shown, SIZE.width, SIZE.height), ...SIZE });
const between = (a: { x: number; y: number }, b: { x: number; y: number }, share: number) => ({ x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share });
const REACH_px = 9;

/** A main with a straight-through node, an elbow and a drop to N1; one cylinder with check valve and regulator. */
const built = () => {
  const builder = planBuilder()
    .room(6, 4, 2.6)
    .network({
      assembly: [
        { id: 'a', kind: 'check-valve', name: '', length_m: 0.1, setPressure_Pa: null, arrowDownstream: true },
        { id: 'b', kind: 'regulator', name: '', length_m: 0.1, setPressure_Pa: 6e6, arrowDownstream: true },
      ],
    })
    .cylinder(0.2, 2, Math.PI)
    .run([place3(0.2, 2, 2), place3(0.2, 2, 2.5), place3(2, 2, 2.5), place3(4, 2, 2.5), place3(4, 2, 2.2)])
    .nozzle(4, 2, 2.2)
    .support(1, 2, 2.5);
  return { builder, plan: builder.plan };
};

describe('what a click on the isometric picks', () => {
  const { builder, plan } = built();
  const shown = shownOf(plan);
  const view = fitted(shown);
  const assembly = placedAssembly(view, shown);
  const at = (p: { x: number; y: number }) => isometricRefsAt(view, shown, assembly, p, REACH_px);

  test('a run: every pipe of it, so that both halves beside a straight-through node are selected', () => {
    const run = shown.iso.runs.find(({ pipes }) => pipes.length === 2);
    if (!run) throw new Error('The main is one run of two pipes.');
    const { a, b } = runStretch(view, run);
    expect(at(between(a, b, 0.7))).toEqual(runRefs(shown.iso, run));
    expect(runRefs(shown.iso, run)).toHaveLength(2);
  });

  test('a nozzle, a node, a support, a cylinder, and the network on the discharge assembly', () => {
    const nozzle = shown.iso.nodes.find((node) => node.nozzle);
    const elbow = shown.iso.nodes.find(({ fittings }) => fittings.some(({ kind }) => kind === 'elbow-90'));
    const [support] = shown.iso.supports;
    const [cylinder] = assembly?.cylinders ?? [];
    if (!nozzle || !elbow || !support || !cylinder || !assembly) throw new Error('All of them are drawn.');
    expect(at(toScreen(view, nozzle.place))).toEqual([builder.lastNozzle]);
    expect(at(toScreen(view, elbow.place))).toEqual([{ kind: 'node', network: builder.networkId, id: elbow.id }]);
    expect(at(toScreen(view, support.place))).toEqual([builder.inNetwork('support')]);
    expect(at(cylinder.at)).toEqual([builder.inNetwork('cylinder')]);
    const regulator = assembly.line.spots.find(({ part }) => part.kind === 'regulator');
    if (!regulator) throw new Error('The regulator is drawn.');
    expect(at(assembly.at(regulator))).toEqual([builder.networkRef]);
  });

  test('just inside its reach and just outside it', () => {
    const nozzle = shown.iso.nodes.find((node) => node.nozzle);
    if (!nozzle) throw new Error('N1 is drawn.');
    const p = toScreen(view, nozzle.place);
    expect(at({ x: p.x, y: p.y + REACH_px - 0.1 })).toEqual([builder.lastNozzle]);
    expect(at({ x: p.x, y: p.y + REACH_px + 0.1 })).toEqual([]);
    expect(at({ x: -500, y: -500 })).toEqual([]);
  });

  test('Shift adds what was not selected, and takes away what was', () => {
    const [one, other]: Ref[] = [builder.lastNozzle, builder.networkRef];
    if (!one || !other) throw new Error('Two things.');
    expect(selectionAfter([one], [other], false)).toEqual([other]);
    expect(selectionAfter([one], [other], true)).toEqual([one, other]);
    expect(selectionAfter([one, other], [other], true)).toEqual([one]);
    expect(selectionAfter([one], [], false)).toEqual([]);
    expect(selectionAfter([one], [], true)).toEqual([one]);
  });
});

describe('what is marked on the isometric for things of the plan', () => {
  const { builder, plan } = built();
  const { iso } = shownOf(plan);

  test('one pipe of a run marks its own stretch, and whole where both are selected', () => {
    const run = iso.runs.find(({ pipes }) => pipes.length === 2);
    if (!run) throw new Error('The main is one run of two pipes.');
    const [first, second] = runRefs(iso, run);
    if (!first || !second) throw new Error('Two pipes.');
    const half = marksOf(iso, [first]).stretches[0];
    // 1.8 m of 3.8 m.
    expect(Math.hypot((half?.b.x ?? 0) - run.a.x, (half?.b.y ?? 0) - run.a.y) / Math.hypot(run.b.x - run.a.x, run.b.y - run.a.y)).toBeCloseTo(1.8 / 3.8, 9);
    expect(marksOf(iso, [first, second]).stretches[1]?.b.x).toBeCloseTo(run.b.x, 9);
  });

  test('a nozzle, a node that is only passed, a cylinder and the network; nothing of another network', () => {
    const nozzle = iso.nodes.find((node) => node.nozzle);
    expect(marksOf(iso, [builder.lastNozzle]).places).toEqual([nozzle?.place]);
    const passed = builder.nodeAt(2, 2, 2.5);
    expect(iso.nodes.some(({ id }) => id === passed.id)).toBe(false);
    expect(marksOf(iso, [passed]).places).toHaveLength(1);
    expect([...marksOf(iso, [builder.inNetwork('cylinder')]).cylinders]).toEqual([builder.inNetwork('cylinder').id]);
    expect(marksOf(iso, [builder.networkRef]).isWhole).toBe(true);
    const other = marksOf(iso, [{ kind: 'nozzle', network: 'another', id: builder.lastNozzle.id }, { kind: 'network', id: 'another' }]);
    expect([other.places, other.stretches, other.isWhole]).toEqual([[], [], false]);
  });

  test('every thing that can be picked is marked where it was picked', async () => {
    const shown = shownOf((await buildDemo('F2')).plan);
    const view = fitted(shown);
    const assembly = placedAssembly(view, shown);
    const things = [
      ...shown.iso.nodes.map(({ place }) => toScreen(view, place)),
      ...shown.iso.runs.map((run) => between(runStretch(view, run).a, runStretch(view, run).b, 0.5)),
      ...(assembly?.cylinders ?? []).map(({ at }) => at),
    ];
    for (const p of things) {
      const refs = isometricRefsAt(view, shown, assembly, p, REACH_px);
      expect(refs.length).toBeGreaterThan(0);
      const { stretches, places, cylinders, isWhole } = marksOf(shown.iso, refs);
      expect(stretches.length + places.length + cylinders.size + Number(isWhole)).toBe(refs.length);
    }
  });
});

describe('the drawing while the plan is edited', () => {
  const moved = (plan: Plan, by: number): Plan => {
    const next = structuredClone(plan);
    for (const network of Object.values(next.networks)) for (const node of Object.values(network.nodes)) if (node.at.x === 4) node.at.x += by;
    return next;
  };
  const networkOf = (plan: Plan) => {
    const [network] = derivePlan(plan).networks;
    if (!network) throw new Error('The plan has a network.');
    return network;
  };

  test('is the very same while the network is', () => {
    const keeper = isometricKeeper();
    const network = networkOf(built().plan);
    expect(keeper.shown(network, false)).toBe(keeper.shown(network, true));
  });

  test('keeps its direction, its assembly and its place at every step of a drag', () => {
    const { plan } = built();
    const keeper = isometricKeeper();
    const first = keeper.shown(networkOf(plan), false);
    for (const by of [0.1, 0.5, 1.2, -0.7]) {
      const next = keeper.shown(networkOf(moved(plan, by)), true);
      expect([next.iso.view, next.search, next.ways]).toEqual([first.iso.view, first.search, first.ways]);
    }
    const after = keeper.shown(networkOf(moved(plan, 0)), false);
    after.iso.nodes.forEach(({ place }, i) => {
      expect(place.x).toBeCloseTo(first.iso.nodes[i]?.place.x ?? Number.NaN, 9);
      expect(place.y).toBeCloseTo(first.iso.nodes[i]?.place.y ?? Number.NaN, 9);
    });
  });

  test('a step of a drag costs a small part of the first search', async () => {
    const network = networkOf((await buildDemo('F2')).plan);
    const keeper = isometricKeeper();
    const begin = performance.now();
    keeper.shown(network, false);
    const search_ms = performance.now() - begin;
    const next = networkOf((await buildDemo('F2')).plan);
    const start = performance.now();
    keeper.shown(next, true);
    expect(performance.now() - start).toBeLessThan(search_ms / 3);
  });

  test('is searched anew once it was forgotten', () => {
    const network = networkOf(built().plan);
    const keeper = isometricKeeper();
    const { search } = keeper.shown(network, false);
    keeper.forget(network.network.id);
    expect(keeper.shown(network, false).search).toBeGreaterThan(search);
  });
});

describe('the drawing on the screen', () => {
  test.each(['F1', 'F2', 'F3'] as const)('%s: all of it is shown, and no text runs over another at any scale', async (name) => {
    for (const network of derivePlan((await buildDemo(name)).plan).networks) {
      const shown = isometricKeeper().shown(network, false);
      const view = fitted(shown);
      for (const { place } of shown.iso.nodes) {
        const { x, y } = toScreen(view, place);
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(SIZE.width);
        expect(y).toBeGreaterThanOrEqual(0);
        expect(y).toBeLessThanOrEqual(SIZE.height);
      }
      for (const zoom of [0.4, 1, 2.5, 6]) {
        const { pen } = recordingPen();
        const zoomed = { ...view, camera: { ...view.camera, scale_px_m: view.camera.scale_px_m * zoom } };
        const boxes = [...placedIsometricLabels(pen, zoomed, shown, 'feet', LIGHT_INK).boxes.values()];
        boxes.forEach((a, i) => {
          for (const b of boxes.slice(i + 1)) {
            const wide = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
            const high = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
            expect(wide > 0 && high > 0 ? wide * high : 0).toBeLessThanOrEqual(1);
          }
        });
      }
    }
  });

  test('pipe behind a regulator is a single cool line; without one all is the heavy double warm line', () => {
    const strokes = (plan: Plan): Set<string> => {
      const { pen, calls } = recordingPen();
      const shown = shownOf(plan);
      drawIsometric(pen, fitted(shown), shown, DARK_INK);
      return new Set(named(calls, 'stroke').map(({ stroke }) => stroke));
    };
    const { plan } = built();
    expect(strokes(plan).has(DARK_INK.cool)).toBe(true);
    const bare = structuredClone(plan);
    for (const network of Object.values(bare.networks)) network.assembly = network.assembly.filter(({ kind }) => kind !== 'regulator');
    expect(strokes(bare).has(DARK_INK.cool)).toBe(false);
    expect(strokes(bare).has(DARK_INK.warm)).toBe(true);
  });

  test('marks are painted in the colour of the selection; nothing is for nothing', () => {
    const { builder, plan } = built();
    const shown = shownOf(plan);
    for (const [refs, count] of [[[builder.lastNozzle], 2], [[], 0]] as const) {
      const { pen, calls } = recordingPen();
      drawIsometricMarks(pen, fitted(shown), shown, marksOf(shown.iso, refs), LIGHT_INK, false);
      expect(named(calls, 'arc').filter(({ stroke }) => stroke === LIGHT_INK.selection)).toHaveLength(count);
    }
  });

  test('the smaller the drawing the less is told', () => {
    const { iso } = shownOf(built().plan);
    const at = (middle_px: number) => isometricDetail(middle_px / middleRun_m(iso), iso);
    expect(Object.values(at(5)).some(Boolean)).toBe(false);
    expect(at(20)).toMatchObject({ numbers: true, words: false });
    expect(Object.values(at(100)).every(Boolean)).toBe(true);
  });
});
