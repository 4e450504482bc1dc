import { produce } from 'immer';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { evaluationWith } from '#shared/evaluation';
import type { Plan } from '#shared/model/plan';
import { Findings } from '#shared/rules/findings';
import { changedConsequences, changedThings, coverageKey, jetsKey, touchedBetween } from '../../../src-renderer/canvas/changed-things.ts';
import type { Scene } from '../../../src-renderer/canvas/scene.ts';
import { scenePaints, thingPaints } from '../../../src-renderer/canvas/scene-paints.ts';
import type { Viewport } from '../../../src-renderer/canvas/viewport.ts';
import { LIGHT_INK } from '../../../src-renderer/ink.ts';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import { drawnPieces, named, recordingPen, texts } from './support/recording-pen.ts';
import { smallPlan } from './support/small-plan.ts';

const { layers } = startSession('test');
const view = (scale_px_m: number): Viewport => ({ camera: { at: { x: 3, y: 2 }, scale_px_m }, width: 1000, height: 700 });
const sceneOf = (plan: Plan, change: Partial<Scene> = {}): Scene => ({
  evaluation: evaluationWith(derivePlan(plan), { enclosures: [], networks: [], asked: [] }, new Findings([], [], {})),
  level: 'level-0',
  ink: LIGHT_INK,
  lengths: plan.settings.lengths,
  layers,
  shows: () => true,
  ...change,
});
const draw = (scene: Scene, scale_px_m: number, paints = scenePaints) => {
  const { pen, calls } = recordingPen();
  for (const paint of paints(scene)) paint(pen, view(scale_px_m));
  return calls;
};

describe('a scene', () => {
  const scene = sceneOf(smallPlan());

  test('names what a fitter looks for', () => {
    const written = texts(draw(scene, 120));
    expect(written).toEqual(expect.arrayContaining(['N1', 'C1', 'Pump room', 'Rack', 'Beam']));
    expect(written.some((text) => text.startsWith('at 2.2'))).toBe(true);
    expect(written).toContain('DN 20');
    expect(written.some((text) => text.includes('up to'))).toBe(true);
  });

  test('says so when a height is not known', () => {
    const unknown = produce(smallPlan(), (draft) => {
      const room = draft.levels['level-0']?.enclosures.room;
      if (room) room.height_m = null;
    });
    expect(texts(draw(sceneOf(unknown), 120)).join()).toContain('height not known');
  });

  test('writes nothing where nothing could be read', () => {
    expect(texts(draw(scene, 4))).toEqual([]);
  });

  test('draws at every scale, and less far out', () => {
    const strokes = [2, 10, 60, 400].map((scale) => named(draw(scene, scale), 'stroke').length);
    expect(strokes.every((count) => count > 0)).toBe(true);
    expect(strokes[0]).toBeLessThan(strokes[2] ?? 0);
  });

  test('a hidden layer is not drawn', () => {
    const hidden = sceneOf(smallPlan(), { layers: { ...layers, nozzles: { visible: false, locked: false } } });
    expect(texts(draw(hidden, 120))).not.toContain('N1');
  });

  test('what a gesture moves is drawn alike, whether or not the rest is looked through for it', () => {
    const before = smallPlan();
    const gestures: ((draft: Plan) => void)[] = [
      (draft) => {
        const node = draft.networks.net?.nodes.n3;
        if (node) node.at = { ...node.at, x: 3.5 };
      },
      (draft) => {
        const rack = draft.levels['level-0']?.obstructions.rack;
        if (rack) rack.top_m = 2;
      },
      (draft) => {
        for (const corner of draft.levels['level-0']?.enclosures.room?.outline ?? []) if (corner.x === 6) corner.x = 7;
      },
    ];
    for (const gesture of gestures) {
      const after = produce(before, gesture);
      const [old, now] = [derivePlan(before), derivePlan(after)];
      const moved = new Set([...changedThings(before, after), ...changedConsequences(old, now)]);
      const live = (change: Partial<Scene>) => draw(sceneOf(after, { shows: (key) => moved.has(key), ...change }), 60, thingPaints);
      expect(live({}).length).toBeGreaterThan(0);
      expect(live({ touched: touchedBetween(old, now) })).toEqual(live({}));
    }
  });

  test('what is out of sight costs nothing', () => {
    const { pen, calls } = recordingPen();
    for (const paint of thingPaints(scene)) paint(pen, { ...view(120), camera: { at: { x: 900, y: 900 }, scale_px_m: 120 } });
    expect(named(calls, 'stroke').filter(({ stroke }) => stroke === LIGHT_INK.wall || stroke === LIGHT_INK.solid)).toEqual([]);
  });
});

describe('while something is dragged', () => {
  const plan = smallPlan();
  const nozzle = derivePlan(plan).nozzles[0];
  const moved = new Set(['nozzle///net/z1', 'node///net/n3', 'pipe///net/p3', ...(nozzle ? [jetsKey(nozzle)] : []), ...(nozzle?.space ? [coverageKey(nozzle.space)] : [])]);

  test('the resting and the moving picture share everything out between them', () => {
    const whole = drawnPieces(draw(sceneOf(plan), 60, thingPaints)).length;
    const rest = drawnPieces(draw(sceneOf(plan, { shows: (key) => !moved.has(key) }), 60, thingPaints)).length;
    const live = drawnPieces(draw(sceneOf(plan, { shows: (key) => moved.has(key) }), 60, thingPaints)).length;
    expect(rest).toBeLessThan(whole);
    expect(live).toBeGreaterThan(0);
    expect(live).toBeLessThan(rest);
  });

  test('the resting picture does not name what is under the hand', () => {
    expect(texts(draw(sceneOf(plan, { shows: (key) => !moved.has(key) }), 60))).not.toContain('N1');
  });
});

test('pipes too short to be seen are drawn together with what they lead to', () => {
  const long = produce(smallPlan(), (draft) => {
    const network = draft.networks.net;
    if (!network) return;
    for (let i = 0; i < 200; i += 1) {
      network.nodes[`m${i}`] = { part: null, id: `m${i}`, at: { x: 3 + i * 0.01, y: 2, z: 2.3 } };
      if (i > 0) network.pipes[`q${i}`] = { insulation_m: 0, measured_m: null, id: `q${i}`, from: `m${i - 1}`, to: `m${i}`, size: '3/4', schedule: '40', material: 'black-steel', joint: 'threaded' };
    }
  });
  const cool = draw(sceneOf(long), 5, thingPaints).filter(({ name, stroke }) => name === 'lineTo' && stroke === LIGHT_INK.cool);
  expect(cool.length).toBeLessThan(100);
});
