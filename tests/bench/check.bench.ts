import { bench, describe } from 'vitest';
import type { DischargeInput } from '#shared/calculations/discharge/discharge';
import { runDischarge } from '#shared/calculations/discharge/run-discharge';
import { calculationsOf } from '#shared/calculations/lines/calculations-of';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { evaluate } from '#shared/evaluate';
import { type Plan, isSameRef } from '#shared/model/plan';
import { buildDemo } from '../../src-main/demos/build-demo.ts';
import { joinedTo } from '../../src-renderer/panels/sums/sum-subjects.ts';
import { makeKnownDischarges } from '../../src-renderer/store/known-discharges.ts';

const { plan } = await buildDemo('F3');
const [network] = Object.values(plan.networks);
const [nozzle] = Object.values(network?.nozzles ?? {});
const node = network?.nodes[nozzle?.node ?? ''];

/** The plan as a drag leaves it a step on: only one nozzle and its drop have moved. */
function dragged(step: number): Plan {
  if (!network || !nozzle || !node) throw new Error('The demo has a nozzle.');
  const outcome = moveNozzle({ kind: 'nozzle', network: network.id, id: nozzle.id }, { ...node.at, x: node.at.x + 0.001 * (1 + (step % 100)) })(plan);
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome.next;
}

/** As the window knows them when a drag begins: every discharge of the plan at rest. */
function discharged() {
  const discharges = makeKnownDischarges();
  const inputs: DischargeInput[] = [];
  evaluate(plan, (_network, input) => {
    inputs.push(input);
    return undefined;
  });
  for (const input of inputs) discharges.learn(input, runDischarge(input));
  // The last result of each network is known only once somebody has asked for it.
  evaluate(plan, discharges.source);
  return discharges;
}

describe('checking F3: six rooms, nine nozzles', () => {
  bench('cold: nothing remembered', () => {
    evaluate(structuredClone(plan));
  });
  let step = 0;
  evaluate(plan);
  bench('one step of a nozzle drag', () => {
    step += 1;
    evaluate(dragged(step));
  });
  const discharges = discharged();
  bench('one step with the sums panel open', () => {
    step += 1;
    const evaluation = evaluate(dragged(step), discharges.source);
    const shown = joinedTo(evaluation.derived, { kind: 'network', id: network?.id ?? '' });
    const calculations = calculationsOf(evaluation, (ref) => shown.some((each) => isSameRef(each, ref)));
    if (!calculations.some(({ isStale }) => isStale)) throw new Error('The last discharge is shown while pipe is dragged.');
  });
});
