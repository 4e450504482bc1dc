import type { ServiceDue } from './service-due.ts';

/** Things of which the same is due on the same day; never empty. */
export type DueGroup = readonly [ServiceDue, ...ServiceDue[]];

/** Puts things of which the same is due on the same day together; the order stays. */
export function groupDue(all: readonly ServiceDue[]): DueGroup[] {
  const groups = new Map<string, [ServiceDue, ...ServiceDue[]]>();
  for (const due of all) {
    const key = `${due.kind} ${due.standing} ${due.last} ${due.due}`;
    const known = groups.get(key);
    if (known) known.push(due);
    else groups.set(key, [due]);
  }
  return [...groups.values()];
}
