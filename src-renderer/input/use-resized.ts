import { type RefObject, useLayoutEffect } from 'react';

/** Measures an element before it is first shown and whenever its size changes. `measure` must stay the very same function. */
export function useResized<E extends Element>(ref: RefObject<E | null>, measure: (element: E) => void): void {
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const again = (): void => measure(element);
    const observer = new ResizeObserver(again);
    observer.observe(element);
    again();
    return () => observer.disconnect();
  }, [ref, measure]);
}
