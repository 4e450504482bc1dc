import { IDENTITY, type Matrix, multiply, scaleBy, shiftBy, turnBy } from '../matrix.ts';

const RADIANS = Math.PI / 180;
const NUMBER = /[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/g;

/** All numbers in a text. */
export const numbersIn = (text: string): number[] => (text.match(NUMBER) ?? []).map(Number);

function oneTransform(name: string, n: readonly number[]): Matrix | undefined {
  const [a = 0, b, c] = n;
  switch (name) {
    case 'matrix':
      return n.length === 6 ? [a, n[1] ?? 0, n[2] ?? 0, n[3] ?? 0, n[4] ?? 0, n[5] ?? 0] : undefined;
    case 'translate':
      return shiftBy(a, b ?? 0);
    case 'scale':
      return scaleBy(a, b ?? a);
    case 'rotate':
      return b === undefined ? turnBy(a * RADIANS) : multiply(shiftBy(b, c ?? 0), multiply(turnBy(a * RADIANS), shiftBy(-b, -(c ?? 0))));
    case 'skewX':
      return [1, 0, Math.tan(a * RADIANS), 1, 0, 0];
    case 'skewY':
      return [1, Math.tan(a * RADIANS), 0, 1, 0, 0];
    default:
      return undefined;
  }
}

/** The transform of a `transform` attribute; what cannot be read in it changes nothing. */
export function transformOf(text: string | undefined): Matrix {
  if (!text) return IDENTITY;
  let whole = IDENTITY;
  for (const [, name, inside] of text.matchAll(/([A-Za-z]+)\s*\(([^)]*)\)/g)) {
    const one = oneTransform(name ?? '', numbersIn(inside ?? ''));
    if (one) whole = multiply(whole, one);
  }
  return whole;
}
