import type { XmlElement } from './parse-xml.ts';

/** Elements that draw nothing where they stand. */
export const UNDRAWN = new Set([
  'defs', 'symbol', 'clipPath', 'mask', 'marker', 'pattern', 'linearGradient', 'radialGradient', 'filter', 'style', 'script',
  'title', 'desc', 'metadata', 'animate', 'animateTransform', 'animateMotion', 'set', 'font', 'view', 'cursor',
]);

/** Name of a group as a layer: its label, else its id. */
export function layerNameOf({ attributes }: XmlElement): string | undefined {
  for (const [key, value] of attributes) if (/^[\w-]+:label$/.test(key) && value.trim() !== '') return value.trim();
  const id = attributes.get('id')?.trim();
  return id === '' ? undefined : id;
}

const drawnChildren = (element: XmlElement): XmlElement[] =>
  element.children.filter((child): child is XmlElement => typeof child !== 'string' && !UNDRAWN.has(child.name) && !child.name.includes(':'));

/**
 * The groups that are layers: the named groups at the top, or those inside when one group alone wraps
 * at least two named ones.
 */
export function findLayers(root: XmlElement): ReadonlyMap<XmlElement, string> {
  let holder = root;
  for (let depth = 0; depth < 4; depth += 1) {
    const [only, ...others] = drawnChildren(holder);
    if (!only || others.length > 0 || only.name !== 'g') break;
    if (drawnChildren(only).filter((inner) => inner.name === 'g' && layerNameOf(inner) !== undefined).length < 2) break;
    holder = only;
  }
  const layers = new Map<XmlElement, string>();
  for (const child of drawnChildren(holder)) {
    const name = child.name === 'g' ? layerNameOf(child) : undefined;
    if (name !== undefined) layers.set(child, name);
  }
  return layers;
}
