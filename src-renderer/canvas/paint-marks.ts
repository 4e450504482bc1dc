import type { Mark, Places, Stroke } from '#shared/sheets/sheet';
import type { Pen } from './pen.ts';

/** Height of capitals of the shipped font against its size (OS/2 table of DejaVu Sans Condensed). */
const CAP_HEIGHT = 0.729;

/** How marks are painted where that is not as on paper. */
export interface MarkLook {
  /** Pictures by their bytes; one that is missing is left out. */
  readonly pictures?: ReadonlyMap<Uint8Array, ImageBitmap>;
  /** Ink in place of a colour on paper. */
  readonly inkOf?: (colour: string) => string;
  /** Colour of the paper behind texts. */
  readonly paper?: string;
}

const asPrinted = (colour: string): string => colour;

function trace(pen: Pen, places: Places, closed: boolean): void {
  for (let i = 0; i + 1 < places.length; i += 2) {
    const [x, y] = [places[i] ?? 0, places[i + 1] ?? 0];
    if (i === 0) pen.moveTo(x, y);
    else pen.lineTo(x, y);
  }
  if (closed) pen.closePath();
}

function paintText(pen: Pen, mark: Extract<Mark, { kind: 'text' }>, { inkOf = asPrinted, paper = '#ffffff' }: MarkLook): void {
  const size = mark.height_mm / CAP_HEIGHT;
  pen.save();
  pen.translate(mark.x, mark.y);
  if (mark.rotation_rad) pen.rotate(-mark.rotation_rad);
  pen.font = `${mark.font === 'bold' ? 700 : 400} ${size}px 'Board Sans', sans-serif`;
  pen.textAlign = mark.align === 'middle' ? 'center' : mark.align;
  pen.textBaseline = 'alphabetic';
  if (mark.halo) {
    const width = pen.measureText(mark.text).width;
    const left = mark.align === 'left' ? 0 : mark.align === 'middle' ? -width / 2 : -width;
    pen.fillStyle = paper;
    pen.fillRect(left - 0.4, -mark.height_mm - 0.4, width + 0.8, mark.height_mm + 0.8);
  }
  pen.fillStyle = inkOf(mark.colour);
  pen.fillText(mark.text, 0, 0);
  pen.restore();
}

/** Paints one mark of a drawing list; the pen counts in millimetres of paper. */
export function paintMark(pen: Pen, mark: Mark, look: MarkLook = {}): void {
  const { pictures, inkOf = asPrinted } = look;
  const stroke = ({ width_mm, colour, dash_mm }: Stroke): void => {
    pen.lineWidth = width_mm;
    pen.strokeStyle = inkOf(colour);
    pen.setLineDash(dash_mm ? [...dash_mm] : []);
    pen.stroke();
  };
  switch (mark.kind) {
    case 'line':
      pen.beginPath();
      trace(pen, mark.places, mark.closed ?? false);
      if (mark.fill) {
        pen.fillStyle = inkOf(mark.fill);
        pen.fill();
      }
      stroke(mark.stroke);
      return;
    case 'segments':
      pen.beginPath();
      for (let i = 0; i + 3 < mark.places.length; i += 4) {
        pen.moveTo(mark.places[i] ?? 0, mark.places[i + 1] ?? 0);
        pen.lineTo(mark.places[i + 2] ?? 0, mark.places[i + 3] ?? 0);
      }
      stroke(mark.stroke);
      return;
    case 'circle':
      pen.beginPath();
      pen.arc(mark.x, mark.y, mark.radius_mm, 0, 2 * Math.PI);
      if (mark.fill) {
        pen.fillStyle = inkOf(mark.fill);
        pen.fill();
      }
      if (mark.stroke) stroke(mark.stroke);
      return;
    case 'arc':
      pen.beginPath();
      pen.arc(mark.x, mark.y, mark.radius_mm, -mark.from_rad, -mark.to_rad, true);
      stroke(mark.stroke);
      return;
    case 'area':
      pen.save();
      pen.beginPath();
      for (const ring of mark.rings) trace(pen, ring, true);
      pen.globalAlpha = mark.opacity ?? 1;
      pen.fillStyle = inkOf(mark.fill);
      pen.fill('evenodd');
      pen.restore();
      return;
    case 'text':
      paintText(pen, mark, look);
      return;
    case 'image': {
      const picture = pictures?.get(mark.bytes);
      if (!picture) return;
      const [a, b, c, d, e, f] = mark.matrix;
      pen.save();
      pen.globalAlpha = mark.opacity;
      pen.transform(a, b, c, d, e, f);
      // The unit square has y up, a picture y down.
      pen.transform(1, 0, 0, -1, 0, 1);
      pen.drawImage(picture, 0, 0, 1, 1);
      pen.restore();
      return;
    }
    case 'clip':
      pen.save();
      pen.beginPath();
      pen.rect(mark.x, mark.y, mark.width_mm, mark.height_mm);
      pen.clip();
      for (const inner of mark.marks) paintMark(pen, inner, look);
      pen.restore();
  }
}
