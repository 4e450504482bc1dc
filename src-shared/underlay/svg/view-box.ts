import { IDENTITY, type Matrix } from '../matrix.ts';
import { numbersIn } from './transform-list.ts';

export interface ViewBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The `viewBox` attribute, or undefined when it is missing or empty. */
export function viewBoxOf(text: string | undefined): ViewBox | undefined {
  const [x, y, width, height] = numbersIn(text ?? '');
  return x !== undefined && y !== undefined && width !== undefined && height !== undefined && width > 0 && height > 0 ? { x, y, width, height } : undefined;
}

/** Carries a view box into a rectangle as `preserveAspectRatio` says: whole and centred unless told otherwise. */
export function fitViewBox(box: ViewBox | undefined, into: ViewBox, aspect: string | undefined): Matrix {
  if (!box) return into.x === 0 && into.y === 0 ? IDENTITY : [1, 0, 0, 1, into.x, into.y];
  let sx = into.width / box.width;
  let sy = into.height / box.height;
  if (!(sx > 0) || !(sy > 0)) return [1, 0, 0, 1, into.x - box.x, into.y - box.y];
  const text = aspect ?? '';
  if (!text.includes('none')) {
    const scale = text.includes('slice') ? Math.max(sx, sy) : Math.min(sx, sy);
    sx = scale;
    sy = scale;
  }
  const share = (word: 'x' | 'Y'): number => (text.includes(`${word}Min`) ? 0 : text.includes(`${word}Max`) ? 1 : 0.5);
  const x = into.x + (into.width - box.width * sx) * share('x') - box.x * sx;
  const y = into.y + (into.height - box.height * sy) * share('Y') - box.y * sy;
  return [sx, 0, 0, sy, x, y];
}
