import { describe, expect, test } from 'vitest';
import type { Plan, Visit } from '#shared/model/plan';
import { serviceDue } from '#shared/site/service-due';
import { armedPlan, entry } from '../../support/armed-plan.ts';

const { keys } = armedPlan();
const visited = (visits: readonly Omit<Visit, 'id' | 'by' | 'note'>[], change: (plan: Plan) => void = () => {}): Plan => {
  const { plan } = armedPlan();
  plan.siteRecord.service.visits = visits.map((each, i) => ({ ...each, id: `visit-${i}`, by: 'Service', note: '' }));
  change(plan);
  return plan;
};
const dueOf = (plan: Plan, kind: Visit['kind'], today: string) => serviceDue(plan, today).find((each) => each.kind === kind);
const pressure = [{ kind: 'pressure', about: keys.cylinder, on: '2026-03-04' }] as const;

describe('service due', () => {
  test('asks of every cylinder its pressure, hose and retest, and of every enclosure its leaks', () => {
    const all = serviceDue(armedPlan().plan, '2026-03-04');
    expect(all.map(({ kind, standing }) => [kind, standing])).toEqual([['pressure', 'unknown'], ['hose', 'unknown'], ['retest', 'unknown'], ['enclosure', 'unknown']]);
    expect(all[2]?.text).toContain('stamped on the cylinder');
  });

  // Six months from 4 March are 4 September; 30 days before that is 5 August.
  test.each([
    ['2026-08-04', 'ok', 'Due on 2026-09-04, in 31 days.'],
    ['2026-08-05', 'soon', 'Due on 2026-09-04, in 30 days.'],
    ['2026-09-04', 'soon', 'Due today.'],
    ['2026-09-05', 'overdue', 'Was due on 2026-09-04, 1 day ago.'],
    ['', 'unknown', 'Due on 2026-09-04; which day it is now is not known.'],
  ])('on %s: %s', (today, standing, text) => expect(dueOf(visited(pressure), 'pressure', today)).toMatchObject({ standing, text, last: '2026-03-04', due: '2026-09-04' }));

  test('the newest visit counts, whatever the order, and one without a thing counts for all', () => {
    expect(dueOf(visited([...pressure, { kind: 'pressure', about: keys.cylinder, on: '2025-01-01' }]), 'pressure', '2026-08-01')?.last).toBe('2026-03-04');
    expect(dueOf(visited([{ kind: 'enclosure', about: '', on: '2026-03-04' }]), 'enclosure', '2026-08-01')).toMatchObject({ standing: 'ok', due: '2027-03-04' });
    expect(dueOf(visited([{ kind: 'hose', about: keys.cylinder, on: '2026-03-04' }]), 'pressure', '2026-08-01')?.standing).toBe('unknown');
  });

  test('a logged pressure counts as a visit only with its temperature and a day', () => {
    const read = (given: Parameters<typeof entry>[2]) => dueOf(visited([], (plan) => plan.siteRecord.log.push(entry('pressure', keys.cylinder, given))), 'pressure', '2026-08-01')?.standing;
    expect(read({ value: 3e7, temperature_K: 290, at: '2026-03-04 10:00' })).toBe('ok');
    expect(read({ value: 3e7, temperature_K: null, at: '2026-03-04 10:00' })).toBe('unknown');
    expect(read({ value: 3e7, temperature_K: 290, at: 'yesterday' })).toBe('unknown');
  });

  test('without an interval nothing is in time', () => {
    expect(dueOf(visited(pressure, (plan) => (plan.siteRecord.service.pressure_months = null)), 'pressure', '2026-03-05')).toMatchObject({ standing: 'unknown', text: 'How often is not entered: read it in the manual.' });
  });

  test('what is overdue comes first', () => {
    const plan = visited([...pressure, { kind: 'hose', about: keys.cylinder, on: '2020-01-01' }]);
    expect(serviceDue(plan, '2026-08-30').map(({ standing }) => standing)).toEqual(['overdue', 'unknown', 'unknown', 'soon']);
  });
});
