/** A day of the calendar as numbers; month from 1. */
export interface Day {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
const daysOf = (year: number, month: number): number => (month === 2 ? (isLeap(year) ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31);

/**
 * The day with which a text begins, as plans keep it: 2026-03-04, with or without a time behind it.
 * @returns undefined when it begins otherwise, or when the calendar has no such day
 */
export function findDay(text: string): Day | undefined {
  const [, year, month, day] = /^\s*(\d{4})-(\d{2})-(\d{2})(?!\d)/.exec(text) ?? [];
  const found = { year: Number(year), month: Number(month), day: Number(day) };
  const isReal = found.year >= 1 && found.month >= 1 && found.month <= 12 && found.day >= 1 && found.day <= daysOf(found.year, found.month);
  return isReal ? found : undefined;
}

const padded = (value: number, digits: number): string => String(value).padStart(digits, '0');

/** A day as it is printed: 2026-03-04. */
export const dayText = ({ year, month, day }: Day): string => `${padded(year, 4)}-${padded(month, 2)}-${padded(day, 2)}`;

/**
 * The same day some months later; the last of the month where it has no such day.
 * @param months  whole, at least 0
 * @example dayText(monthsLater({ year: 2026, month: 8, day: 31 }, 6)) // '2027-02-28'
 */
export function monthsLater({ year, month, day }: Day, months: number): Day {
  const counted = year * 12 + (month - 1) + months;
  const later = { year: Math.floor(counted / 12), month: (counted % 12) + 1 };
  return { ...later, day: Math.min(day, daysOf(later.year, later.month)) };
}

/** Days from the first of March of the year 0, in the calendar that is used today: for differences only. */
export function dayNumber({ year, month, day }: Day): number {
  const y = month <= 2 ? year - 1 : year;
  const m = (month + 9) % 12;
  return 365 * y + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400) + Math.floor((m * 306 + 5) / 10) + day - 1;
}
