import type { UnderlayText } from '../drawing.ts';
import { guessTextWidth, transformedText } from '../line-work.ts';
import { type Matrix, multiply } from '../matrix.ts';
import { lengthOf } from './length.ts';
import type { XmlElement } from './parse-xml.ts';
import { type Style, type StyleSheet, styleOf } from './style.ts';

/** Height of capitals over the size of the font: common practice for plain typefaces. */
export const CAP_HEIGHT = 0.7;

interface Chunk {
  x: number;
  y: number;
  text: string;
  size: number;
  anchor: string;
}

/** The size of the font of a style, user units. */
export const fontSizeOf = (style: Style, parentSize = 16): number => lengthOf(style['font-size'], parentSize, parentSize, parentSize);

/** First number of a list of lengths. */
const firstLength = (text: string | undefined, otherwise: number, size: number): number =>
  text === undefined ? otherwise : lengthOf(text.trim().split(/[\s,]+/)[0], otherwise, 0, size);

/** The lines of a `text` element, one for each place that it starts anew, in drawing units. */
export function textLines(element: XmlElement, style: Style, sheet: StyleSheet, matrix: Matrix): UnderlayText[] {
  const chunks: Chunk[] = [];
  const walk = (node: XmlElement, own: Style, parentSize: number): void => {
    const size = fontSizeOf(own, parentSize);
    const last = chunks[chunks.length - 1];
    const { attributes } = node;
    const movesDown = firstLength(attributes.get('dy'), 0, size);
    if (!last || attributes.has('x') || attributes.has('y') || movesDown !== 0) {
      chunks.push({
        x: firstLength(attributes.get('x'), last?.x ?? 0, size) + firstLength(attributes.get('dx'), 0, size),
        y: firstLength(attributes.get('y'), last?.y ?? 0, size) + movesDown,
        text: '',
        size,
        anchor: own['text-anchor'] ?? 'start',
      });
    }
    for (const child of node.children) {
      if (typeof child !== 'string') {
        if (['tspan', 'a', 'textPath'].includes(child.name)) {
          const inner = styleOf(child, own, sheet);
          if (inner.display !== 'none') walk(child, inner, size);
        }
        continue;
      }
      const chunk = chunks[chunks.length - 1];
      if (chunk) chunk.text += child.replace(/\s+/g, ' ');
    }
  };
  walk(element, style, 16);
  return chunks.map(({ x, y, text, size, anchor }) => {
    const shown = text.trim();
    const height = size * CAP_HEIGHT;
    const back = anchor === 'middle' ? 0.5 : anchor === 'end' ? 1 : 0;
    // Letters stand upright where the file's y points down: their own frame has y up.
    const upright = multiply(matrix, [1, 0, 0, -1, x - back * guessTextWidth(shown, height), y]);
    return transformedText(upright, { x: 0, y: 0, height, rotation_rad: 0, text: shown });
  });
}
