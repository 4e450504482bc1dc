import { useCallback, useLayoutEffect, useRef, useState } from 'react';

/** How a drawing lies on its board, and how that is changed. */
export interface FittedView<V> {
  readonly view: V;
  move(change: (view: V) => V): void;
  showAll(): void;
}

interface Fitting<V> {
  /** Another key is another drawing or size: it is fitted anew. */
  readonly key: string;
  /** Under a drag the view stands still as long as this stays the same. */
  readonly stillKey: string;
  /** The view that shows all. */
  readonly fitted: V;
  /** Whether something is being dragged. */
  readonly isHeld: boolean;
}

/** The view of a board: fits its drawing until the user moves it, and anew for another drawing or size; it holds still under a drag. */
export function useFittedView<V>({ key, stillKey, fitted, isHeld }: Fitting<V>): FittedView<V> {
  const [moved, setMoved] = useState<{ readonly key: string; readonly view: V } | null>(null);
  const last = useRef<{ readonly stillKey: string; readonly view: V } | null>(null);
  const still = isHeld && last.current?.stillKey === stillKey ? last.current.view : undefined;
  const view = still ?? (moved?.key === key ? moved.view : fitted);
  useLayoutEffect(() => {
    last.current = { stillKey, view };
  }, [stillKey, view]);
  const move = useCallback((change: (now: V) => V) => setMoved((before) => ({ key, view: change(before?.key === key ? before.view : (last.current?.view ?? fitted)) })), [key, fitted]);
  const showAll = useCallback(() => setMoved(null), []);
  return { view, move, showAll };
}
