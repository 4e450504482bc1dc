/** Checks take no longer than this at once [ms]: the rest of a frame is for painting. */
const SLICE_ms = 6;
/** Idle time is taken after this at the latest [ms], or a window that always paints would never finish. */
const LATEST_ms = 200;

/** Begins slices of a clock: each answers whether its time is up. */
export const slicesOf =
  (now_ms: () => number, slice_ms = SLICE_ms) =>
  (): (() => boolean) => {
    const end_ms = now_ms() + slice_ms;
    return () => now_ms() >= end_ms;
  };

/** Runs something in idle time, with the answer whether a slice more has room in it. */
export function whenIdle(run: (hasTime: () => boolean) => void): () => void {
  const id = requestIdleCallback((deadline) => run(() => deadline.timeRemaining() > SLICE_ms), { timeout: LATEST_ms });
  return () => cancelIdleCallback(id);
}
