import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { startHistory } from '#shared/commands/history';
import { recordMeasurements } from '#shared/commands/record-measurements';
import { derivePlan } from '#shared/derived/derive-plan';
import { fieldDimensionsOf } from '#shared/derived/field-dimensions';
import { fieldRooms } from '#shared/margins/field-room';
import { printedTolerances } from '#shared/sheets/field-tables';
import { makeSiteJudge } from '#shared/site/judge-measurements';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { done } from '../../support/try-command.ts';

/** Less than a tape shows: so near to the plan a reading is the plan [m]. */
const AS_PLANNED_m = 0.0005;

describe('paper and judgement say the same of one measured dimension', () => {
  test.each([
    ['F1', 60],
    ['F2', 60],
  ] as const)('%s: within what is printed it never breaks a check, beyond it it never simply fits', async (name, numRuns) => {
    const plan = startHistory((await buildDemo(name)).plan).present;
    const derived = derivePlan(plan);
    const printed = printedTolerances(derived, fieldRooms(derived));
    const told = fieldDimensionsOf(derived).filter(({ id }) => printed.has(id));
    expect(told.length).toBeGreaterThan(0);
    const judge = makeSiteJudge();
    const answers = new Map<string, number>();
    fc.assert(
      fc.property(fc.constantFrom(...told), fc.constantFrom('within', 'edge', 'beyond', 'far beyond'), fc.boolean(), fc.double({ min: 0, max: 1, noNaN: true }), (dimension, where, isMore, share) => {
        const [minus_m, plus_m] = printed.get(dimension.id) ?? [0, 0];
        const most_m = isMore ? plus_m : minus_m;
        const off_m = { within: share * most_m, edge: most_m, beyond: most_m + AS_PLANNED_m * 1.1 + share * 0.012, 'far beyond': most_m + 0.012 + share * 2 }[where];
        const value_m = dimension.planned_m + (isMore ? off_m : -off_m);
        fc.pre(value_m > 0.01);
        const { siteRecord } = done(plan, recordMeasurements([{ id: dimension.id, value_m }])).next;
        const row = judge.judge(plan, siteRecord.measurements, printed).rows.find(({ dimension: { id } }) => id === dimension.id);
        const said = `${dimension.name} ${where} by ${isMore ? '' : '-'}${off_m}: ${row?.words}`;
        answers.set(row?.answer ?? '', (answers.get(row?.answer ?? '') ?? 0) + 1);
        if (where === 'within' || where === 'edge') expect(row?.answer, said).not.toBe('breaks');
        else expect(row?.answer, said).not.toBe('fits');
      }),
      { numRuns },
    );
    // All of it was met, so that nothing is held to an empty word.
    expect([...answers.keys()].sort()).toEqual(expect.arrayContaining(['breaks', 'fits']));
  });
});
