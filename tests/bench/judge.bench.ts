import { bench, describe } from 'vitest';
import { startHistory } from '#shared/commands/history';
import { recordMeasurements } from '#shared/commands/record-measurements';
import { derivePlan } from '#shared/derived/derive-plan';
import { fieldDimensionsOf } from '#shared/derived/field-dimensions';
import { evaluate } from '#shared/evaluate';
import type { Plan } from '#shared/model/plan';
import { makeSiteJudge } from '#shared/site/judge-measurements';
import { buildDemo } from '../../src-main/demos/build-demo.ts';
import { building } from '../support/building.ts';
import { done } from '../support/try-command.ts';

const MEASURED = 50;

/** Processor time, which a busy machine does not lengthen [ms]. */
function spent_ms<T>(work: () => T): { readonly ms: number; readonly value: T } {
  const before = process.cpuUsage();
  const value = work();
  const { user, system } = process.cpuUsage(before);
  return { ms: (user + system) / 1000, value };
}

/** A plan with fifty dimensions measured all over it, each off by a little: what is measured of rooms closes. */
function measured(plan: Plan): Plan {
  const all = fieldDimensionsOf(derivePlan(plan)).filter(({ kind }) => kind === 'nozzle' || kind === 'pipe');
  const every = Math.max(1, Math.floor(all.length / MEASURED));
  const chosen = all.filter((_, i) => i % every === 0).slice(0, MEASURED);
  return done(plan, recordMeasurements(chosen.map(({ id, planned_m }, i) => ({ id, value_m: planned_m + 0.003 * (1 + (i % 5)) })))).next;
}

const plans = { F3: async () => (await buildDemo('F3')).plan, 'the largest building': async () => building(1) };

describe('fifty measured dimensions judged', () => {
  for (const [name, make] of Object.entries(plans)) {
    bench(
      name,
      async () => {
        const plan = startHistory(measured(startHistory(await make()).present)).present;
        const count = Object.keys(plan.siteRecord.measurements).length;
        const judge = makeSiteJudge();
        const first = spent_ms(() => judge.judge(plan));
        const [id = '', was] = Object.entries(plan.siteRecord.measurements)[0] ?? [];
        const next = startHistory(done(plan, recordMeasurements([{ id, value_m: (was?.value_m ?? 0) + 0.001 }])).next).present;
        const again = spent_ms(() => judge.judge(next));
        const cold = spent_ms(() => evaluate(plan));
        console.log(`${name}: ${count} dimensions ${first.ms.toFixed(0)} ms, one more reading ${again.ms.toFixed(0)} ms, beside a cold check ${cold.ms.toFixed(0)} ms: ${(first.ms / cold.ms).toFixed(1)}`);
      },
      { iterations: 1, warmupIterations: 0, time: 0, warmupTime: 0 },
    );
  }
});
