import { UnderlayProblem } from '../drawing.ts';
import { type Budget, LineWork } from '../line-work.ts';
import type { Matrix } from '../matrix.ts';

/** Colour of a thing: 0xRRGGBB, or taken from its layer or from the block it is in. */
export type Colour = number;
export const BY_LAYER = -1;
export const BY_BLOCK = -2;

/** A block placed inside other content. */
export interface Placed {
  readonly block: string;
  readonly layer: number;
  readonly colour: Colour;
  readonly matrix: Matrix;
  /** Copies in a grid, before `matrix`'s turn: columns, rows and their spacing in the block's turned frame. */
  readonly grid: { readonly columns: number; readonly rows: number; readonly stepColumn: readonly [number, number]; readonly stepRow: readonly [number, number] };
}

/** What model space or one block holds: lines by layer and colour, and blocks placed in it. */
export class Content {
  private readonly works = new Map<number, { layer: number; colour: Colour; work: LineWork }>();
  readonly placed: Placed[] = [];

  constructor(private readonly budget: Budget) {}

  /** Where lines of a layer and colour go. */
  workOn(layer: number, colour: Colour): LineWork {
    const key = layer * 0x2000000 + colour + 2;
    const known = this.works.get(key);
    if (known) return known.work;
    const work = new LineWork(this.budget);
    this.works.set(key, { layer, colour, work });
    return work;
  }

  get all(): Iterable<{ layer: number; colour: Colour; work: LineWork }> {
    return this.works.values();
  }
}

/** A named block: its content and the place of it that an insertion puts down. */
export interface Block {
  readonly name: string;
  readonly baseX: number;
  readonly baseY: number;
  readonly content: Content;
}

/** Blocks by name; names are the same whatever their case. */
export class BlockTable {
  private readonly blocks = new Map<string, Block>();

  add(block: Block): void {
    this.blocks.set(block.name.toUpperCase(), block);
  }

  find(name: string): Block | undefined {
    return this.blocks.get(name.toUpperCase());
  }
}

/** A file built to unfold without end. */
export const endlessBlocks = (what: string, where: string): UnderlayProblem =>
  new UnderlayProblem(what, where, 'Repair or purge the drawing in the program it was made with, and export it again.');
