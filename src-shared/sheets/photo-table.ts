import type { Derived } from '../derived/derived.ts';
import { fieldDimensionsOf } from '../derived/field-dimensions.ts';
import type { TypeSizes } from '../paper/type-sizes.ts';
import type { UnderlayDrawing } from '../underlay/drawing.ts';
import { lengthText } from './sheet-text.ts';
import type { SheetOptions, SheetPhoto } from './sheet.ts';
import type { Cell, Drawing, Table } from './tables.ts';

/** Largest picture in the table [mm at factor 1]. */
const WIDTH_mm = 70;
const HEIGHT_mm = 52;

/** A photograph out of a file as it was read; undefined for a file that is no picture. */
export function photoOf({ kind, images, extents }: UnderlayDrawing): SheetPhoto | undefined {
  const [image] = images;
  const [width, height] = [extents.maxX - extents.minX, extents.maxY - extents.minY];
  if (!image || (kind !== 'png' && kind !== 'jpeg') || !(width > 0) || !(height > 0)) return undefined;
  return { bytes: image.bytes, mime: image.mime, matrix: image.matrix, width, height };
}

/** The pinned photographs in the order of the dimensions: number as printed, dimension, kept file. */
export function pinnedPhotos({ plan, ...derived }: Derived): readonly { readonly number: string; readonly dimension: string; readonly asset: string }[] {
  const pinned = fieldDimensionsOf({ plan, ...derived }).flatMap(({ id }) => (plan.siteRecord.measurements[id]?.photos ?? []).map((asset) => ({ dimension: id, asset })));
  return pinned.map((each, i) => ({ number: `P${i + 1}`, ...each }));
}

/** A photograph the right way up, as large as its cell allows. */
function picture({ bytes, mime, matrix: [a, b, c, d, e, f], width, height }: SheetPhoto, factor: number): Drawing {
  const share = Math.min((WIDTH_mm * factor) / width, (HEIGHT_mm * factor) / height);
  return {
    kind: 'drawing',
    width_mm: width * share,
    height_mm: height * share,
    draw: (x, y) => [{ kind: 'image', bytes, mime, matrix: [a * share, -b * share, c * share, -d * share, x + e * share, y + (height - f) * share], opacity: 1 }],
  };
}

/** What stands in the place of a photograph. */
function photoCell(photo: SheetPhoto | 'later' | undefined, factor: number): Cell {
  if (photo === 'later') return 'Printed with the set';
  return photo ? picture(photo, factor) : { kind: 'bold', words: 'Its file is missing or damaged' };
}

/** Every photograph from the site with what it shows, who measured there and when. Without rows while none is pinned. */
export function photoTable(derived: Derived, photos: NonNullable<SheetOptions['photos']>, { factor }: TypeSizes): Table {
  const { plan } = derived;
  const { lengths } = plan.settings;
  const byId = new Map(fieldDimensionsOf(derived).map((dimension) => [dimension.id, dimension]));
  return {
    title: 'Photographs from the site',
    shortTitle: 'Photographs',
    columns: [{ head: 'No.', font: 'bold' }, { head: 'Photograph' }, { head: 'Dim.', font: 'bold' }, { head: 'From, to', most_mm: 40 }, { head: 'Built', align: 'right' }, { head: 'Measured by, when', most_mm: 40 }, { head: 'File', most_mm: 40 }],
    rows: pinnedPhotos(derived).map(({ number, dimension, asset }) => {
      const of = byId.get(dimension);
      const measurement = plan.siteRecord.measurements[dimension];
      return [
        number,
        photoCell(photos.get(asset), factor),
        of?.name ?? '',
        of ? `${of.from} to ${of.to}` : '',
        measurement ? lengthText(measurement.value_m, lengths) : '',
        [measurement?.by, measurement?.at].map((words) => words?.trim()).filter(Boolean).join(', '),
        plan.assets[asset]?.name ?? '',
      ];
    }),
  };
}
