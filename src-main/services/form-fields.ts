import { CAP_HEIGHT, printable, textWidth_mm } from '#shared/sheets/font-widths';
import type { SheetField } from '#shared/sheets/sheet';
import { wrapText } from '#shared/sheets/text-box';
import { formFont } from './form-font.ts';

const POINTS_PER_MM = 72 / 25.4;
/** Height of what is typed [pt]: several lines are written smaller. */
const TYPED_pt = 9;
/** Name by which fields call the font that is typed with. */
const TYPED_FONT = 'Typed';
const LONG_pt = 7.5;
/** Height of capitals of a value that the program fills in [mm]. */
const VALUE_mm = 2.3;
const LONG_VALUE_mm = 1.9;
const IDENTITY_mm = 2.5;
/** Share of the height of its field that a fixed value takes at most. */
const IDENTITY_SHARE = 0.45;
const PAD_mm = 0.8;
/** Lines that have room in a field. */
const MOST_LINES = 3;

/** Bits of a field's `Ff` and of an annotation's `F`, ISO 32000-1 tables 165, 221 and 228. */
const READ_ONLY = 1;
const MULTI_LINE = 1 << 12;
const PRINTED = 4;

/** What pdfkit keeps of an object and of a font; it has no public way to give a field a look of its own. */
interface Reference {
  readonly data: Record<string, unknown>;
  end(content?: string): void;
}
interface Innards {
  readonly page: { readonly dictionary: Reference; readonly annotations: Reference[] };
  readonly _root: Reference;
  _acroform: unknown;
  readonly _font: { readonly id: string; ref(): Reference; encode(text: string): [hex: string[], positions: unknown] };
}

const cutTo = (lines: readonly string[], most: number): string[] => lines.slice(0, most).map((line, i) => (i === most - 1 && lines.length > most ? `${line.slice(0, -1).trimEnd()}…` : line));

/** Capitals of a fixed value: as large as its field, which the sheet has made for the size of the paper, lets them be. */
const identityCap_mm = (words: string, width_mm: number, height_mm: number): number =>
  Math.max(IDENTITY_mm, Math.min((width_mm - 2 * PAD_mm) / textWidth_mm(words, 1, 'plain'), height_mm * IDENTITY_SHARE));

/** Puts form fields on the pages of a PDF. */
export interface FormPainter {
  /** Puts fields on the page that is being painted. */
  paint(fields: readonly SheetField[], paperHeight_mm: number): void;
  /** Ends the form, if there is any field in it. */
  end(): void;
}

const number = (value: number): string => String(Math.round(value * 1000) / 1000);
// A text in a PDF dictionary; pdfkit takes a bare string for a name.
const words = (text: string): unknown => Object(text);

/**
 * Makes real form fields of a document. Every field carries its own look, drawn with the font that the document
 * embeds, so that a viewer need not draw it and a print shows it.
 * @param font  file of the font that values are written in
 */
export function formPainter(document: PDFKit.PDFDocument, font: string): FormPainter {
  const inside = document as unknown as Innards;
  const ref = (data: Record<string, unknown>): Reference => document.ref(data) as unknown as Reference;
  const all: Reference[] = [];
  const taken = new Map<string, number>();

  /** A name of its own for a field that stands on several sheets. */
  const nameOf = (name: string): string => {
    const times = (taken.get(name) ?? 0) + 1;
    taken.set(name, times);
    return times === 1 ? name : `${name}!${times}`;
  };

  const look = (width: number, height: number, content: string, resources: Record<string, unknown> = {}): Reference => {
    const form = ref({ Type: 'XObject', Subtype: 'Form', BBox: [0, 0, width, height], Resources: resources });
    // Without any content pdfkit writes no stream at all.
    form.end(content || ' ');
    return form;
  };

  const textLook = ({ value, isLong, kind, width_mm }: SheetField, width: number, height: number): Reference => {
    const empty = '/Tx BMC\nEMC';
    const shown = printable(value.replace(/\s+/g, ' ').trim());
    if (shown === '') return look(width, height, empty);
    const cap = kind === 'fixed' ? identityCap_mm(shown, width_mm, height / POINTS_PER_MM) : isLong ? LONG_VALUE_mm : VALUE_mm;
    document.font(font);
    const { _font: embedded } = inside;
    const lines = isLong ? cutTo(wrapText(shown, width_mm - 2 * PAD_mm, cap, 'plain'), MOST_LINES) : [shown];
    const step = cap * 1.5 * POINTS_PER_MM;
    const first = height / 2 + ((lines.length - 1) * step) / 2 - (cap * POINTS_PER_MM) / 2;
    const written = lines.map((line, i) => `1 0 0 1 ${number(PAD_mm * POINTS_PER_MM)} ${number(first - i * step)} Tm\n<${embedded.encode(line)[0].join('')}> Tj`);
    const content = ['/Tx BMC', 'q', `0 0 ${number(width)} ${number(height)} re W n`, 'BT', '0 g', `/${embedded.id} ${number((cap / CAP_HEIGHT) * POINTS_PER_MM)} Tf`, ...written, 'ET', 'Q', 'EMC'].join('\n');
    return look(width, height, content, { Font: { [embedded.id]: embedded.ref() } });
  };

  const tickLook = (side: number): Reference =>
    look(side, side, `q 1.6 w 0 G 1 J 1 j ${[`${number(side * 0.2)} ${number(side * 0.52)} m`, `${number(side * 0.42)} ${number(side * 0.25)} l`, `${number(side * 0.82)} ${number(side * 0.8)} l S Q`].join(' ')}`);

  const widgetOf = (field: SheetField, paperHeight_mm: number): Record<string, unknown> => {
    const [left, bottom] = [field.x * POINTS_PER_MM, (paperHeight_mm - field.y - field.height_mm) * POINTS_PER_MM];
    const [width, height] = [field.width_mm * POINTS_PER_MM, field.height_mm * POINTS_PER_MM];
    return {
      Type: 'Annot',
      Subtype: 'Widget',
      Rect: [left, bottom, left + width, bottom + height],
      F: PRINTED,
      P: inside.page.dictionary,
      T: words(nameOf(field.name)),
      TU: words(field.tooltip),
      ...(field.kind === 'tick'
        ? { FT: 'Btn', V: field.value ? 'Yes' : 'Off', AS: field.value ? 'Yes' : 'Off', AP: { N: { Yes: tickLook(width), Off: look(width, height, '') } } }
        : {
            FT: 'Tx',
            Ff: (field.kind === 'fixed' ? READ_ONLY : 0) | (field.isLong ? MULTI_LINE : 0),
            V: words(field.value),
            DA: words(`/${TYPED_FONT} ${field.isLong ? LONG_pt : TYPED_pt} Tf 0 g`),
            AP: { N: textLook(field, width, height) },
          }),
    };
  };

  return {
    paint(fields, paperHeight_mm) {
      for (const field of fields) {
        const widget = ref(widgetOf(field, paperHeight_mm));
        widget.end();
        inside.page.annotations.push(widget);
        all.push(widget);
      }
      // The key for the next field goes from row to row.
      if (fields.length > 0) inside.page.dictionary.data.Tabs = 'R';
    },
    end() {
      if (all.length === 0) return;
      // pdfkit writes the form out as it ends the document; it asks for the name of a font in it.
      inside._acroform = { fonts: {}, defaultFont: TYPED_FONT };
      inside._root.data.AcroForm = ref({ Fields: all, DR: { Font: { [TYPED_FONT]: formFont(document, font) } }, DA: words(`/${TYPED_FONT} ${TYPED_pt} Tf 0 g`) });
    },
  };
}
