import { MOST_SEGMENTS, type UnderlayDrawing, type UnderlayImage, type UnderlayKind, type UnderlayLayer, UnderlayProblem } from './drawing.ts';

/**
 * A drawing as bytes: the mark "NZWU", a version and the header's length as little-endian 32-bit numbers,
 * the header as JSON in pure ASCII padded to eight bytes, all coordinates as doubles, then the pictures.
 */
const MARK = 0x55575a4e;
const VERSION = 1;
const PREFIX_bytes = 12;

interface LayerHeader extends Pick<UnderlayLayer, 'name' | 'visible' | 'colour' | 'texts'> {
  /** How many numbers. */
  readonly segments: number;
  readonly fills: readonly number[];
  readonly closed: readonly number[];
}
interface DrawingHeader extends Omit<UnderlayDrawing, 'layers' | 'images'> {
  readonly layers: readonly LayerHeader[];
  readonly images: readonly (Omit<UnderlayImage, 'bytes'> & { readonly length: number })[];
}

const KINDS: readonly UnderlayKind[] = ['dxf', 'pdf', 'svg', 'png', 'jpeg'];
const MIMES: readonly string[] = ['image/png', 'image/jpeg'];

const lengthOf = (ring: Float64Array): number => ring.length;
const paddedTo8 = (length: number): number => (length + 7) & ~7;
const isLittleEndian = new Uint8Array(Uint32Array.of(1).buffer)[0] === 1;

const inAsciiOnly = (text: string): string =>
  text.replace(/[\u0080-\uffff]/g, (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`);

/** Packs a drawing; `decodeDrawing` gives the same drawing back. */
export function encodeDrawing(drawing: UnderlayDrawing): Uint8Array {
  const header: DrawingHeader = {
    ...drawing,
    layers: drawing.layers.map(({ name, visible, colour, texts, segments, fills, closed }) => ({
      name,
      visible,
      colour,
      texts,
      segments: segments.length,
      fills: fills.map(lengthOf),
      closed: closed.map(lengthOf),
    })),
    images: drawing.images.map(({ mime, width, height, matrix, bytes }) => ({ mime, width, height, matrix, length: bytes.length })),
  };
  const json = inAsciiOnly(JSON.stringify(header));
  const headerLength = paddedTo8(PREFIX_bytes + json.length) - PREFIX_bytes;
  const runs = drawing.layers.flatMap(({ segments, fills, closed }) => [segments, ...fills, ...closed]);
  const numbers = runs.reduce((sum, run) => sum + run.length, 0);
  const pictures = drawing.images.reduce((sum, { bytes }) => sum + bytes.length, 0);
  const packed = new Uint8Array(PREFIX_bytes + headerLength + numbers * 8 + pictures);
  const view = new DataView(packed.buffer);
  view.setUint32(0, MARK, true);
  view.setUint32(4, VERSION, true);
  view.setUint32(8, headerLength, true);
  packed.fill(32, PREFIX_bytes, PREFIX_bytes + headerLength);
  for (let i = 0; i < json.length; i += 1) packed[PREFIX_bytes + i] = json.charCodeAt(i);
  let at = PREFIX_bytes + headerLength;
  for (const run of runs) {
    writeDoubles(packed, at, run);
    at += run.length * 8;
  }
  for (const { bytes } of drawing.images) {
    packed.set(bytes, at);
    at += bytes.length;
  }
  return packed;
}

function writeDoubles(packed: Uint8Array, at: number, run: Float64Array): void {
  if (isLittleEndian) {
    packed.set(new Uint8Array(run.buffer, run.byteOffset, run.byteLength), at);
    return;
  }
  const view = new DataView(packed.buffer);
  for (let i = 0; i < run.length; i += 1) view.setFloat64(at + 8 * i, run[i] ?? 0, true);
}

const damaged = (where: string): UnderlayProblem =>
  new UnderlayProblem('The prepared floor plan is damaged.', where, 'Import the file again.');

/** Takes a packed drawing apart after checking every length and number. @throws {UnderlayProblem} when it is damaged */
export function decodeDrawing(packed: Uint8Array): UnderlayDrawing {
  const view = new DataView(packed.buffer, packed.byteOffset, packed.byteLength);
  if (packed.length < PREFIX_bytes || view.getUint32(0, true) !== MARK) throw damaged('start');
  if (view.getUint32(4, true) !== VERSION) throw damaged('version');
  const headerLength = view.getUint32(8, true);
  if (PREFIX_bytes + headerLength > packed.length) throw damaged('header');
  const header = readHeader(packed.subarray(PREFIX_bytes, PREFIX_bytes + headerLength));
  let at = PREFIX_bytes + headerLength;
  const takeRun = (length: number, group: number): Float64Array => {
    if (length % group !== 0 || at + length * 8 > packed.length) throw damaged('coordinates');
    const run = new Float64Array(length);
    if (isLittleEndian) new Uint8Array(run.buffer).set(packed.subarray(at, at + length * 8));
    else for (let i = 0; i < length; i += 1) run[i] = view.getFloat64(at + 8 * i, true);
    if (!run.every(Number.isFinite)) throw damaged('coordinates');
    at += length * 8;
    return run;
  };
  const layers = header.layers.map(({ name, visible, colour, texts, segments, fills, closed }) => ({
    name,
    visible,
    colour,
    texts,
    segments: takeRun(segments, 4),
    fills: fills.map((length) => takeRun(length, 2)),
    closed: closed.map((length) => takeRun(length, 2)),
  }));
  const images = header.images.map(({ length, ...image }) => {
    if (at + length > packed.length) throw damaged('picture');
    const bytes = packed.slice(at, at + length);
    at += length;
    return { ...image, bytes };
  });
  if (at !== packed.length) throw damaged('end');
  return { ...header, layers, images };
}

function readHeader(bytes: Uint8Array): DrawingHeader {
  let text = '';
  for (let i = 0; i < bytes.length; i += 8192) text += String.fromCharCode(...bytes.subarray(i, i + 8192));
  let header: unknown;
  try {
    header = JSON.parse(text);
  } catch {
    throw damaged('header');
  }
  if (!isHeader(header)) throw damaged('header');
  return header;
}

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null && !Array.isArray(value);
const isString = (value: unknown): value is string => typeof value === 'string';
const isFiniteNumber = (value: unknown): value is number => Number.isFinite(value);
const isCount = (value: unknown): value is number => Number.isInteger(value) && Number(value) >= 0 && Number(value) <= 8 * MOST_SEGMENTS;
const isListOf = (value: unknown, isItem: (item: unknown) => boolean): value is unknown[] => Array.isArray(value) && value.every(isItem);
const isColour = (value: unknown): boolean => isString(value) && /^#[0-9a-f]{6}$/.test(value);

const isText = (value: unknown): boolean =>
  isRecord(value) &&
  isFiniteNumber(value.x) &&
  isFiniteNumber(value.y) &&
  isFiniteNumber(value.height) &&
  isFiniteNumber(value.rotation_rad) &&
  isString(value.text);

const isLayer = (value: unknown): boolean =>
  isRecord(value) &&
  isString(value.name) &&
  typeof value.visible === 'boolean' &&
  isColour(value.colour) &&
  isCount(value.segments) &&
  isListOf(value.fills, isCount) &&
  isListOf(value.closed, isCount) &&
  isListOf(value.texts, isText);

const isImage = (value: unknown): boolean =>
  isRecord(value) &&
  isString(value.mime) &&
  MIMES.includes(value.mime) &&
  Number.isSafeInteger(value.length) &&
  Number(value.length) >= 0 &&
  isCount(value.width) &&
  isCount(value.height) &&
  isListOf(value.matrix, isFiniteNumber) &&
  value.matrix.length === 6;

const isBox = (value: unknown): boolean =>
  isRecord(value) && isFiniteNumber(value.minX) && isFiniteNumber(value.minY) && isFiniteNumber(value.maxX) && isFiniteNumber(value.maxY);

const isHeader = (value: unknown): value is DrawingHeader =>
  isRecord(value) &&
  KINDS.some((kind) => kind === value.kind) &&
  (value.metresPerUnit === null || (isFiniteNumber(value.metresPerUnit) && value.metresPerUnit > 0)) &&
  isString(value.unitsText) &&
  (value.unitsDoubt === null || isString(value.unitsDoubt)) &&
  isBox(value.extents) &&
  isListOf(value.layers, isLayer) &&
  isListOf(value.images, isImage) &&
  isCount(value.pageCount) &&
  isListOf(value.warnings, isString);
