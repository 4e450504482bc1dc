import { describe, expect, test } from 'vitest';
import { addLogEntry } from '#shared/commands/add-log-entry';
import { addVisit } from '#shared/commands/add-visit';
import { editServiceIntervals } from '#shared/commands/edit-service-intervals';
import { removeLogEntry } from '#shared/commands/remove-log-entry';
import { removeVisit } from '#shared/commands/remove-visit';
import { takeBackTicks, tickedFrom } from '#shared/commands/take-back-ticks';
import { tickHoldPoint, untickHoldPoint } from '#shared/commands/tick-hold-point';
import { armedPlan, armedWith, entry, goodLog } from '../../support/armed-plan.ts';
import { done, refusal } from '../../support/try-command.ts';

const { keys } = armedPlan();
const TICK = { by: 'Fitter', witness: 'Inspector', at: '2026-03-04 12:00' };
const tickedOf = (plan: ReturnType<typeof armedWith>) => Object.keys(plan.siteRecord.checks);

describe('ticking a hold point', () => {
  test('keeps who, who saw it, and when', () => {
    const { next, label } = done(armedWith([]), tickHoldPoint('H1', { by: ' Fitter ', witness: '', at: 'now' }, []));
    expect(label).toBe('Tick hold point H1');
    expect(next.siteRecord.checks).toEqual({ H1: { done: true, by: 'Fitter', witness: '', at: 'now' } });
  });
  test('is refused before an earlier one, with what lacks, and without the names it needs', () => {
    expect(refusal(armedWith([], 'H3'), tickHoldPoint('H5', TICK, []))).toMatch(/^H4 comes first: Supports\. A test/);
    expect(refusal(armedWith([], 'H4'), tickHoldPoint('H5', TICK, ['The test is missing.']))).toBe('The test is missing.');
    expect(refusal(armedWith([], 'H4'), tickHoldPoint('H5', TICK, ['One.', 'Two.', 'Three.']))).toBe('One. 2 things more are missing for H5.');
    expect(refusal(armedWith([], 'H1'), tickHoldPoint('H2', { ...TICK, witness: '' }, []))).toContain('witnessed');
    expect(refusal(armedWith([], 'H1'), tickHoldPoint('H2', { ...TICK, witness: 'fitter ' }, []))).toContain('somebody else');
    expect(refusal(armedWith([]), tickHoldPoint('H1', { ...TICK, by: '' }, []))).toContain('who looked');
    expect(refusal(armedWith([]), tickHoldPoint('H1', { ...TICK, at: '' }, []))).toContain('when');
    expect(refusal(armedWith([]), tickHoldPoint('H1', { ...TICK, by: 'x'.repeat(201) }, []))).toContain('200');
    expect(refusal(armedWith([]), tickHoldPoint('H13', TICK, []))).toContain('no such');
  });
});

describe('taking a tick back', () => {
  test('takes back what stood on it, and says so', () => {
    const { next, label } = done(armedWith([], 'H8'), untickHoldPoint('H6'));
    expect(label).toBe('Take back hold point H6 and what stood on it: H7, H8');
    expect(tickedOf(next)).toEqual(['H1', 'H2', 'H3', 'H4', 'H5']);
    expect(done(armedWith([], 'H6'), untickHoldPoint('H6')).label).toBe('Take back hold point H6');
  });
  test('is refused where nothing is ticked', () => {
    expect(refusal(armedWith([], 'H2'), untickHoldPoint('H3'))).toBe('H3 is not ticked.');
    expect(refusal(armedWith([]), untickHoldPoint('X'))).toContain('no such');
  });
  test('of one that does not exist changes nothing', () => {
    const { checks } = armedWith([], 'H3').siteRecord;
    takeBackTicks(checks, 'X');
    expect(tickedFrom(checks, 'H2')).toEqual(['H2', 'H3']);
    expect(tickedFrom(checks, 'X')).toEqual([]);
  });
});

describe('the log', () => {
  const { id: _, ...dead } = entry('dead', keys.network, { value: 0 });
  test('takes a reading as its newest, with an id of its own', () => {
    const { next } = done(armedWith(goodLog(keys)), addLogEntry(dead));
    expect(next.siteRecord.log).toHaveLength(11);
    expect(next.siteRecord.log.at(-1)).toMatchObject({ kind: 'dead', about: keys.network, value: 0 });
  });
  test('a reading that is not good takes back what stood on it; voltage takes back the last connection', () => {
    const armed = () => armedWith(goodLog(keys), 'H12');
    const bad = done(armed(), addLogEntry({ ...dead, kind: 'insulation', value: 5, isGood: false }));
    expect(bad.label).toBe('Log reading and take back H9, H10, H11, H12');
    expect(tickedOf(bad.next)).not.toContain('H9');
    expect(tickedOf(done(armed(), addLogEntry({ ...dead, kind: 'live', value: 19 })).next)).toHaveLength(11);
    expect(tickedOf(done(armed(), addLogEntry({ ...dead, kind: 'puff', value: null, isGood: false })).next)).toHaveLength(4);
    expect(tickedOf(done(armed(), addLogEntry(dead)).next)).toHaveLength(12);
  });
  test('refuses a reading without name, time or content, and a figure that does not fit', () => {
    const plan = armedWith([]);
    expect(refusal(plan, addLogEntry({ ...dead, by: ' ' }))).toContain('who');
    expect(refusal(plan, addLogEntry({ ...dead, at: '' }))).toContain('when');
    expect(refusal(plan, addLogEntry({ ...dead, value: null }))).toContain('Enter the reading');
    expect(refusal(plan, addLogEntry({ ...dead, kind: 'note', value: 3 }))).toContain('noted');
    expect(refusal(plan, addLogEntry({ ...dead, value: -1 }))).toContain('less than 0');
    expect(refusal(plan, addLogEntry({ ...dead, value: Number.NaN }))).toMatch(/^Value/);
  });
  test('gives a reading back, and the ticks that stood on it with it', () => {
    const plan = armedWith(goodLog(keys), 'H12');
    const at = (kind: string) => plan.siteRecord.log.find((each) => each.kind === kind)?.id ?? '';
    expect(tickedOf(done(plan, removeLogEntry(at('dead'))).next)).toHaveLength(11);
    const { label, next } = done(plan, removeLogEntry(at('pipe-test')));
    expect(label).toBe('Take reading out of the log, and take back H5, H6, H7, H8, H9, H10, H11, H12');
    expect(next.siteRecord.log).toHaveLength(9);
    expect(refusal(plan, removeLogEntry('gone'))).toContain('no longer');
  });
});

describe('service', () => {
  const visit = { kind: 'hose', about: keys.cylinder, on: '2026-03-04', by: 'Service', note: '' } as const;
  test('takes visits and gives them back', () => {
    const { next } = done(armedWith([]), addVisit(visit));
    const [added] = next.siteRecord.service.visits;
    expect(added).toMatchObject(visit);
    expect(done(next, removeVisit(added?.id ?? '')).next.siteRecord.service.visits).toEqual([]);
    expect(refusal(next, removeVisit('gone'))).toContain('no longer');
  });
  test('refuses a visit without a name or without a day of the calendar', () => {
    expect(refusal(armedWith([]), addVisit({ ...visit, by: '' }))).toContain('who');
    for (const on of ['', 'yesterday', '2026-02-29', '2026-13-01', '04/03/2026']) expect(refusal(armedWith([]), addVisit({ ...visit, on }))).toContain('2026-03-04');
  });
  test('takes other intervals, or none, and refuses what is no number of months', () => {
    expect(done(armedWith([]), editServiceIntervals({ hose_months: 12, retest_months: null })).next.siteRecord.service).toMatchObject({ hose_months: 12, retest_months: null, pressure_months: 6 });
    for (const months of [0, 1.5, 601]) expect(editServiceIntervals({ hose_months: months })(armedWith([])).ok).toBe(false);
  });
});
