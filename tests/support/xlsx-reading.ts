import { strFromU8, unzipSync } from 'fflate';

/** One piece of XML with what is in it. */
interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly inside: (Element | string)[];
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };
const plainOf = (text: string): string =>
  text.replace(/&(?:#x([\da-f]+)|#(\d+)|(\w+));/gi, (_, hex?: string, decimal?: string, name?: string) => {
    if (hex) return String.fromCodePoint(Number.parseInt(hex, 16));
    if (decimal) return String.fromCodePoint(Number(decimal));
    const sign = ENTITIES[name ?? ''];
    if (sign === undefined) throw new Error(`&${name}; is no sign of XML`);
    return sign;
  });

/** Reads XML sign by sign and throws at whatever is not well-formed. Knows no namespaces and no document types. */
export function readXml(text: string): Element {
  const root: Element = { name: '', attributes: {}, inside: [] };
  const open: Element[] = [root];
  let at = 0;
  while (at < text.length) {
    const here = open.at(-1) ?? root;
    const next = text.indexOf('<', at);
    const words = text.slice(at, next < 0 ? text.length : next);
    if (words.includes('>')) throw new Error(`a bare > in “${words}”`);
    if (words !== '' && here !== root) here.inside.push(plainOf(words));
    if (next < 0) break;
    const end = text.indexOf('>', next);
    if (end < 0) throw new Error('a tag without an end');
    const tag = text.slice(next + 1, end);
    at = end + 1;
    if (tag.startsWith('?')) continue;
    if (tag.startsWith('/')) {
      if (here.name !== tag.slice(1)) throw new Error(`</${tag.slice(1)}> closes <${here.name}>`);
      open.pop();
      continue;
    }
    const match = /^([\w:]+)((?:\s+[\w:]+="[^"<]*")*)\s*(\/?)$/.exec(tag);
    if (!match) throw new Error(`<${tag}> is no tag`);
    const [, name = '', written = '', closes] = match;
    const attributes = Object.fromEntries([...written.matchAll(/([\w:]+)="([^"]*)"/g)].map(([, key = '', value = '']) => [key, plainOf(value)]));
    const element: Element = { name, attributes, inside: [] };
    here.inside.push(element);
    if (!closes) open.push(element);
  }
  if (open.length > 1) throw new Error(`<${open.at(-1)?.name}> is never closed`);
  const [first] = root.inside;
  if (!first || typeof first === 'string') throw new Error('no element');
  return first;
}

const elementsIn = (element: Element | undefined, name: string): Element[] => (element?.inside ?? []).filter((each): each is Element => typeof each !== 'string' && each.name === name);
const wordsIn = (element: Element): string => element.inside.map((each) => (typeof each === 'string' ? each : wordsIn(each))).join('');

export interface ReadSheet {
  readonly name: string;
  /** Values by row and column from 0. */
  readonly rows: readonly (readonly (string | number | null)[])[];
  /** Rows that stay in sight. */
  readonly frozen: number;
  readonly widths: readonly number[];
  readonly hasFormula: boolean;
  /** Number formats by address, such as "B4". */
  readonly formats: Readonly<Record<string, string>>;
}

const columnOf = (address: string): number => [.../^[A-Z]+/.exec(address)?.[0] ?? ''].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
const rowOf = (address: string): number => Number(/\d+$/.exec(address)?.[0]) - 1;

/** Reads the sheets of an .xlsx file by its relations, as a spreadsheet program does. */
export function readXlsx(bytes: Uint8Array): ReadSheet[] {
  const files = unzipSync(bytes);
  const xmlOf = (name: string): Element => {
    const file = files[name];
    if (!file) throw new Error(`${name} is missing`);
    return readXml(strFromU8(file));
  };
  const types = xmlOf('[Content_Types].xml');
  for (const { attributes } of elementsIn(types, 'Override')) if (!files[(attributes.PartName ?? '').slice(1)]) throw new Error(`${attributes.PartName} is listed but missing`);
  const targetOf = new Map(elementsIn(xmlOf('xl/_rels/workbook.xml.rels'), 'Relationship').map(({ attributes }) => [attributes.Id, attributes.Target ?? '']));
  const styles = xmlOf('xl/styles.xml');
  const codes = new Map(elementsIn(elementsIn(styles, 'numFmts')[0], 'numFmt').map(({ attributes }) => [attributes.numFmtId, attributes.formatCode ?? '']));
  const cellFormats = elementsIn(elementsIn(styles, 'cellXfs')[0], 'xf').map(({ attributes }) => attributes.numFmtId);
  return elementsIn(elementsIn(xmlOf('xl/workbook.xml'), 'sheets')[0], 'sheet').map(({ attributes: { name = '', 'r:id': id } }) => {
    const sheet = xmlOf(`xl/${targetOf.get(id)}`);
    const rows: (string | number | null)[][] = [];
    const formats: Record<string, string> = {};
    let hasFormula = false;
    for (const cell of elementsIn(elementsIn(sheet, 'sheetData')[0], 'row').flatMap((row) => elementsIn(row, 'c'))) {
      const { r = '', t, s } = cell.attributes;
      const format = cellFormats[Number(s ?? 0)];
      if (format === undefined) throw new Error(`${r} has a format that the file does not hold`);
      formats[r] = codes.get(format) ?? '';
      hasFormula ||= elementsIn(cell, 'f').length > 0;
      const [inline] = elementsIn(cell, 'is');
      const [value] = elementsIn(cell, 'v');
      while (rows.length <= rowOf(r)) rows.push([]);
      const row = rows[rowOf(r)] ?? [];
      while (row.length <= columnOf(r)) row.push(null);
      row[columnOf(r)] = t === 'inlineStr' && inline ? wordsIn(inline) : value ? Number(wordsIn(value)) : null;
    }
    const [view] = elementsIn(elementsIn(sheet, 'sheetViews')[0], 'sheetView');
    const pane = elementsIn(view, 'pane')[0]?.attributes;
    return { name, rows, frozen: pane?.state === 'frozen' ? Number(pane.ySplit) : 0, widths: elementsIn(elementsIn(sheet, 'cols')[0], 'col').map(({ attributes }) => Number(attributes.width)), hasFormula, formats };
  });
}
