import { OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { DrawingBuilder } from '#shared/underlay/drawing-builder';
import type { ReadProgress } from '#shared/underlay/drawing';
import { fillRings } from '#shared/underlay/fill-rings';
import { transformedText } from '#shared/underlay/line-work';
import { type Matrix, multiply, shiftBy } from '#shared/underlay/matrix';
import { isBarePaper, isLightFill, LIGHT_FILLS_REMARK } from '#shared/underlay/paper-colours';
import { LayerStack, type PageLayer } from './layer-stack.ts';
import { type PageState, type TextCursor, startCursor, startState } from './page-state.ts';
import { packedRuns } from './packed-path.ts';
import { colourOf, isNumbers, matrixOf, numberOf } from './step-values.ts';
import { TextRuns } from './text-runs.ts';

/** What the walk asks of the document it is in. */
export interface PageSources {
  /** Layer that marked content belongs to. */
  layerOf(properties: unknown): PageLayer | undefined;
  /** Scale of letter widths: 0.001 but for drawn typefaces. */
  widthScaleOf(font: string): number;
  /** Puts a picture, painted into the unit square of `matrix`. */
  putPicture(name: unknown, matrix: Matrix): void;
  /** Puts a stencil in one colour. */
  putStencil(mask: unknown, matrix: Matrix, colour: string): void;
}

/** Height of capitals over the size of the font: common practice for plain typefaces. */
const CAP_HEIGHT = 0.7;
const DEEPEST_STATE = 5000;
const INVISIBLE_TEXT = [3, 7];

/** Which painting operators draw the edge and which the area, and by which rule. */
const STROKES: readonly number[] = [OPS.stroke, OPS.closeStroke, OPS.fillStroke, OPS.eoFillStroke, OPS.closeFillStroke, OPS.closeEOFillStroke];
const FILLS: readonly number[] = [OPS.fill, OPS.eoFill, OPS.fillStroke, OPS.eoFillStroke, OPS.closeFillStroke, OPS.closeEOFillStroke];
const EVEN_ODD: readonly number[] = [OPS.eoFill, OPS.eoFillStroke, OPS.closeEOFillStroke];

/** Carries out the painting steps of a page into a drawing. Clipping is not applied. */
export class PageWalk {
  private state: PageState;
  private readonly kept: PageState[] = [];
  private readonly layers = new LayerStack();
  private cursor: TextCursor = startCursor();
  private readonly texts: TextRuns;
  /** Groups under way that are only masks for others. */
  private maskDepth = 0;
  private groupDepth = 0;

  constructor(
    private readonly builder: DrawingBuilder,
    private readonly base: Matrix,
    private readonly tolerance: number,
    private readonly sources: PageSources,
  ) {
    this.state = startState(base);
    this.texts = new TextRuns((text) => this.builder.workOn(this.textLayer, this.textColour).text(text.x, text.y, text.height, text.rotation_rad, text.text));
  }

  private textLayer = '0';
  private textColour = '#000000';

  /** Carries out all steps. */
  run(operators: readonly number[], args: readonly unknown[], progress: ReadProgress): void {
    operators.forEach((operator, i) => {
      if (i % 2000 === 0) progress(0.6 + 0.35 * (i / operators.length), 'Drawing the page');
      const given = args[i];
      this.step(operator, Array.isArray(given) ? given : []);
    });
    this.texts.flush();
  }

  private step(operator: number, args: readonly unknown[]): void {
    switch (operator) {
      case OPS.save:
      case OPS.paintFormXObjectBegin:
        this.save();
        this.transform(operator === OPS.save ? undefined : args[0]);
        return;
      case OPS.restore:
      case OPS.paintFormXObjectEnd:
        this.restore();
        return;
      case OPS.beginGroup:
        this.beginGroup(args[0]);
        return;
      case OPS.endGroup:
        this.endGroup();
        return;
      case OPS.beginAnnotation:
        this.save();
        this.state = startState(this.base);
        this.transform(args[2]);
        this.transform(args[3]);
        return;
      case OPS.endAnnotation:
        this.restore();
        return;
      case OPS.transform:
        this.transform(args);
        return;
      case OPS.beginMarkedContent:
        this.layers.enter(undefined);
        return;
      case OPS.beginMarkedContentProps:
        this.layers.enter(args[0] === 'OC' ? this.sources.layerOf(args[1]) : undefined);
        return;
      case OPS.endMarkedContent:
        this.layers.leave();
        return;
      default:
        if (this.maskDepth === 0 && !this.stepColour(operator, args) && !this.stepText(operator, args)) this.paint(operator, args);
    }
  }

  private save(): void {
    if (this.kept.length < DEEPEST_STATE) this.kept.push(this.state);
  }

  private restore(): void {
    this.state = this.kept.pop() ?? this.state;
  }

  private transform(value: unknown): void {
    const matrix = matrixOf(value);
    if (matrix) this.state = { ...this.state, matrix: multiply(this.state.matrix, matrix) };
  }

  private beginGroup(group: unknown): void {
    this.groupDepth += 1;
    const isMask = typeof group === 'object' && group !== null && 'smask' in group && Boolean(group.smask);
    if (isMask && this.maskDepth === 0) this.maskDepth = this.groupDepth;
  }

  private endGroup(): void {
    if (this.maskDepth === this.groupDepth) this.maskDepth = 0;
    this.groupDepth = Math.max(0, this.groupDepth - 1);
  }

  /** @returns whether the operator sets how things are painted */
  private stepColour(operator: number, args: readonly unknown[]): boolean {
    const [first] = args;
    switch (operator) {
      case OPS.setStrokeRGBColor:
        this.state = { ...this.state, stroke: colourOf(first) };
        return true;
      case OPS.setFillRGBColor:
        this.state = { ...this.state, fill: colourOf(first) };
        return true;
      case OPS.setStrokeTransparent:
      case OPS.setStrokeColorN:
        this.state = { ...this.state, stroke: operator === OPS.setStrokeTransparent ? 'none' : '#000000' };
        return true;
      case OPS.setFillTransparent:
      case OPS.setFillColorN:
        if (operator === OPS.setFillColorN) this.builder.remark(LIGHT_FILLS_REMARK);
        this.state = { ...this.state, fill: 'none' };
        return true;
      case OPS.setGState:
        for (const entry of Array.isArray(first) ? first : []) {
          if (!Array.isArray(entry)) continue;
          const [key, value] = entry;
          if (key === 'CA') this.state = { ...this.state, strokeAlpha: numberOf(value) };
          else if (key === 'ca') this.state = { ...this.state, fillAlpha: numberOf(value) };
          else if (key === 'Font' && Array.isArray(value)) this.setFont(value);
        }
        return true;
      default:
        return false;
    }
  }

  private setFont([font, size]: readonly unknown[]): void {
    this.state = { ...this.state, font: String(font), fontSize: numberOf(size) };
  }

  /** @returns whether the operator belongs to text */
  private stepText(operator: number, args: readonly unknown[]): boolean {
    const first = numberOf(args[0]);
    switch (operator) {
      case OPS.beginText:
        this.cursor = startCursor();
        return true;
      case OPS.setTextMatrix:
        this.cursor = startCursor(matrixOf(args[0]) ?? matrixOf(args));
        return true;
      case OPS.setFont:
        this.setFont(args);
        return true;
      case OPS.setCharSpacing:
        this.state = { ...this.state, letterSpacing: first };
        return true;
      case OPS.setWordSpacing:
        this.state = { ...this.state, wordSpacing: first };
        return true;
      case OPS.setHScale:
        this.state = { ...this.state, stretch: first / 100 };
        return true;
      case OPS.setLeading:
        this.state = { ...this.state, leading: -first };
        return true;
      case OPS.setTextRise:
        this.state = { ...this.state, rise: first };
        return true;
      case OPS.setTextRenderingMode:
        this.state = { ...this.state, textMode: first };
        return true;
      case OPS.setLeadingMoveText:
        this.state = { ...this.state, leading: numberOf(args[1]) };
        this.moveText(first, numberOf(args[1]));
        return true;
      case OPS.moveText:
        this.moveText(first, numberOf(args[1]));
        return true;
      case OPS.nextLine:
        this.moveText(0, this.state.leading);
        return true;
      case OPS.showText:
        this.showText(args[0]);
        return true;
      default:
        return false;
    }
  }

  private moveText(dx: number, dy: number): void {
    const { matrix, lineX, lineY } = this.cursor;
    this.cursor = { matrix, lineX: lineX + dx, lineY: lineY + dy, x: lineX + dx, y: lineY + dy };
  }

  /** Paints letters; numbers between them move on against the writing direction, in thousandths of the font size. */
  private showText(glyphs: unknown): void {
    if (!Array.isArray(glyphs)) return;
    const { state, cursor } = this;
    const scale = this.sources.widthScaleOf(state.font) * state.fontSize;
    let along = 0;
    let text = '';
    for (const glyph of glyphs) {
      if (typeof glyph === 'number') {
        along -= (glyph * state.fontSize) / 1000;
        if (glyph < -250 && text !== '') text += ' ';
      } else if (typeof glyph === 'object' && glyph !== null) {
        const isSpace = 'isSpace' in glyph && glyph.isSpace === true;
        if ('unicode' in glyph && typeof glyph.unicode === 'string') text += glyph.unicode;
        along += ('width' in glyph ? numberOf(glyph.width) : 0) * scale + state.letterSpacing + (isSpace ? state.wordSpacing : 0);
      }
    }
    const matrix = multiply(multiply(state.matrix, cursor.matrix), shiftBy(cursor.x, cursor.y + state.rise));
    this.cursor = { ...cursor, x: cursor.x + along * state.stretch };
    if (INVISIBLE_TEXT.includes(state.textMode) || text.trim() === '') return;
    const upright: Matrix = state.fontSize < 0 ? multiply(matrix, [-1, 0, 0, -1, 0, 0]) : matrix;
    const placed = transformedText(upright, { x: 0, y: 0, height: Math.abs(state.fontSize) * CAP_HEIGHT, rotation_rad: 0, text });
    const layer = this.layers.current;
    const colour = state.fill === 'none' ? '#000000' : state.fill;
    if (layer !== this.textLayer || colour !== this.textColour) {
      this.texts.flush();
      this.textLayer = layer;
      this.textColour = colour;
    }
    const end = along * state.stretch;
    this.texts.add({ ...placed, endX: matrix[0] * end + matrix[4], endY: matrix[1] * end + matrix[5] });
  }

  private paint(operator: number, args: readonly unknown[]): void {
    switch (operator) {
      case OPS.constructPath:
        this.paintPath(args);
        return;
      case OPS.shadingFill:
        this.builder.remark(LIGHT_FILLS_REMARK);
        return;
      case OPS.paintImageXObject:
      case OPS.paintInlineImageXObject:
        this.sources.putPicture(args[0], this.state.matrix);
        return;
      case OPS.paintImageMaskXObject:
        this.sources.putStencil(args[0], this.state.matrix, this.state.fill === 'none' ? '#000000' : this.state.fill);
        return;
      default:
    }
  }

  private paintPath([painting, packed]: readonly unknown[]): void {
    const how = numberOf(painting);
    const data = Array.isArray(packed) ? packed[0] : undefined;
    if (!isNumbers(data)) return;
    const { state } = this;
    const isStroked = STROKES.includes(how) && state.strokeAlpha > 0 && state.stroke !== 'none' && !isBarePaper(state.stroke);
    const hasArea = FILLS.includes(how) && state.fillAlpha > 0;
    const isFilled = hasArea && state.fill !== 'none' && !isLightFill(state.fill);
    if (hasArea && !isFilled) this.builder.remark(LIGHT_FILLS_REMARK);
    if (!isStroked && !isFilled) return;
    const runs = packedRuns(data, state.matrix, this.tolerance);
    const work = this.builder.workOn(this.layers.current, isStroked ? state.stroke : state.fill);
    for (const { places, isClosed } of runs) work.polyline(places, isClosed || !isStroked);
    if (!isFilled) return;
    for (const ring of fillRings(runs.map(({ places }) => places), EVEN_ODD.includes(how) ? 'evenodd' : 'nonzero')) work.fill(ring);
  }
}
