import { useEffect, useRef, useState } from 'react';
import type { Evaluation } from '#shared/evaluate';
import { selectEvaluation } from '../../store/selectors.ts';
import type { State } from '../../store/state.ts';
import { useStore } from '../../store/use-store.ts';

/** Sums are written out anew this often while something is dragged [ms]: the board comes first. */
const EVERY_ms = 150;

const isDragged = (state: State): boolean => state.preview !== null;

/** What follows from the shown plan; during a drag a little behind it, so that the drag itself never waits. */
export function useCalmEvaluation(): Evaluation {
  const live = useStore(selectEvaluation);
  const isDragging = useStore(isDragged);
  const latest = useRef(live);
  const [calm, setCalm] = useState(live);
  useEffect(() => {
    latest.current = live;
    if (!isDragging) setCalm(live);
  }, [live, isDragging]);
  useEffect(() => {
    if (!isDragging) return;
    const timer = setInterval(() => setCalm(latest.current), EVERY_ms);
    return () => clearInterval(timer);
  }, [isDragging]);
  return isDragging ? calm : live;
}
