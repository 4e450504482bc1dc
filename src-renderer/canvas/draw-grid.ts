import type { Ink } from '../ink.ts';
import { gridStep_m } from './level-of-detail.ts';
import { type Pen, pieces, setLine } from './pen.ts';
import type { Px } from './pen.ts';
import { type Viewport, toScreen, visibleBox } from './viewport.ts';

/** Lines this many apart are drawn a little stronger. */
const STRONG_EVERY = 4;

/** The paper of the board and, where wanted, its grid. */
export function drawGround(pen: Pen, view: Viewport, ink: Ink, grid_m: number | null): void {
  pen.fillStyle = ink.paper;
  pen.fillRect(0, 0, view.width, view.height);
  const step = grid_m === null ? undefined : gridStep_m(grid_m, view.camera.scale_px_m);
  if (step === undefined) return;
  const box = visibleBox(view);
  const lines = (strong: boolean): [Px, Px][] => {
    const found: [Px, Px][] = [];
    const wanted = (k: number): boolean => (k % STRONG_EVERY === 0) === strong;
    for (let k = Math.ceil(box.minX / step); k * step <= box.maxX; k += 1) {
      if (!wanted(k)) continue;
      const x = Math.round(toScreen(view, { x: k * step, y: 0 }).x) + 0.5;
      found.push([{ x, y: 0 }, { x, y: view.height }]);
    }
    for (let k = Math.ceil(box.minY / step); k * step <= box.maxY; k += 1) {
      if (!wanted(k)) continue;
      const y = Math.round(toScreen(view, { x: 0, y: k * step }).y) + 0.5;
      found.push([{ x: 0, y }, { x: view.width, y }]);
    }
    return found;
  };
  setLine(pen, { colour: ink.grid, width: 1 });
  if (step * view.camera.scale_px_m >= 14) {
    pen.globalAlpha = 0.55;
    pieces(pen, lines(false));
    pen.globalAlpha = 1;
  }
  pieces(pen, lines(true));
}
