import type Konva from 'konva';
import { Konva as settings } from 'konva/lib/Global.js';
import { type RefObject, useCallback, useLayoutEffect, useRef } from 'react';
import { Layer, Shape } from 'react-konva';
import type { Paint } from './paint.ts';
import { Painter, type Screen } from './painter.ts';
import type { Viewport } from './viewport.ts';

// The library counts layers because it would draw each of them whenever anything moves; these are pictures that are shifted.
settings.showWarnings = false;

/** A layer of a stage as what shows a picture. */
const screenOf = (layer: Konva.Layer): Screen => ({ canvas: layer.getNativeCanvasElement(), ratio: layer.getCanvas().getPixelRatio(), draw: () => void layer.draw() });

interface Painted {
  readonly painter: RefObject<Painter | null>;
  /** The layer with its one shape. */
  readonly layer: React.ReactElement;
}

/**
 * Keeps the painter of a layer of a stage, made by `begin` when it appears. A new list of paints is drawn with the next
 * frame, all layers together.
 */
export function usePainter(paints: readonly Paint[], begin: (screen: Screen) => Painter): Painted {
  const layer = useRef<Konva.Layer>(null);
  const painter = useRef<Painter>(null);
  const latest = useRef(paints);
  const waiting = useRef(0);
  const starting = useRef(begin);
  /** Lasting: a new one would make the stage draw the layer. */
  const scene = useCallback((context: Konva.Context) => painter.current?.scene(context._context), []);

  useLayoutEffect(() => {
    if (!layer.current) return;
    const made = starting.current(screenOf(layer.current));
    painter.current = made;
    return () => {
      cancelAnimationFrame(waiting.current);
      waiting.current = 0;
      painter.current = null;
      made.stop();
    };
  }, []);

  useLayoutEffect(() => {
    latest.current = paints;
    if (waiting.current !== 0) return;
    waiting.current = requestAnimationFrame(() => {
      waiting.current = 0;
      painter.current?.paint(latest.current);
    });
  }, [paints]);
  return {
    painter,
    layer: (
      <Layer ref={layer} listening={false}>
        <Shape listening={false} perfectDrawEnabled={false} sceneFunc={scene} />
      </Layer>
    ),
  };
}

/** The stage ends with what it shows. */
const TO_THE_EDGE = { stage_px: 0, picture_px: 0 };

/**
 * One layer of a stage with a list of paints, drawn over each other. Paints are compared by identity: new ones draw the
 * layer anew; a new view alone redraws only what is quick, and shifts the rest until it stands still.
 */
export function PaintedLayer({ paints, view }: { readonly paints: readonly Paint[]; readonly view: Viewport }) {
  const { layer, painter } = usePainter(paints, (screen) => new Painter(screen, view, TO_THE_EDGE));
  useLayoutEffect(() => painter.current?.moved(view), [painter, view]);
  return layer;
}
