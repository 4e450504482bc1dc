import PDFDocument from 'pdfkit';
import type { FloorDrawing } from './floor-drawing.ts';

/** Free border around the floor on the page [pt]. */
export const PDF_MARGIN_pt = 54;
/** Points on the page for a metre on the floor: 1/8 in = 1 ft-0 in. */
export const PDF_POINTS_PER_METRE = 9 / 0.3048;

const LAYER_WIDTHS_pt: Readonly<Record<string, number>> = { WALLS: 1.1, DOORS: 0.5, FURNITURE: 0.35 };

/** Draws a floor as a one-page vector PDF at 1/8 in = 1 ft-0 in; the same drawing gives the same bytes. */
export async function drawPdf(drawing: FloorDrawing): Promise<Uint8Array> {
  const width = drawing.width_m * PDF_POINTS_PER_METRE + 2 * PDF_MARGIN_pt;
  const height = drawing.depth_m * PDF_POINTS_PER_METRE + 2 * PDF_MARGIN_pt;
  const epoch = new Date('2026-01-01T00:00:00Z');
  const pdf = new PDFDocument({ size: [width, height], margin: 0, info: { CreationDate: epoch, ModDate: epoch } });
  const parts: Buffer[] = [];
  const finished = new Promise<Uint8Array>((done, fail) => {
    pdf.on('data', (part: Buffer) => parts.push(part));
    pdf.on('end', () => done(Buffer.concat(parts)));
    pdf.on('error', fail);
  });
  const across = (x: number): number => PDF_MARGIN_pt + x * PDF_POINTS_PER_METRE;
  const down = (y: number): number => height - PDF_MARGIN_pt - y * PDF_POINTS_PER_METRE;
  for (const [layer, lines] of Object.entries(drawing.layers)) {
    pdf.lineWidth(LAYER_WIDTHS_pt[layer] ?? 0.5).strokeColor('#404040');
    for (const { places, closed } of lines) {
      places.forEach(([x, y], i) => {
        if (i === 0) pdf.moveTo(across(x), down(y));
        else pdf.lineTo(across(x), down(y));
      });
      if (closed) pdf.closePath();
      pdf.stroke();
    }
  }
  pdf.fillColor('#404040');
  for (const { x, y, height_m, text } of drawing.words) {
    const size = height_m * PDF_POINTS_PER_METRE * 1.4;
    pdf.fontSize(size).text(text, across(x), down(y) - size, { lineBreak: false });
  }
  pdf.end();
  return finished;
}
