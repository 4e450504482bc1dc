import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evaluate } from '#shared/evaluate';
import { HOLD_POINTS } from '#shared/model/hold-points';
import type { Plan } from '#shared/model/plan';
import { armingOrder } from '#shared/site/arming-order';
import type { FieldCheckAnswer } from '#shared/site/field-entries';
import { type FormTick, formTicks, takeFromForm } from '#shared/site/form-ticks';
import { armedPlan, armedWith, goodLog } from '../../support/armed-plan.ts';
import '../../support/property-seed.ts';
import { done, refusal } from '../../support/try-command.ts';

const { keys } = armedPlan();
const log = goodLog(keys);
const check = (id: string, given: Partial<FieldCheckAnswer> = {}): FieldCheckAnswer => ({ id, kind: 'taken', where: 'page 2', done: true, by: 'Fitter', witness: 'Inspector', at: '2026-03-04 12:00', words: 'As written.', ...given });
const signed = (ids: readonly string[]): FieldCheckAnswer[] => HOLD_POINTS.filter(({ id }) => ids.includes(id)).map(({ id }) => check(id));
const answersTo = (plan: Plan, checks: readonly FieldCheckAnswer[], taken: readonly string[] = checks.map(({ id }) => id)): FormTick[] => formTicks(evaluate(plan), checks, new Set(taken));
const kindsOf = (ticks: readonly FormTick[]): Record<string, string> => Object.fromEntries(ticks.map(({ id, kind }) => [id, kind]));
const ALL = HOLD_POINTS.map(({ id }) => id);

test('with every reading at hand a whole form is ticked in one step, measured values with it, and taken back by one', () => {
  const plan = armedWith(log);
  const ticks = answersTo(plan, signed(ALL));
  expect(new Set(ticks.map(({ kind }) => kind))).toEqual(new Set(['can']));
  const outcome = done(plan, takeFromForm([{ id: 'wall', value_m: 2 }], ticks));
  expect(outcome.label).toBe(`Record a measurement and tick ${ALL.join(', ')}`);
  expect(armingOrder(evaluate(outcome.next)).every(({ standing }) => standing === 'done')).toBe(true);
  expect(outcome.next.siteRecord.measurements.wall?.value_m).toBe(2);
});

test('one that an earlier one is missing for is told which comes first, and why', () => {
  const [first, third] = answersTo(armedWith(log), signed(['H1', 'H3']));
  expect(first?.kind).toBe('can');
  expect(third).toMatchObject({ kind: 'out-of-order' });
  expect(third?.words.join(' ')).toContain('H2 comes first');
  expect(third?.words.join(' ')).toContain('Nobody may stand under a cylinder');
});

test('what the user does not take carries nothing after it', () => {
  expect(kindsOf(answersTo(armedWith(log), signed(['H1', 'H2', 'H3']), ['H1', 'H3']))).toEqual({ H1: 'can', H2: 'can', H3: 'out-of-order' });
});

test('the last connection is refused while panel, voltage or pressure is not logged, each named', () => {
  for (const kind of ['panel-clear', 'dead', 'pressure'] as const) {
    const [last] = answersTo(armedWith(log.filter((entry) => entry.kind !== kind), 'H11'), signed(['H12']));
    expect(last?.kind).toBe('lacks');
    expect(last?.words).toHaveLength(1);
  }
  const [bare] = answersTo(armedWith(log.filter(({ kind }) => !['panel-clear', 'dead', 'pressure'].includes(kind)), 'H11'), signed(['H12']));
  expect(bare?.words.length).toBeGreaterThanOrEqual(3);
});

test('names are asked: none, no witness, and a witness who did the work', () => {
  const plan = armedWith(log, 'H1');
  for (const given of [{ by: '' }, { witness: '' }, { witness: ' fitter ' }, { at: '' }]) expect(answersTo(plan, [check('H2', given)])).toMatchObject([{ kind: 'unsigned' }]);
});

test('what is ticked already stays as it was signed', () => {
  expect(answersTo(armedWith(log, 'H2'), [check('H1', { by: 'Somebody else' })])).toMatchObject([{ kind: 'already' }]);
});

test('words that are no answer, two answers, and forms of another plan tick nothing; one of another state only when told', () => {
  const plan = armedWith(log);
  for (const kind of ['not-understood', 'twice', 'other-plan'] as const) expect(answersTo(plan, [check('H1', { kind })])).toMatchObject([{ kind: 'not-read', words: ['As written.'] }]);
  expect(answersTo(plan, [check('H1', { done: false })])).toMatchObject([{ kind: 'not-read' }]);
  expect(answersTo(plan, [check('H1', { kind: 'other-revision' })])).toMatchObject([{ kind: 'can', isOfThisPlan: false }]);
  expect(answersTo(plan, [check('H1', { kind: 'missing' }), check('H2', { kind: 'empty' }), check('H3', { kind: 'unchanged' })])).toEqual([]);
});

test('the command itself refuses one out of order', () => {
  const plan = armedWith(log);
  expect(refusal(plan, takeFromForm([], answersTo(plan, signed(['H1', 'H2', 'H3'])).slice(1)))).toContain('H1 comes first');
});

test('whatever a form ticks and the user takes: what can be taken goes through, and the order holds', () => {
  const plans = [armedWith(log), armedWith(log, 'H4'), armedWith(log.slice(0, 3)), armedWith([])];
  fc.assert(
    fc.property(fc.constantFrom(...plans), fc.subarray(ALL), fc.subarray(ALL), (plan, onForm, taken) => {
      const ticks = answersTo(plan, signed(onForm), taken).filter(({ id, kind }) => kind === 'can' && taken.includes(id));
      const next = ticks.length > 0 ? done(plan, takeFromForm([], ticks)).next : plan;
      const standings = armingOrder(evaluate(next)).map(({ standing }) => standing);
      expect(standings.includes('lost')).toBe(false);
      expect(standings.filter((standing) => standing === 'done')).toHaveLength(Object.keys(plan.siteRecord.checks).length + ticks.length);
    }),
    { numRuns: 30 },
  );
});
