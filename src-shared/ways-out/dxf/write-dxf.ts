import { type DxfBounds, boundsOfEntities } from './bounds-of-entities.ts';
import type { DxfDrawing, DxfEntity } from './drawing.ts';
import { dimensionBlock } from './dimension-block.ts';
import { DIMENSION_STYLE, type EntityPlace, TEXT_STYLE, putEntity, putTextBody, upAcross } from './put-entity.ts';
import { putTables } from './put-tables.ts';
import { DxfTags, metresPerUnit } from './tags.ts';

const MODEL = '*Model_Space';
const PAPER = '*Paper_Space';
/** Codes of the header variables: inches and metres; the measures of the old system and of the new one. */
const UNITS = { feet: { insert: 1, measurement: 0, lengthFormat: 4 }, metric: { insert: 6, measurement: 1, lengthFormat: 2 } } as const;

type Dimension = Extract<DxfEntity, { kind: 'dimension' }>;

/**
 * Writes a drawing as an ASCII DXF file of the version that begins with AC1015, in inches or metres of the site.
 * What stands on a layer that is not declared goes to layer 0. The same drawing gives the same text.
 * @returns text of ASCII signs only, lines ended with CR LF
 */
export function writeDxf(drawing: DxfDrawing): string {
  const { lengths, text_m, layers, entities } = drawing;
  const tags = new DxfTags(metresPerUnit(lengths));
  const bounds = boundsOfEntities(entities);
  const dimensions = new Map(entities.filter((entity): entity is Dimension => entity.kind === 'dimension').map((dimension, i) => [dimension, `*D${i + 1}`]));
  const names = [MODEL, PAPER, ...drawing.blocks.map(({ name }) => name), ...dimensions.values()];
  const records = new Map(names.map((name) => [name, tags.handle()]));
  const declared = new Set(['0', ...layers.map(({ name }) => name)]);
  const placeIn = (name: string): EntityPlace => ({ tags, owner: records.get(name) ?? '0', isDeclared: (layer) => declared.has(layer), blockOf: (dimension) => dimensions.get(dimension) });

  putTables(tags, drawing, records, bounds);
  const tables = tags.take();

  tags.put(0, 'SECTION', 2, 'BLOCKS');
  const block = (name: string, flags: number, inside: (place: EntityPlace) => void): void => {
    const place = placeIn(name);
    tags.put(0, 'BLOCK', 5, tags.handle(), 330, place.owner, 100, 'AcDbEntity', 8, '0', 100, 'AcDbBlockBegin', 2, name, 70, flags, 10, '0.0', 20, '0.0', 30, '0.0', 3, name, 1, '');
    inside(place);
    tags.put(0, 'ENDBLK', 5, tags.handle(), 330, place.owner, 100, 'AcDbEntity', 8, '0', 100, 'AcDbBlockEnd');
  };
  const all = (place: EntityPlace, inside: readonly DxfEntity[]): void => {
    for (const entity of inside) putEntity(place, entity);
  };
  block(MODEL, 0, () => undefined);
  block(PAPER, 0, () => undefined);
  for (const { name, entities: inside, fields } of drawing.blocks) {
    block(name, fields.length > 0 ? 2 : 0, (place) => {
      all(place, inside);
      for (const [i, field] of fields.entries()) putField(place, field, text_m, i);
    });
  }
  for (const [dimension, name] of dimensions) block(name, 1, (place) => all(place, dimensionBlock(dimension, text_m, lengths)));
  tags.put(0, 'ENDSEC');
  const blocks = tags.take();

  tags.put(0, 'SECTION', 2, 'ENTITIES');
  all(placeIn(MODEL), entities);
  tags.put(0, 'ENDSEC');
  const model = tags.take();

  putObjects(tags);
  const objects = tags.take();
  putHeader(tags, drawing, bounds);
  return `${tags.take()}${tables}${blocks}${model}${objects}  0\r\nEOF\r\n`;
}

/** Declares a field of a symbol, hidden below its middle: each use of the symbol says where it shows. */
function putField({ tags, owner }: EntityPlace, { tag, asks }: { readonly tag: string; readonly asks: string }, text_m: number, row: number): void {
  const words = { at: [0, -text_m * (2 + row * 1.7), 0], text: '', height_m: text_m, rotation_rad: 0, align: 'left' } as const;
  tags.put(0, 'ATTDEF', 5, tags.handle(), 330, owner, 100, 'AcDbEntity', 8, '0', 100, 'AcDbText');
  putTextBody(tags, words);
  tags.put(100, 'AcDbAttributeDefinition').words(3, asks).put(2, tag, 70, 0, 74, upAcross(words));
}

/** The one list of objects that every file of this version has. */
function putObjects(tags: DxfTags): void {
  const root = tags.handle();
  const groups = tags.handle();
  tags.put(0, 'SECTION', 2, 'OBJECTS');
  tags.put(0, 'DICTIONARY', 5, root, 330, 0, 100, 'AcDbDictionary', 281, 1, 3, 'ACAD_GROUP', 350, groups);
  tags.put(0, 'DICTIONARY', 5, groups, 330, root, 100, 'AcDbDictionary', 281, 1);
  tags.put(0, 'ENDSEC');
}

function putHeader(tags: DxfTags, { lengths, text_m }: DxfDrawing, { minX, minY, maxX, maxY }: DxfBounds): void {
  const { insert, measurement, lengthFormat } = UNITS[lengths];
  const seed = tags.nextHandle;
  tags.put(0, 'SECTION', 2, 'HEADER');
  tags.put(9, '$ACADVER', 1, 'AC1015', 9, '$DWGCODEPAGE', 3, 'ANSI_1252', 9, '$HANDSEED', 5, seed);
  tags.put(9, '$INSUNITS', 70, insert, 9, '$MEASUREMENT', 70, measurement, 9, '$LUNITS', 70, lengthFormat, 9, '$LUPREC', 70, 4);
  tags.put(9, '$INSBASE').place(10, [0, 0, 0]);
  tags.put(9, '$EXTMIN').place(10, [minX, minY, 0]).put(9, '$EXTMAX').place(10, [maxX, maxY, 0]);
  tags.put(9, '$LIMMIN').length(10, minX).length(20, minY).put(9, '$LIMMAX').length(10, maxX).length(20, maxY);
  tags.put(9, '$LTSCALE', 40, '1.0', 9, '$TEXTSIZE').length(40, text_m).put(9, '$TEXTSTYLE', 7, TEXT_STYLE, 9, '$DIMSTYLE', 2, DIMENSION_STYLE);
  tags.put(9, '$CLAYER', 8, '0', 9, '$CELTYPE', 6, 'ByLayer', 9, '$CECOLOR', 62, 256, 9, '$LWDISPLAY', 290, 1);
  tags.put(0, 'ENDSEC');
  tags.put(0, 'SECTION', 2, 'CLASSES', 0, 'ENDSEC');
}
