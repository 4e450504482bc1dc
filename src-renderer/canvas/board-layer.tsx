import { useLayoutEffect } from 'react';
import type { Store } from '../store/state.ts';
import { useStoreItself } from '../store/use-store.ts';
import { usePainter } from './painted-layer.tsx';
import type { Paint } from './paint.ts';
import { Painter } from './painter.ts';
import type { Viewport } from './viewport.ts';

/** How far the stage of the board and its layers reach over its edges, so that they can be moved without being drawn anew [px]. */
export const BEYOND_px = 160;

/** What the board of a session shows. */
const viewOf = (store: Store): Viewport => {
  const { camera, board } = store.get().session;
  return { camera, width: board.width, height: board.height };
};

/**
 * One layer of the board's stage with a list of paints, drawn over each other. Paints are compared by identity: new ones draw the
 * layer anew. Where the board looks is followed without asking any view for anything: a board that is moved is a picture
 * that is shifted.
 * @param beyond_px  0 for what keeps its place on the screen
 */
export function BoardLayer({ paints, beyond_px = BEYOND_px }: { readonly paints: readonly Paint[]; readonly beyond_px?: number }) {
  const store = useStoreItself();
  const { layer, painter } = usePainter(paints, (screen) => new Painter(screen, viewOf(store), { stage_px: BEYOND_px, picture_px: beyond_px }));
  useLayoutEffect(() => {
    let { camera, board } = store.get().session;
    painter.current?.moved(viewOf(store));
    return store.subscribe(() => {
      const { session } = store.get();
      if (session.camera === camera && session.board === board) return;
      ({ camera, board } = session);
      painter.current?.moved(viewOf(store));
    });
  }, [painter, store]);
  return layer;
}
