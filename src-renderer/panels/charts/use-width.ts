import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

/** Width of an element [px], so that a chart is drawn one to one and its letters stay as large as all others. */
export function useWidth<E extends Element>(start_px: number): { readonly ref: RefObject<E | null>; readonly width_px: number } {
  const ref = useRef<E>(null);
  const [width_px, become] = useState(start_px);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const measure = (): void => become(Math.max(160, Math.round(element.getBoundingClientRect().width)));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, width_px };
}
