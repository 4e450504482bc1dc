import { describe, expect, test } from 'vitest';
import { clearMeasurement } from '#shared/commands/clear-measurement';
import { placeCorners } from '#shared/commands/place-corners';
import { recordMeasurements } from '#shared/commands/record-measurements';
import { planBuilder } from '../../support/plan-builder.ts';
import { done, doneAll, refusal } from '../../support/try-command.ts';

const { plan, enclosure } = (() => {
  const built = planBuilder().room(6, 4, 2.7).opening(0, 3, 1);
  const [id = ''] = Object.keys(built.plan.levels['level-0']?.enclosures ?? {});
  return { plan: built.plan, enclosure: { kind: 'enclosure', level: 'level-0', id } as const };
})();

describe('measured dimensions', () => {
  test('many are taken in one step, with who, when, by what, why and who agreed', () => {
    const outcome = done(plan, recordMeasurements([{ id: 'a/first', value_m: 1.5, by: 'R. Quill', at: '10:20', instrument: 'laser 2', reason: 'light in the way', approvedBy: 'T. Amsel' }, { id: 'a/second', value_m: 0 }]));
    expect(outcome.label).toBe('Record 2 measurements');
    expect(outcome.next.siteRecord.measurements).toEqual({
      'a/first': { value_m: 1.5, by: 'R. Quill', at: '10:20', instrument: 'laser 2', reason: 'light in the way', approvedBy: 'T. Amsel', photos: [] },
      'a/second': { value_m: 0, by: '', at: '', instrument: '', reason: '', approvedBy: '', photos: [] },
    });
  });

  test('a new reading keeps the reason and the name that were noted', () => {
    const next = doneAll(plan, recordMeasurements([{ id: 'a', value_m: 1, by: 'R. Quill', reason: 'light' }]), recordMeasurements([{ id: 'a', value_m: 1.1 }]));
    expect(next.siteRecord.measurements.a).toMatchObject({ value_m: 1.1, by: 'R. Quill', reason: 'light' });
  });

  test('one is cleared, and the rest stays', () => {
    const recorded = doneAll(plan, recordMeasurements([{ id: 'a', value_m: 1 }, { id: 'b', value_m: 2 }]));
    expect(Object.keys(done(recorded, clearMeasurement(['a'])).next.siteRecord.measurements)).toEqual(['b']);
    expect(refusal(recorded, clearMeasurement(['c']))).toBe('This dimension is not measured.');
    expect(refusal(recorded, clearMeasurement([]))).toContain('No measurement');
  });

  test.each([
    ['nothing', [], 'Nothing was measured'],
    ['no name', [{ id: ' ', value_m: 1 }], 'no name'],
    ['no number', [{ id: 'a', value_m: Number.NaN }], 'must be a number'],
    ['too long', [{ id: 'a', value_m: 1e9 }], 'Value'],
    ['a name that is too long', [{ id: 'a', value_m: 1, by: 'x'.repeat(300) }], 'By'],
    ['one bad one among good ones', [{ id: 'a', value_m: 1 }, { id: 'b', value_m: Number.POSITIVE_INFINITY }], 'must be a number'],
  ])('%s is refused', (_, entries, reason) => {
    expect(refusal(plan, recordMeasurements(entries))).toContain(reason);
  });
});

describe('corners at their measured places', () => {
  const corners = plan.levels['level-0']?.enclosures[enclosure.id]?.outline ?? [];
  const at = (i: number, x: number, y: number) => [corners[i]?.id ?? '', { x, y }] as const;

  test('all move at once, the others stay', () => {
    const { next } = done(plan, placeCorners(enclosure, new Map([at(1, 5.9, 0), at(2, 5.9, 4)])));
    expect(next.levels['level-0']?.enclosures[enclosure.id]?.outline.map(({ x, y }) => [x, y])).toEqual([[0, 0], [5.9, 0], [5.9, 4], [0, 4]]);
  });

  test('a ring that crosses itself and a wall too short for its door are refused', () => {
    expect(refusal(plan, placeCorners(enclosure, new Map([at(1, 0, 4.5)])))).not.toBe('');
    expect(refusal(plan, placeCorners(enclosure, new Map([at(1, 0.5, 0), at(2, 0.5, 4)])))).toContain('no longer fit');
  });
});
