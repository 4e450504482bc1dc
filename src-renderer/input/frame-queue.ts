/** Runs the last of the calls that came since the last frame, once a frame. */
export interface FrameQueue {
  /** Sets what the next frame does; an earlier call that still waits is dropped. */
  next(work: () => void): void;
  /** Does now what waits for the next frame. */
  flush(): void;
  stop(): void;
}

/** Makes a queue on the browser's frames. */
export function makeFrameQueue(): FrameQueue {
  let waiting: (() => void) | null = null;
  let frame = 0;
  const run = (): void => {
    frame = 0;
    const work = waiting;
    waiting = null;
    work?.();
  };
  return {
    next(work) {
      waiting = work;
      if (frame === 0) frame = requestAnimationFrame(run);
    },
    flush() {
      if (frame !== 0) cancelAnimationFrame(frame);
      run();
    },
    stop() {
      if (frame !== 0) cancelAnimationFrame(frame);
      frame = 0;
      waiting = null;
    },
  };
}
