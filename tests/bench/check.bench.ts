import { bench, describe } from 'vitest';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { evaluate } from '#shared/evaluate';
import type { Plan } from '#shared/model/plan';
import { buildDemo } from '../../src-main/demos/build-demo.ts';

const { plan } = await buildDemo('F3');
const [network] = Object.values(plan.networks);
const [nozzle] = Object.values(network?.nozzles ?? {});
const node = network?.nodes[nozzle?.node ?? ''];

/** The plan as a drag leaves it a step on: only one nozzle and its drop have moved. */
function dragged(step: number): Plan {
  if (!network || !nozzle || !node) throw new Error('The demo has a nozzle.');
  const outcome = moveNozzle({ kind: 'nozzle', network: network.id, id: nozzle.id }, { ...node.at, x: node.at.x + 0.001 * (step % 100) })(plan);
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome.next;
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
});
