import { bench, describe } from 'vitest';
import { designOf } from '#shared/calculations/design/design-of';
import type { Outcome } from '#shared/commands/command';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { movePipeNode } from '#shared/commands/move-pipe-node';
import { derivePlan } from '#shared/derived/derive-plan';
import { evaluate } from '#shared/evaluate';
import { makeLive } from '#shared/live';
import type { Plan } from '#shared/model/plan';
import { building, countsOf } from '../support/building.ts';

const none = () => undefined;
const STEPS = 200;
/** Steps until what runs often has been compiled. */
const WARM = 60;

/** Time by the clock, which is what somebody waits: run it on a machine that does nothing else [ms]. */
function spent_ms<T>(work: () => T): { readonly ms: number; readonly value: T } {
  const before_ms = performance.now();
  const value = work();
  return { ms: performance.now() - before_ms, value };
}

/** How fast the machine counts: ten million turns of a plain loop [ms], so that times of two machines can be told apart. */
function pace_ms(): number {
  const count = () => spent_ms(() => Array.from({ length: 10 }, (_, i) => i).reduce((sum, start) => {
    let mixed = sum;
    for (let k = 0; k < 1_000_000; k += 1) mixed = (Math.imul(mixed, 31) + start + k) | 0;
    return mixed;
  }, 1)).ms;
  return Math.min(count(), count(), count());
}

interface Line {
  readonly what: string;
  readonly ours: number;
  readonly bound: number;
  readonly beside: string;
  readonly peer: number;
  readonly unit: string;
}

/** The network in the middle of a building. */
function middleOf(plan: Plan) {
  const networks = Object.values(plan.networks);
  const network = networks[Math.floor(networks.length / 2)];
  const pipes = Object.values(network?.pipes ?? {});
  const nozzle = Object.values(network?.nozzles ?? {})[3];
  const tee = Object.values(network?.nodes ?? {}).find(({ id }) => pipes.filter(({ from, to }) => from === id || to === id).length === 3);
  if (!network || !nozzle || !tee) throw new Error('The building has pipe and nozzles.');
  return { network: network.id, nozzle: nozzle.id, tee: tee.id };
}

type Drag = (plan: Plan, by_m: number) => Outcome;

/** Steps of a drag to and fro: command, derivation, sums and rules of each [ms]. */
function dragged(start: Plan, drag: Drag): number[] {
  const live = makeLive();
  live.check(start, none);
  let plan = start;
  const times: number[] = [];
  for (let step = 0; step < WARM + STEPS; step += 1) {
    const { ms } = spent_ms(() => {
      const outcome = drag(plan, step % 20 < 10 ? 0.002 : -0.002);
      if (!outcome.ok) throw new Error(outcome.reason);
      plan = outcome.next;
      live.check(plan, none);
    });
    if (step >= WARM) times.push(ms);
  }
  return times.sort((a, b) => a - b);
}

const share = (times: readonly number[], of: number): number => times[Math.min(times.length - 1, Math.floor(times.length * of))] ?? Number.NaN;

/** Checking all of the building from nothing. */
const coldly = (of: number): number => {
  const plan = building(of);
  return spent_ms(() => evaluate(plan, none)).ms;
};

function measured(): Line[] {
  const tenth = coldly(0.1);
  const whole = building(1);
  const cold = spent_ms(() => evaluate(whole, none)).ms;
  const again = structuredClone(whole);
  const sums = spent_ms(() => designOf(derivePlan(again), none)).ms;
  const memory = process.memoryUsage().rss / 1e6;
  const { network, nozzle, tee } = middleOf(whole);
  const placeOf = (plan: Plan, id: string) => plan.networks[network]?.nodes[id]?.at ?? { x: 0, y: 0, z: 0 };
  const nozzleDrag: Drag = (plan, by_m) => {
    const at = placeOf(plan, plan.networks[network]?.nozzles[nozzle]?.node ?? '');
    return moveNozzle({ kind: 'nozzle', network, id: nozzle }, { ...at, x: at.x + by_m })(plan);
  };
  const teeDrag: Drag = (plan, by_m) => {
    const at = placeOf(plan, tee);
    return movePipeNode({ kind: 'node', network, id: tee }, { ...at, x: at.x + by_m })(plan);
  };
  const [nozzles, tees] = [dragged(whole, nozzleDrag), dragged(whole, teeDrag)];
  const drags = (what: string, times: readonly number[]): Line[] => [
    { what: `one step of a ${what} drag, median`, ours: share(times, 0.5), bound: 4, beside: 'cold check', peer: cold, unit: 'ms' },
    { what: `one step of a ${what} drag, p99`, ours: share(times, 0.99), bound: 16, beside: 'cold check', peer: cold, unit: 'ms' },
  ];
  return [
    ...drags('nozzle', nozzles),
    ...drags('pipe', tees),
    { what: 'cold check', ours: cold, bound: 1000, beside: 'derived and summed only', peer: sums, unit: 'ms' },
    { what: 'cold check of all against a tenth', ours: cold / tenth, bound: 12, beside: 'as much building', peer: 10, unit: 'times' },
    { what: 'memory of the process', ours: memory, bound: 600, beside: 'the bound', peer: 600, unit: 'MB' },
  ];
}

const printed = (value: number): string => (value >= 100 ? value.toFixed(0) : value.toPrecision(3));

/** One table: a benchmark of the runner cannot tell a median from a p99, and shows nothing beside it. */
function tell(lines: readonly Line[]): void {
  const rows = lines.map(({ what, ours, bound, beside, peer, unit }) => [what, `${printed(ours)} ${unit}`, `${printed(bound)} ${unit}`, ours <= bound ? 'kept' : 'missed', `${beside}, ${printed(peer)} ${unit}`, printed(ours / peer)]);
  const all = [['what', 'ours', 'bound', '', 'peer', 'ratio'], ...rows];
  const widths = all[0]?.map((_, i) => Math.max(...all.map((row) => row[i]?.length ?? 0))) ?? [];
  process.stdout.write(`\n${all.map((row) => row.map((cell, i) => cell.padEnd(widths[i] ?? 0)).join('  ')).join('\n')}\n`);
}

describe('the largest building', () => {
  bench(
    'checked from nothing and while it is dragged',
    () => {
      process.stdout.write(`\n${Object.entries(countsOf(building(1))).map(([kind, count]) => `${count} ${kind}`).join(', ')}\n`);
      process.stdout.write(`this machine counts ten million turns in ${printed(pace_ms())} ms\n`);
      tell(measured());
    },
    { iterations: 1, time: 0, warmupIterations: 0, warmupTime: 0 },
  );
});
