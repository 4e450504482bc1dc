import { today } from '../findings/today.ts';

const two = (value: number): string => String(value).padStart(2, '0');

/** Day and time where the user is, as they are printed: 2026-11-30 15:20. */
export const nowText = (now = new Date()): string => `${today(now)} ${two(now.getHours())}:${two(now.getMinutes())}`;
