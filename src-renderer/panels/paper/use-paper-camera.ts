import { type RefObject, useCallback, useEffect, useLayoutEffect, useState } from 'react';
import type { Sheet } from '#shared/sheets/sheet';
import { wheelFactor } from '../../input/camera-input.ts';
import type { PaperCamera } from '../stages/paint-sheet.ts';

/** Ground that stays visible around a whole sheet [px]. */
const AROUND_px = 14;
const LEAST = 0.2;
const MOST = 40;

/** The camera over a sheet: fitted at first and by `fit`, moved by wheel, by keys and by dragging. */
export function usePaperCamera(field: RefObject<HTMLDivElement | null>, paper: Sheet['paper'] | undefined) {
  const [size, setSize] = useState({ width: 0, height: 0 });
  const [camera, become] = useState<PaperCamera>({ x: 0, y: 0, scale: 1 });
  const [width_mm, height_mm] = [paper?.width_mm ?? 0, paper?.height_mm ?? 0];
  useLayoutEffect(() => {
    const target = field.current;
    if (!target) return;
    const measure = (): void => setSize({ width: target.clientWidth, height: target.clientHeight });
    const observer = new ResizeObserver(measure);
    observer.observe(target);
    measure();
    return () => observer.disconnect();
  }, [field]);
  const fit = useCallback((): void => {
    if (size.width < 1 || size.height < 1 || width_mm === 0) return;
    const scale = Math.max(LEAST, Math.min((size.width - 2 * AROUND_px) / width_mm, (size.height - 2 * AROUND_px) / height_mm));
    become({ scale, x: width_mm / 2 - size.width / 2 / scale, y: height_mm / 2 - size.height / 2 / scale });
  }, [size, width_mm, height_mm]);
  useEffect(fit, [fit]);
  const zoom = useCallback((factor: number, x_px: number, y_px: number): void => {
    become((now) => {
      const scale = Math.min(MOST, Math.max(LEAST, now.scale * factor));
      return { scale, x: now.x + x_px / now.scale - x_px / scale, y: now.y + y_px / now.scale - y_px / scale };
    });
  }, []);
  const pan = useCallback((dx_px: number, dy_px: number): void => become((now) => ({ ...now, x: now.x - dx_px / now.scale, y: now.y - dy_px / now.scale })), []);
  useEffect(() => {
    const target = field.current;
    const onWheel = (event: WheelEvent): void => {
      event.preventDefault();
      const box = target?.getBoundingClientRect();
      if (event.shiftKey) pan(-(event.deltaX || event.deltaY), 0);
      else if (box) zoom(wheelFactor(event), event.clientX - box.left, event.clientY - box.top);
    };
    target?.addEventListener('wheel', onWheel, { passive: false });
    return () => target?.removeEventListener('wheel', onWheel);
  }, [field, zoom, pan]);
  return { camera, size, fit, zoom, pan };
}
