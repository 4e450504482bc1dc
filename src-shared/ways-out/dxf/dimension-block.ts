import { formatLength } from '../../units/length-text.ts';
import type { DxfEntity, DxfPlace } from './drawing.ts';
import { dimensionLine } from './put-entity.ts';

/** Of the text height: gap of an extension line at its place, how far it goes beyond, half a tick, gap under the text. */
const GAP = 0.5;
const BEYOND = 0.7;
const TICK = 0.5;
const UNDER = 0.4;

const between = ([x, y, z]: DxfPlace, angle_rad: number, along_m: number): DxfPlace => [x + Math.cos(angle_rad) * along_m, y + Math.sin(angle_rad) * along_m, z];

/** The lines and the text that a dimension is drawn with, as its own block holds them. */
export function dimensionBlock(dimension: Extract<DxfEntity, { kind: 'dimension' }>, text_m: number, lengths: 'feet' | 'metric'): DxfEntity[] {
  const { a, b, offset_m, name } = dimension;
  const { from, to, middle, angle_rad } = dimensionLine(dimension);
  const out_rad = angle_rad + (offset_m < 0 ? -Math.PI / 2 : Math.PI / 2);
  const line = (p: DxfPlace, q: DxfPlace): DxfEntity => ({ kind: 'line', layer: '0', from: p, to: q });
  const extension = (measured: DxfPlace, end: DxfPlace): DxfEntity[] =>
    Math.abs(offset_m) <= GAP * text_m ? [] : [line(between(measured, out_rad, GAP * text_m), between(end, out_rad, BEYOND * text_m))];
  const tick = (end: DxfPlace): DxfEntity => line(between(end, angle_rad + Math.PI / 4, -TICK * text_m), between(end, angle_rad + Math.PI / 4, TICK * text_m));
  // Read from below or from the right, as every dimension on a drawing is.
  const isUpsideDown = Math.cos(angle_rad) < -1e-9 || (Math.abs(Math.cos(angle_rad)) <= 1e-9 && Math.sin(angle_rad) < 0);
  const words_rad = isUpsideDown ? angle_rad + Math.PI : angle_rad;
  const length = formatLength(Math.hypot(b[0] - a[0], b[1] - a[1]), lengths);
  return [
    line(from, to),
    ...extension(a, from),
    ...extension(b, to),
    tick(from),
    tick(to),
    {
      kind: 'text',
      layer: '0',
      at: between(middle, words_rad + Math.PI / 2, UNDER * text_m),
      text: name === '' ? length : `${name}: ${length}`,
      height_m: text_m,
      rotation_rad: words_rad,
      align: 'middle',
    },
  ];
}
