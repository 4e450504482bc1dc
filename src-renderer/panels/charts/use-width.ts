import { type RefObject, useCallback, useRef, useState } from 'react';
import { useResized } from '../../input/use-resized.ts';

/** Width of an element [px], so that a chart is drawn one to one and its letters stay as large as all others. */
export function useWidth<E extends Element>(start_px: number): { readonly ref: RefObject<E | null>; readonly width_px: number } {
  const ref = useRef<E>(null);
  const [width_px, become] = useState(start_px);
  const measure = useCallback((element: E): void => become(Math.max(160, Math.round(element.getBoundingClientRect().width))), []);
  useResized(ref, measure);
  return { ref, width_px };
}
