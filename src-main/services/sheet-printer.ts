import PDFDocument from 'pdfkit';
import { CAP_HEIGHT } from '#shared/sheets/font-widths';
import { text } from '#shared/sheets/marks';
import { PRINT } from '#shared/sheets/print-ink';
import type { Mark, Sheet, SheetLayer } from '#shared/sheets/sheet';
import { cornersOf, textBoxOf } from '#shared/sheets/text-box';
import { archivePdf } from './archive-pdf.ts';
import { fontFiles } from './font-files.ts';
import { formPainter } from './form-fields.ts';
import { setTextAsMeasured } from './measured-text.ts';
import { isSoundPng } from './picture-check.ts';
import { PLAN_ATTACHMENT } from './plan-in-sheets.ts';
import { type LayerPainter, layerPainter } from './sheet-layers.ts';
import { linkPainter } from './sheet-links.ts';
import { outlineSheets } from './sheet-outline.ts';
import { type SheetPen, sheetPen } from './sheet-pen.ts';

/** What a PDF says of itself, and how it is packed. */
export interface PrintAbout {
  readonly title: string;
  readonly createdAt: Date;
  /** Plan file to be attached, so that the sheets alone are enough to reopen the plan. */
  readonly plan?: Uint8Array;
  /** Readable page streams, for tests. */
  readonly isPlain?: boolean;
}

const POINTS_PER_MM = 72 / 25.4;

/**
 * Paints composed sheets as one PDF: vector, with the shipped fonts embedded, at true size.
 * The same sheets and the same date give the same bytes.
 * Sheets are archival (PDF/A-3b), with an outline, links between them, and layers where marks name one.
 * @param onSheet  called with the number of finished sheets; what it throws ends the printing
 * @throws {Error} when the program's own fonts are missing
 */
export async function printSheets(sheets: readonly Sheet[], about: PrintAbout, onSheet: (done: number) => Promise<void> = async () => undefined): Promise<Uint8Array> {
  const fonts = fontFiles();
  const document = new PDFDocument({
    autoFirstPage: false,
    compress: !about.isPlain,
    pdfVersion: '1.7',
    subset: 'PDF/A-3b',
    font: fonts.plain,
    lang: 'en',
    info: { Title: about.title, Creator: 'Nozzlewright', Producer: 'Nozzlewright', CreationDate: about.createdAt, ModDate: about.createdAt },
  });
  archivePdf(document);
  for (const file of Object.values(fonts)) {
    document.font(file);
    setTextAsMeasured(document);
  }
  keepTrueSize(document);
  const chunks: Uint8Array[] = [];
  const done = new Promise<Uint8Array>((resolve, reject) => {
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    document.on('end', () => resolve(new Uint8Array(Buffer.concat(chunks))));
    document.on('error', reject);
  });
  const layers = layerPainter(document, sheets);
  const links = linkPainter(document, sheets);
  const page: Page = { document, fonts, layers, pictures: new Map() };
  const form = formPainter(document, fonts.plain);
  for (const [index, sheet] of sheets.entries()) {
    const { paper, marks, fields } = sheet;
    document.addPage({ size: [paper.width_mm * POINTS_PER_MM, paper.height_mm * POINTS_PER_MM], margin: 0 });
    document.scale(POINTS_PER_MM);
    layers.beginPage();
    paint(page, marks);
    links.paint(sheet);
    form.paint(fields ?? [], paper.height_mm);
    await onSheet(index + 1);
  }
  form.end();
  outlineSheets(document, sheets);
  if (about.plan) attachPlan(document, about.plan, about.createdAt);
  document.end();
  return done;
}

/** Attaches the plan as the source of the sheets: in the list of attached files, and associated with the whole document. */
function attachPlan(document: PDFKit.PDFDocument, plan: Uint8Array, createdAt: Date): void {
  const { file } = document as unknown as { file(bytes: Uint8Array, about: object): unknown };
  file.call(document, plan, {
    name: PLAN_ATTACHMENT,
    type: 'application/zip',
    relationship: 'Source',
    description: 'The plan that these sheets were printed of',
    creationDate: createdAt,
    modifiedDate: createdAt,
  });
}

/** Asks viewers to print at true size unless the user says otherwise: a scaled sheet measures wrong. */
function keepTrueSize(document: PDFKit.PDFDocument): void {
  const { _root: root } = document as unknown as { _root: { data: Record<string, unknown> } };
  root.data.ViewerPreferences = document.ref({ PrintScaling: 'None', DisplayDocTitle: true });
}

/** What painting needs on every sheet. */
interface Page {
  readonly document: PDFKit.PDFDocument;
  readonly fonts: ReturnType<typeof fontFiles>;
  readonly layers: LayerPainter;
  readonly pictures: Pictures;
}

function paint(page: Page, marks: readonly Mark[]): void {
  const { document, fonts, layers } = page;
  const pen = sheetPen((operators) => document.addContent(operators));
  let layer: SheetLayer | undefined;
  const changeTo = (next: SheetLayer | undefined): void => {
    if (next !== layer) document.addContent(layers.change(layer, next));
    layer = next;
  };
  for (const mark of marks) {
    changeTo(mark.layer);
    switch (mark.kind) {
      case 'text':
        paintText(document, mark, pen, fonts[mark.font]);
        break;
      case 'image':
        paintPicture(page, mark);
        break;
      case 'clip':
        document.save();
        document.rect(mark.x, mark.y, mark.width_mm, mark.height_mm).clip();
        paint(page, mark.marks);
        document.restore();
        break;
      default:
        if (mark.kind === 'area' && mark.opacity !== undefined && mark.opacity < 1) {
          document.save();
          document.fillOpacity(mark.opacity);
          sheetPen((operators) => document.addContent(operators)).draw(mark);
          document.restore();
        } else pen.draw(mark);
    }
  }
  changeTo(undefined);
}

function paintText(document: PDFKit.PDFDocument, mark: Extract<Mark, { kind: 'text' }>, pen: SheetPen, font: string): void {
  if (mark.halo) pen.fillRing(cornersOf(textBoxOf(mark)), '#ffffff');
  pen.fillWith(mark.colour);
  const { halfWidth } = textBoxOf(mark);
  const angle = mark.rotation_rad ?? 0;
  const toStart = mark.align === 'left' ? 0 : mark.align === 'middle' ? -halfWidth : -2 * halfWidth;
  document.save();
  document.transform(Math.cos(angle), -Math.sin(angle), Math.sin(angle), Math.cos(angle), mark.x, mark.y);
  document.font(font).fontSize(mark.height_mm / CAP_HEIGHT);
  document.text(mark.text, toStart, 0, { lineBreak: false, baseline: 'alphabetic' });
  document.restore();
}

/** Pictures that the document holds, each once however many sheets show it; null for one that cannot be printed. */
type Pictures = Map<Uint8Array, object | null>;

function openPicture(document: PDFKit.PDFDocument, { bytes, mime }: PictureMark, pictures: Pictures): object | null {
  const known = pictures.get(bytes);
  if (known !== undefined) return known;
  let opened: object | null = null;
  try {
    const { openImage } = document as unknown as { openImage(source: Buffer): object };
    if (mime !== 'image/png' || isSoundPng(bytes)) opened = openImage.call(document, Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength));
  } catch {
    opened = null;
  }
  pictures.set(bytes, opened);
  return opened;
}

type PictureMark = Extract<Mark, { kind: 'image' }>;

function paintPicture({ document, pictures, fonts }: Page, mark: PictureMark): void {
  const [a, b, c, d, e, f] = mark.matrix;
  const picture = openPicture(document, mark, pictures);
  if (!picture) {
    const pen = sheetPen((operators) => document.addContent(operators));
    pen.draw({ kind: 'line', places: [e, f, e + a, f + b, e + a + c, f + b + d, e + c, f + d], closed: true, stroke: { width_mm: 0.25, colour: PRINT.quiet } });
    paintText(document, text(e + (a + c) / 2, f + (b + d) / 2, 'This picture could not be printed.', { height_mm: 2.5, align: 'middle', halo: true }), pen, fonts.plain);
    return;
  }
  document.save();
  document.opacity(mark.opacity);
  document.transform(a, b, c, d, e, f);
  // Height −1 from y 1 is the unit square with y up, as the matrix expects it.
  const whole = { width: 1, height: -1, ignoreOrientation: true };
  document.image(picture as PDFKit.Mixins.ImageSrc, 0, 1, whole);
  document.restore();
}
