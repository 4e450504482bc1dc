import { useEffect, useRef, useState } from 'react';
import type { Sheet } from '#shared/sheets/sheet';
import { type PaperCamera, paintPaper, picturesOf } from '../stages/paint-sheet.ts';

interface PaperCanvasProps {
  readonly sheet: Sheet;
  readonly camera: PaperCamera;
  readonly size: { readonly width: number; readonly height: number };
}

const NO_PICTURES: ReadonlyMap<Uint8Array, ImageBitmap> = new Map();

/** The sheet at true proportion, painted as it prints. */
export function PaperCanvas({ sheet, camera, size }: PaperCanvasProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [loaded, setLoaded] = useState<{ readonly sheet: Sheet; readonly pictures: ReadonlyMap<Uint8Array, ImageBitmap> } | null>(null);
  // Pictures of a sheet that has gone are closed.
  const pictures = loaded?.sheet === sheet ? loaded.pictures : NO_PICTURES;
  const ratio = window.devicePixelRatio;
  useEffect(() => {
    let isGone = false;
    let own: ReadonlyMap<Uint8Array, ImageBitmap> = new Map();
    void Promise.all([picturesOf(sheet), document.fonts.ready]).then(([found]) => {
      own = found;
      if (isGone) for (const picture of found.values()) picture.close();
      else setLoaded({ sheet, pictures: found });
    });
    return () => {
      isGone = true;
      for (const picture of own.values()) picture.close();
    };
  }, [sheet]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a canvas of another size is empty
  useEffect(() => {
    const frame = requestAnimationFrame(() => {
      if (canvas.current) paintPaper(canvas.current, sheet, pictures, { ...camera, scale: camera.scale * ratio });
    });
    return () => cancelAnimationFrame(frame);
  }, [sheet, pictures, camera, size, ratio]);
  return <canvas ref={canvas} width={Math.round(size.width * ratio)} height={Math.round(size.height * ratio)} aria-label={`Sheet ${sheet.number}, ${sheet.title}`} role="img" />;
}
