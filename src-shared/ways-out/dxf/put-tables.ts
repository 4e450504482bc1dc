import type { DxfBounds } from './bounds-of-entities.ts';
import type { DxfDrawing, DxfLayer, DxfLineType } from './drawing.ts';
import { DIMENSION_STYLE, TEXT_STYLE } from './put-entity.ts';
import type { DxfTags } from './tags.ts';

/** Dashes and gaps of the line types [mm on paper at the scale of the text]. */
const LINE_TYPES: Readonly<Record<DxfLineType, readonly number[]>> = { Continuous: [], Dashed: [2.4, -1.2], Dotted: [0.5, -0.8], 'Dash and dot': [4, -1, 0.8, -1] };

/** Height of capitals on paper that the line types are made for [mm]. */
const TEXT_mm = 2;

function table(tags: DxfTags, name: string, count: number, more: () => void, rows: (table: string) => void): void {
  const handle = tags.handle();
  tags.put(0, 'TABLE', 2, name, 5, handle, 330, 0, 100, 'AcDbSymbolTable', 70, count);
  more();
  rows(handle);
  tags.put(0, 'ENDTAB');
}

const nothing = (): void => undefined;

const row = (tags: DxfTags, type: string, owner: string, subclass: string, code = 5): string => {
  const handle = tags.handle();
  tags.put(0, type, code, handle, 330, owner, 100, 'AcDbSymbolTableRecord', 100, subclass);
  return handle;
};

function putView(tags: DxfTags, owner: string, { minX, minY, maxX, maxY }: DxfBounds): void {
  row(tags, 'VPORT', owner, 'AcDbViewportTableRecord');
  tags.put(2, '*Active', 70, 0, 10, '0.0', 20, '0.0', 11, '1.0', 21, '1.0').length(12, (minX + maxX) / 2).length(22, (minY + maxY) / 2);
  tags.put(13, '0.0', 23, '0.0', 14, '1.0', 24, '1.0', 15, '1.0', 25, '1.0', 16, '0.0', 26, '0.0', 36, '1.0', 17, '0.0', 27, '0.0', 37, '0.0');
  tags.length(40, Math.max(1, maxY - minY, (maxX - minX) / 1.5) * 1.05).put(41, '1.5', 42, '50.0', 43, '0.0', 44, '0.0', 50, '0.0', 51, '0.0');
  tags.put(71, 0, 72, 1000, 73, 1, 74, 3, 75, 0, 76, 0, 77, 0, 78, 0);
}

function putLineType(tags: DxfTags, owner: string, name: string, dashes_mm: readonly number[], metresPerMm: number): void {
  row(tags, 'LTYPE', owner, 'AcDbLinetypeTableRecord');
  tags.put(2, name, 70, 0, 3, dashes_mm.length > 0 ? name : name === 'Continuous' ? 'Solid line' : '', 72, 65, 73, dashes_mm.length);
  tags.length(40, dashes_mm.reduce((sum, dash) => sum + Math.abs(dash), 0) * metresPerMm);
  for (const dash of dashes_mm) tags.length(49, dash * metresPerMm).put(74, 0);
}

/**
 * Writes the tables of a drawing.
 * @param blocks  every block with the handle that its record is to have, the model's own first
 */
export function putTables(tags: DxfTags, { lengths, text_m, layers }: DxfDrawing, blocks: ReadonlyMap<string, string>, bounds: DxfBounds): void {
  const perMm = text_m / TEXT_mm;
  tags.put(0, 'SECTION', 2, 'TABLES');
  table(tags, 'VPORT', 1, nothing, (owner) => putView(tags, owner, bounds));
  const lineTypes = [['ByBlock', []], ['ByLayer', []], ...Object.entries(LINE_TYPES)] as const;
  table(tags, 'LTYPE', lineTypes.length, nothing, (owner) => {
    for (const [name, dashes] of lineTypes) putLineType(tags, owner, name, dashes, perMm);
  });
  const all: readonly DxfLayer[] = [{ name: '0', colour: 7, weight: 25, lineType: 'Continuous' }, ...layers];
  table(tags, 'LAYER', all.length, nothing, (owner) => {
    for (const { name, colour, weight, lineType } of all) {
      row(tags, 'LAYER', owner, 'AcDbLayerTableRecord');
      tags.put(2, name, 70, 0, 62, colour, 6, lineType, 370, weight);
    }
  });
  let style = '';
  table(tags, 'STYLE', 1, nothing, (owner) => {
    style = row(tags, 'STYLE', owner, 'AcDbTextStyleTableRecord');
    tags.put(2, TEXT_STYLE, 70, 0, 40, '0.0', 41, '1.0', 50, '0.0', 71, 0).length(42, text_m).put(3, 'txt', 4, '');
  });
  table(tags, 'VIEW', 0, nothing, nothing);
  table(tags, 'UCS', 0, nothing, nothing);
  table(tags, 'APPID', 1, nothing, (owner) => {
    row(tags, 'APPID', owner, 'AcDbRegAppTableRecord');
    tags.put(2, 'ACAD', 70, 0);
  });
  table(tags, 'DIMSTYLE', 1, () => tags.put(100, 'AcDbDimStyleTable', 71, 1), (owner) => {
    row(tags, 'DIMSTYLE', owner, 'AcDbDimStyleTableRecord', 105);
    putDimensionStyle(tags, lengths, text_m, style);
  });
  table(tags, 'BLOCK_RECORD', blocks.size, nothing, (owner) => {
    for (const [name, handle] of blocks) tags.put(0, 'BLOCK_RECORD', 5, handle, 330, owner, 100, 'AcDbSymbolTableRecord', 100, 'AcDbBlockTableRecord', 2, name, 340, 0);
  });
  tags.put(0, 'ENDSEC');
}

/** Feet and inches to the sixteenth, or whole millimetres: as the sheets show them. */
function putDimensionStyle(tags: DxfTags, lengths: 'feet' | 'metric', text_m: number, style: string): void {
  const isFeet = lengths === 'feet';
  tags.put(2, DIMENSION_STYLE, 70, 0, 3, isFeet ? '' : '<> mm', 40, '1.0').length(41, text_m).length(42, text_m * 0.5).length(43, text_m * 2.8).length(44, text_m * 0.7);
  tags.length(140, text_m).length(142, text_m * 0.5).number(144, isFeet ? 1 : 1000).length(147, text_m * 0.4);
  tags.put(73, 0, 74, 0, 77, 1, 78, isFeet ? 1 : 8, 271, isFeet ? 4 : 0, 276, 2, 277, isFeet ? 4 : 2, 340, style);
}
