import { useLayoutEffect, useRef } from 'react';
import type { Paint } from './paint.ts';
import { Painter } from './painter.ts';
import type { Viewport } from './viewport.ts';

/**
 * Keeps the painter of a layer's element, made by `begin` when it appears. A new list of paints is drawn with the next
 * frame, all layers together.
 */
export function usePainter(paints: readonly Paint[], begin: (place: HTMLElement) => Painter) {
  const place = useRef<HTMLDivElement>(null);
  const painter = useRef<Painter>(null);
  const latest = useRef(paints);
  const waiting = useRef(0);
  const starting = useRef(begin);

  useLayoutEffect(() => {
    if (!place.current) return;
    const made = starting.current(place.current);
    painter.current = made;
    return () => {
      cancelAnimationFrame(waiting.current);
      waiting.current = 0;
      made.stop();
    };
  }, []);

  useLayoutEffect(() => {
    latest.current = paints;
    if (waiting.current !== 0) return;
    waiting.current = requestAnimationFrame(() => {
      waiting.current = 0;
      painter.current?.paint(latest.current);
    });
  }, [paints]);
  return { place, painter };
}

/**
 * One canvas with a list of paints, drawn over each other. Paints are compared by identity: new ones draw the layer anew;
 * a new view alone redraws only what is quick, and shifts the rest until it stands still.
 */
export function PaintedLayer({ paints, view }: { readonly paints: readonly Paint[]; readonly view: Viewport }) {
  const { place, painter } = usePainter(paints, (element) => new Painter(element, view, 0));
  useLayoutEffect(() => painter.current?.moved(view), [painter, view]);
  return <div ref={place} className="painted-layer" />;
}
