import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluate } from '#shared/evaluate';
import { HOLD_POINTS } from '#shared/model/hold-points';
import type { LogEntry, Plan } from '#shared/model/plan';
import { armingOrder, findNextHoldPoint } from '#shared/site/arming-order';
import { tickInOrder } from '#shared/site/tick-in-order';
import { armedPlan, armedWith, entry, goodLog, withReleaseOf } from '../../support/armed-plan.ts';
import '../../support/property-seed.ts';
import { done, refusal } from '../../support/try-command.ts';

const { keys } = armedPlan();
const TICK = { by: 'Fitter', witness: 'Inspector', at: '2026-03-04 12:00' };
const orderOf = (plan: Plan) => armingOrder(evaluate(plan));
const stateOf = (plan: Plan, id: string) => {
  const found = orderOf(plan).find(({ point }) => point.id === id);
  if (!found) throw new Error(`There is no ${id}.`);
  return found;
};
/** The log with one kind of reading otherwise, or left out. */
const logWith = (kind: LogEntry['kind'], change: Partial<LogEntry> | null): LogEntry[] => goodLog(keys).flatMap((each) => (each.kind !== kind ? [each] : change ? [{ ...each, ...change }] : []));
const readingOf = (log: readonly LogEntry[], kind: LogEntry['kind']) => {
  const found = orderOf(armedWith(log)).flatMap(({ readings }) => readings).find(({ need }) => need.kind === kind);
  if (!found) throw new Error(`No reading of ${kind} is asked.`);
  return found;
};

describe('order of the hold points', () => {
  test('all readings at hand: each can be ticked after the one before it, to the last', () => {
    let plan = armedWith(goodLog(keys));
    for (const { id } of HOLD_POINTS) {
      expect(findNextHoldPoint(orderOf(plan))?.point.id).toBe(id);
      plan = done(plan, tickInOrder(evaluate(plan), id, TICK)).next;
    }
    expect(orderOf(plan).every(({ standing }) => standing === 'done')).toBe(true);
    expect(findNextHoldPoint(orderOf(plan))).toBeUndefined();
  });

  test('a later one is refused before an earlier one, for every pair, with the reason', () => {
    const plan = armedWith(goodLog(keys));
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 11 }), fc.integer({ min: 0, max: 11 }), (earlier, later) => {
        fc.pre(earlier < later);
        const ticked = armedWith(goodLog(keys), HOLD_POINTS[earlier - 1]?.id ?? null);
        const why = refusal(ticked, tickInOrder(evaluate(ticked), HOLD_POINTS[later]?.id ?? '', TICK));
        expect(why).toContain(`${HOLD_POINTS[earlier]?.id} comes first`);
        expect(why).toContain(HOLD_POINTS[earlier]?.why);
      }),
      { numRuns: 20 },
    );
    expect(stateOf(plan, 'H4')).toMatchObject({ standing: 'waits', first: { id: 'H1' } });
  });

  test('nothing drawn: nothing is proved', () => {
    const empty = armedPlan().plan;
    for (const id of Object.keys(empty.networks)) delete empty.networks[id];
    expect(stateOf(empty, 'H12').lacks.join(' ')).toContain('nothing to prove');
  });

  test('a reading that is missing keeps its hold point open, and all that follow', () => {
    for (const [kind, id] of [['pipe-test', 'H5'], ['puff', 'H5'], ['insulation', 'H9'], ['continuity', 'H9'], ['supervision', 'H9'], ['alarm', 'H9'], ['live', 'H9'], ['panel-clear', 'H12'], ['dead', 'H12'], ['pressure', 'H12']] as const) {
      const before = HOLD_POINTS[HOLD_POINTS.findIndex((each) => each.id === id) - 1]?.id ?? null;
      const plan = armedWith(logWith(kind, null), before);
      expect(refusal(plan, tickInOrder(evaluate(plan), id, TICK))).toContain('not logged yet');
      expect(stateOf(plan, 'H12').standing).toBe(id === 'H12' ? 'next' : 'waits');
    }
  });

  test('a tick is lost when a newer reading does not hold, and what comes after it as well', () => {
    const plan = armedWith([...goodLog(keys), entry('insulation', keys.network, { value: 5e5 })], 'H12');
    expect(orderOf(plan).map(({ standing }) => standing)).toEqual([...Array(8).fill('done'), ...Array(4).fill('lost')]);
  });

  test('a tick without the witness that it needs does not count', () => {
    const plan = armedWith(goodLog(keys), 'H12');
    plan.siteRecord.checks.H2 = { done: true, by: 'Fitter', witness: ' ', at: 'then' };
    expect(stateOf(plan, 'H2').standing).toBe('lost');
    expect(stateOf(plan, 'H12').standing).toBe('lost');
  });
});

describe('readings', () => {
  // Pipe test: 8 psi, 3 RCNY 904-01. Solenoid of the sample unit: 1.5 A, 18 V. Wire: 14 AWG solid 10.07 Ω/km (NEC chapter 9
  // table 8), 2 × 30 m = 0.604 Ω, and 1 Ω for leads (common practice). Insulation 1 MΩ, dead 0.5 V, a tenth of the solenoid: common practice.
  test.each<[LogEntry['kind'], number, 'ok' | 'stop']>([
    ['pipe-test', 55_158.05, 'ok'],
    ['pipe-test', 55_159.1, 'stop'],
    ['pipe-test', 0, 'ok'],
    ['insulation', 1e6, 'ok'],
    ['insulation', 0.999e6, 'stop'],
    ['continuity', 1.603, 'ok'],
    ['continuity', 1.606, 'stop'],
    ['supervision', 0, 'stop'],
    ['supervision', 0.001, 'ok'],
    ['supervision', 0.15, 'ok'],
    ['supervision', 0.151, 'stop'],
    ['alarm', 1.5, 'ok'],
    ['alarm', 1.499, 'stop'],
    ['live', 18, 'ok'],
    ['live', 17.9, 'stop'],
    ['dead', 0.5, 'ok'],
    ['dead', 0.51, 'stop'],
  ])('%s of %s: %s', (kind, value, verdict) => expect(readingOf(logWith(kind, { value }), kind).verdict).toBe(verdict));

  // Real nitrogen filled to 300 bar gauge at 15 °C reads 357.0 bar abs at 50 °C and 244.4 at −20 °C (computed with the equation of Span and others).
  test.each([
    ['full when hot', 357.0, 50, 'ok'],
    ['full when cold', 244.4, -20, 'ok'],
    ['hot, 5.5 % short', 357.0 * 0.945, 50, 'stop'],
    ['cold, 5.5 % short', 244.4 * 0.945, -20, 'stop'],
    ['as much as when full at 15 °C, but hot', 301.0, 50, 'stop'],
    ['6 % too much', 301.0 * 1.06, 15, 'stop'],
    ['4.9 % short at 15 °C', 301.013 * 0.951, 15, 'ok'],
  ] as const)('pressure %s', (_, bar, celsius, verdict) => expect(readingOf(logWith('pressure', { value: bar * 1e5, temperature_K: celsius + 273.15 }), 'pressure').verdict).toBe(verdict));

  test.each<[string, LogEntry['kind'], Partial<LogEntry>]>([
    ['a pressure without its temperature', 'pressure', { temperature_K: null }],
    ['a current without its figure, though somebody called it good', 'alarm', { value: null, isGood: true }],
    ['a look that nobody judged', 'puff', { isGood: null, value: 3 }],
  ])('%s is not checked', (_, kind, change) => expect(readingOf(logWith(kind, change), kind).verdict).toBe('not-checked'));

  test('what the reader calls not good is not good, whatever its figure', () => expect(readingOf(logWith('alarm', { isGood: false }), 'alarm').verdict).toBe('stop'));

  test('a circuit that is not drawn up is not checked, never kept', () => {
    const without = armedPlan(null);
    const plan = armedWith(goodLog(keys), null, without);
    const verdicts = orderOf(plan).flatMap(({ readings }) => readings).filter(({ need }) => ['continuity', 'supervision', 'alarm', 'live'].includes(need.kind)).map(({ verdict }) => verdict);
    expect(verdicts).toEqual(Array(4).fill('not-checked'));
  });

  test('a device of unknown current or place leaves what rests on it open', () => {
    const lost = withReleaseOf({ devices: [{ id: 'd1', name: 'Solenoid', kind: 'solenoid', distance_m: null, current_A: null, leastVoltage_V: null, wiring: 'in-line' }] });
    const plan = armedWith(goodLog(keys), null, armedPlan(lost));
    expect(orderOf(plan).flatMap(({ readings }) => readings).find(({ need }) => need.kind === 'continuity')?.verdict).toBe('not-checked');
  });

  test('terminals read dead before the voltage was last on are not dead', () => {
    for (const kind of ['live', 'alarm'] as const) {
      const log = [...goodLog(keys), entry(kind, keys.network, { value: kind === 'live' ? 19 : 1.6 })];
      expect(readingOf(log, 'dead')).toMatchObject({ verdict: 'not-checked', text: expect.stringContaining('Read it again') });
      expect(readingOf(log, 'panel-clear').verdict).toBe('not-checked');
      expect(readingOf([...log, entry('dead', keys.network, { value: 0 })], 'dead').verdict).toBe('ok');
    }
  });

  test('a meter that was not proved on live terminals proves nothing', () => {
    expect(readingOf(logWith('live', null), 'dead')).toMatchObject({ verdict: 'not-checked', text: expect.stringContaining('not proved') });
    expect(readingOf(logWith('live', { value: 0 }), 'dead').verdict).toBe('not-checked');
  });

  test('the newest reading counts', () => {
    const low = entry('insulation', keys.network, { value: 1e3 });
    expect(readingOf([low, ...goodLog(keys)], 'insulation').verdict).toBe('ok');
    expect(readingOf([...goodLog(keys), low], 'insulation').verdict).toBe('stop');
  });

  // 29 CFR 1910.134: air below 19.5 % oxygen is oxygen-deficient.
  test.each([
    [19.5, 'ok'],
    [19.4, 'stop'],
    [23.6, 'stop'],
  ])('oxygen of %s %%: %s', (value, verdict) => expect(readingOf([...goodLog(keys), entry('oxygen', keys.enclosure, { value })], 'oxygen').verdict).toBe(verdict));
  test('oxygen that was read before the last puff is old', () => expect(readingOf([entry('oxygen', '', { value: 20.9 }), ...goodLog(keys)], 'oxygen').verdict).toBe('not-checked'));

  test('says what is wrong, by how much, and what to do', () => {
    expect(readingOf(logWith('alarm', { value: 1.2 }), 'alarm').text).toBe('Network 1: current on the dummy load is 1.20 A, less than 1.50 A. The solenoid would not act: check supply, wire and dummy load.');
    expect(readingOf(logWith('pipe-test', { value: 60_000 }), 'pipe-test').text).toMatch(/^Network 1: pressure lost in the pipe test is 0\.600 bar, more than 0\.552 bar\. Find the leak/);
  });
});
