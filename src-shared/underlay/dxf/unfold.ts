import type { ReadProgress } from '../drawing.ts';
import type { DrawingBuilder } from '../drawing-builder.ts';
import { type Matrix, multiply, shiftBy } from '../matrix.ts';
import { hexColour } from './colours.ts';
import { BY_BLOCK, BY_LAYER, type BlockTable, type Colour, type Content, type Placed, endlessBlocks } from './content.ts';
import { LayerTable } from './layers.ts';
import type { Tally } from './tally.ts';

/** Blocks inside blocks beyond this depth are no drawing any more. */
const DEEPEST = 60;
/** Most insertions a drawing may unfold into, empty ones included. */
const MOST_PLACED = 1_000_000;

/** What content takes over from the insertion it is in. */
interface Inherited {
  readonly layer: number;
  readonly colour: Colour;
  /** Frozen layer of an insertion around it: everything inside belongs to that layer. */
  readonly frozenOn: number | undefined;
}

/** Carries model space, with all blocks placed in it, into the drawing. */
export class Unfolding {
  private visited = 0;
  private readonly openBlocks: string[] = [];

  constructor(
    private readonly builder: DrawingBuilder,
    private readonly layers: LayerTable,
    private readonly blocks: BlockTable,
    private readonly tally: Tally,
    private readonly progress: ReadProgress,
  ) {}

  /** Unfolds model space. @throws {UnderlayProblem} when blocks hold themselves or grow without end */
  unfold(model: Content): void {
    const outermost: Inherited = { layer: LayerTable.ZERO, colour: 0, frozenOn: undefined };
    for (const { layer, colour, work } of model.all) {
      this.builder.adopt(this.layers.at(layer).name, hexColour(this.colourOf(layer, colour, outermost)), work);
    }
    this.unfoldPlaced(model.placed, undefined, outermost);
  }

  private colourOf(layer: number, colour: Colour, inherited: Inherited): number {
    if (colour === BY_BLOCK) return inherited.colour;
    return colour === BY_LAYER ? this.layers.at(layer).colour : colour;
  }

  private unfoldPlaced(placed: readonly Placed[], outer: Matrix | undefined, inherited: Inherited): void {
    for (const one of placed) {
      const layer = one.layer === LayerTable.ZERO ? inherited.layer : one.layer;
      const within: Inherited = {
        layer,
        colour: this.colourOf(layer, one.colour, inherited),
        frozenOn: inherited.frozenOn ?? (this.layers.at(layer).isFrozen ? layer : undefined),
      };
      for (let row = 0; row < one.grid.rows; row += 1) {
        for (let column = 0; column < one.grid.columns; column += 1) {
          const { stepColumn, stepRow } = one.grid;
          const cell = shiftBy(stepColumn[0] * column + stepRow[0] * row, stepColumn[1] * column + stepRow[1] * row);
          const here = multiply(cell, one.matrix);
          this.unfoldBlock(one.block, outer ? multiply(outer, here) : here, within);
        }
      }
    }
  }

  private unfoldBlock(name: string, matrix: Matrix, inherited: Inherited): void {
    this.visited += 1;
    if (this.visited > MOST_PLACED) {
      throw endlessBlocks('The drawing unfolds into more than a million symbols.', `block “${name}”`);
    }
    if (this.visited % 500 === 0) this.progress(1, 'Placing symbols');
    const block = this.blocks.find(name);
    if (!block) {
      this.tally.note('missing-block');
      return;
    }
    if (this.openBlocks.includes(block.name)) throw endlessBlocks('A block of the drawing contains itself.', `block “${block.name}”`);
    if (this.openBlocks.length >= DEEPEST) {
      throw endlessBlocks(`Blocks lie inside blocks more than ${DEEPEST} deep.`, `block “${block.name}”`);
    }
    const placed = multiply(matrix, shiftBy(-block.baseX, -block.baseY));
    for (const { layer, colour, work } of block.content.all) {
      if (work.isEmpty) continue;
      const own = layer === LayerTable.ZERO ? inherited.layer : layer;
      const shownOn = inherited.frozenOn ?? own;
      this.builder.workOn(this.layers.at(shownOn).name, hexColour(this.colourOf(own, colour, inherited))).addTransformed(work, placed);
    }
    this.openBlocks.push(block.name);
    this.unfoldPlaced(block.content.placed, placed, inherited);
    this.openBlocks.pop();
  }
}
