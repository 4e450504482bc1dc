import { type RefObject, useCallback, useRef, useState } from 'react';
import { useResized } from './use-resized.ts';

interface FrameSize {
  /** For the element that is measured. */
  readonly ref: RefObject<HTMLDivElement | null>;
  /** Inner size in whole pixels; 0 before it is measured. */
  readonly width: number;
  readonly height: number;
}

/** The size of the frame that a drawing fills [px]. */
export function useFrameSize(): FrameSize {
  const ref = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState({ width: 0, height: 0 });
  const measure = useCallback((frame: HTMLDivElement): void => {
    const [width, height] = [Math.round(frame.clientWidth), Math.round(frame.clientHeight)];
    setSize((before) => (before.width === width && before.height === height ? before : { width, height }));
  }, []);
  useResized(ref, measure);
  return { ref, ...size };
}
