import { PDFArray, PDFDict, PDFRef, PDFStream } from '@cantoo/pdf-lib';
import { type ArchiveFile, type Audit, arrayAt, dictAt, entry, has, nameAt, numberAt, streamAt, textAt } from './archive-file.ts';

const FORBIDDEN_ACTIONS = ['Launch', 'Sound', 'Movie', 'ResetForm', 'ImportData', 'Hide', 'SetOCGState', 'Rendition', 'Trans', 'GoTo3DView', 'JavaScript'];
const NAMED_ACTIONS = ['NextPage', 'PrevPage', 'FirstPage', 'LastPage'];
const KINDS = ['Text', 'Link', 'FreeText', 'Line', 'Square', 'Circle', 'Polygon', 'PolyLine', 'Highlight', 'Underline', 'Squiggly', 'StrikeOut', 'Stamp', 'Caret', 'Ink', 'Popup', 'FileAttachment', 'Widget', 'PrinterMark', 'TrapNet', 'Watermark', 'Redact'];
/** Bits of `F`, ISO 32000-1, table 165. */
const PRINT = 4;
const KEPT_FROM_VIEW = 1 | 2 | 32 | 256;

function auditAnnotation(annotation: PDFDict): string[] {
  const faults: string[] = [];
  const kind = nameAt(annotation, 'Subtype') ?? '';
  const [left = 0, bottom = 0, right = 0, top = 0] = arrayAt(annotation, 'Rect').map((each) => Number(String(each)));
  if (!KINDS.includes(kind)) faults.push(`6.3.1: there is an annotation of the kind ${kind}`);
  const flags = numberAt(annotation, 'F');
  if (kind !== 'Popup' && (flags === undefined || (flags & PRINT) === 0)) faults.push(`6.3.2: a ${kind} is not printed`);
  if (((flags ?? 0) & KEPT_FROM_VIEW) !== 0) faults.push(`6.3.2: a ${kind} is kept from view`);
  const look = dictAt(annotation, 'AP');
  const hasSize = left !== right || bottom !== top;
  if (!look) {
    if (hasSize && kind !== 'Popup' && kind !== 'Link') faults.push(`6.3.3: a ${kind} has no look of its own`);
  } else {
    if (look.entries().some(([name]) => name.decodeText() !== 'N')) faults.push(`6.3.3: a ${kind} looks otherwise under the hand`);
    const normal = entry(look, 'N');
    const isButton = kind === 'Widget' && nameAt(annotation, 'FT') === 'Btn';
    if (isButton ? !(normal instanceof PDFDict) : !(normal instanceof PDFStream)) faults.push(`6.3.3: the look of a ${kind} is not what its kind asks`);
    if (isButton && normal instanceof PDFDict && !streamAt(normal, nameAt(annotation, 'AS') ?? '')) faults.push('6.3.3: a button has no look for its state');
  }
  if (kind === 'Widget' && (has(annotation, 'A') || has(annotation, 'AA'))) faults.push('6.4.1: a field does something by itself');
  return faults;
}

function auditLayers({ document, dictionaries }: ArchiveFile): string[] {
  const properties = dictAt(document.catalog, 'OCProperties');
  const used = dictionaries.filter((dict) => nameAt(dict, 'Type') === 'OCG');
  if (!properties) return used.length > 0 ? ['6.9: there are layers that the catalogue does not know'] : [];
  const faults: string[] = [];
  const groupRefs = entry(properties, 'OCGs');
  const groups = groupRefs instanceof PDFArray ? groupRefs.asArray().map(String) : [];
  if (arrayAt(properties, 'OCGs').length !== used.length) faults.push('6.9: there are layers that the catalogue does not know');
  for (const group of used) if (textAt(group, 'Name') === undefined) faults.push('6.9: a layer has no name');
  const names = new Set<string>();
  for (const arrangement of [dictAt(properties, 'D'), ...arrayAt(properties, 'Configs')]) {
    if (!(arrangement instanceof PDFDict)) {
      faults.push('6.9: layers have no usual arrangement');
      continue;
    }
    const name = textAt(arrangement, 'Name') ?? '';
    if (name === '' || names.has(name)) faults.push('6.9: an arrangement of layers has no name of its own');
    names.add(name);
    if (has(arrangement, 'AS')) faults.push('6.9: an arrangement of layers changes by itself');
    const order = entry(arrangement, 'Order');
    const listed = order instanceof PDFArray ? [...String(order).matchAll(/\d+ \d+ R/g)].map(([ref]) => ref) : undefined;
    if (listed && groups.some((group) => !listed.includes(group))) faults.push('6.9: an arrangement of layers leaves some out');
  }
  return faults;
}

/** Annotations, fields, actions and layers (6.3, 6.4, 6.5, 6.9). */
export const auditAnnotations: Audit = (file) => {
  const faults = new Set<string>();
  for (const { node } of file.document.getPages()) for (const annotation of arrayAt(node, 'Annots')) for (const fault of annotation instanceof PDFDict ? auditAnnotation(annotation) : ['6.3: an annotation is missing']) faults.add(fault);
  const form = dictAt(file.document.catalog, 'AcroForm');
  if (form && String(entry(form, 'NeedAppearances')) === 'true') faults.add('6.4.1: the form leaves its look to the reader');
  const fieldRefs = form && entry(form, 'Fields');
  if (fieldRefs instanceof PDFArray) {
    const shown = new Set(file.document.getPages().flatMap(({ node }) => {
      const list = entry(node, 'Annots');
      return list instanceof PDFArray ? list.asArray().map(String) : [];
    }));
    for (const field of fieldRefs.asArray()) if (!(field instanceof PDFRef && shown.has(field.toString()))) faults.add('6.4.1: a field stands on no page');
  }
  for (const dict of file.dictionaries) {
    if (has(dict, 'JS') || has(dict, 'AA')) faults.add('6.5.1: something is done by itself');
    const action = nameAt(dict, 'S');
    if (action !== undefined && FORBIDDEN_ACTIONS.includes(action)) faults.add(`6.5.1: there is an action ${action}`);
    if (action === 'Named' && !NAMED_ACTIONS.includes(nameAt(dict, 'N') ?? '')) faults.add('6.5.1: there is an action of another name');
    if (has(dict, 'JavaScript')) faults.add('6.5.1: there is a list of scripts');
  }
  return [...faults, ...auditLayers(file)];
};
