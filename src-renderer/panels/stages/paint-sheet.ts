import type { Mark, Places, Sheet, Stroke } from '#shared/sheets/sheet';

/** Height of capitals of the shipped font against its size (OS/2 table of DejaVu Sans Condensed). */
const CAP_HEIGHT = 0.729;

type Pen = CanvasRenderingContext2D;

function stroke(pen: Pen, { width_mm, colour, dash_mm }: Stroke): void {
  pen.lineWidth = width_mm;
  pen.strokeStyle = colour;
  pen.setLineDash(dash_mm ? [...dash_mm] : []);
  pen.stroke();
}

function trace(pen: Pen, places: Places, closed: boolean): void {
  for (let i = 0; i + 1 < places.length; i += 2) {
    const [x, y] = [places[i] ?? 0, places[i + 1] ?? 0];
    if (i === 0) pen.moveTo(x, y);
    else pen.lineTo(x, y);
  }
  if (closed) pen.closePath();
}

function paintText(pen: Pen, mark: Extract<Mark, { kind: 'text' }>): void {
  const size = mark.height_mm / CAP_HEIGHT;
  pen.save();
  pen.translate(mark.x, mark.y);
  if (mark.rotation_rad) pen.rotate(-mark.rotation_rad);
  pen.font = `${mark.font === 'bold' ? 700 : 400} ${size}px 'Board Sans', sans-serif`;
  pen.textAlign = mark.align === 'middle' ? 'center' : mark.align;
  if (mark.halo) {
    const width = pen.measureText(mark.text).width;
    const left = mark.align === 'left' ? 0 : mark.align === 'middle' ? -width / 2 : -width;
    pen.fillStyle = '#ffffff';
    pen.fillRect(left - 0.4, -mark.height_mm - 0.4, width + 0.8, mark.height_mm + 0.8);
  }
  pen.fillStyle = mark.colour;
  pen.fillText(mark.text, 0, 0);
  pen.restore();
}

function paintMark(pen: Pen, mark: Mark, pictures: ReadonlyMap<Uint8Array, ImageBitmap>): void {
  switch (mark.kind) {
    case 'line':
      pen.beginPath();
      trace(pen, mark.places, mark.closed ?? false);
      if (mark.fill) {
        pen.fillStyle = mark.fill;
        pen.fill();
      }
      stroke(pen, mark.stroke);
      return;
    case 'segments':
      pen.beginPath();
      for (let i = 0; i + 3 < mark.places.length; i += 4) {
        pen.moveTo(mark.places[i] ?? 0, mark.places[i + 1] ?? 0);
        pen.lineTo(mark.places[i + 2] ?? 0, mark.places[i + 3] ?? 0);
      }
      stroke(pen, mark.stroke);
      return;
    case 'circle':
      pen.beginPath();
      pen.arc(mark.x, mark.y, mark.radius_mm, 0, 2 * Math.PI);
      if (mark.fill) {
        pen.fillStyle = mark.fill;
        pen.fill();
      }
      if (mark.stroke) stroke(pen, mark.stroke);
      return;
    case 'arc':
      pen.beginPath();
      pen.arc(mark.x, mark.y, mark.radius_mm, -mark.from_rad, -mark.to_rad, true);
      stroke(pen, mark.stroke);
      return;
    case 'area':
      pen.save();
      pen.beginPath();
      for (const ring of mark.rings) trace(pen, ring, true);
      pen.globalAlpha = mark.opacity ?? 1;
      pen.fillStyle = mark.fill;
      pen.fill('evenodd');
      pen.restore();
      return;
    case 'text':
      paintText(pen, mark);
      return;
    case 'image': {
      const picture = pictures.get(mark.bytes);
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
      for (const inner of mark.marks) paintMark(pen, inner, pictures);
      pen.restore();
  }
}

const imagesIn = (marks: readonly Mark[]): Extract<Mark, { kind: 'image' }>[] => marks.flatMap((mark) => (mark.kind === 'image' ? mark : mark.kind === 'clip' ? imagesIn(mark.marks) : []));

/** Decodes the pictures of a sheet; one that cannot be decoded is left out. */
export async function picturesOf(sheet: Sheet): Promise<Map<Uint8Array, ImageBitmap>> {
  const pictures = new Map<Uint8Array, ImageBitmap>();
  for (const { bytes, mime } of imagesIn(sheet.marks)) {
    if (pictures.has(bytes)) continue;
    try {
      pictures.set(bytes, await createImageBitmap(new Blob([new Uint8Array(bytes)], { type: mime })));
    } catch {
      // The print tells about it; the preview shows the rest.
    }
  }
  return pictures;
}

/** Paints a sheet onto a canvas as wide as the canvas is, white paper and all. */
export function paintSheet(canvas: HTMLCanvasElement, sheet: Sheet, pictures: ReadonlyMap<Uint8Array, ImageBitmap>): void {
  const pen = canvas.getContext('2d');
  if (!pen) return;
  const scale = canvas.width / sheet.paper.width_mm;
  pen.setTransform(1, 0, 0, 1, 0, 0);
  pen.fillStyle = '#ffffff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.setTransform(scale, 0, 0, scale, 0, 0);
  pen.lineCap = 'round';
  pen.lineJoin = 'round';
  for (const mark of sheet.marks) paintMark(pen, mark, pictures);
}
