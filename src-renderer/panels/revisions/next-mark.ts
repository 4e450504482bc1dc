/** Next mark after the last revision: A, B … Z, then AA; a number goes on as a number. */
export function nextMark(marks: readonly string[]): string {
  const last = marks.at(-1)?.trim().toUpperCase() ?? '';
  if (!/^[A-Z]+$/.test(last)) return /^\d+$/.test(last) ? String(Number(last) + 1) : 'A';
  const head = last.slice(0, -1);
  const tail = last.slice(-1);
  return tail === 'Z' ? `${head === '' ? 'A' : nextMark([head])}A` : head + String.fromCharCode(tail.charCodeAt(0) + 1);
}
