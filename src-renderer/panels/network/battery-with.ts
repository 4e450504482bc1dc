import type { Release } from '#shared/model/plan';

type Battery = NonNullable<Release['battery']>;

/** Nobody has entered any of it: 0 stands for not entered. */
const UNKNOWN: Battery = { capacity_Ah: 0, standby_A: 0, alarm_A: 0 };

/** A battery with one of its figures as typed, null taking it away; null again when nothing of it is left. */
export function batteryWith(battery: Release['battery'], key: keyof Battery, typed: number | null): Release['battery'] {
  const changed = { ...(battery ?? UNKNOWN), [key]: typed ?? 0 };
  return Object.values(changed).every((figure) => figure === 0) ? null : changed;
}

/** A figure as its field shows it; null: not entered. */
export const batteryFigure = (battery: Release['battery'], key: keyof Battery): number | null => battery?.[key] || null;
