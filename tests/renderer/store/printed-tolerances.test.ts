import { expect, test } from 'vitest';
import { recordMeasurements } from '#shared/commands/record-measurements';
import { derivePlan } from '#shared/derived/derive-plan';
import { fieldDimensionsOf } from '#shared/derived/field-dimensions';
import { fieldRooms } from '#shared/margins/field-room';
import type { Plan } from '#shared/model/plan';
import { printedTolerances } from '#shared/sheets/field-tables';
import { type PrintedTolerances, makeSiteJudge } from '#shared/site/judge-measurements';
import { type StartTolerancesWorker, needsTolerances, toleranceGrounds, workOutTolerances } from '../../../src-renderer/store/printed-tolerances.ts';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { planBuilder } from '../../support/plan-builder.ts';
import { done } from '../../support/try-command.ts';

const drawn = (): Plan => planBuilder('metric').room(5, 4, 2.6).network().nozzle(2, 2, 2.3).plan;

/** A worker that is answered by hand. */
function handWorker() {
  const log: string[] = [];
  let answer: Parameters<StartTolerancesWorker>[0] = () => undefined;
  let fail = (): void => undefined;
  const start: StartTolerancesWorker = (onReply, onBroken) => {
    [answer, fail] = [onReply, onBroken];
    return { post: () => log.push('asked'), end: () => log.push('ended') };
  };
  return { log, start, reply: (printed: PrintedTolerances) => answer({ printed: [...printed] }), break: () => fail() };
}

test('tolerances are told once, and the worker ends with it; a broken worker tells that none are known', () => {
  for (const isBroken of [false, true]) {
    const worker = handWorker();
    const told: (PrintedTolerances | null)[] = [];
    workOutTolerances(drawn(), worker.start, (printed) => told.push(printed));
    expect([worker.log, told]).toEqual([['asked'], []]);
    if (isBroken) worker.break();
    else worker.reply(new Map([['a', [0.01, 0.02]]]));
    worker.reply(new Map());
    expect(worker.log).toEqual(['asked', 'ended']);
    expect(told).toEqual([isBroken ? null : new Map([['a', [0.01, 0.02]]])]);
  }
});

test('what was given up is no longer told', () => {
  const worker = handWorker();
  const giveUp = workOutTolerances(drawn(), worker.start, () => expect.unreachable());
  giveUp();
  worker.reply(new Map());
  expect(worker.log).toEqual(['asked', 'ended']);
});

test('they are worked out once something is measured, and hold while only measurements change', () => {
  const plan = drawn();
  const [wall] = fieldDimensionsOf(derivePlan(plan));
  const measured = done(plan, recordMeasurements([{ id: wall?.id ?? '', value_m: wall?.planned_m ?? 0 }])).next;
  expect([needsTolerances(plan), needsTolerances(measured)]).toEqual([false, true]);
  expect(toleranceGrounds(measured).every((part, i) => part === toleranceGrounds(plan)[i])).toBe(true);
});

test('a nozzle that is off by half of what is printed fits once that is known, as on paper; until then it is to be recorded', async () => {
  const { plan } = await buildDemo('F1');
  const derived = derivePlan(plan);
  const printed = printedTolerances(derived, fieldRooms(derived));
  const { siteTolerance_m } = plan.settings;
  const judge = makeSiteJudge();
  const answersTo = (id: string, value_m: number) => {
    const measured = done(plan, recordMeasurements([{ id, value_m }])).next;
    const answer = (known?: PrintedTolerances) => judge.judge(measured, measured.siteRecord.measurements, known).rows.find((row) => row.dimension.id === id)?.answer;
    return [answer(), answer(printed)];
  };
  const nozzles = fieldDimensionsOf(derived).filter(({ kind }) => kind === 'nozzle');
  const within = nozzles.flatMap(({ id, planned_m }) => {
    const [minus_m, plus_m] = printed.get(id) ?? [0, 0];
    return [-minus_m, plus_m].filter((way_m) => Math.abs(way_m) > 0.004).map((way_m) => answersTo(id, planned_m + Math.sign(way_m) * Math.min(Math.abs(way_m), siteTolerance_m) * 0.5));
  });
  // A support that would have to move along is said in any case.
  expect(within.filter(([before]) => before !== 'supports').length).toBeGreaterThan(0);
  for (const [before, after] of within) expect([before, after]).toEqual(before === 'supports' ? ['supports', 'supports'] : ['inside', 'fits']);
});
