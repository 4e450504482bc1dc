import { useEffect, useState } from 'react';

/** Device pixels per CSS pixel; changes when the window moves to another screen or the page is zoomed. */
export function useDevicePixels(): number {
  const [ratio, become] = useState(() => window.devicePixelRatio);
  useEffect(() => {
    const query = window.matchMedia(`(resolution: ${ratio}dppx)`);
    const changed = (): void => become(window.devicePixelRatio);
    query.addEventListener('change', changed);
    return () => query.removeEventListener('change', changed);
  }, [ratio]);
  return ratio;
}
