import { useEffect, useState } from 'react';

/** The board rests when it has not been zoomed for so long [ms]. */
const REST_ms = 90;

/** A scale once it has held still, and at once for another drawing: while the board is zoomed the last drawing is painted larger or smaller. */
export function useRested(scale: number, drawing: string): number {
  const [rested, rest] = useState({ scale, drawing });
  useEffect(() => {
    const timer = setTimeout(() => rest({ scale, drawing }), REST_ms);
    return () => clearTimeout(timer);
  }, [scale, drawing]);
  return rested.drawing === drawing ? rested.scale : scale;
}
