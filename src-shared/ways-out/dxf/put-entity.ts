import { textWidth_mm } from '../../sheets/font-widths.ts';
import { toDegrees } from '../../units/convert.ts';
import type { DxfEntity, DxfPlace, DxfText } from './drawing.ts';
import type { DxfTags } from './tags.ts';

/** Name of the one way of writing. */
export const TEXT_STYLE = 'Plan text';
export const DIMENSION_STYLE = 'Plan dimensions';

/** What an entity needs to know of the file around it. */
export interface EntityPlace {
  readonly tags: DxfTags;
  /** Handle of the block record that it belongs to. */
  readonly owner: string;
  readonly isDeclared: (layer: string) => boolean;
  /** Block that draws a dimension; undefined where dimensions cannot be. */
  readonly blockOf: (dimension: Extract<DxfEntity, { kind: 'dimension' }>) => string | undefined;
}

/** Begins an entity of a kind on its layer. */
function begin({ tags, owner, isDeclared }: EntityPlace, type: string, layer: string, subclass: string): string {
  const handle = tags.handle();
  tags.put(0, type, 5, handle, 330, owner, 100, 'AcDbEntity').put(8, isDeclared(layer) ? layer : '0');
  tags.put(100, subclass);
  return handle;
}

const moved = ([x, y, z]: DxfPlace, angle_rad: number, along_m: number, up_m: number): DxfPlace => [
  x + Math.cos(angle_rad) * along_m - Math.sin(angle_rad) * up_m,
  y + Math.sin(angle_rad) * along_m + Math.cos(angle_rad) * up_m,
  z,
];

/** Where a text's baseline begins, by the widths of the program's own letters. */
function startOf({ at, text, height_m, rotation_rad, align }: DxfText): DxfPlace {
  const width_m = textWidth_mm(text, height_m, 'plain');
  const back = align === 'left' ? 0 : align === 'right' ? width_m : width_m / 2;
  return moved(at, rotation_rad, -back, align === 'centre' ? -height_m / 2 : 0);
}

const ACROSS = { left: 0, middle: 1, right: 2, centre: 1 } as const;

/** What a text and a field of a symbol have in common. */
export function putTextBody(tags: DxfTags, words: DxfText): void {
  const { at, text, height_m, rotation_rad, align } = words;
  tags.place(10, startOf(words)).length(40, height_m).words(1, text).number(50, toDegrees(rotation_rad)).put(7, TEXT_STYLE, 72, ACROSS[align]);
  tags.place(11, at);
}

/** How the file says where the place of a text lies in its height: 0 at the baseline, 2 in the middle. */
export const upAcross = ({ align }: DxfText): number => (align === 'centre' ? 2 : 0);

/** Writes one entity, a symbol with its fields. */
export function putEntity(place: EntityPlace, entity: DxfEntity): void {
  const { tags } = place;
  switch (entity.kind) {
    case 'line':
      begin(place, 'LINE', entity.layer, 'AcDbLine');
      tags.place(10, entity.from).place(11, entity.to);
      return;
    case 'polyline': {
      begin(place, 'LWPOLYLINE', entity.layer, 'AcDbPolyline');
      tags.put(90, entity.places.length, 70, entity.isClosed ? 1 : 0).length(38, entity.places[0]?.[2] ?? 0);
      for (const [x, y] of entity.places) tags.length(10, x).length(20, y);
      return;
    }
    case 'circle':
      begin(place, 'CIRCLE', entity.layer, 'AcDbCircle');
      tags.place(10, entity.at).length(40, entity.radius_m);
      return;
    case 'arc':
      begin(place, 'ARC', entity.layer, 'AcDbCircle');
      tags.place(10, entity.at).length(40, entity.radius_m).put(100, 'AcDbArc').number(50, toDegrees(entity.from_rad)).number(51, toDegrees(entity.to_rad));
      return;
    case 'fill': {
      begin(place, 'SOLID', entity.layer, 'AcDbTrace');
      const [a, b, c] = entity.places;
      tags.place(10, a).place(11, b).place(12, c).place(13, c);
      return;
    }
    case 'text':
      begin(place, 'TEXT', entity.layer, 'AcDbText');
      putTextBody(tags, entity);
      tags.put(100, 'AcDbText', 73, upAcross(entity));
      return;
    case 'insert':
      putInsert(place, entity);
      return;
    case 'dimension':
      putDimension(place, entity);
  }
}

function putInsert(place: EntityPlace, { layer, block, at, rotation_rad, attributes }: Extract<DxfEntity, { kind: 'insert' }>): void {
  const { tags } = place;
  const handle = begin(place, 'INSERT', layer, 'AcDbBlockReference');
  if (attributes.length > 0) tags.put(66, 1);
  tags.put(2, block).place(10, at).put(41, '1.0', 42, '1.0', 43, '1.0').number(50, toDegrees(rotation_rad));
  if (attributes.length === 0) return;
  const inside = { ...place, owner: handle };
  for (const attribute of attributes) {
    begin(inside, 'ATTRIB', layer, 'AcDbText');
    putTextBody(tags, attribute);
    tags.put(100, 'AcDbAttribute', 2, attribute.tag, 70, attribute.isHidden ? 1 : 0, 74, upAcross(attribute));
  }
  tags.put(0, 'SEQEND', 5, tags.handle(), 330, handle, 100, 'AcDbEntity', 8, layer);
}

/** Both ends of a dimension line, its middle, and its direction. */
export function dimensionLine({ a, b, offset_m }: Pick<Extract<DxfEntity, { kind: 'dimension' }>, 'a' | 'b' | 'offset_m'>): { readonly from: DxfPlace; readonly to: DxfPlace; readonly middle: DxfPlace; readonly angle_rad: number } {
  const angle_rad = Math.atan2(b[1] - a[1], b[0] - a[0]);
  const from = moved(a, angle_rad, 0, offset_m);
  const to = moved(b, angle_rad, 0, offset_m);
  return { from, to, middle: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2, from[2]], angle_rad };
}

/** Aligned with what it measures (1), drawn by a block that it alone uses (32). */
const ALIGNED = 1 | 32;
const MIDDLE_CENTRE = 5;

function putDimension(place: EntityPlace, dimension: Extract<DxfEntity, { kind: 'dimension' }>): void {
  const block = place.blockOf(dimension);
  if (block === undefined) return;
  const { tags } = place;
  const { a, b, name, layer } = dimension;
  const { to, middle } = dimensionLine(dimension);
  begin(place, 'DIMENSION', layer, 'AcDbDimension');
  tags.put(2, block).place(10, to).place(11, middle).put(70, ALIGNED, 71, MIDDLE_CENTRE).length(42, Math.hypot(b[0] - a[0], b[1] - a[1]));
  if (name !== '') tags.words(1, `${name}: <>`);
  tags.put(3, DIMENSION_STYLE, 100, 'AcDbAlignedDimension').place(13, a).place(14, b);
}
