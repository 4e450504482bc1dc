import { freeze } from 'immer';
import { bench, describe } from 'vitest';
import { designOf } from '#shared/calculations/design/design-of';
import type { DischargeSource, KnownDischarge } from '#shared/calculations/discharge/discharge-source';
import { runDischarge } from '#shared/calculations/discharge/run-discharge';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { derivePlan } from '#shared/derived/derive-plan';
import { rectangle } from '#shared/geometry/outline';
import type { Plan } from '#shared/model/plan';
import { place3, planBuilder } from '../support/plan-builder.ts';
import { KNOWN_ROOM, REGULATOR, finishRoom } from '../support/whole-plan.ts';

/** Rooms of 15 × 8 m in a grid, each with a column and a network of six cylinders and twelve nozzles. */
function manyNetworks(count: number): Plan {
  const built = planBuilder();
  for (let room = 0; room < count; room += 1) {
    const [x, y] = [(room % 6) * 16, Math.floor(room / 6) * 9];
    finishRoom(built.room(15, 8, 2.8, { x, y }, structuredClone(KNOWN_ROOM)), 0.15).obstruction('column', rectangle(1, 1, { x: x + 3, y: y + 3 }), 0, 2.8);
    built.network({ assembly: [{ ...REGULATOR, id: `part-${room}` }] });
    for (let i = 0; i < 6; i += 1) built.cylinder(x + 0.2, y + 0.5 + i * 0.4, Math.PI);
    const onMain = (i: number) => place3(x + 0.3 + i * 2.2, y + 4, 2.6);
    built.run([place3(x + 0.3, y + 4, 2), onMain(0), ...[1, 2, 3, 4, 5, 6].map(onMain)], '1-1/4');
    for (let i = 1; i <= 6; i += 1) {
      for (const aside_m of [-2, 2]) {
        const tee = onMain(i);
        built.run([tee, { ...tee, y: tee.y + aside_m }, { ...tee, y: tee.y + aside_m, z: 2.4 }]).nozzle(tee.x, tee.y + aside_m, 2.4, [0, Math.PI], { orificeArea_m2: 2e-5 });
        built.support(tee.x, tee.y + 0.3 * Math.sign(aside_m), 2.6).support(tee.x, tee.y + 0.95 * aside_m, 2.6);
      }
    }
  }
  return freeze(built.plan, true);
}

/** As the window answers while something is dragged: with the last discharge of each network, however it moves. */
function lastKnown(): DischargeSource {
  const last = new Map<string, KnownDischarge>();
  return (network, input) => {
    const known = last.get(network) ?? { result: runDischarge(input), isStale: true };
    last.set(network, known);
    return known;
  };
}

const plan = manyNetworks(30);
const [network] = Object.values(plan.networks);
const [nozzle] = Object.values(network?.nozzles ?? {});
const node = network?.nodes[nozzle?.node ?? ''];
/** The plan as a drag leaves it a step on: only one nozzle and its drop have moved. */
function dragged(step: number): Plan {
  if (!network || !nozzle || !node) throw new Error('The plan has a nozzle.');
  const outcome = moveNozzle({ kind: 'nozzle', network: network.id, id: nozzle.id }, { ...node.at, x: node.at.x + 0.001 * (1 + (step % 100)) })(plan);
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome.next;
}

describe('sums of 30 networks with 12 nozzles each: one step of a nozzle drag', () => {
  let step = 0;
  const source = lastKnown();
  designOf(derivePlan(plan), source);
  bench('moved and derived only', () => {
    step += 1;
    derivePlan(dragged(step));
  });
  bench('and every sum, with its discharge known', () => {
    step += 1;
    designOf(derivePlan(dragged(step)), source);
  });
});
