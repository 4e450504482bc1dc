import type { Box } from '../geometry/outline.ts';
import { closedChains } from './closed-chains.ts';
import {
  type ReadProgress,
  type UnderlayDrawing,
  type UnderlayImage,
  type UnderlayKind,
  type UnderlayLayer,
  UnderlayProblem,
  type UnderlayText,
} from './drawing.ts';
import { Budget, LineWork, guessTextWidth } from './line-work.ts';
import { type Matrix, shiftBy, transformed } from './matrix.ts';

/** Rings smaller than this part of the drawing's longer side are symbols and letters, not rooms. */
const LEAST_RING = 1 / 1000;
/** Ends of lines meet when they are nearer than this part of the drawing's longer side. */
const CHAIN_REACH = 1e-7;
/** A drawing that lies farther from its origin than this many times its own size is moved to the origin. */
const FAR_AWAY = 20;
/** Longest side of a drawing in any unit; a larger one is damage. */
const LARGEST = 1e13;
/** Length of a layer's name that the plan keeps. */
const LONGEST_NAME = 200;

/** What a reader knows of a drawing beside its lines. */
export type DrawingFacts = Pick<UnderlayDrawing, 'metresPerUnit' | 'unitsText' | 'pageCount'> & {
  /** Judges the units once the size is known. */
  readonly doubt?: (longer: number) => string | null;
};

interface LayerUnderWay {
  readonly name: string;
  visible: boolean;
  /** Open line work for each colour. */
  readonly works: Map<string, LineWork>;
  /** Finished line work with its colour. */
  readonly adopted: { readonly colour: string; readonly work: LineWork }[];
}

/** Collects what a reader finds, layer by layer, and makes the drawing from it. */
export class DrawingBuilder {
  readonly budget = new Budget();
  private readonly layers = new Map<string, LayerUnderWay>();
  private readonly images: UnderlayImage[] = [];
  private readonly remarks = new Set<string>();

  constructor(private readonly kind: UnderlayKind) {}

  /** Declares a layer; later declarations of the same name only hide or show it. */
  declareLayer(name: string, visible: boolean): void {
    const layer = this.layerOf(name);
    layer.visible = visible;
  }

  /** Where lines of one layer and colour (`#rrggbb`) go. */
  workOn(layerName: string, colour: string): LineWork {
    const { works } = this.layerOf(layerName);
    const known = works.get(colour);
    if (known) return known;
    const fresh = new LineWork(this.budget);
    works.set(colour, fresh);
    return fresh;
  }

  /** Takes over line work that was made elsewhere. */
  adopt(layerName: string, colour: string, work: LineWork): void {
    this.layerOf(layerName).adopted.push({ colour, work });
  }

  addImage(image: UnderlayImage): void {
    this.images.push(image);
  }

  /** Notes a sentence for the user; the same sentence counts once. */
  remark(sentence: string): void {
    this.remarks.add(sentence);
  }

  private layerOf(name: string): LayerUnderWay {
    const kept = name.slice(0, LONGEST_NAME);
    const known = this.layers.get(kept);
    if (known) return known;
    const fresh: LayerUnderWay = { name: kept, visible: true, works: new Map(), adopted: [] };
    this.layers.set(kept, fresh);
    return fresh;
  }

  /** Makes the drawing. @throws {UnderlayProblem} when there is nothing in it */
  finish(facts: DrawingFacts, progress: ReadProgress): UnderlayDrawing {
    const drawn = [...this.layers.values()].filter((layer) => worksOf(layer).some(({ work }) => !work.isEmpty));
    if (drawn.length === 0 && this.images.length === 0) {
      throw new UnderlayProblem(
        facts.pageCount > 1 ? 'This page holds nothing that can be drawn.' : 'The file holds nothing that can be drawn.',
        '',
        facts.pageCount > 1 ? 'Choose another page.' : 'Check that it is the floor plan, and export it again with its lines.',
      );
    }
    const shown = drawn.filter((layer) => layer.visible);
    const counted = shown.length > 0 || this.images.length > 0 ? shown : drawn;
    const box = boxOf(
      counted.flatMap((layer) => worksOf(layer).map(({ work }) => work)),
      this.images,
    );
    const longer = Math.max(box.maxX - box.minX, box.maxY - box.minY);
    if (!(longer < LARGEST)) {
      throw new UnderlayProblem('The drawing is larger than anything on earth.', '', 'Remove what lies far outside the plan, and export it again.');
    }
    const shift = this.shiftFor(box, longer);
    const layers: UnderlayLayer[] = [];
    for (const layer of drawn) {
      progress(layers.length / drawn.length, 'Joining lines');
      layers.push(finishLayer(layer, longer, shift));
      layer.works.clear();
      layer.adopted.length = 0;
    }
    return {
      kind: this.kind,
      metresPerUnit: facts.metresPerUnit,
      unitsText: facts.unitsText,
      unitsDoubt: facts.doubt?.(longer) ?? null,
      extents: { minX: box.minX + shift[4], minY: box.minY + shift[5], maxX: box.maxX + shift[4], maxY: box.maxY + shift[5] },
      layers,
      images: this.images,
      pageCount: facts.pageCount,
      warnings: [...this.remarks],
    };
  }

  /** Moves a drawing in survey coordinates near its origin: always the same way for the same file. */
  private shiftFor(box: Box, longer: number): Matrix {
    const awayX = Math.max(0, box.minX, -box.maxX);
    const awayY = Math.max(0, box.minY, -box.maxY);
    if (this.images.length > 0 || Math.hypot(awayX, awayY) <= Math.max(FAR_AWAY * longer, 1000)) return shiftBy(0, 0);
    const x = Math.floor(box.minX / 100) * 100;
    const y = Math.floor(box.minY / 100) * 100;
    this.remark(`The drawing lies far from its own origin; its place ${x}, ${y} was taken as the origin.`);
    return shiftBy(-x, -y);
  }
}

const worksOf = (layer: LayerUnderWay): { colour: string; work: LineWork }[] => [
  ...layer.adopted,
  ...[...layer.works].map(([colour, work]) => ({ colour, work })),
];

function finishLayer(layer: LayerUnderWay, longer: number, shift: Matrix): UnderlayLayer {
  const works = worksOf(layer);
  const pieces = works.reduce((sum, { work }) => sum + work.segmentCount, 0);
  const segments = new Float64Array(pieces * 4);
  let at = 0;
  const fills: Float64Array[] = [];
  const closed: Float64Array[] = [];
  const texts: UnderlayText[] = [];
  const weights = new Map<string, number>();
  const isMoved = shift[4] !== 0 || shift[5] !== 0;
  const move = (ring: Float64Array): Float64Array => (isMoved ? transformed(shift, ring) : ring);
  for (const { colour, work } of works) {
    const weight = work.segmentCount * 1000 + work.fills.length * 10 + work.texts.length;
    weights.set(colour, (weights.get(colour) ?? 0) + weight);
    at = work.loose.copyTo(segments, at);
    at = work.sides.copyTo(segments, at);
    for (const ring of [...work.closed, ...closedChains(work.loose, longer * CHAIN_REACH)]) {
      if (sizeOf(ring) >= longer * LEAST_RING) closed.push(move(ring));
    }
    for (const ring of work.fills) fills.push(move(ring));
    for (const text of work.texts) texts.push(isMoved ? { ...text, x: text.x + shift[4], y: text.y + shift[5] } : text);
  }
  const [[colour] = ['#000000']] = [...weights].sort((a, b) => b[1] - a[1]);
  return { name: layer.name, visible: layer.visible, colour, segments: move(segments), fills, closed, texts };
}

const sizeOf = (ring: Float64Array): number => {
  const box = startBox();
  stretch(box, ring);
  return Math.max(box.maxX - box.minX, box.maxY - box.minY);
};

type Stretching = { -readonly [K in keyof Box]: Box[K] };
const startBox = (): Stretching => ({ minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity });

function stretch(box: Stretching, places: ArrayLike<number>): void {
  for (let i = 0; i + 1 < places.length; i += 2) {
    const x = places[i] ?? 0;
    const y = places[i + 1] ?? 0;
    if (x < box.minX) box.minX = x;
    if (x > box.maxX) box.maxX = x;
    if (y < box.minY) box.minY = y;
    if (y > box.maxY) box.maxY = y;
  }
}

/** Start, end and top of a text, its width guessed. */
function cornersOf({ x, y, height, rotation_rad, text }: UnderlayText): number[] {
  const cos = Math.cos(rotation_rad);
  const sin = Math.sin(rotation_rad);
  const width = guessTextWidth(text, height);
  return [x, y, x + cos * width, y + sin * width, x - sin * height, y + cos * height];
}

function boxOf(works: readonly LineWork[], images: readonly UnderlayImage[]): Box {
  const box = startBox();
  for (const work of works) {
    for (const chunk of work.loose.chunks()) stretch(box, chunk);
    for (const chunk of work.sides.chunks()) stretch(box, chunk);
    for (const ring of work.fills) stretch(box, ring);
    for (const text of work.texts) stretch(box, cornersOf(text));
  }
  for (const { matrix } of images) stretch(box, transformed(matrix, [0, 0, 1, 0, 1, 1, 0, 1]));
  return box;
}
