import type Konva from 'konva';
import { useEffect, useLayoutEffect, useRef } from 'react';
import { Layer, Shape } from 'react-konva';
import type { Pen } from './pen.ts';
import { type Viewport, isSameView, transformBetween } from './viewport.ts';

/** Draws one picture of a layer for what the board shows; what it answers does not matter. */
export type Paint = (pen: Pen, view: Viewport) => unknown;

/** A layer dearer than this is shifted as a picture while the board moves, and drawn sharp when it rests [ms]. */
const DEAR_ms = 7;
/** A frame that takes longer than this was held up by what was drawn in it [ms]. */
const LONG_FRAME_ms = 25;
/** The board rests when it has not moved for so long [ms]. */
const REST_ms = 90;

/** Draws when it was last told to, and meanwhile shifts what it drew before. */
class Painter {
  paints: readonly Paint[] = [];
  view: Viewport;
  private drawn: Viewport | undefined;
  private cost_ms = 0;
  private drawnAt_ms = 0;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private frame = 0;

  constructor(view: Viewport) {
    this.view = view;
  }

  /** What the scene function of shape `index` does. */
  paint(index: number, pen: Pen): void {
    const start = performance.now();
    pen.save();
    this.paints[index]?.(pen, this.view);
    pen.restore();
    const end = performance.now();
    this.cost_ms = (index === 0 ? 0 : this.cost_ms) + (end - start);
    this.drawnAt_ms = end;
    this.drawn = this.view;
  }

  /** The board shows something else: draw it anew, or shift the old picture and draw when it rests. */
  moved(layer: Konva.Layer, view: Viewport): void {
    this.view = view;
    const drawn = this.drawn;
    if (!drawn || isSameView(drawn, view)) return;
    const overdue = performance.now() - this.drawnAt_ms > Math.max(300, this.cost_ms * 16);
    if (this.cost_ms < DEAR_ms || overdue || drawn.width !== view.width || drawn.height !== view.height) {
      this.sharp(layer);
      return;
    }
    const { scale, dx_px, dy_px } = transformBetween(drawn, view);
    layer.getNativeCanvasElement().style.transform = `translate(${dx_px}px, ${dy_px}px) scale(${scale})`;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.sharp(layer), REST_ms);
  }

  sharp(layer: Konva.Layer): void {
    clearTimeout(this.timer);
    layer.getNativeCanvasElement().style.transform = '';
    layer.draw();
    const drawnAt_ms = this.drawnAt_ms;
    cancelAnimationFrame(this.frame);
    // Browsers put off the painting of what was drawn: the next frame shows what it cost.
    this.frame = requestAnimationFrame(() => {
      this.frame = requestAnimationFrame(() => {
        const waited_ms = performance.now() - drawnAt_ms;
        if (waited_ms > 2 * LONG_FRAME_ms) this.cost_ms = Math.max(this.cost_ms, waited_ms - LONG_FRAME_ms);
      });
    });
  }

  stop(): void {
    clearTimeout(this.timer);
    cancelAnimationFrame(this.frame);
  }
}

/**
 * One canvas of the board with one custom shape per paint. Paints are compared by identity: a new one draws the layer
 * anew; a new view alone redraws only layers that are quick, and shifts the others until the board rests.
 */
export function PaintedLayer({ paints, view }: { readonly paints: readonly Paint[]; readonly view: Viewport }) {
  const layer = useRef<Konva.Layer>(null);
  const kept = useRef<Painter>(null);
  kept.current ??= new Painter(view);
  const painter = kept.current;
  const waiting = useRef(0);
  /** One lasting function a shape: a new one would make Konva draw the layer on every view. */
  const scenes = useRef<((context: Konva.Context) => void)[]>([]);
  const sceneOf = (index: number): ((context: Konva.Context) => void) => {
    scenes.current[index] ??= (context) => painter.paint(index, context._context);
    return scenes.current[index];
  };

  useLayoutEffect(() => {
    const canvas = layer.current?.getNativeCanvasElement();
    if (canvas) canvas.style.transformOrigin = '0 0';
  }, []);

  useLayoutEffect(() => {
    if (layer.current) painter.moved(layer.current, view);
    else painter.view = view;
  }, [painter, view]);

  useLayoutEffect(() => {
    painter.paints = paints;
    if (waiting.current === 0) {
      waiting.current = requestAnimationFrame(() => {
        waiting.current = 0;
        if (layer.current) painter.sharp(layer.current);
      });
    }
  }, [painter, paints]);

  useEffect(
    () => () => {
      cancelAnimationFrame(waiting.current);
      waiting.current = 0;
      painter.stop();
    },
    [painter],
  );

  return (
    <Layer ref={layer} listening={false}>
      {paints.map((_, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a paint has no identity beside its place in the stack
        <Shape key={index} listening={false} perfectDrawEnabled={false} sceneFunc={sceneOf(index)} />
      ))}
    </Layer>
  );
}
