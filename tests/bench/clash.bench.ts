import { freeze, produce } from 'immer';
import { bench, describe } from 'vitest';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { pipeToPipe_m, pipeToSolid_m } from '#shared/derived/clash';
import { clashPass } from '#shared/derived/clash-pass';
import type { Derived } from '#shared/derived/derived';
import { derivePlan } from '#shared/derived/derive-plan';
import { rectangle } from '#shared/geometry/outline';
import type { Plan } from '#shared/model/plan';
import { place3, planBuilder } from '../support/plan-builder.ts';

/** Rooms of 15 × 8 m in a grid under a slope, each with 25 obstructions and a network of 100 pipes. */
function building(rooms: number): Plan {
  const built = planBuilder();
  for (let room = 0; room < rooms; room += 1) {
    const [x, y] = [(room % 15) * 15.2, Math.floor(room / 15) * 8.2];
    built.room(15, 8, 2.9, { x, y }, { slope: { at: { x, y }, direction_rad: 0, rise: 0.01 } });
    for (let i = 0; i < 25; i += 1) built.obstruction(i % 2 ? 'beam' : 'duct', rectangle(0.3, 2, { x: x + 0.4 + i * 0.58, y: y + (i % 3) * 2 }), 2.5 + (i % 4) * 0.1, 2.9);
    built.network();
    const onMain = (i: number) => place3(x + 0.3 + i * 0.43, y + 4, 2.6);
    built.run(Array.from({ length: 34 }, (_, i) => onMain(i)), '1-1/4');
    for (let i = 1; i < 34; i += 1) {
      const tee = onMain(i);
      const aside_m = i % 2 ? 3 : -3;
      built.run([tee, { ...tee, y: tee.y + aside_m }, { ...tee, y: tee.y + aside_m, z: 2.4 }]);
      built.nozzle(tee.x, tee.y + aside_m, 2.4);
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

describe('clash of 20,000 pipes and 5,000 obstructions', () => {
  const plan = building(200);
  const next = copies(plan, 8);
  bench('a full pass', () => void clashPass(next()), few);

  const network = Object.values(plan.networks)[100];
  const [nozzle] = Object.values(network?.nozzles ?? {});
  const node = network?.nodes[nozzle?.node ?? ''];
  const [level] = Object.values(plan.levels);
  const [thing] = Object.values(level?.obstructions ?? {});
  if (!network || !nozzle || !node || !level || !thing) throw new Error('The building has a nozzle and a beam.');
  const dragged = Array.from({ length: 30 }, (_, step) => {
    const outcome = moveNozzle({ kind: 'nozzle', network: network.id, id: nozzle.id }, { ...node.at, y: node.at.y + 0.001 * (1 + step) })(plan);
    if (!outcome.ok) throw new Error(outcome.reason);
    return derivePlan(outcome.next);
  });
  const shifted = Array.from({ length: 30 }, (_, step) =>
    derivePlan(
      produce(plan, (draft) => {
        for (const corner of draft.levels[level.id]?.obstructions[thing.id]?.footprint ?? []) corner.y += 0.001 * (1 + step);
      }),
    ),
  );
  const steps = { ...few, iterations: 25 };
  let [atDrag, atShift] = [0, 0];
  clashPass(derivePlan(plan));
  bench('one step of a nozzle drag', () => void clashPass(dragged[atDrag++] ?? derivePlan(plan)), steps);
  bench('one step of a beam drag', () => void clashPass(shifted[atShift++] ?? derivePlan(plan)), steps);
});
