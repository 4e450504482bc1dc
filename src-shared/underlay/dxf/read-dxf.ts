import type { DecodeText } from '../decode-text.ts';
import { type ReadProgress, type UnderlayDrawing, UnderlayProblem } from '../drawing.ts';
import { DrawingBuilder } from '../drawing-builder.ts';
import { Budget } from '../line-work.ts';
import { textReaderFor } from './code-pages.ts';
import { BlockTable, Content } from './content.ts';
import { drawEntity } from './draw-entity.ts';
import { type Header, noHeader, readHeader } from './header.ts';
import { LayerTable, readLayer } from './layers.ts';
import type { Reading } from './reading.ts';
import { Records } from './records.ts';
import { Tally } from './tally.ts';
import { Unfolding } from './unfold.ts';
import { doubtOf, unitsOf } from './units.ts';

/** Chords may stray this part of the drawing's diagonal from their curve: half a millimetre on 50 m. */
const CHORD_TOLERANCE = 1e-5;
/** Records between two reports of progress. */
const REPORT_EVERY = 2000;
/** Block flags: the block stands for another drawing file. */
const REFERENCE = 4 | 8;

/**
 * Reads a DXF floor plan in ASCII form, any version from R12 on: lines as seen from above, in file units.
 * Paper layouts are left out. A file without its end mark was cut and is refused: a plan that lacks a part
 * unseen is worse than none.
 * @throws {UnderlayProblem} the file is cut, damaged, empty, or unfolds without end
 */
export function readDxf(bytes: Uint8Array, decode: DecodeText, progress: ReadProgress): UnderlayDrawing {
  return new DxfReader(bytes, decode, progress).read();
}

class DxfReader {
  private readonly records: Records;
  private readonly builder = new DrawingBuilder('dxf');
  private readonly layers = new LayerTable();
  private readonly blocks = new BlockTable();
  private readonly tally = new Tally();
  private readonly budget = new Budget();
  private readonly model = new Content(this.budget);
  private header: Header = noHeader();
  private recordCount = 0;

  constructor(
    bytes: Uint8Array,
    private readonly decode: DecodeText,
    private readonly progress: ReadProgress,
  ) {
    this.records = new Records(bytes);
    this.records.readText = textReaderFor('', '', decode);
  }

  read(): UnderlayDrawing {
    let hasEnd = false;
    let hasEntities = false;
    while (this.advance('Reading the file')) {
      const { type } = this.records;
      if (type === 'EOF') {
        hasEnd = true;
        break;
      }
      if (type !== 'SECTION') continue;
      const name = this.records.text(2).trim();
      if (name === 'HEADER') this.takeHeader();
      else if (name === 'TABLES') this.readTables();
      else if (name === 'BLOCKS') this.readBlocks();
      else if (name === 'ENTITIES') {
        hasEntities = true;
        this.readEntities(this.reading(this.model));
      }
    }
    if (!hasEnd || !hasEntities) {
      throw new UnderlayProblem(
        hasEnd ? 'The file has no drawing in it: its section of lines is missing.' : 'The file ends in the middle: its end mark is missing, so a part of the plan is lost.',
        this.records.whereNow,
        'Copy or download the file again, or export the plan again as ASCII DXF.',
      );
    }
    return this.finish();
  }

  private finish(): UnderlayDrawing {
    for (const { name, isFrozen, isOff } of this.layers.all) this.builder.declareLayer(name, !isFrozen && !isOff);
    new Unfolding(this.builder, this.layers, this.blocks, this.tally, this.progress).unfold(this.model);
    for (const sentence of this.tally.sentences) this.builder.remark(sentence);
    const { metresPerUnit, unitsText } = unitsOf(this.header);
    return this.builder.finish(
      { metresPerUnit, unitsText, pageCount: 1, doubt: (longer) => doubtOf(this.header, longer) },
      this.progress,
    );
  }

  private advance(doing: string): boolean {
    this.recordCount += 1;
    if (this.recordCount % REPORT_EVERY === 0) this.progress(this.records.done, doing);
    return this.records.next();
  }

  private takeHeader(): void {
    this.header = readHeader(this.records);
    this.records.readText = textReaderFor(this.header.version, this.header.codePage, this.decode);
  }

  private readTables(): void {
    while (this.advance('Reading layers')) {
      const { type } = this.records;
      if (type === 'ENDSEC') return;
      if (type === 'LAYER') this.layers.add(readLayer(this.records));
    }
  }

  private readBlocks(): void {
    while (this.advance('Reading symbols')) {
      const { type } = this.records;
      if (type === 'ENDSEC') return;
      if (type !== 'BLOCK') continue;
      const name = this.records.text(2).trim();
      if (this.records.whole(70, 0) & REFERENCE) this.tally.note('reference');
      const content = new Content(this.budget);
      const block = { name, baseX: this.records.number(10, 0), baseY: this.records.number(20, 0), content };
      this.readEntities(this.reading(content), 'ENDBLK');
      this.blocks.add(block);
      if (this.records.type === 'ENDSEC') return;
    }
  }

  /** Draws entities up to the end of the block, or of the section when there is no such end. */
  private readEntities(reading: Reading, until = 'ENDSEC'): void {
    while (this.advance('Reading lines')) {
      if (this.records.type === until || this.records.type === 'ENDSEC') return;
      drawEntity(reading);
    }
  }

  private reading(content: Content): Reading {
    return {
      records: this.records,
      layers: this.layers,
      decode: this.decode,
      tally: this.tally,
      tolerance: this.header.diagonal * CHORD_TOLERANCE,
      content,
    };
  }
}
