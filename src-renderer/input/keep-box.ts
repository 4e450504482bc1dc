import type { ScreenPoint } from '#shared/geometry/point';

/** Where an element stands in the window, asked of the browser only when it may have moved: asking lays the page out. */
export interface KeptBox {
  /** Place of a mouse, pen, finger or wheel within the element [px]. */
  placeOf(event: MouseEvent): ScreenPoint;
  stop(): void;
}

/** Keeps the place of an element until it, the window or what is scrolled changes, or the pointer comes or presses. */
export function keepBox(element: HTMLElement): KeptBox {
  let box: DOMRect | null = null;
  const forget = (): void => {
    box = null;
  };
  const observer = typeof ResizeObserver === 'undefined' ? null : new ResizeObserver(forget);
  observer?.observe(element);
  const ofWindow = ['resize', 'scroll', 'pointerup'] as const;
  const ofElement = ['pointerenter', 'pointerdown'] as const;
  for (const name of ofWindow) window.addEventListener(name, forget, true);
  for (const name of ofElement) element.addEventListener(name, forget, true);
  return {
    placeOf(event) {
      box ??= element.getBoundingClientRect();
      return { x: event.clientX - box.left, y: event.clientY - box.top };
    },
    stop() {
      observer?.disconnect();
      for (const name of ofWindow) window.removeEventListener(name, forget, true);
      for (const name of ofElement) element.removeEventListener(name, forget, true);
    },
  };
}
