const two = (value: number): string => String(value).padStart(2, '0');

/** Today where the user is, as it is printed: 2026-11-30. */
export function today(now = new Date()): string {
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
