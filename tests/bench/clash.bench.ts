import { freeze, produce } from 'immer';
import { bench, describe } from 'vitest';
import type { Design } from '#shared/calculations/design/design';
import { pipeToPipe_m, pipeToSolid_m } from '#shared/derived/clash';
import { clashPass } from '#shared/derived/clash-pass';
import type { Derived } from '#shared/derived/derived';
import { derivePlan } from '#shared/derived/derive-plan';
import { rectangle } from '#shared/geometry/outline';
import { type Plan, takeId } from '#shared/model/plan';
import { p27Clash } from '#shared/rules/pipe/p27-clash';
import { planBuilder } from '../support/plan-builder.ts';

/**
 * Rooms of 15 × 8 m in a grid under a slope, each with 25 obstructions and 100 pipes: a main with short branches and drops.
 * @param isOne  all pipe in one network, the mains joined along a trunk, instead of one for each room
 */
function building(rooms: number, isOne = false): Plan {
  const built = planBuilder();
  for (let room = 0; room < rooms; room += 1) {
    const [x, y] = [(room % 15) * 15.2, Math.floor(room / 15) * 8.2];
    built.room(15, 8, 2.9, { x, y }, { slope: { at: { x, y }, direction_rad: 0, rise: 0.01 } });
    for (let i = 0; i < 25; i += 1) built.obstruction(i % 2 ? 'beam' : 'duct', rectangle(0.3, 2, { x: x + 0.4 + i * 0.58, y: y + (i % 3) * 2 }), 2.5 + (i % 4) * 0.1, 2.9);
  }
  let trunk = '';
  let last = '';
  for (let room = 0; room < rooms; room += 1) {
    const [x, y] = [(room % 15) * 15.2, Math.floor(room / 15) * 8.2];
    if (!isOne || room === 0) built.network();
    // Straight into the plan: the builder looks every place up, which takes too long for 20,000 pipes of one network.
    const network = built.plan.networks[built.networkId];
    if (!network) throw new Error('The builder has a network.');
    const node = (px: number, py: number, z: number): string => {
      const id = takeId(built.plan, 'node');
      network.nodes[id] = { id, part: null, at: { x: px, y: py, z } };
      return id;
    };
    const pipe = (from: string, to: string, size: '1-1/4' | '3/4'): void => {
      const id = takeId(built.plan, 'pipe');
      network.pipes[id] = { id, from, to, size, schedule: '40', material: 'black-steel', joint: 'threaded', insulation_m: 0, measured_m: null };
    };
    for (let i = 0; i < 34; i += 1) {
      const tee = node(x + 0.3 + i * 0.43, y + 4, 2.6);
      if (i > 0) pipe(last, tee, '1-1/4');
      last = tee;
      if (i === 0) {
        const on = node(x + 0.3, y + 0.5, 2.2);
        if (isOne && trunk) {
          // To the next row of rooms around a corner.
          const corner = room % 15 === 0 ? node(x + 0.3, y - 7.7, 2.2) : trunk;
          if (corner !== trunk) pipe(trunk, corner, '1-1/4');
          pipe(corner, on, '1-1/4');
        }
        const up = node(x + 0.3, y + 0.5, 2.6);
        pipe(on, up, '1-1/4');
        pipe(up, tee, '1-1/4');
        network.source ??= on;
        trunk = on;
        continue;
      }
      const aside = node(x + 0.3 + i * 0.43, y + 4 + (i % 2 ? 3 : -3), 2.6);
      const end = node(x + 0.3 + i * 0.43, y + 4 + (i % 2 ? 3 : -3), 2.4);
      pipe(tee, aside, '3/4');
      pipe(aside, end, '3/4');
      const id = takeId(built.plan, 'nozzle');
      network.nozzles[id] = { id, name: `N${id}`, node: end, holes_rad: [0, Math.PI], rotation_rad: 0, tilt_rad: 0, orificeArea_m2: null, serves: null };
    }
  }
  return freeze(built.plan, true);
}

/** The same question put to every pair. */
function everyPair({ networks, solids }: Derived): number {
  const pipes = networks.flatMap((network) => network.pipes);
  let near = 0;
  for (const [i, pipe] of pipes.entries()) {
    for (const solid of solids) if (pipeToSolid_m(pipe, solid) <= 0.2754) near += 1;
    for (let j = i + 1; j < pipes.length; j += 1) {
      const other = pipes[j];
      if (other && pipeToPipe_m(pipe, other) <= 0.2754) near += 1;
    }
  }
  return near;
}

/** Copies of a plan derived ahead, one for each pass: none is remembered, and none of them pays for deriving. */
function copies(plan: Plan, count: number): () => Derived {
  const ready = Array.from({ length: count }, () => derivePlan(structuredClone(plan)));
  let used = 0;
  return () => {
    const next = ready[used];
    used += 1;
    if (!next) throw new Error('Every pass has a copy.');
    return next;
  };
}

const few = { time: 0, iterations: 5, warmupTime: 0, warmupIterations: 1 };

describe('clash of 1,000 pipes and 250 obstructions', () => {
  const plan = building(10);
  const next = copies(plan, 8);
  bench('through the index, nothing remembered', () => void clashPass(next()), few);
  const all = derivePlan(plan);
  bench('every pair, one by one', () => void everyPair(all), few);
});

const noDesign = {} as Design;
const judge = (derived: Derived): void => void p27Clash.run(derived, noDesign);

describe.each([
  ['200 networks', false],
  ['one network', true],
])('clash of 20,000 pipes in %s and 5,000 obstructions', (_, isOne) => {
  const plan = building(200, isOne);
  const next = copies(plan, 12);
  const thrice = { ...few, iterations: 3 };
  bench('a full pass', () => void clashPass(next()), thrice);
  bench('a full pass with the check', () => judge(next()), thrice);

  const networks = Object.values(plan.networks);
  const network = networks[Math.floor(networks.length / 2)];
  const nodes = Object.values(network?.nodes ?? {});
  const node = nodes[3 * Math.floor(nodes.length / 6) + 2];
  const [level] = Object.values(plan.levels);
  const [thing] = Object.values(level?.obstructions ?? {});
  if (!network || !node || !level || !thing) throw new Error('The building has pipe and a beam.');
  const edited = (step: number): Derived =>
    derivePlan(
      produce(plan, (draft) => {
        const moved = draft.networks[network.id]?.nodes[node.id];
        if (moved) moved.at = { ...moved.at, y: moved.at.y + 0.001 * (1 + step) };
      }),
    );
  const shifted = (step: number): Derived =>
    derivePlan(
      produce(plan, (draft) => {
        for (const corner of draft.levels[level.id]?.obstructions[thing.id]?.footprint ?? []) corner.y += 0.001 * (1 + step);
      }),
    );
  const [passed, judged, beams] = [edited, edited, shifted].map((make, k) => Array.from({ length: 12 }, (__, step) => make(step + 40 * k)));
  const steps = { ...few, iterations: 9, warmupIterations: 3 };
  let [atPass, atJudge, atBeam] = [0, 0, 0];
  clashPass(derivePlan(plan));
  let found = p27Clash.ask(derivePlan(plan), noDesign);
  /** What the window does at each step: what was found before stands where nothing has changed. */
  const judgeOn = (derived: Derived): void => {
    found = p27Clash.ask(derived, noDesign, found);
  };
  bench('one end of a pipe moved', () => void clashPass(passed?.[atPass++] ?? derivePlan(plan)), steps);
  bench('one end of a pipe moved, with the check', () => judgeOn(judged?.[atJudge++] ?? derivePlan(plan)), steps);
  bench('one step of a beam drag, with the check', () => judgeOn(beams?.[atBeam++] ?? derivePlan(plan)), steps);
});
