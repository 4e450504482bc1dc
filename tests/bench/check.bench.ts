import { freeze } from 'immer';
import { bench, describe } from 'vitest';
import type { DischargeInput } from '#shared/calculations/discharge/discharge';
import { runDischarge } from '#shared/calculations/discharge/run-discharge';
import { calculationsOf } from '#shared/calculations/lines/calculations-of';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { movePipeNode } from '#shared/commands/move-pipe-node';
import { derivePlan } from '#shared/derived/derive-plan';
import { evaluate } from '#shared/evaluate';
import { layoutIsometric } from '#shared/isometric/layout-isometric';
import { type Plan, isSameRef } from '#shared/model/plan';
import { billOfMaterials } from '#shared/take-off/bill-of-materials';
import { buildDemo } from '../../src-main/demos/build-demo.ts';
import { joinedTo } from '../../src-renderer/panels/sums/sum-subjects.ts';
import { makeKnownDischarges } from '../../src-renderer/store/known-discharges.ts';

const { plan } = await buildDemo('F3');
const { plan: annex } = await buildDemo('F2');
const [network] = Object.values(plan.networks);

/** A plan seen for the first time: frozen, as one that was opened is. */
const unseen = (of: Plan): Plan => freeze(structuredClone(of), true);

/** The plan as a drag leaves it a step on: only one nozzle and its drop have moved. */
function nozzleDragged(of: Plan, step: number): Plan {
  const [dragged] = Object.values(of.networks);
  const [nozzle] = Object.values(dragged?.nozzles ?? {});
  const node = dragged?.nodes[nozzle?.node ?? ''];
  if (!dragged || !nozzle || !node) throw new Error('The demo has a nozzle.');
  const outcome = moveNozzle({ kind: 'nozzle', network: dragged.id, id: nozzle.id }, { ...node.at, x: node.at.x + 0.001 * (1 + (step % 100)) })(of);
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome.next;
}

/** The same for a tee. */
function teeDragged(of: Plan, step: number): Plan {
  const [dragged] = Object.values(of.networks);
  const pipes = Object.values(dragged?.pipes ?? {});
  const node = Object.values(dragged?.nodes ?? {}).find(({ id }) => pipes.filter(({ from, to }) => from === id || to === id).length === 3);
  if (!dragged || !node) throw new Error('The demo has a tee.');
  const outcome = movePipeNode({ kind: 'node', network: dragged.id, id: node.id }, { ...node.at, x: node.at.x + 0.001 * (1 + (step % 100)) })(of);
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome.next;
}

/** A drag has run for a while before it is timed, and is timed for long enough. */
const cold = { time: 0, warmupTime: 0, warmupIterations: 10, iterations: 30 };
const steps = { time: 0, warmupTime: 0, warmupIterations: 80, iterations: 150 };

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
    evaluate(unseen(plan));
  }, cold);
  let step = 0;
  evaluate(plan);
  bench('one step of a nozzle drag', () => {
    step += 1;
    evaluate(nozzleDragged(plan, step));
  }, steps);
  const discharges = discharged();
  bench('one step with the sums panel open', () => {
    step += 1;
    const evaluation = evaluate(nozzleDragged(plan, step), discharges.source);
    const shown = joinedTo(evaluation.derived, { kind: 'network', id: network?.id ?? '' });
    const calculations = calculationsOf(evaluation, (ref) => shown.some((each) => isSameRef(each, ref)));
    if (!calculations.some(({ isStale }) => isStale)) throw new Error('The last discharge is shown while pipe is dragged.');
  }, steps);
});

describe('checking F2: one network of eight nozzles', () => {
  bench('cold: nothing remembered', () => {
    evaluate(unseen(annex));
  }, cold);
  let step = 0;
  evaluate(annex);
  bench('one step of a nozzle drag', () => {
    step += 1;
    evaluate(nozzleDragged(annex, step));
  }, steps);
  bench('one step of a tee drag', () => {
    step += 1;
    evaluate(teeDragged(annex, step));
  }, steps);
});

describe('take-off of F3', () => {
  bench('derived and taken off, nothing remembered', () => {
    billOfMaterials(derivePlan(unseen(plan)));
  }, cold);
  bench('beside: derived and checked', () => {
    evaluate(unseen(plan));
  }, cold);
});

describe('isometric of F2', () => {
  const [first] = derivePlan(annex).networks;
  if (!first) throw new Error('The demo has a network.');
  const { like } = layoutIsometric(first);
  let step = 0;
  const next = () => {
    step += 1;
    return derivePlan(nozzleDragged(annex, step)).networks[0] ?? first;
  };
  bench('one step of a nozzle drag: the clearest drawing, searched', () => {
    layoutIsometric(next());
  });
  bench('one step of a nozzle drag: like the drawing before', () => {
    layoutIsometric(next(), like);
  });
});
