import { whenIdle } from '../store/slices.ts';
import type { Paint } from './paint.ts';
import type { Pen } from './pen.ts';
import { drawStrips, isWhole } from './picture-strips.ts';
import { type Viewport, isSameView, transformBetween } from './viewport.ts';

/** A layer dearer than this is shifted as a picture while the board moves, and drawn sharp when it rests [ms]. */
const DEAR_ms = 3;
/** A picture that is drawn between frames is drawn in pieces of this length [ms]. */
const SLICE_ms = 4;
/** The board rests when it has not moved for so long [ms]. */
const REST_ms = 90;
/** While the board goes on growing or shrinking, a picture is drawn anew this often at most [ms]. */
const ANEW_EVERY_ms = 600;
/** The picture is drawn on beside what stands once it was shifted by so much [px]. */
const STRIP_px = 64;
/** Between drawing on one layer and the next a frame passes [ms]. */
const TURN_ms = 12;
let extendedAt_ms = Number.NEGATIVE_INFINITY;

/** A picture that is being drawn piece by piece. */
interface Making {
  readonly canvas: HTMLCanvasElement;
  readonly pen: Pen;
  readonly view: Viewport;
  readonly paints: readonly Paint[];
  /** How many of the paints are done. */
  done: number;
  spent_ms: number;
}

/** Puts a picture, shifted by device pixels, in the place of all that a canvas shows. */
function replaceWith(pen: Pen, picture: HTMLCanvasElement, dx: number, dy: number): void {
  pen.save();
  pen.setTransform(1, 0, 0, 1, 0, 0);
  pen.globalCompositeOperation = 'copy';
  pen.drawImage(picture, dx, dy);
  pen.restore();
}

/** What shows the picture: a layer of a stage that reaches over the edges of the board. */
export interface Screen {
  /** The layer's own canvas, with a base scale of device pixels a pixel. */
  readonly canvas: HTMLCanvasElement;
  readonly ratio: number;
  /** Clears the layer and has its shape call `scene`, now. */
  draw(): void;
}

/** How far a stage and a picture on it reach over the edges of the board [px]. */
export interface Reach {
  readonly stage_px: number;
  readonly picture_px: number;
}

/**
 * Keeps the picture of one layer: it is drawn somewhat larger than the board, shifted while the board moves, and drawn anew
 * between frames before its edge comes into sight, or where it must grow or shrink. Something else to draw is drawn at once.
 */
export class Painter {
  private readonly screen: Screen;
  /** How far the picture reaches over the edges of the board [px]. */
  private readonly beyond_px: number;
  /** How far the picture begins within the stage [px]. */
  private readonly inset_px: number;
  private paints: readonly Paint[] = [];
  private view: Viewport;
  /** What the picture shows. */
  private drawn: Viewport | undefined;
  /** Nothing is drawn. */
  private isBlank = false;
  private drawnAt_ms = 0;
  private cost_ms = 0;
  private making: Making | undefined;
  private callOff: (() => void) | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(screen: Screen, view: Viewport, { stage_px, picture_px }: Reach) {
    this.screen = screen;
    this.view = view;
    this.beyond_px = picture_px;
    this.inset_px = stage_px - picture_px;
    // Views say where the corner of the board is, which lies within the stage.
    screen.canvas.style.transformOrigin = `${stage_px}px ${stage_px}px`;
    screen.canvas.style.willChange = 'transform';
  }

  /** Draws all of it: what the shape of the layer does. */
  scene(pen: Pen): void {
    clearTimeout(this.timer);
    this.giveUp();
    const made: Making = { canvas: this.screen.canvas, pen, view: this.view, paints: this.paints, done: 0, spent_ms: 0 };
    pen.save();
    pen.translate(this.inset_px, this.inset_px);
    this.work(made, Infinity);
    pen.restore();
    this.show(made);
  }

  /** Draws something else, now. */
  paint(paints: readonly Paint[]): void {
    this.paints = paints;
    this.sharp();
  }

  /** The board shows something else: shifts the picture, and draws it anew at once where that is quick, else between frames. */
  moved(view: Viewport): void {
    this.view = view;
    const { drawn } = this;
    if (!drawn || isSameView(drawn, view)) return;
    if (this.paints.length === 0) {
      // There is nothing to be seen, wherever the board looks.
      this.drawn = view;
      return;
    }
    const isShifted = drawn.camera.scale_px_m === view.camera.scale_px_m && this.beyond_px > 0;
    if (drawn.width !== view.width || drawn.height !== view.height || (!isShifted && this.cost_ms < DEAR_ms)) {
      this.sharp();
      return;
    }
    const { dx_px, dy_px } = this.shift();
    clearTimeout(this.timer);
    if (!isShifted || !isWhole(dx_px * this.screen.ratio) || !isWhole(dy_px * this.screen.ratio)) {
      if (performance.now() - this.drawnAt_ms > ANEW_EVERY_ms) this.begin();
      this.timer = setTimeout(() => this.settle(), REST_ms);
      return;
    }
    const used_px = Math.max(Math.abs(dx_px), Math.abs(dy_px));
    if (used_px >= this.beyond_px - STRIP_px / 2) this.extend();
    else if (used_px >= STRIP_px) this.extendSoon();
  }

  stop(): void {
    clearTimeout(this.timer);
    this.giveUp();
  }

  /** Brings the picture to where it belongs. Answers how far that is [px]. */
  private shift(): { readonly dx_px: number; readonly dy_px: number } {
    const { drawn } = this;
    if (!drawn) return { dx_px: 0, dy_px: 0 };
    const { scale, dx_px, dy_px } = transformBetween(drawn, this.view);
    this.screen.canvas.style.transform = scale === 1 && dx_px === 0 && dy_px === 0 ? '' : `translate(${dx_px}px, ${dy_px}px) scale(${scale})`;
    return { dx_px, dy_px };
  }

  private sharp(): void {
    clearTimeout(this.timer);
    this.giveUp();
    const isEmpty = this.paints.length === 0;
    if (isEmpty && this.isBlank) {
      this.drawn = this.view;
      return;
    }
    this.isBlank = isEmpty;
    this.screen.draw();
  }

  /** Draws on when there is time; layers take turns, so that no frame has to draw on all of them. */
  private extendSoon(): void {
    this.callOff ??= whenIdle(() => {
      this.callOff = undefined;
      const now_ms = performance.now();
      if (now_ms - extendedAt_ms < TURN_ms) {
        this.extendSoon();
        return;
      }
      extendedAt_ms = now_ms;
      this.extend();
    });
  }

  /** Draws what came into reach beside the picture as it stands, which is moved within its canvas. */
  private extend(): void {
    const { drawn, view, beyond_px, inset_px } = this;
    const { canvas, ratio } = this.screen;
    const pen = canvas.getContext('2d');
    if (!drawn || !pen || this.making) return;
    const { scale, dx_px, dy_px } = transformBetween(drawn, view);
    const [width, height] = [view.width + 2 * beyond_px, view.height + 2 * beyond_px];
    if (scale !== 1 || inset_px !== 0 || Math.abs(dx_px) > width / 2 || Math.abs(dy_px) > height / 2 || !isWhole(dx_px * ratio) || !isWhole(dy_px * ratio)) {
      this.begin();
      return;
    }
    const [dx, dy] = [Math.round(dx_px * ratio) / ratio, Math.round(dy_px * ratio) / ratio];
    replaceWith(pen, canvas, Math.round(dx * ratio), Math.round(dy * ratio));
    const fits = drawStrips(pen, { camera: view.camera, width, height }, { dx, dy, ratio }, this.paints);
    this.drawn = view;
    this.shift();
    if (!fits) this.begin();
  }

  /** The board rests: the picture must be sharp, and reach over the edges again. */
  private settle(): void {
    if (this.drawn && isSameView(this.drawn, this.view)) return;
    // What is on its way for another place is of no use any more.
    if (this.making && !isSameView(this.making.view, this.view)) this.giveUp();
    this.begin();
  }

  /** Begins to draw anew between frames, unless that is under way. */
  private begin(): void {
    if (this.making) return;
    this.giveUp();
    this.making = this.start();
    if (this.making) this.goOn(this.making);
  }

  private goOn(made: Making): void {
    this.callOff = whenIdle(() => {
      this.callOff = undefined;
      if (!this.work(made, SLICE_ms)) {
        this.goOn(made);
        return;
      }
      this.making = undefined;
      this.show(made);
      // The board may have gone on meanwhile.
      this.moved(this.view);
    });
  }

  private giveUp(): void {
    this.callOff?.();
    this.callOff = undefined;
    this.making = undefined;
  }

  /** A clear picture of the size of the screen, to be drawn aside. */
  private start(): Making | undefined {
    const { canvas: shown, ratio } = this.screen;
    const canvas = document.createElement('canvas');
    canvas.width = shown.width;
    canvas.height = shown.height;
    const pen = canvas.getContext('2d');
    if (!pen) return undefined;
    pen.setTransform(ratio, 0, 0, ratio, this.inset_px * ratio, this.inset_px * ratio);
    return { canvas, pen, view: this.view, paints: this.paints, done: 0, spent_ms: 0 };
  }

  /** Draws for a while; answers whether the picture is finished. */
  private work(made: Making, budget_ms: number): boolean {
    const { camera, width, height } = made.view;
    const whole = { camera, width: width + 2 * this.beyond_px, height: height + 2 * this.beyond_px };
    const began_ms = performance.now();
    let now_ms = began_ms;
    for (; made.done < made.paints.length && now_ms - began_ms < budget_ms; made.done += 1) {
      made.pen.save();
      made.paints[made.done]?.(made.pen, whole);
      made.pen.restore();
      now_ms = performance.now();
    }
    made.spent_ms += now_ms - began_ms;
    return made.done >= made.paints.length;
  }

  private show(made: Making): void {
    const { canvas } = this.screen;
    if (canvas !== made.canvas) {
      const pen = canvas.getContext('2d');
      if (!pen || canvas.width !== made.canvas.width || canvas.height !== made.canvas.height) {
        this.sharp();
        return;
      }
      replaceWith(pen, made.canvas, 0, 0);
    }
    this.drawn = made.view;
    this.drawnAt_ms = performance.now();
    this.cost_ms = made.spent_ms;
    this.shift();
  }
}
