import { CAP_HEIGHT, textWidth_mm } from '../../sheets/font-widths.ts';
import type { TextMark } from '../../sheets/marks.ts';
import { PRINT } from '../../sheets/print-ink.ts';
import { type Mark, SHEET_LAYERS, type SheetLayer, type Stroke } from '../../sheets/sheet.ts';
import { cornersOf, textBoxOf } from '../../sheets/text-box.ts';
import { toDegrees } from '../../units/convert.ts';
import { base64Text } from './base64-text.ts';

/** A drawing list with the paper that it lies on [mm]. */
export interface SvgDrawing {
  readonly title: string;
  readonly width_mm: number;
  readonly height_mm: number;
  readonly marks: readonly Mark[];
}

const LAYER_TITLES: Readonly<Record<SheetLayer, string>> = {
  underlay: 'Imported floor plan',
  coverage: 'Coverage',
  building: 'Rooms and things in them',
  pipe: 'Pipe and fittings',
  supports: 'Supports',
  cylinders: 'Cylinders',
  nozzles: 'Nozzles',
  devices: 'Detectors, switches and alarms',
  dimensions: 'Dimensions',
  findings: 'Findings',
  notes: 'Names and notes',
};

/** The shipped letters first, then such as are about as wide. */
const FONTS = '"DejaVu Sans", "Verdana", "Bitstream Vera Sans", sans-serif';

const figure = (value: number): string => (Number.isFinite(value) ? String(Math.round(value * 1e4) / 1e4 + 0) : '0');

/** Words as XML 1.0 has them: signs that it forbids go. */
const xml = (words: string): string =>
  words
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what XML forbids
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');

function pathOf(places: ArrayLike<number>, isClosed: boolean): string {
  const out: string[] = [];
  for (let i = 0; i + 1 < places.length; i += 2) out.push(`${i === 0 ? 'M' : 'L'}${figure(places[i] ?? 0)} ${figure(places[i + 1] ?? 0)}`);
  return out.join('') + (isClosed ? 'Z' : '');
}

const strokeOf = (stroke: Stroke | undefined): string =>
  stroke ? ` stroke="${xml(stroke.colour)}" stroke-width="${figure(stroke.width_mm)}"${stroke.dash_mm && stroke.dash_mm.length > 0 ? ` stroke-dasharray="${stroke.dash_mm.map(figure).join(' ')}"` : ''}` : '';
const fillOf = (fill: string | undefined): string => (fill ? ` fill="${xml(fill)}"` : '');

function textOf(mark: TextMark): string {
  const { x, y, text, height_mm, font, colour, align, rotation_rad = 0, halo } = mark;
  if (text === '') return '';
  const anchor = { left: 'start', middle: 'middle', right: 'end' }[align];
  const turn = rotation_rad === 0 ? '' : ` transform="rotate(${figure(-toDegrees(rotation_rad))} ${figure(x)} ${figure(y)})"`;
  const ground = halo ? `<path d="${pathOf(cornersOf(textBoxOf(mark)), true)}" fill="${PRINT.paper}"/>` : '';
  return `${ground}<text x="${figure(x)}" y="${figure(y)}" font-size="${figure(height_mm / CAP_HEIGHT)}"${font === 'bold' ? ' font-weight="bold"' : ''} text-anchor="${anchor}" textLength="${figure(textWidth_mm(text, height_mm, font))}" lengthAdjust="spacingAndGlyphs"${fillOf(colour)}${turn}>${xml(text)}</text>`;
}

/** One mark as an element; `clips` counts the boxes that parts are cut at, which need names. */
function elementOf(mark: Mark, clips: { count: number }): string {
  switch (mark.kind) {
    case 'line':
      return `<path d="${pathOf(mark.places, mark.closed ?? false)}"${strokeOf(mark.stroke)}${fillOf(mark.fill)}/>`;
    case 'segments': {
      const pieces: string[] = [];
      for (let i = 0; i + 3 < mark.places.length; i += 4) pieces.push(pathOf([0, 1, 2, 3].map((k) => mark.places[i + k] ?? 0), false));
      return pieces.length === 0 ? '' : `<path d="${pieces.join('')}"${strokeOf(mark.stroke)}/>`;
    }
    case 'circle':
      return `<circle cx="${figure(mark.x)}" cy="${figure(mark.y)}" r="${figure(mark.radius_mm)}"${strokeOf(mark.stroke)}${fillOf(mark.fill)}/>`;
    case 'arc': {
      const { x, y, radius_mm: r, from_rad, to_rad } = mark;
      const at = (angle: number): string => `${figure(x + Math.cos(angle) * r)} ${figure(y - Math.sin(angle) * r)}`;
      const turn = to_rad - from_rad;
      if (Math.abs(turn) >= 2 * Math.PI - 1e-9) return `<circle cx="${figure(x)}" cy="${figure(y)}" r="${figure(r)}"${strokeOf(mark.stroke)}/>`;
      return `<path d="M${at(from_rad)}A${figure(r)} ${figure(r)} 0 ${Math.abs(turn) > Math.PI ? 1 : 0} ${turn > 0 ? 0 : 1} ${at(to_rad)}"${strokeOf(mark.stroke)}/>`;
    }
    case 'area':
      return `<path d="${mark.rings.map((ring) => pathOf(ring, true)).join('')}" fill-rule="evenodd"${fillOf(mark.fill)}${mark.opacity === undefined ? '' : ` fill-opacity="${figure(mark.opacity)}"`}/>`;
    case 'text':
      return textOf(mark);
    case 'image': {
      const [a, b, c, d, e, f] = mark.matrix;
      // The picture's own rows run down, the unit square up.
      return `<image width="1" height="1" preserveAspectRatio="none" opacity="${figure(mark.opacity)}" transform="matrix(${[a, b, -c, -d, e + c, f + d].map((value) => String(value)).join(' ')})" href="data:${mark.mime};base64,${base64Text(mark.bytes)}"/>`;
    }
    case 'clip': {
      clips.count += 1;
      const name = `cut-${clips.count}`;
      const inside = mark.marks.map((each) => elementOf(each, clips)).join('');
      return `<clipPath id="${name}"><rect x="${figure(mark.x)}" y="${figure(mark.y)}" width="${figure(mark.width_mm)}" height="${figure(mark.height_mm)}"/></clipPath><g clip-path="url(#${name})">${inside}</g>`;
    }
  }
}

/**
 * Writes a drawing list as SVG 1.1 in its true size in mm. Layers are groups with a title: first the lines of each, then
 * the texts of each, so that no line runs over a text. Texts stay texts, held to the width of the shipped letters.
 */
export function writeSvg({ title, width_mm, height_mm, marks }: SvgDrawing): string {
  const clips = { count: 0 };
  const group = (name: string, words: string, own: readonly Mark[]): string => (own.length === 0 ? '' : `<g id="${name}"><title>${xml(words)}</title>\n${own.map((mark) => elementOf(mark, clips)).filter(Boolean).join('\n')}\n</g>`);
  const isText = ({ kind }: Mark): boolean => kind === 'text';
  const layers = [undefined, ...SHEET_LAYERS];
  const parts = [false, true].flatMap((texts) =>
    layers.map((layer) => {
      const words = layer === undefined ? 'Drawing' : LAYER_TITLES[layer];
      return group(`${layer ?? 'drawing'}${texts ? '-texts' : ''}`, texts ? `${words}: texts` : words, marks.filter((mark) => mark.layer === layer && isText(mark) === texts));
    }),
  );
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${figure(width_mm)}mm" height="${figure(height_mm)}mm" viewBox="0 0 ${figure(width_mm)} ${figure(height_mm)}" fill="none" stroke-linejoin="round" font-family="${xml(FONTS)}">`,
    `<title>${xml(title)}</title>`,
    `<rect width="100%" height="100%" fill="${PRINT.paper}"/>`,
    ...parts.filter(Boolean),
    '</svg>',
    '',
  ].join('\n');
}
