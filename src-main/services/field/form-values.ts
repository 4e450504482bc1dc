import { PDFArray, PDFDict, type PDFDocument, PDFHexString, PDFName, PDFRef, PDFStream, PDFString, type PDFObject, decodePDFRawStream, PDFRawStream } from '@cantoo/pdf-lib';

/** One form field as it is filled in. */
export interface FormValue {
  /** Names from the form down to the field, parted by dots. */
  readonly name: string;
  readonly kind: 'text' | 'tick' | 'other';
  /** "yes" for a tick, empty for none. */
  readonly value: string;
  readonly tooltip: string;
  /** Page that it stands on, from 1; null: on none. */
  readonly page: number | null;
}

/** Most fields, and steps from the form down to a field. */
const MOST_FIELDS = 200_000;
const DEEPEST = 40;
const LONGEST_VALUE = 20_000;

const key = (name: string): PDFName => PDFName.of(name);

function textOf(object: PDFObject | undefined): string {
  try {
    if (object instanceof PDFString || object instanceof PDFHexString) return object.decodeText().slice(0, LONGEST_VALUE);
    if (object instanceof PDFName) return object.decodeText().slice(0, LONGEST_VALUE);
    if (object instanceof PDFRawStream) return new TextDecoder('latin1').decode(decodePDFRawStream(object).decode().subarray(0, LONGEST_VALUE));
    if (object instanceof PDFStream) return object.getContentsString().slice(0, LONGEST_VALUE);
  } catch {
    return '';
  }
  return '';
}

/** Page number of every annotation that a page holds. */
function pagesOf(document: PDFDocument): Map<PDFRef | PDFDict, number> {
  const pages = new Map<PDFRef | PDFDict, number>();
  for (const [i, { node }] of document.getPages().entries()) {
    const annotations = node.lookup(key('Annots'));
    if (!(annotations instanceof PDFArray)) continue;
    for (const each of annotations.asArray()) if (each instanceof PDFRef || each instanceof PDFDict) pages.set(each, i + 1);
  }
  return pages;
}

/** The form of a document; undefined: it has none. */
export const formOf = (document: PDFDocument): PDFDict | undefined => {
  const form = document.catalog.lookup(key('AcroForm'));
  return form instanceof PDFDict ? form : undefined;
};

/** Whether a form is drawn up in the other way that only few viewers know, and has no ordinary fields. */
export const isXfaOnly = (form: PDFDict): boolean => {
  const fields = form.lookup(key('Fields'));
  return form.has(key('XFA')) && !(fields instanceof PDFArray && fields.size() > 0);
};

/**
 * Every field of a form with its value. Circles, missing parts and fields of unknown kinds are passed over:
 * the file comes from outside.
 */
export function formValues(document: PDFDocument, form: PDFDict): FormValue[] {
  const pages = pagesOf(document);
  const { context } = document;
  const found: FormValue[] = [];
  const seen = new Set<PDFDict>();

  const pageOf = (object: PDFObject, kids: PDFArray | undefined): number | null => {
    const own = object instanceof PDFRef || object instanceof PDFDict ? pages.get(object) : undefined;
    const [first] = own === undefined && kids ? kids.asArray() : [];
    return own ?? (first instanceof PDFRef || first instanceof PDFDict ? pages.get(first) : undefined) ?? null;
  };

  const visit = (object: PDFObject, above: string, inherited: PDFName | undefined, depth: number): void => {
    const field = object instanceof PDFRef ? context.lookup(object) : object;
    if (!(field instanceof PDFDict) || seen.has(field) || depth > DEEPEST || found.length >= MOST_FIELDS) return;
    seen.add(field);
    const own = textOf(field.lookup(key('T')));
    const name = [above, own].filter(Boolean).join('.');
    const type = field.lookup(key('FT'));
    const kind = type instanceof PDFName ? type : inherited;
    const kids = field.lookup(key('Kids'));
    const list = kids instanceof PDFArray ? kids : undefined;
    const hasFields = list?.asArray().some((kid) => {
      const dict = kid instanceof PDFRef ? context.lookup(kid) : kid;
      return dict instanceof PDFDict && dict.has(key('T'));
    });
    if (list && hasFields) {
      for (const kid of list.asArray()) visit(kid, name, kind, depth + 1);
      return;
    }
    const value = textOf(field.lookup(key('V')));
    const tooltip = textOf(field.lookup(key('TU')));
    const page = pageOf(object, list);
    if (kind === key('Btn')) found.push({ name, kind: 'tick', value: value === '' || value === 'Off' ? '' : 'yes', tooltip, page });
    else found.push({ name, kind: kind === key('Tx') ? 'text' : 'other', value, tooltip, page });
  };

  const fields = form.lookup(key('Fields'));
  if (fields instanceof PDFArray) for (const each of fields.asArray()) visit(each, '', undefined, 0);
  return found;
}
