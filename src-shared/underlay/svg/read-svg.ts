import type { DecodeText } from '../decode-text.ts';
import { type ReadProgress, type UnderlayDrawing, UnderlayProblem } from '../drawing.ts';
import { DrawingBuilder } from '../drawing-builder.ts';
import { fillRings } from '../fill-rings.ts';
import { type Matrix, multiply, shiftBy } from '../matrix.ts';
import { isBarePaper, isLightFill, LIGHT_FILLS_REMARK } from '../paper-colours.ts';
import { paintOf } from './colours.ts';
import { dataPicture } from './data-picture.ts';
import { findLayers, UNDRAWN } from './find-layers.ts';
import { lengthOf, lengthParts } from './length.ts';
import { type XmlElement, parseXml } from './parse-xml.ts';
import { SHAPES } from './shapes.ts';
import { type Style, StyleSheet, styleOf } from './style.ts';
import { textLines } from './texts.ts';
import { transformOf } from './transform-list.ts';
import { fitViewBox, viewBoxOf } from './view-box.ts';

/** Chords may stray this part of the page's diagonal from their curve. */
const CHORD_TOLERANCE = 2.5e-5;
const DEEPEST_USE = 30;
const MOST_USES = 100_000;
/** Size of a page that tells none: that of a viewer without a window. */
const UNTOLD = { width: 300, height: 150 };

/** Where the walk through the document is. */
interface Here {
  readonly matrix: Matrix;
  readonly style: Style;
  readonly layer: string;
  /** What 100 % is. */
  readonly width: number;
  readonly height: number;
  /** `use` elements around it. */
  readonly uses: readonly XmlElement[];
}

/** Text of an SVG file: by its byte order mark, its declaration, or UTF-8. */
export function svgText(bytes: Uint8Array, decode: DecodeText): string {
  const wide = bytes[0] === 0xff && bytes[1] === 0xfe ? 'utf-16le' : bytes[0] === 0xfe && bytes[1] === 0xff ? 'utf-16be' : undefined;
  const head = String.fromCharCode(...bytes.subarray(0, 200));
  const told = wide ?? /^[^<]*<\?xml[^>]*encoding\s*=\s*["']([\w-]+)["']/.exec(head)?.[1];
  const text = decode(bytes, told ?? 'utf-8') ?? decode(bytes, 'utf-8');
  if (text === undefined) throw new UnderlayProblem('The text of the file cannot be decoded.', told ?? '', 'Export the plan again as SVG in UTF-8.');
  return text;
}

/**
 * Reads an SVG floor plan in user units, the origin at the page's lower left, y up. Named groups at the top are
 * layers. Scripts, links to other files and embedded web pages are never followed.
 * @throws {UnderlayProblem} the file is cut, damaged, empty, or unfolds without end
 */
export function readSvg(bytes: Uint8Array, decode: DecodeText, progress: ReadProgress): UnderlayDrawing {
  const root = parseXml(svgText(bytes, decode), (done) => progress(done / 2, 'Reading the file'));
  if (root.name !== 'svg') {
    throw new UnderlayProblem('This is an XML file, but no SVG drawing.', `it begins with “${root.name.slice(0, 60)}”`, 'Export the plan again as SVG.');
  }
  return new SvgReader(root, progress).read();
}

class SvgReader {
  private readonly builder = new DrawingBuilder('svg');
  private readonly sheet = new StyleSheet();
  private readonly byId = new Map<string, XmlElement>();
  private readonly layers: ReadonlyMap<XmlElement, string>;
  private tolerance = 0;
  private visited = 0;
  private uses = 0;

  constructor(
    private readonly root: XmlElement,
    private readonly progress: ReadProgress,
  ) {
    this.layers = findLayers(root);
    this.index(root);
  }

  private index(element: XmlElement): void {
    const id = element.attributes.get('id');
    if (id !== undefined && !this.byId.has(id)) this.byId.set(id, element);
    for (const child of element.children) {
      if (typeof child === 'string') continue;
      if (child.name === 'style') this.sheet.add(child.children.filter((part) => typeof part === 'string').join(''));
      this.index(child);
    }
  }

  read(): UnderlayDrawing {
    const { attributes } = this.root;
    const told = { width: lengthOf(attributes.get('width'), 0, 0), height: lengthOf(attributes.get('height'), 0, 0) };
    const box = viewBoxOf(attributes.get('viewBox')) ?? { x: 0, y: 0, width: told.width || UNTOLD.width, height: told.height || UNTOLD.height };
    this.tolerance = Math.hypot(box.width, box.height) * CHORD_TOLERANCE;
    const style = styleOf(this.root, {}, this.sheet);
    const here: Here = { matrix: [1, 0, 0, -1, -box.x, box.y + box.height], style, layer: '0', width: box.width, height: box.height, uses: [] };
    for (const child of this.root.children) if (typeof child !== 'string') this.draw(child, here);
    return this.builder.finish({ metresPerUnit: null, unitsText: this.unitsText(), pageCount: 1 }, this.progress);
  }

  private unitsText(): string {
    const width = lengthParts(this.root.attributes.get('width'));
    const height = lengthParts(this.root.attributes.get('height'));
    const isPaper = width && height && ['mm', 'cm', 'in', 'pt'].includes(width.unit);
    return isPaper ? `page of ${width.value} × ${height.value} ${width.unit}: paper units say nothing of the site` : 'no units of the site given';
  }

  private draw(element: XmlElement, outer: Here): void {
    this.visited += 1;
    if (this.visited % 1000 === 0) this.progress(0.5 + Math.min(0.45, this.visited / 1e6), 'Reading shapes');
    const { name } = element;
    if (name === 'script') this.builder.remark('The file holds a script; it was not run.');
    if (name === 'foreignObject') this.builder.remark('The file holds an embedded web page; it was left out.');
    if (UNDRAWN.has(name) || name === 'foreignObject') return;
    const style = styleOf(element, outer.style, this.sheet);
    const layer = this.layers.get(element);
    if (layer !== undefined) this.builder.declareLayer(layer, style.display !== 'none');
    else if (style.display === 'none') return;
    if (style.opacity !== undefined && Number.parseFloat(style.opacity) === 0) return;
    if (style['clip-path'] && style['clip-path'] !== 'none') this.builder.remark('Clipping is not applied: some lines may reach beyond their window.');
    const matrix = multiply(outer.matrix, transformOf(element.attributes.get('transform')));
    const here: Here = { ...outer, matrix, style, layer: layer ?? outer.layer };
    if (name === 'g' || name === 'a') this.drawChildren(element, here);
    else if (name === 'svg') this.drawInner(element, here, undefined);
    else if (name === 'switch') this.drawFirst(element, here);
    else if (name === 'use') this.drawUse(element, here);
    else if (style.visibility === 'hidden' || style.visibility === 'collapse') return;
    else if (name === 'text') this.drawText(element, here);
    else if (name === 'image') this.drawImage(element, here);
    else if (Object.hasOwn(SHAPES, name)) this.drawShape(name, element, here);
  }

  private drawChildren(element: XmlElement, here: Here): void {
    for (const child of element.children) if (typeof child !== 'string') this.draw(child, here);
  }

  private drawFirst(element: XmlElement, here: Here): void {
    const first = element.children.find((child) => typeof child !== 'string' && child.name !== 'foreignObject');
    if (first && typeof first !== 'string') this.draw(first, here);
  }

  /** An `svg` or `symbol` inside the drawing: its view box is fitted into the rectangle it is given. */
  private drawInner(element: XmlElement, here: Here, size: { width: number; height: number } | undefined): void {
    const { attributes } = element;
    const box = viewBoxOf(attributes.get('viewBox'));
    const into = {
      x: lengthOf(attributes.get('x'), 0, here.width),
      y: lengthOf(attributes.get('y'), 0, here.height),
      width: size?.width || lengthOf(attributes.get('width'), here.width, here.width),
      height: size?.height || lengthOf(attributes.get('height'), here.height, here.height),
    };
    const matrix = multiply(here.matrix, fitViewBox(box, into, attributes.get('preserveAspectRatio')));
    this.drawChildren(element, { ...here, matrix, width: box?.width ?? into.width, height: box?.height ?? into.height });
  }

  private drawUse(element: XmlElement, here: Here): void {
    const { attributes } = element;
    const address = (attributes.get('href') ?? attributes.get('xlink:href') ?? '').trim();
    if (!address.startsWith('#')) {
      if (address !== '') this.builder.remark('Parts that lie in other files were not fetched.');
      return;
    }
    const target = this.byId.get(address.slice(1));
    if (!target) return;
    this.uses += 1;
    if (here.uses.includes(element) || here.uses.length >= DEEPEST_USE || this.uses > MOST_USES) {
      throw new UnderlayProblem('A symbol of the drawing contains itself or is repeated without end.', `“${address.slice(0, 80)}”`, 'Export the plan again as plain SVG or as PDF.');
    }
    const matrix = multiply(here.matrix, shiftBy(lengthOf(attributes.get('x'), 0, here.width), lengthOf(attributes.get('y'), 0, here.height)));
    const inside: Here = { ...here, matrix, uses: [...here.uses, element] };
    if (target.name !== 'symbol' && target.name !== 'svg') {
      this.draw(target, inside);
      return;
    }
    const size = { width: lengthOf(attributes.get('width'), 0, here.width), height: lengthOf(attributes.get('height'), 0, here.height) };
    this.drawInner(target, { ...inside, style: styleOf(target, here.style, this.sheet) }, size);
  }

  private drawShape(name: string, element: XmlElement, here: Here): void {
    const runs = SHAPES[name]?.(element, { ...here, tolerance: this.tolerance }) ?? [];
    if (runs.length === 0) return;
    const { style } = here;
    const stroke = visiblePaint(style.stroke ?? 'none', style['stroke-opacity'], style);
    const fill = name === 'line' ? 'none' : visiblePaint(style.fill ?? 'black', style['fill-opacity'], style);
    const isStroked = stroke !== 'none' && !(stroke.startsWith('#') && isBarePaper(stroke)) && lengthOf(style['stroke-width'], 1, 1) > 0;
    const fills = fill !== 'none' && fill !== 'pattern' && !isLightFill(fill);
    if (fill !== 'none' && !fills) this.builder.remark(LIGHT_FILLS_REMARK);
    // A light area without an edge is bare paper or shading.
    if (!isStroked && !fills) return;
    const work = this.builder.workOn(here.layer, isStroked ? (stroke === 'pattern' ? '#000000' : stroke) : fill);
    for (const { places, isClosed } of runs) work.polyline(places, isClosed || (!isStroked && fills));
    if (!fills) return;
    const rule = style['fill-rule'] === 'evenodd' ? 'evenodd' : 'nonzero';
    for (const ring of fillRings(runs.map(({ places }) => places), rule)) work.fill(ring);
  }

  private drawText(element: XmlElement, here: Here): void {
    const fill = visiblePaint(here.style.fill ?? 'black', here.style['fill-opacity'], here.style);
    const colour = fill.startsWith('#') ? fill : '#000000';
    for (const { x, y, height, rotation_rad, text } of textLines(element, here.style, this.sheet, here.matrix)) {
      this.builder.workOn(here.layer, colour).text(x, y, height, rotation_rad, text);
    }
  }

  private drawImage(element: XmlElement, here: Here): void {
    const { attributes } = element;
    const into = {
      x: lengthOf(attributes.get('x'), 0, here.width),
      y: lengthOf(attributes.get('y'), 0, here.height),
      width: lengthOf(attributes.get('width'), 0, here.width),
      height: lengthOf(attributes.get('height'), 0, here.height),
    };
    const address = attributes.get('href') ?? attributes.get('xlink:href') ?? '';
    const picture = into.width > 0 && into.height > 0 ? dataPicture(address, into, attributes.get('preserveAspectRatio'), here.matrix, this.progress) : undefined;
    if (picture) this.builder.addImage(picture);
    else this.builder.remark('Pictures that lie in other files, or of a kind that is not read, were left out.');
  }
}

/** A paint as it shows: "none" when it is see-through. */
function visiblePaint(value: string, opacity: string | undefined, style: Style): string {
  const isCurrent = value.trim().toLowerCase() === 'currentcolor';
  if (opacity !== undefined && Number.parseFloat(opacity) === 0) return 'none';
  return paintOf(isCurrent ? (style.color ?? 'black') : value);
}
