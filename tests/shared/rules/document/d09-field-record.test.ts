import { describe, expect, test } from 'vitest';
import { HOLD_POINTS } from '#shared/model/hold-points';
import type { Plan } from '#shared/model/plan';
import { d09FieldRecord as rule } from '#shared/rules/document/d09-field-record';
import { derivePlan } from '#shared/derived/derive-plan';
import { fieldDimensionsOf } from '#shared/derived/field-dimensions';
import { at3, check, layout } from '../../../support/layout.ts';

function built(without: { readonly dimension?: string; readonly hold?: string; readonly witness?: string } = {}): Plan {
  const plan = layout({ nozzles: [{ at: at3(2, 2, 2.5) }] });
  plan.info.state = 'built';
  // The ids are those that the field sheet prints.
  for (const { id, planned_m } of fieldDimensionsOf(derivePlan(plan))) {
    if (id !== without.dimension) plan.siteRecord.measurements[id] = { value_m: planned_m, by: 'Fitter', at: 'today', instrument: 'laser', reason: '', approvedBy: '', photos: [] };
  }
  for (const { id } of HOLD_POINTS) if (id !== without.hold) plan.siteRecord.checks[id] = { done: true, by: 'Fitter', witness: id === without.witness ? '' : 'Witness', at: 'today' };
  return plan;
}

describe('D9', () => {
  test('a plan that is not built yet is not asked', () => expect(check(rule, layout({ nozzles: [{ at: at3(2, 2, 2.5) }] }))).toEqual([]));

  test('all measured and signed', () => expect(check(rule, built()).map(({ verdict }) => verdict)).toEqual(['ok', 'ok']));

  test.each(['net/n1/first', 'net/n1/second', 'net/n1/height', 'net/n1/drop'])('%s not measured', (dimension) => {
    expect(check(rule, built({ dimension }))).toMatchObject([{ verdict: 'stop', measured: 1, text: expect.stringContaining('N1') }, { verdict: 'ok' }]);
  });

  test.each(HOLD_POINTS.map(({ id }) => id))('%s not signed', (hold) => expect(check(rule, built({ hold }))[1]).toMatchObject({ verdict: 'stop', measured: 1 }));

  test('a witness is asked where the hold point asks for one', () => {
    for (const { id, isWitnessed } of HOLD_POINTS) expect(check(rule, built({ witness: id }))[1]?.verdict).toBe(isWitnessed ? 'stop' : 'ok');
  });
});
