import { textWidth_mm } from '../../sheets/font-widths.ts';
import { type LabelPlacer, labelPlacer } from '../../sheets/label-placer.ts';
import type { TurnedBox } from '../../sheets/text-box.ts';
import type { DxfPlace, DxfText } from './drawing.ts';

/** Keeps texts of a drawing off each other and off symbols. Its paper is the drawing's own metres, in mm of a print. */
export interface FreeWords {
  /** Keeps texts off a symbol. */
  block(x_m: number, y_m: number, radius_m: number): void;
  /** The first of some places for lines of text at which nothing lies yet, else the first of all; it is then taken. */
  take(lines: readonly string[], text: Omit<DxfText, 'text'>, places: readonly DxfPlace[]): DxfPlace;
}

/** From row to row, in text heights. */
export const ROW_PITCH = 1.6;
const EVERYWHERE_mm = 1e9;

/**
 * Places words of a drawing where none covers another.
 * @param mPerMm  metres of the drawing for a millimetre of the paper that it is written for
 */
export function freeWords(mPerMm: number): FreeWords {
  const placer: LabelPlacer = labelPlacer({ left: -EVERYWHERE_mm, top: -EVERYWHERE_mm, right: EVERYWHERE_mm, bottom: EVERYWHERE_mm });
  const boxAt = (lines: readonly string[], { height_m, rotation_rad, align }: Omit<DxfText, 'text'>, [x, y]: DxfPlace): TurnedBox => {
    const height = height_m / mPerMm;
    const width = Math.max(0, ...lines.map((words) => textWidth_mm(words, height, 'plain')));
    const tall = height * (1 + (lines.length - 1) * ROW_PITCH);
    const along = align === 'left' ? width / 2 : align === 'right' ? -width / 2 : 0;
    const up = align === 'centre' ? 0 : height - tall / 2;
    return {
      x: x / mPerMm + Math.cos(rotation_rad) * along - Math.sin(rotation_rad) * up,
      y: -(y / mPerMm + Math.sin(rotation_rad) * along + Math.cos(rotation_rad) * up),
      halfWidth: width / 2 + 0.3,
      halfHeight: tall / 2 + 0.3,
      rotation_rad,
    };
  };
  return {
    block: (x, y, radius) => placer.block({ x: x / mPerMm, y: -y / mPerMm, halfWidth: radius / mPerMm, halfHeight: radius / mPerMm, rotation_rad: 0 }),
    take(lines, text, places) {
      const free = places.find((place) => placer.isFree(boxAt(lines, text, place))) ?? places[0] ?? text.at;
      placer.block(boxAt(lines, text, free));
      return free;
    },
  };
}

/** Places beside a wished one in the text's own frame: up and down, then along, ever farther. */
export function placesNear(text: Omit<DxfText, 'text'>, width_m: number, rows = 5): DxfPlace[] {
  const { at, height_m, rotation_rad } = text;
  const [x, y, z] = at;
  const ups = Array.from({ length: rows }, (_, i) => (i % 2 === 1 ? (i + 1) / 2 : -i / 2) * height_m * ROW_PITCH);
  const alongs = [0, 0.3, -0.3, 0.6, -0.6, 1, -1].map((share) => share * width_m);
  return alongs
    .flatMap((along) => ups.map((up) => ({ along, up })))
    .sort((p, q) => Math.hypot(p.along, p.up) - Math.hypot(q.along, q.up))
    .map(({ along, up }) => [x + Math.cos(rotation_rad) * along - Math.sin(rotation_rad) * up, y + Math.sin(rotation_rad) * along + Math.cos(rotation_rad) * up, z] as const);
}
