import type { PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { type ReadProgress, type UnderlayDrawing, UnderlayProblem } from '#shared/underlay/drawing';
import { DrawingBuilder } from '#shared/underlay/drawing-builder';
import { type Matrix, multiply } from '#shared/underlay/matrix';
import { countDamagedStreams } from './damaged-streams.ts';
import { NO_LAYER, type PageLayer } from './layer-stack.ts';
import { type OpenPdf, openPdf } from './open-pdf.ts';
import { PageWalk } from './page-walk.ts';
import { pictureAsPng, stencilAsPng } from './picture-png.ts';

/** Chords may stray this part of the page's diagonal from their curve. */
const CHORD_TOLERANCE = 2.5e-5;
/** Longest wait for one picture or typeface of the page [ms]. */
const LONGEST_WAIT_ms = 20_000;
const POINT_mm = 25.4 / 72;

/**
 * Reads one page of a PDF as it is seen: turned as the page says, the origin at its lower left, y up.
 * A file unit is a point (1/72 inch of paper) times the page's own unit. Layers are the document's optional content groups.
 * @param page counted from 1
 * @throws {UnderlayProblem} password, damage, no such page, an empty page, or a page without end
 */
export async function readPdf(bytes: Uint8Array, page: number, progress: ReadProgress): Promise<UnderlayDrawing> {
  progress(0, 'Opening the PDF');
  const isSound = (await countDamagedStreams(bytes, progress)) === 0;
  try {
    return await readOnce(bytes, page, { strict: true, isSound }, progress);
  } catch (error) {
    if (!(error instanceof DamagedPage)) throw error;
    return readOnce(bytes, page, { strict: false, isSound: false }, progress);
  }
}

interface HowToRead {
  /** A fault in the page's steps ends the reading. */
  readonly strict: boolean;
  /** No damage is known. */
  readonly isSound: boolean;
}

async function readOnce(bytes: Uint8Array, page: number, how: HowToRead, progress: ReadProgress): Promise<UnderlayDrawing> {
  const pdf = await openPdf(bytes, how.strict, progress);
  try {
    return await Promise.race([readPage(pdf, page, how, progress), pdf.endless]);
  } finally {
    await pdf.close();
  }
}

/** A page whose painting steps hold a fault. */
class DamagedPage extends UnderlayProblem {
  constructor(error: unknown, page: number) {
    super(
      'This page of the PDF is damaged.',
      `page ${page}${error instanceof Error ? `: ${error.message.slice(0, 100)}` : ''}`,
      'Choose another page, or export the plan again.',
    );
  }
}

async function readPage(pdf: OpenPdf, number: number, { strict, isSound }: HowToRead, progress: ReadProgress): Promise<UnderlayDrawing> {
  const { document } = pdf;
  const pageCount = document.numPages;
  if (number > pageCount) {
    throw new UnderlayProblem(`The PDF has ${pageCount === 1 ? 'only one page' : `only ${pageCount} pages`}.`, `page ${number}`, 'Choose a page that exists.');
  }
  const page = await document.getPage(number).catch((error: unknown) => {
    throw error instanceof UnderlayProblem ? error : new DamagedPage(error, number);
  });
  const viewport = page.getViewport({ scale: 1 });
  const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = viewport.transform;
  const base = multiply([1, 0, 0, -1, 0, viewport.height], [a, b, c, d, e, f]);
  const builder = new DrawingBuilder('pdf');
  if (!isSound) builder.remark('The PDF is damaged in places: lines, texts or pictures may be missing or wrong. Compare it with the page in a PDF viewer.');
  const { layers, layerOf } = await layersOf(document);
  for (const { name, isVisible } of layers) builder.declareLayer(name, isVisible);
  const list = await page.getOperatorList({ intent: 'display' }).catch((error: unknown) => {
    throw error instanceof UnderlayProblem ? error : new DamagedPage(error, number);
  });
  if (strict && pdf.fault() !== undefined) throw new DamagedPage(new Error(pdf.fault()), number);
  const things = await pageThings(page, list.argsArray);
  const sources = {
    layerOf,
    widthScaleOf: (font: string) => widthScaleIn(things.get(font)),
    putPicture: (name: unknown, matrix: Matrix) => putPicture(builder, typeof name === 'string' ? things.get(name) : name, matrix),
    putStencil: (mask: unknown, matrix: Matrix, colour: string) => putStencil(builder, mask, things, matrix, colour),
  };
  new PageWalk(builder, base, Math.hypot(viewport.width, viewport.height) * CHORD_TOLERANCE, sources).run(list.fnArray, list.argsArray, progress);
  const size = `${Math.round(viewport.width * POINT_mm)} × ${Math.round(viewport.height * POINT_mm)} mm`;
  return builder.finish({ metresPerUnit: null, unitsText: `page of ${size}: paper units say nothing of the site`, pageCount }, progress);
}

/** The document's layers, and how marked content names one. */
async function layersOf(document: OpenPdf['document']): Promise<{ layers: PageLayer[]; layerOf: (properties: unknown) => PageLayer | undefined }> {
  const config = await document.getOptionalContentConfig({ intent: 'display' });
  const byId = new Map<string, PageLayer>();
  const taken = new Map<string, number>();
  for (const [id, group] of config) {
    const told = typeof group?.name === 'string' && group.name.trim() !== '' ? group.name.trim() : 'Layer';
    const times = (taken.get(told) ?? 0) + 1;
    taken.set(told, times);
    const name = times === 1 ? told : `${told} (${times})`;
    byId.set(String(id), { name, isVisible: group?.visible !== false });
  }
  const layerOf = (properties: unknown): PageLayer | undefined => {
    if (typeof properties !== 'object' || properties === null) return undefined;
    const ids = 'ids' in properties && Array.isArray(properties.ids) ? properties.ids : 'id' in properties ? [properties.id] : [];
    const named = ids.map((id) => byId.get(String(id))).find((layer) => layer !== undefined);
    if (!named) return undefined;
    // A membership of several groups may be shown though its first group is not.
    return 'type' in properties && properties.type === 'OCMD' && config.isVisible(properties) && !named.isVisible ? { name: NO_LAYER, isVisible: true } : named;
  };
  return { layers: [...byId.values()], layerOf };
}

/** Pictures and typefaces that the steps of a page name, once the library has unpacked them. */
async function pageThings(page: PDFPageProxy, args: readonly unknown[]): Promise<Map<string, unknown>> {
  const names = new Set<string>();
  for (const given of args) {
    if (!Array.isArray(given)) continue;
    const [first] = given;
    if (typeof first === 'string' && /^(g_|img_|mask_)/.test(first)) names.add(first);
    const inner = typeof first === 'object' && first !== null && 'data' in first ? first.data : undefined;
    if (typeof inner === 'string') names.add(inner);
    const states = Array.isArray(first) ? first : [];
    for (const entry of states) if (Array.isArray(entry) && entry[0] === 'Font' && Array.isArray(entry[1])) names.add(String(entry[1][0]));
  }
  const things = new Map<string, unknown>();
  await Promise.all([...names].map(async (name) => things.set(name, await thingOf(page, name))));
  return things;
}

function thingOf(page: PDFPageProxy, name: string): Promise<unknown> {
  return new Promise((resolve) => {
    const wait = setTimeout(() => resolve(undefined), LONGEST_WAIT_ms);
    const store = name.startsWith('g_') ? page.commonObjs : page.objs;
    store.get(name, (thing: unknown) => {
      clearTimeout(wait);
      resolve(thing);
    });
  });
}

function widthScaleIn(font: unknown): number {
  const matrix = typeof font === 'object' && font !== null && 'fontMatrix' in font ? font.fontMatrix : undefined;
  const scale = Array.isArray(matrix) ? Number(matrix[0]) : 0.001;
  return Number.isFinite(scale) && scale !== 0 ? scale : 0.001;
}

const LOST_PICTURES_REMARK = 'Pictures that cannot be unpacked, or have more than 70 million pixels, were left out.';

function putPicture(builder: DrawingBuilder, picture: unknown, matrix: Matrix): void {
  const unpacked = pictureIn(picture);
  const bytes = unpacked && pictureAsPng(unpacked);
  if (bytes) builder.addImage({ mime: 'image/png', bytes, width: unpacked.width, height: unpacked.height, matrix });
  else builder.remark(LOST_PICTURES_REMARK);
}

function putStencil(builder: DrawingBuilder, mask: unknown, things: ReadonlyMap<string, unknown>, matrix: Matrix, colour: string): void {
  const named = typeof mask === 'object' && mask !== null && 'data' in mask && typeof mask.data === 'string' ? things.get(mask.data) : mask;
  if (typeof named === 'object' && named !== null && 'data' in named && 'width' in named && 'height' in named && named.data instanceof Uint8Array) {
    const width = Number(named.width);
    const height = Number(named.height);
    const bytes = stencilAsPng(width, height, named.data, colour);
    if (bytes) {
      builder.addImage({ mime: 'image/png', bytes, width, height, matrix });
      return;
    }
  }
  builder.remark(LOST_PICTURES_REMARK);
}

function pictureIn(value: unknown): Parameters<typeof pictureAsPng>[0] | undefined {
  if (typeof value !== 'object' || value === null || !('data' in value) || !('width' in value) || !('height' in value)) return undefined;
  const { data, width, height } = value;
  if (!(data instanceof Uint8Array || data instanceof Uint8ClampedArray) || typeof width !== 'number' || typeof height !== 'number') return undefined;
  return { data, width, height, kind: 'kind' in value && typeof value.kind === 'number' ? value.kind : 0 };
}
