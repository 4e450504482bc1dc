import type { ScreenPoint } from '#shared/geometry/point';

/** Place of the pointer within an element [px]. It asks the browser for the layout: what hears every move keeps the element's box instead (`keepBox`). */
export function placeIn(element: Element, { clientX, clientY }: { readonly clientX: number; readonly clientY: number }): ScreenPoint {
  const { left, top } = element.getBoundingClientRect();
  return { x: clientX - left, y: clientY - top };
}
