import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayNumber, dayText, findDay, monthsLater } from '#shared/model/day';
import '../../support/property-seed.ts';

describe('days', () => {
  test.each([
    ['2026-03-04', '2026-03-04'],
    [' 2026-03-04 15:20', '2026-03-04'],
    ['2024-02-29', '2024-02-29'],
    ['2000-02-29', '2000-02-29'],
  ])('%s is read', (text, day) => {
    const found = findDay(text);
    expect(found && dayText(found)).toBe(day);
  });
  test.each(['', 'today', '2026-3-4', '2026-02-29', '1900-02-29', '2026-04-31', '2026-00-10', '2026-01-00', '0000-01-01', '2026-01-010'])('%s is none', (text) => expect(findDay(text)).toBeUndefined());

  // Differences against the calendar of the runtime.
  test('differences are those of the calendar', () => {
    const day = fc.date({ min: new Date('1900-01-01'), max: new Date('2200-01-01'), noInvalidDate: true });
    const of = (date: Date) => ({ year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() });
    const whole = (date: Date) => Math.floor(date.getTime() / 86_400_000);
    fc.assert(
      fc.property(day, day, (a, b) => {
        expect(dayNumber(of(a)) - dayNumber(of(b))).toBe(whole(a) - whole(b));
      }),
    );
  });

  test.each([
    ['2026-03-04', 6, '2026-09-04'],
    ['2026-08-31', 6, '2027-02-28'],
    ['2023-08-31', 6, '2024-02-29'],
    ['2026-12-15', 1, '2027-01-15'],
    ['2026-12-15', 60, '2031-12-15'],
    ['2026-01-31', 0, '2026-01-31'],
  ])('%s and %s months', (from, months, to) => {
    const found = findDay(from);
    expect(found && dayText(monthsLater(found, months))).toBe(to);
  });
});
