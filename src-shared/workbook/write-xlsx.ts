import { strToU8, zipSync } from 'fflate';
import type { Workbook, WorkbookCell, WorkbookSheet } from './workbook.ts';

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const RELATIONS = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';
const TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml';

/** Any fixed day: the same workbook then packs to the same bytes. */
const PACKED_AT = '1990-01-01T00:00:00';
const MOST_DECIMALS = 6;
/** Most characters of one cell (ECMA-376, as office programs keep it; memory). */
const LONGEST_CELL = 32_767;
const LONGEST_NAME = 31;

/** Places of the cell formats in the style sheet. Those of numbers follow the last, by their decimals. */
const FORMAT = { plain: 0, head: 1, title: 2, warning: 3, literal: 4, note: 5, number: 6 } as const;

/** Signs that XML 1.0 does not have go; the others are written so that they stay what they are. */
function xmlText(words: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what XML forbids
  const allowed = words.slice(0, LONGEST_CELL).replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, '');
  return allowed.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}

/** 0: A … 25: Z, 26: AA. */
const columnName = (index: number): string => (index < 26 ? '' : columnName(Math.floor(index / 26) - 1)) + String.fromCharCode(65 + (index % 26));

/** Whether words would be taken for a formula if they were typed: they are marked as words, so that they stay such when they are edited. */
const looksLikeFormula = (words: string): boolean => /^[=+\-@\t\r]/.test(words);

function cellXml(cell: WorkbookCell, row: number, column: number, format: number): string {
  if (cell === null || cell === '') return '';
  const at = `${columnName(column)}${row}`;
  if (typeof cell === 'string') {
    const style = format === FORMAT.plain && looksLikeFormula(cell) ? FORMAT.literal : format;
    return `<c r="${at}" s="${style}" t="inlineStr"><is><t xml:space="preserve">${xmlText(cell)}</t></is></c>`;
  }
  if (!Number.isFinite(cell.number)) return '';
  return `<c r="${at}" s="${FORMAT.number + Math.min(MOST_DECIMALS, cell.decimals)}"><v>${cell.number}</v></c>`;
}

const rowXml = (cells: readonly WorkbookCell[], row: number, format: number): string => `<row r="${row}">${cells.map((cell, i) => cellXml(cell, row, i, format)).join('')}</row>`;

function sheetXml({ title, warnings, columns, rows, notes }: WorkbookSheet, isFirst: boolean): string {
  const above: readonly (readonly [words: string, format: number])[] = [[title, FORMAT.title], ...warnings.map((words) => [words, FORMAT.warning] as const)];
  const headRow = above.length + 1;
  const lastRow = headRow + rows.length;
  const lastColumn = columnName(Math.max(0, columns.length - 1));
  const body = [
    ...above.map(([words, format], i) => rowXml([words], i + 1, format)),
    rowXml(columns.map(({ head }) => head), headRow, FORMAT.head),
    ...rows.map((cells, i) => rowXml(cells, headRow + 1 + i, FORMAT.plain)),
    ...notes.map((words, i) => rowXml([words], lastRow + 2 + i, FORMAT.note)),
  ];
  return [
    `${HEAD}<worksheet xmlns="${MAIN}">`,
    '<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>',
    `<sheetViews><sheetView workbookViewId="0"${isFirst ? ' tabSelected="1"' : ''}><pane ySplit="${headRow}" topLeftCell="A${headRow + 1}" activePane="bottomLeft" state="frozen"/><selection pane="bottomLeft"/></sheetView></sheetViews>`,
    `<cols>${columns.map(({ width }, i) => `<col min="${i + 1}" max="${i + 1}" width="${width}" customWidth="1"/>`).join('')}</cols>`,
    `<sheetData>${body.join('')}</sheetData>`,
    rows.length > 0 ? `<autoFilter ref="A${headRow}:${lastColumn}${lastRow}"/>` : '',
    '<pageSetup orientation="landscape" fitToWidth="1" fitToHeight="0"/>',
    '</worksheet>',
  ].join('');
}

function stylesXml(): string {
  const decimals = Array.from({ length: MOST_DECIMALS + 1 }, (_, i) => i);
  const font = (inside: string): string => `<font>${inside}<sz val="11"/></font>`;
  const xf = (attributes: string, inside = ''): string => `<xf xfId="0" ${attributes}${inside ? `>${inside}</xf>` : '/>'}`;
  const words = 'numFmtId="49" fillId="0" applyNumberFormat="1"';
  const formats = [
    xf(`${words} fontId="0" borderId="0"`),
    xf('numFmtId="0" fontId="1" fillId="2" borderId="1" applyFont="1" applyFill="1" applyBorder="1" applyAlignment="1"', '<alignment vertical="top" wrapText="1"/>'),
    xf('numFmtId="0" fontId="2" fillId="0" borderId="0" applyFont="1"'),
    xf('numFmtId="0" fontId="1" fillId="0" borderId="0" applyFont="1"'),
    xf(`${words} fontId="0" borderId="0" quotePrefix="1"`),
    xf('numFmtId="0" fontId="3" fillId="0" borderId="0" applyFont="1"'),
    ...decimals.map((_, i) => xf(`numFmtId="${164 + i}" fontId="0" fillId="0" borderId="0" applyNumberFormat="1"`)),
  ];
  return [
    `${HEAD}<styleSheet xmlns="${MAIN}">`,
    `<numFmts count="${decimals.length}">${decimals.map((count) => `<numFmt numFmtId="${164 + count}" formatCode="0${count > 0 ? `.${'0'.repeat(count)}` : ''}"/>`).join('')}</numFmts>`,
    `<fonts count="4">${font('')}${font('<b/>')}<font><b/><sz val="14"/></font>${font('<i/>')}</fonts>`,
    '<fills count="3"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill><fill><patternFill patternType="solid"><fgColor rgb="FFE9EAE6"/><bgColor indexed="64"/></patternFill></fill></fills>',
    '<borders count="2"><border><left/><right/><top/><bottom/><diagonal/></border><border><left/><right/><top/><bottom style="thin"><color rgb="FF59626A"/></bottom><diagonal/></border></borders>',
    '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>',
    `<cellXfs count="${formats.length}">${formats.join('')}</cellXfs>`,
    '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles>',
    '</styleSheet>',
  ].join('');
}

/** Names that no two sheets share and that office programs take. */
function sheetNames(sheets: readonly WorkbookSheet[]): string[] {
  const taken = new Set<string>();
  return sheets.map(({ name }, i) => {
    const plain = name.replace(/[\\/?*[\]:]/g, ' ').replace(/^'+|'+$/g, '').slice(0, LONGEST_NAME).trim();
    const free = plain !== '' && !taken.has(plain.toLowerCase()) ? plain : `Sheet ${i + 1}`;
    taken.add(free.toLowerCase());
    return free;
  });
}

/**
 * A workbook as the bytes of an .xlsx file (Office Open XML, ECMA-376 part 1): words in the cells themselves, never
 * formulas; numbers as numbers; title, warnings and head stay in sight. The same workbook gives the same bytes.
 */
export function writeXlsx({ sheets }: Workbook): Uint8Array {
  const names = sheetNames(sheets);
  const files: Readonly<Record<string, string>> = {
    '[Content_Types].xml': `${HEAD}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="${TYPE}.sheet.main+xml"/><Override PartName="/xl/styles.xml" ContentType="${TYPE}.styles+xml"/>${sheets.map((_, i) => `<Override PartName="/xl/worksheets/sheet${i + 1}.xml" ContentType="${TYPE}.worksheet+xml"/>`).join('')}</Types>`,
    '_rels/.rels': `${HEAD}<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${RELATIONS}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    'xl/workbook.xml': `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${RELATIONS}"><sheets>${names.map((name, i) => `<sheet name="${xmlText(name)}" sheetId="${i + 1}" r:id="rId${i + 1}"/>`).join('')}</sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `${HEAD}<Relationships xmlns="${PACKAGE}/relationships">${sheets.map((_, i) => `<Relationship Id="rId${i + 1}" Type="${RELATIONS}/worksheet" Target="worksheets/sheet${i + 1}.xml"/>`).join('')}<Relationship Id="rId${sheets.length + 1}" Type="${RELATIONS}/styles" Target="styles.xml"/></Relationships>`,
    'xl/styles.xml': stylesXml(),
    ...Object.fromEntries(sheets.map((sheet, i) => [`xl/worksheets/sheet${i + 1}.xml`, sheetXml(sheet, i === 0)])),
  };
  return zipSync(Object.fromEntries(Object.entries(files).map(([name, xml]) => [name, strToU8(xml)])), { level: 6, mtime: PACKED_AT });
}
